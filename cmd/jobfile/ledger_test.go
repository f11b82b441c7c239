package jobfile_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/geometry"
)

const ledgerShop = `# invented
version = 1
[[material]]
name = "grey"                      # the usual one
kind = "board"
thickness = 2
[[material.sheet]]
size = "700 x 1000 mm"
count = %d                          # on the rack
[[material.sheet]]
size = "A1"
[[material]]
name = "linen"
kind = "cloth"
[[material.sheet]]
roll = 1370
length = %s                    # left of it
# Habits.
[cloth]
overlap = "30 mm"                  # wide
`

// A taking that is taken back leaves the file as it was, comments and all, and so do several,
// the last first. Counts are those that are left.
func TestUndoIsTheIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count := rapid.IntRange(0, 12).Draw(t, "count")
		length := rapid.SampledFrom([]string{`"2400 mm"`, "2400", `"3.5 m"`, "812.5", "0"}).Draw(t, "length")
		if length == `"3.5 m"` {
			length = `"350 cm"`
		}
		text := fmt.Sprintf(ledgerShop, count, length)
		texts := []string{text}
		for range rapid.IntRange(1, 4).Draw(t, "takings") {
			shop, err := jobfile.ReadShop("shop.toml", []byte(text))
			require.NoError(t, err, text)
			taking := jobfile.Taking{By: "Harbour log", Date: rapid.SampledFrom([]string{"", "2026-11-28"}).Draw(t, "date")}
			if n := rapid.IntRange(0, count).Draw(t, "sheets"); n > 0 {
				taking.Sheets = append(taking.Sheets, jobfile.Used{Pile: "material.sheet", Sheets: n})
				count -= n
			}
			if l := rapid.IntRange(0, 900).Draw(t, "length"); l > 0 {
				taking.Sheets = append(taking.Sheets, jobfile.Used{Pile: "material.sheet[3]", Length: geometry.Length(l)})
			}
			for n := range strings.Count(text, "[[offcut]]") {
				key := "offcut"
				if n > 0 {
					key = fmt.Sprintf("offcut[%d]", n+1)
				}
				if rapid.IntRange(0, 3).Draw(t, "uses it") == 0 && !usedAlready(text, n) {
					taking.Sheets = append(taking.Sheets, jobfile.Used{Pile: key, Sheets: 1})
				}
			}
			for range rapid.IntRange(1, 4).Draw(t, "kept") {
				taking.Kept = append(taking.Kept, jobfile.Kept{Material: rapid.SampledFrom([]string{"grey", "linen"}).Draw(t, "of"),
					Width: geometry.Length(rapid.Float64Range(40, 900).Draw(t, "width")), Height: geometry.Length(rapid.Float64Range(40, 900).Draw(t, "height")),
					Grain: rapid.SampledFrom([]geometry.Grain{geometry.GrainHeight, geometry.GrainWidth, "none"}).Draw(t, "grain"), From: "sheet 1"})
			}
			after, err := shop.Take(taking)
			require.NoError(t, err, text)
			text = string(after)
			require.Contains(t, text, fmt.Sprintf("count = %d ", count))
			texts = append(texts, text)
		}
		numbers := map[string]bool{}
		for _, line := range strings.Split(text[:strings.LastIndex(text, "[[taking]]")], "\n") {
			if n, ok := strings.CutPrefix(line, "number = "); ok && !numbers[n] {
				numbers[n] = true
			}
		}
		for i := len(texts) - 2; i >= 0; i-- {
			shop, err := jobfile.ReadShop("shop.toml", []byte(text))
			require.NoError(t, err)
			back, err := shop.Undo()
			require.NoError(t, err, text)
			text = string(back)
			require.Equal(t, texts[i], text)
		}
		shop, err := jobfile.ReadShop("shop.toml", []byte(text))
		require.NoError(t, err)
		_, err = shop.Undo()
		require.ErrorContains(t, err, "shop.toml: nothing was taken")
	})
}

// usedAlready tells whether the nth offcut of a file is marked.
func usedAlready(text string, n int) bool {
	part := strings.Split(text, "[[offcut]]")[n+1]
	part, _, _ = strings.Cut(part, "[[")
	return strings.Contains(part, "used_by")
}

