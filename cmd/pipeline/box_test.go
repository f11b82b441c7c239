package pipeline_test

import (
	"cmp"
	"context"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry/chemise"
)

// boxed is the job of a drop-spine box for an invented book of 220 x 150 x 30 mm.
func boxed(set ...string) pipeline.Job {
	var j pipeline.Job
	for _, s := range append([]string{"kind=drop-spine box", "book.height=220 mm", "book.width=150 mm", "book.thickness=30 mm"}, set...) {
		key, value, _ := strings.Cut(s, "=")
		j.Flags = append(j.Flags, jobfile.Flag{Name: "--set " + key, Key: key, Value: value})
	}
	return j
}

// What is made together is printed by its name: the small tray first, then the large one,
// the case last.
func TestBoxInParts(t *testing.T) {
	names := func(only ...string) (out []string) {
		r, err := pipeline.Templates{Job: boxed(), Only: only}.Make(context.Background())
		require.NoError(t, err)
		for _, f := range r.Files {
			out = append(out, f.Name)
		}
		return out
	}
	assert.Equal(t, []string{"small-base.svg", "small-fore-edge-wall.svg", "small-side-wall.svg", "small-tray-cloth.svg", "templates.pdf"}, names("small tray"))
	assert.Equal(t, []string{"large-base.svg", "large-fore-edge-wall.svg", "large-side-wall.svg", "large-tray-cloth.svg", "templates.pdf"}, names("large tray"))
	assert.Equal(t, []string{"case-board.svg", "case-spine.svg", "case-cloth.svg", "hinge.svg", "small-floor-lining.svg", "large-floor-lining.svg", "templates.pdf"}, names("case"))
	_, err := pipeline.Templates{Job: boxed(), Only: []string{"middle tray"}}.Make(context.Background())
	assert.ErrorContains(t, err, `"middle tray" is no material and no piece`)
	assert.ErrorContains(t, err, "small tray, large tray, case, board")
}

// A small tray that measures 229 mm over its cloth, 1.1 mm more than planned: by hand from
// the worked example, the large tray and the case follow, the small tray stays.
func TestBoxForTheMeasuredTray(t *testing.T) {
	r, err := pipeline.Cutlist{Job: boxed("as_built.height=228.6;229;228.8"), Format: "csv"}.Make(context.Background())
	require.NoError(t, err)
	rows := map[string]string{}
	for _, line := range strings.Split(string(r.Report), "\n") {
		cells := strings.Split(line, ",")
		rows[cells[0]] = strings.Join(cells, " ")
	}
	for piece, size := range map[string]string{
		"small base": "151.4 222.2", "small fore-edge wall": "222.2 33.7", "large base": "155.4 230.9", "large fore-edge wall": "230.9 37.3",
		"case board": "162.3 244.6", "hinge": "106.8 220.9", "case spine": "42.3 244.6",
	} {
		assert.Contains(t, rows[piece], size, piece)
	}
	require.Len(t, r.Warnings, 1)
	assert.Contains(t, r.Warnings[0].Error(), "1.1 mm more than planned")
	_, err = pipeline.Cutlist{Job: boxed("as_built.height=226")}.Make(context.Background())
	assert.ErrorContains(t, err, "as_built.height")
	assert.ErrorContains(t, err, "at least 227.15 mm")
}

// Several volumes are refused in plain words; so is a key of a box that can't be made, and
// the change that is told works when it is typed in.
func TestBoxRefused(t *testing.T) {
	_, err := pipeline.Cutlist{Job: boxed("box.clearance_height=0.2 mm", "box.joint=3 mm", "box.turn_in=9 mm")}.Make(context.Background())
	var bad jobfile.Issues
	require.ErrorAs(t, err, &bad)
	require.Len(t, bad, 3)
	mended := []string{}
	for _, b := range bad {
		mended = append(mended, b.Key[len("--set "):]+"="+strings.TrimPrefix(b.Fix, "at least "))
	}
	_, err = pipeline.Cutlist{Job: boxed(mended...)}.Make(context.Background())
	assert.NoError(t, err, mended)
}

