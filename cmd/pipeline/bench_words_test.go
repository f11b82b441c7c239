package pipeline_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
)

// job returns a command's job of the invented book with keys set.
func job(set ...string) pipeline.Job {
	var flags []jobfile.Flag
	seen := map[string]bool{}
	for _, s := range append(slices.Clone(set), "book.height=221.5", "book.width=148.5", "book.thickness=32") {
		key, value, _ := strings.Cut(s, "=")
		if seen[key] {
			continue
		}
		seen[key] = true
		flags = append(flags, jobfile.Flag{Name: "--set", Key: key, Value: value})
	}
	return pipeline.Job{Source: pipeline.Source{Flags: flags}}
}

// results are what commands made, by all that they were asked for.
var results = map[string]pipeline.Result{}

// made returns what a command makes, made once for all tests.
func made(t *testing.T, c pipeline.Command) pipeline.Result {
	t.Helper()
	asked := fmt.Sprintf("%T %+v", c, c)
	if _, ok := results[asked]; !ok {
		r, err := c.Make(context.Background())
		require.NoError(t, err)
		results[asked] = r
	}
	return results[asked]
}

// read returns what a command writes, the words of its report and its documents, all
// white space one blank.
func read(t *testing.T, c pipeline.Command) string {
	t.Helper()
	r := made(t, c)
	out := []string{string(r.Report)}
	for _, d := range append(slices.Clone(r.Beside), r.Document) {
		if d == nil {
			continue
		}
		for _, p := range d.Pages() {
			for _, w := range p.Texts {
				out = append(out, w.String)
			}
		}
	}
	text := strings.NewReplacer("\ufffe", "-", "\u2010", "-", "\u2011", "-", "\u00ad", "-").Replace(strings.Join(out, " "))
	return strings.Join(strings.Fields(text), " ")
}

// inOrder tells that words stand one after the other.
func inOrder(t *testing.T, text string, words ...string) {
	t.Helper()
	for _, w := range words {
		_, after, ok := strings.Cut(text, w)
		if !assert.True(t, ok, "no %q after what comes before it in: %s", w, text) {
			return
		}
		text = after
	}
}

// The work is one list in the templates, the handout and the fit: thickness is tried
// before height and depth, and the book between the walls before the second side is
// glued, which is when a wall can still be moved (the design: "The way of the book").
func TestOneOrderOfWork(t *testing.T) {
	checks := []string{"gauge strip", "board thickness", "cut pieces", "stacked dry fit", "three walls on one side", "bare carcass", "finished case"}
	j := job()
	overview, sheet, report := read(t, pipeline.Templates{Job: j}), read(t, pipeline.Handout{Job: j}), read(t, pipeline.Fit{Job: j, All: true})
	for _, text := range []string{overview, sheet, report} {
		inOrder(t, text, checks...)
	}
	thick := "he spine wall on its long edge on a side stands 2.0"
	for _, text := range []string{overview, sheet} {
		inOrder(t, text, thick, "past the fore-edge", "past the tail", "has 2.0 mm to spare from head to tail", "lue the other side on top")
	}
	assert.Contains(t, sheet, "square by that") // against a back-stop
	assert.Contains(t, sheet, "Press it straight from inside")
	assert.Contains(t, sheet, "Weight the edges only")
	inOrder(t, report, "step 3, stacked dry fit", thick, "step 7, three walls on one side", "step 8, bare carcass")
	inOrder(t, overview, "7. Try the book between the walls", "8. Glue the other side on top")
	inOrder(t, sheet, "7 Try the book between the walls", "8 Glue the other side on top")
}

// The book goes in fore-edge first: its spine shows at the mouth.
func TestWhichEndIsWhich(t *testing.T) {
	for _, j := range []pipeline.Job{job(), job("construction=card")} {
		text := read(t, pipeline.Handout{Job: j}) + read(t, pipeline.Fit{Job: j, All: true}) + read(t, pipeline.Templates{Job: j})
		assert.Contains(t, text, "fore-edge first: its spine shows at the mouth")
		for _, never := range []string{"looks out", "spine outward", "turned end for end"} {
			assert.NotContains(t, text, never)
		}
	}
}

// A patterned piece is cut larger first: side paper 158.7 by 215.8 with a repeat of 20
// along, by a repeat more.
func TestWorksheetSaysWhatIsCutFirst(t *testing.T) {
	sheet := read(t, pipeline.Handout{Job: job("pattern.repeat_along=20", "pattern.match=height")})
	assert.Contains(t, sheet, "158.7 × 235.8 mm first")
}

// Where values come from stands once, at the end.
func TestSourcesAtTheEnd(t *testing.T) {
	for name, c := range map[string]pipeline.Command{
		"handout": pipeline.Handout{Job: job()}, "blank": pipeline.Handout{Job: pipeline.Job{}, Blank: true},
		"fit": pipeline.Fit{Job: job("book.weight=1500"), All: true}, "stock": pipeline.Stock{Job: job(), Effort: "0"},
	} {
		text := read(t, c)
		assert.Equal(t, 1, strings.Count(text, "common practice"), name)
		assert.Equal(t, 1, strings.Count(text, "from memory"), name)
		assert.NotContains(t, text, "no source", name)
	}
}

// What is too thin to reach for comes out another way, and only then is that told; a
// thumb hole is cut in both boards before they are lined, and a simple case is told
// that many leave it out.
func TestTakingTheBookOut(t *testing.T) {
	const out = "So thin a case cannot be reached into"
	for _, way := range []string{"boards", "card"} {
		assert.Contains(t, read(t, pipeline.Handout{Job: job("construction="+way, "book.thickness=5")}), out)
		assert.NotContains(t, read(t, pipeline.Handout{Job: job("construction=" + way)}), out)
	}
	holed := job("thumb_hole.shape=semicircle", "book.thickness=5")
	sheet := read(t, pipeline.Handout{Job: holed})
	assert.NotContains(t, sheet, out)
	inOrder(t, sheet, "should not be notched (Roberts and Etherington 1982", "Cut the thumb hole in both sides now", "Line the boards")
	assert.NotContains(t, read(t, pipeline.Handout{Job: job()}), "notched")
}

// A case of card is glued, and its fit is tried on the blank: 148.5 + 1 and half of 1 of
// card at the score, less 148.5; 221.5 + 2 and two halves, less 221.5.
func TestCardIsGlued(t *testing.T) {
	j := job("construction=card")
	text := read(t, pipeline.Handout{Job: j}) + read(t, pipeline.Fit{Job: j, All: true}) + read(t, pipeline.Cutlist{Job: j})
	for _, never := range []string{"pasted", "the paste"} {
		assert.NotContains(t, text, never)
	}
	assert.Contains(t, text, "1.5 mm from its fore-edge to the spine score, 3.0 mm to spare between head score and tail score")
}

// The strip round the edge of a thumb hole is a piece of its own: in the cut list, and
// among what is bought.
func TestHoleStripIsAPiece(t *testing.T) {
	j := job("thumb_hole.shape=semicircle", "thumb_hole.radius=15")
	list := read(t, pipeline.Cutlist{Job: j})
	assert.Contains(t, list, "hole strip 2 paper 8.2 53.1 width") // 2 + 0.15 + 2 x 3 by 15π + 2 x 3
	assert.Contains(t, read(t, pipeline.Stock{Job: j, Effort: "0", Cuts: true}), "hole strip")
	assert.NotContains(t, read(t, pipeline.Cutlist{Job: job()}), "hole strip")
}