// What a taking left is lent before whole sheets, once, until it is used; what is gone, or
// used by hand, keeps a taking from being taken back. Counts that were changed since count on.
func TestLedger(t *testing.T) {
	shop, err := jobfile.ReadShop("shop.toml", []byte(fmt.Sprintf(ledgerShop, 1, "2400")))
	require.NoError(t, err)
	text, err := shop.Take(jobfile.Taking{By: "Invented", Sheets: []jobfile.Used{{Pile: "material.sheet", Sheets: 1}},
		Kept: []jobfile.Kept{{Material: "grey", Width: 300.06, Height: 61, Grain: geometry.GrainWidth, From: "1.1"}}})
	require.NoError(t, err)
	shop, err = jobfile.ReadShop("shop.toml", text)
	require.NoError(t, err)
	f, _, err := shop.Parse("case.toml", []byte("board = \"grey\"\n[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n"))
	require.NoError(t, err)
	require.Len(t, f.Stock, 2, "none of the counted sheet is left, of the other there is as much as is needed")
	o := f.Stock[0]
	assert.Equal(t, 1, o.Offcut)
	assert.Equal(t, 1, o.Count)
	assert.InDelta(t, 300, o.Width.MM(), 1e-9)
	assert.InDelta(t, 61, o.Height.MM(), 1e-9)
	assert.Zero(t, o.Trim)
	assert.Equal(t, geometry.GrainWidth, o.Grain)
	assert.Equal(t, "A1, 594 × 841 mm", f.Stock[1].Size())

	undo := func(text string) (string, error) {
		shop, err := jobfile.ReadShop("shop.toml", []byte(text))
		require.NoError(t, err)
		back, err := shop.Undo()
		return string(back), err
	}
	bought := strings.Replace(string(text), "count = 0 ", "count = 10 ", 1)
	back, err := undo(bought)
	require.NoError(t, err)
	assert.Contains(t, back, "count = 11 ")
	_, err = undo(strings.Replace(string(text), "from = ", "used_by = \"by hand\"\nfrom = ", 1))
	assert.ErrorContains(t, err, "offcut 1, which the last taking left, was used since; the taking stays")
	gone, rest, _ := strings.Cut(string(text), "\n[[offcut]]")
	_, rest, _ = strings.Cut(rest, "\n[[taking]]")
	_, err = undo(gone + "\n[[taking]]" + rest)
	assert.ErrorContains(t, err, "the taking stays: put the file right by hand")
	_, err = undo(strings.Replace(string(text), "size = \"700 x 1000 mm\"", "size = \"700 x 1010 mm\"", 1))
	assert.ErrorContains(t, err, `there is no such sheet of "grey" with a count any more; the taking stays`)
}

// Of several rolls on one line it can't be told which became shorter.
func TestRollsAreTakenOneByOne(t *testing.T) {
	shop, err := jobfile.ReadShop("shop.toml", []byte("[[material]]\nname = \"blue\"\nkind = \"cloth\"\n[[material.sheet]]\nroll = \"1370 mm\"\nlength = \"2400 mm\"\ncount = 2\n"))
	require.NoError(t, err)
	_, err = shop.Take(jobfile.Taking{By: "Invented", Sheets: []jobfile.Used{{Pile: "material.sheet", Length: 300}}})
	assert.EqualError(t, err, "shop.toml:7: material.sheet.count: several rolls of one length, of which one is to become shorter; write a [[material.sheet]] for each roll, with its length and without a count")
}

// Faults of the ledger are told with their lines.
func TestBadLedgers(t *testing.T) {
	const material = "[[material]]\nname = \"grey\"\nkind = \"board\"\n"
	for _, test := range []struct {
		name, text string
		says       []string
	}{
		{"empty", material + "[[offcut]]\n", []string{`shop.toml:4: offcut.material: missing; give the name of its material`, `shop.toml:4: offcut.number: missing; `, `shop.toml:4: offcut.size: missing; `}},
		{"unknown material", material + "[[offcut]]\nnumber = 1\nmaterial = \"gray\"\nsize = \"300 x 200\"\n", []string{`shop.toml:6: offcut.material: "gray" is no material of shop.toml; did you mean "grey"`}},
		{"twice", material + "[[offcut]]\nnumber = 1\nmaterial = \"grey\"\nsize = \"300 x 200\"\n[[offcut]]\nnumber = 1\nmaterial = \"grey\"\nsize = \"300 x 2\"\n",
			[]string{`shop.toml:9: offcut[2].number: 1 is a number that is there already, on line 5; give it another`}},
		{"no size", material + "[[offcut]]\nnumber = 1.5\nmaterial = \"grey\"\nsize = \"300\"\ngrain = \"across\"\n", []string{`shop.toml:5: offcut.number: 1.5 is no whole number; `}},
		{"a sliver", material + "[[offcut]]\nnumber = 1\nmaterial = \"grey\"\nsize = \"300 x 2\"\ngrain = \"across\"\n", []string{`shop.toml:7: offcut.size: "300 x 2" is no size of an offcut; give 10 mm to 5000 mm (each side of it)`, `shop.toml:8: offcut.grain: "across" is none of its words; `}},
		{"a taking of nothing", "[[taking]]\n[[used]]\ntaking = 0\n", []string{`shop.toml:1: taking.number: missing; `,
			`shop.toml:2: used.count: missing; `, `shop.toml:2: used.material: missing; `, `shop.toml:2: used.size: missing; `, `shop.toml:3: used.taking: 0 is too small; `}},
		{"by hand", material + "[[taking]]\nnumber = 1\nleft = -1\nused = \"two\"\n[[used]]\ntaking = 1\nmaterial = \"grey\"\nsize = \"A1\"\ncount = 1.5\n[[used]]\ntaking = 1\nmaterial = \"grey\"\nlength = \"two yards\"\nroll = \"1000 mm\"\n",
			[]string{`shop.toml:6: taking.left: -1 is too small; `, `shop.toml:7: taking.used: "two" is no number; `, `shop.toml:12: used.count: 1.5 is no whole number; `,
				`shop.toml:13: used[2].was: missing; `, `shop.toml:16: used[2].length: "two yards" doesn't begin with a number; `}},
		{"used by nobody", material + "[[offcut]]\nnumber = 1\nmaterial = \"grey\"\nsize = \"300 x 200\"\nused_by = \"\"\n", []string{`shop.toml:8: offcut.used_by: "" is no number; give 1 to 1000000 (the number of the taking, or what it was used for in quotes)`}},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := jobfile.ReadShop("shop.toml", []byte(test.text))
			require.Error(t, err)
			begins(t, "", test.says, err.Error())
		})
	}
}
