package pipeline_test

import (
	"context"
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
)

var corrugated = []string{"construction=card", "card.kind=corrugated", "card.thickness=3"}

// everyWord returns all that every command says of a job.
func everyWord(t *testing.T, set ...string) string {
	j := job(set...)
	machine := pipeline.Cutter{}
	machine.Job, machine.Bed, machine.Creases, machine.Labels = j, "900x700", "all", true
	empty := j
	empty.Flags = slices.DeleteFunc(slices.Clone(j.Flags), func(f jobfile.Flag) bool { return strings.HasPrefix(f.Key, "book.") })
	byHand := machine
	byHand.Creases = ""
	var out []string
	for _, c := range []pipeline.Command{
		pipeline.Templates{Job: j}, pipeline.Handout{Job: j}, pipeline.Handout{Job: j, Short: true}, pipeline.Handout{Job: empty, Blank: true},
		pipeline.Cutlist{Job: j}, pipeline.Cutlist{Job: j, Format: "markdown"}, machine, byHand,
		pipeline.Prove{Job: j, Draw: true}, pipeline.Fit{Job: j, Draw: true, All: true}, pipeline.Fit{Job: j},
	} {
		r := made(t, c)
		out = append(out, read(t, c), strings.Join(r.Notes, " "), r.Warnings.Error())
		for _, f := range r.Files {
			if strings.HasSuffix(f.Name, ".svg") {
				out = append(out, string(f.Data))
			}
		}
	}
	return strings.Join(strings.Fields(strings.Join(out, " ")), " ")
}

// Every output of a case of corrugated board speaks of flutes, of crushed folds and of
// corrugated board, and of no grain, no card and nothing to score; that of a case of
// solid card the other way round.
func TestWordsOfCorrugatedBoard(t *testing.T) {
	solid := everyWord(t, "construction=card")
	assert.NotRegexp(t, `(?i)flute|crush|corrugated|liner`, solid)
	assert.Regexp(t, `\bgrain along the height\b`, solid)

	text := everyWord(t, corrugated...)
	for _, never := range []string{
		`(?i)\bcard\b[^.]`,  // but for keys
		`(?i)\bcard\.( |$)`, // the end of a sentence
		`(?i)\bgrain\b`,
		`(?i)\bscored\b|\bscoring\b|\bscore (a|an|every|the|or|it|and (cut|fold))\b`,
	} {
		if at := regexp.MustCompile(never).FindStringIndex(text); at != nil {
			assert.Fail(t, never, "…%s…", text[max(0, at[0]-80):min(len(text), at[1]+80)])
		}
	}
	for _, once := range []string{
		"one-piece slipcase of corrugated board",
		"flutes along the height", "flutes along", "the arrow along the flutes",
		"the flutes run from head to tail in both sides and the spine",
		"crush corrugated board, never cut it", // the key to the lines
		"Crush every fold from the inside along a straightedge, with a bone folder or a creasing wheel",
		"Never cut a fold, not even half through",
		"Its folds are crushed with a folder or a creasing wheel: no knife and no laser follows them",
		"no fold is drawn: crush the folds by hand, from the printed template; a blade or a laser would cut them",
		"the layer Creasing is for a blunt creasing tool and nothing else: no knife, and no laser at any power",
		"Under a laser it catches fire easily",
		"Lay the stock with its flutes along the height of the bed", "lay corrugated board with the flutes along the height of the bed",
		"The corrugated board must measure 3.0 mm",
		"the corrugated board's thickness",
	} {
		assert.Contains(t, text, once)
	}
	stock := read(t, pipeline.Stock{Job: job(corrugated...), Draw: true})
	assert.Contains(t, stock, "flutes along 841 mm")
	assert.NotContains(t, stock, "grain")
}

// A crease line is a line that some machines cut: of corrugated board there is none
// unless it is asked for by name.
func TestCorrugatedBoardIsNotHalfCut(t *testing.T) {
	c := pipeline.Cutter{}
	c.Job, c.Bed = job(corrugated...), "900x700"
	drawn := func(creases string) string {
		c.Creases = creases
		r, err := c.Make(context.Background())
		require.NoError(t, err)
		for _, f := range r.Files {
			if f.Name == "corrugated-board-1.svg" {
				return string(f.Data)
			}
		}
		require.Fail(t, "no drawing")
		return ""
	}
	for creases, has := range map[string]bool{"": false, "none": false, "card": false, "all": true, "corrugated board": true} {
		svg := drawn(creases)
		assert.Equal(t, has, strings.Contains(svg, `id="Creasing"`), creases)
		assert.NotContains(t, svg, "score")
	}
}

// Corrugated board is weighed by its grammage: what the [[stock]] says goes before what
// the card says; with neither, 450 g/m². Its thickness counts for nothing.
func TestCorrugatedBoardIsWeighedByGrammage(t *testing.T) {
	weighs := func(set ...string) (area, grams float64, source string) {
		r, err := pipeline.Fit{Job: job(append(set, corrugated...)...), Format: "json"}.Make(context.Background())
		require.NoError(t, err)
		var out struct {
			Weight struct {
				Materials []struct {
					Material string  `json:"material"`
					Area     float64 `json:"area_mm2"`
					Grams    float64 `json:"weight_g"`
					Source   string  `json:"source"`
				}
			}
		}
		require.NoError(t, json.Unmarshal(r.Report, &out))
		require.Len(t, out.Weight.Materials, 1)
		m := out.Weight.Materials[0]
		assert.Equal(t, "corrugated board", m.Material)
		return m.Area, m.Grams, m.Source
	}
	for _, c := range []struct {
		set      []string
		grammage float64
		source   string
	}{
		{nil, 450, "a usual grammage of corrugated board: weigh a sheet and give card.grammage"},
		{[]string{"card.grammage=600"}, 600, "the grammage given"},
		{[]string{"card.grammage=600", "stock.material=corrugated board", "stock.size=A0", "stock.grammage=700"}, 700, "the grammage given"},
		{[]string{"card.grammage=600", "stock.material=corrugated board", "stock.size=A0"}, 600, "the grammage given"},
	} {
		area, grams, source := weighs(c.set...)
		assert.InDelta(t, area*1e-6*c.grammage, grams, 0.01)
		assert.Equal(t, c.source, source)
	}
	area, grams, _ := weighs("card.thickness=4")
	assert.InDelta(t, area*1e-6*450, grams, 0.01)
}

// The shopping list weighs the sheet of it likewise: A1 is 0.594 × 0.841 m.
func TestSheetOfCorrugatedBoardIsWeighed(t *testing.T) {
	r, err := pipeline.Stock{Job: job(append([]string{"card.grammage=600"}, corrugated...)...)}.Make(context.Background())
	require.NoError(t, err)
	assert.Contains(t, string(r.Report), "0.30 kg") // 0.4995 m² of 600 g/m²
	assert.Contains(t, string(r.Report), "with the grammage given")
}
