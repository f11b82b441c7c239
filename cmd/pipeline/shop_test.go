package pipeline_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry/kinds"
)

// Whatever a job takes from its shop, every command makes of the job written out as one file
// the same bytes without the shop.
func TestPlainMakesTheSameFiles(t *testing.T) {
	shop := pipeline.File{Name: "shop.toml", Data: append(jobfile.ShopStarter(), []byte("\n[[offcut]]\nnumber = 3\nmaterial = \"grey board 2 mm\"\nsize = \"330 x 700 mm\"\n")...)}
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(kinds.All).Draw(t, "kind")
		text := fmt.Sprintf("title = \"Invented\"\nkind = %q\n", k.Name)
		if k.Construction != "" {
			text += fmt.Sprintf("construction = %q\n", k.Construction)
		}
		for _, line := range []string{"board = \"grey board 2 mm\"", "lining = \"white paper\"", "cloth = \"blue cloth\"", "side_paper = \"wave paper\"", "printer = \"workshop printer\"", "cutter = \"workshop laser\""} {
			if rapid.Bool().Draw(t, line) {
				text += line + "\n"
			}
		}
		text += fmt.Sprintf("[[book]]\nheight = %d\nwidth = %d\nthickness = %d\n", rapid.IntRange(150, 260).Draw(t, "height"), rapid.IntRange(100, 180).Draw(t, "width"), rapid.IntRange(10, 50).Draw(t, "thickness"))
		if rapid.Bool().Draw(t, "others") {
			text += "[chemise]\ncovering = \"blue cloth\"\nlining = \"white paper\"\n[box]\nboard = \"grey board 2 mm\"\ncloth = \"blue cloth\"\nlining = \"white paper\"\n"
		}
		named := pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "case.toml", Data: []byte(text)}}, Shop: shop}}
		one, err := pipeline.Plain{Job: named}.Make(t.Context())
		if err != nil {
			var bad jobfile.Issues
			require.ErrorAs(t, err, &bad, text)
			return
		}
		plain := pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "case.toml", Data: one.Report}}}}
		cutter := func(j pipeline.Job) pipeline.Cutter {
			c := pipeline.Cutter{}
			c.Job, c.Effort = j, "5"
			return c
		}
		commands := func(j pipeline.Job) []pipeline.Command {
			return []pipeline.Command{pipeline.Cutlist{Job: j, Format: "json", Outlines: true}, pipeline.Fit{Job: j, Format: "json"},
				pipeline.Stock{Job: j, Effort: "5", Draw: true}, cutter(j)}
		}
		with, without := commands(named), commands(plain)
		for _, i := range []int{rapid.IntRange(0, len(with)-1).Draw(t, "command")} {
			a, wrong := with[i].Make(t.Context())
			b, err := without[i].Make(t.Context())
			require.Equal(t, wrong == nil, err == nil, "%v\n%v", wrong, err)
			require.Equal(t, string(a.Report), string(b.Report), "%T\n%s\n%s", with[i], text, one.Report)
			require.Equal(t, a.Files, b.Files, "%T", with[i])
		}
	})
}

// A shop that is at fault is told with what is wrong with the job, each in its file.
func TestFaultsOfShopAndJob(t *testing.T) {
	j := pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "case.toml", Data: []byte("board = \"thick\"\n[[book]]\nheight = 221\nwidth = \"a\"\nthickness = 32\n")}},
		Shop: pipeline.File{Name: "shop.toml", Data: []byte("[[material]]\nname = \"thick\"\nkind = \"board\"\nthickness = 8\nstretch = \"x\"\ncolor = 3\n")}}}
	_, err := pipeline.Cutlist{Job: j}.Make(t.Context())
	require.Error(t, err)
	for _, says := range []string{"shop.toml:6: material.color: unknown key", `case.toml:4: book.width: "a"`, "shop.toml:4: material.thickness: 8 mm is too large"} {
		assert.ErrorContains(t, err, says)
	}
}
