package proof

import (
	"fmt"
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/plan/plantest"
	"forel/render"
	"forel/render/leader"
	"forel/render/record"
	"forel/render/typeset"
)

// crossed gives the lines that run through a text and aren't painted over.
func crossed(s *record.Surface, t render.Text) []record.Stroked {
	box := typeset.Box(t).Grow(-0.1)
	covered := -1 // everything up to here is
	for _, f := range s.Fills {
		if f.Path.Bounds().Contains(box) && (area{Rings: [][]geometry.Point{f.Path.Flatten(0.05)}}).Holds(box.Center()) {
			covered = f.Nth
		}
	}
	var out []record.Stroked
	for _, st := range s.Strokes {
		if st.Nth < covered {
			continue
		}
		grown := box.Grow(st.Stroke.Width / 2)
		if st.Path.Bounds().Grow(0.01).Intersect(grown).Empty() {
			continue
		}
		path := st.Path.Flatten(0.05)
		if st.Path.Closed {
			path = append(path, path[0])
		}
		for k := 1; k < len(path); k++ {
			if len(geometry.Line(path[k-1], path[k]).Clip(grown, 1)) > 0 {
				out = append(out, st)
				break
			}
		}
	}
	return out
}

// leaders gives the lines from labels to what they speak of.
func leaders(s *record.Surface) []geometry.Path {
	var out []geometry.Path
	for _, st := range s.Strokes {
		if st.Stroke.Width == 0.15 && st.Stroke.Color == render.Black && !st.Path.Closed {
			out = append(out, st.Path)
		}
	}
	return out
}

// All words of every page stand on the page, apart from each other, with no
// line through them; no two leaders cross.
func TestWordsStandClear(t *testing.T) {
	all := maps.Clone(subjects())
	for name, s := range broken() {
		require.False(t, s.Proof.Sound(), name)
		all["broken: "+name] = s
	}
	usual := []string{"pamphlet of 3 mm", "folio of 150 mm", "lined last, semicircle", "paper all round, semicircle", "divided, triangle",
		"broken: paper short of the mouth", "broken: spine cloth too long", "broken: boards that do not meet"}
	for name, s := range plantest.Few(all, usual...) {
		roundings := map[string]geometry.Rounding{"Letter": geometry.To64th}
		switch name {
		case "pamphlet of 3 mm", "ordinary book", "folio of 150 mm", "smallest":
			roundings["A4"] = geometry.ToTenthMM
		}
		for sheet, round := range roundings {
			t.Run(name+"/"+sheet, func(t *testing.T) {
				o := Options{Setup: setup(sheet), Round: round}
				d := Document(s.Plan, o)
				for i, p := range d.Pages() {
					checkPage(t, fmt.Sprintf("page %d", i+1), &p.Surface, o)
				}
			})
		}
	}
}

func checkPage(t *testing.T, where string, on *record.Surface, o Options) {
	t.Helper()
	require.NotEmpty(t, on.Texts, where)
	room := o.Setup.Printable(false).Grow(0.1)
	for i, a := range on.Texts {
		box := typeset.Box(a.Text)
		assert.True(t, room.Contains(box), "%s: %q at %v is off the page", where, a.String, box)
		for _, c := range a.String {
			assert.True(t, typeset.Has(c), "%s: no glyph for %q in %q", where, c, a.String)
		}
		for _, b := range on.Texts[i+1:] {
			assert.False(t, box.Grow(-0.2).Overlaps(typeset.Box(b.Text).Grow(-0.2)), "%s: %q lies on %q", where, a.String, b.String)
		}
		for _, line := range crossed(on, a.Text) {
			assert.Fail(t, "a line through words", "%s: %q at %v: %v", where, a.String, box, line)
		}
	}
	ls := leaders(on)
	for i, a := range ls {
		for _, b := range ls[i+1:] {
			p, q, r, s := a.Vertices[0].Point, a.Vertices[1].Point, b.Vertices[0].Point, b.Vertices[1].Point
			assert.False(t, leader.Cross(p, q, r, s), "%s: leaders cross: %v %v", where, a, b)
		}
	}
	page := geometry.Bx(0, 0, o.Setup.Sheet.Width, o.Setup.Sheet.Height)
	for _, st := range on.Strokes {
		assert.True(t, page.Contains(st.Path.Bounds()), "%s: a line leaves the page: %v", where, st.Path)
	}
}

// The page says plainly that figures are not templates.
func TestEveryPageSaysNotToCut(t *testing.T) {
	d := Document(made(t, jobOf(221.5, 148.5, 32)).Plan, Options{Setup: setup("A4"), Round: geometry.ToTenthMM})
	require.Len(t, d.Pages(), 4) // from an angle, outside, inside, mouth
	for i, on := range d.Pages() {
		var words string
		for _, w := range on.Texts {
			words += w.String + "\n"
			assert.Empty(t, w.Layer) // no layer that a machine would cut
		}
		assert.Contains(t, words, "not at true size: do not cut")
		assert.Contains(t, words, fmt.Sprintf("page %d of 4", i+1))
	}
}