// The small tray is printed, made and measured before the rest: no sheet shows pieces of two
// parts, and the sheets come in the order of work, for a chemise with its box too.
func TestBoxPartsShareNoSheet(t *testing.T) {
	partOf := map[string]int{} // 0: of the chemise
	pieces := []string{"small base", "small fore-edge wall", "small side wall", "small tray cloth", "large base", "large fore-edge wall", "large side wall", "large tray cloth",
		"case board", "case spine", "case cloth", "case filler", "hinge", "small floor lining", "large floor lining"}
	for _, name := range pieces {
		partOf[name] = 3
		for n, tray := range []string{"small ", "large "} {
			if strings.HasPrefix(name, tray) && !strings.Contains(name, "lining") {
				partOf[name] = n + 1
			}
		}
	}
	for _, set := range [][]string{{}, {"box.large_tray=as planned"}, {"as_built.height=228.6"}, {"kind=chemise and drop-spine box"}, {"print.paper=a2"}} {
		j := boxed(set...)
		if strings.HasPrefix(strings.Join(set, ""), "kind=") {
			j.Flags = j.Flags[1:]
		}
		r, err := pipeline.Templates{Job: j}.Make(context.Background())
		require.NoError(t, err)
		var order []int
		for n, p := range r.Document.Pages() {
			var on []int
			for _, m := range p.Marks {
				if name, _, _ := strings.Cut(cmp.Or(m.Above, m.Title), " ×"); slices.Contains(slices.Concat(pieces, chemise.PieceNames), name) {
					on = append(on, partOf[name])
				}
			}
			slices.Sort(on)
			on = slices.Compact(on)
			assert.LessOrEqual(t, len(on), 1, "%v: page %d shows pieces of parts %v", set, n+1, on)
			order = append(order, on...)
		}
		assert.IsNonDecreasing(t, order, set)
		assert.Subset(t, order, []int{1, 2, 3}, set)
	}
}

// A small tray that was measured is nowhere spoken of as one still to be measured: not in the
// steps, not where material is bought or cut.
func TestMeasuredTrayIsToldAsMeasured(t *testing.T) {
	measured := []string{"as_built.height=228.6", "as_built.width=154.3", "as_built.thickness=34.4"}
	for what, c := range map[string]func(set ...string) pipeline.Command{
		"handout":   func(set ...string) pipeline.Command { return pipeline.Handout{Job: boxed(set...)} },
		"templates": func(set ...string) pipeline.Command { return pipeline.Templates{Job: boxed(set...)} },
		"stock": func(set ...string) pipeline.Command {
			return pipeline.Stock{Job: boxed(set...), Draw: true, Effort: "0"}
		},
		"cutter": func(set ...string) pipeline.Command {
			machine := pipeline.Cutter{}
			machine.Job, machine.Bed, machine.Effort = boxed(set...), "900x700", "0"
			return machine
		},
	} {
		told := func(set ...string) string {
			return read(t, c(set...)) + strings.Join(made(t, c(set...)).Notes, " ")
		}
		const asked = "type what you find under [as_built]"
		assert.Contains(t, told(), asked, what)
		said := told(measured...)
		assert.NotContains(t, said, asked, what)
		assert.NotContains(t, said, "anything else is cut", what)
		assert.Contains(t, said, "was measured", what)
	}
	said := read(t, pipeline.Handout{Job: boxed("as_built.height=228.6")})
	assert.Contains(t, said, "228.6 mm from head to tail")
	assert.Contains(t, said, "here 228.6 mm; at")
	assert.NotContains(t, said, "here 227.9 mm; at")
	assert.Contains(t, said, "Taken as planned, since it was not measured: from the open edge to the fore-edge and from bench to rim")
}

// What is found when the small tray is measured stands in a table: in the handout, beside the
// order of work, and in the fit, for readers and for programs.
func TestFindingsAreTold(t *testing.T) {
	const means = "follow by just as much"
	for what, c := range map[string]pipeline.Command{
		"handout": pipeline.Handout{Job: boxed()}, "templates": pipeline.Templates{Job: boxed()}, "fit": pipeline.Fit{Job: boxed(), All: true, Draw: true},
	} {
		said := read(t, c)
		assert.Contains(t, said, means, what)
		assert.Contains(t, said, "card", what)
	}
	assert.Contains(t, read(t, pipeline.Handout{Job: boxed()}), "what is found what it means what to do")
	r, err := pipeline.Fit{Job: boxed(), Format: "json"}.Make(context.Background())
	require.NoError(t, err)
	var out struct {
		Checks []struct {
			Found []struct{ What, Means, Do string }
		}
	}
	require.NoError(t, json.Unmarshal(r.Report, &out))
	rows := 0
	for _, c := range out.Checks {
		for _, f := range c.Found {
			rows++
			assert.NotEmpty(t, f.What)
			assert.NotEmpty(t, f.Means)
			assert.NotEmpty(t, f.Do)
		}
	}
	assert.GreaterOrEqual(t, rows, 8)
}

// The heading of the checks of the fit stands with the first of them, in every worked box.
func TestFitHeadingStandsWithItsChecks(t *testing.T) {
	for _, name := range []string{"buoy-notes", "channel-pilot", "coast-charts", "tidal-diary"} {
		text, err := os.ReadFile("../../testdata/" + name + "/job.toml")
		require.NoError(t, err)
		j := pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: text}}}}
		r, err := pipeline.Fit{Job: j, Draw: true}.Make(context.Background())
		require.NoError(t, err)
		tried := false
		for _, p := range r.Document.Pages() {
			said := ""
			for _, w := range p.Texts {
				said += w.String + "\n"
			}
			if strings.Contains(said, "In this order, each at its step") {
				assert.Regexp(t, "Step 1: .*gauge strip", said, name)
				tried = true
			}
		}
		assert.True(t, tried, name)
	}
}
