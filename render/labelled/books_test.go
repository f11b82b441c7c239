package labelled_test

import (
	"fmt"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/render"
	"forel/render/labelled"
	"forel/render/pagetest"
	"forel/render/record"
	"forel/render/typeset"
)

// span is a range that a measurement is drawn from, in millimetres.
type span struct{ lo, hi float64 }

// caseOf draws the case of a book of a random size.
func caseOf(t *rapid.T, height, width, thickness span) slipcase.Case {
	length := func(s span, label string) job.Readings {
		return job.Readings{geometry.Length(rapid.OneOf(
			rapid.Float64Range(s.lo, s.hi),
			rapid.Map(rapid.IntRange(int(2*s.lo), int(2*s.hi)), func(n int) float64 { return float64(n) / 2 }),
		).Draw(t, label))}
	}
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{
		Height: length(height, "height"), Width: length(width, "width"), Thickness: length(thickness, "thickness"),
	}}
	j.Lining.Thickness = rapid.SampledFrom([]geometry.Length{0.15, 0}).Draw(t, "lining")
	j.ThumbHole.Shape = rapid.SampledFrom([]string{slipcase.NoHole, slipcase.Semicircle, slipcase.Triangle}).Draw(t, "thumb hole")
	j.Covering = rapid.SampledFrom([]string{
		slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly,
	}).Draw(t, "covering")
	c, err := plantest.Make[slipcase.Case](j)
	if err != nil {
		t.Skip("can't be made")
	}
	return c
}

// anyBook draws the case of a book of any size that a case can be made for.
func anyBook(t *rapid.T) slipcase.Case {
	return caseOf(t, span{40, 700}, span{20, 600}, span{1, 200})
}

// ordinaryBook draws the case of a book as most are.
func ordinaryBook(t *rapid.T) slipcase.Case {
	return caseOf(t, span{150, 400}, span{100, 300}, span{8, 100})
}

// border is the white round a piece in the drawings of these tests.
const border geometry.Length = 14

// drawing is one piece as it was drawn.
type drawing struct {
	*record.Surface
	piece  geometry.Piece
	window geometry.Box
	wider  float64
	missed []string
}

// style is how a drawing is asked for: how sizes are rounded, and by how much
// wider a viewer's typeface may be.
type style struct {
	round geometry.Rounding
	wider float64
}

func styles(t *rapid.T) style {
	return style{
		rapid.SampledFrom([]geometry.Rounding{geometry.ToTenthMM, geometry.To64th}).Draw(t, "rounding"),
		rapid.SampledFrom([]float64{1, 1.2}).Draw(t, "wider"),
	}
}

// draw draws a piece whole, with words up to a millimetre from the window.
func draw(p geometry.Piece, s style) drawing {
	w, h := p.Size()
	d := drawing{Surface: &record.Surface{}, piece: p, window: geometry.Bx(0, 0, w+2*border, h+2*border), wider: s.wider}
	d.missed = labelled.Draw(d.Surface, p, labelled.View{
		DX: border, DY: border + h,
		Window: d.window, Safe: d.window.Grow(-1),
		Wider: s.wider, Theme: render.DefaultTheme(), Round: s.round,
	})
	return d
}

// box gives the place a text may take.
func (d drawing) box(w record.Written) geometry.Box {
	b := typeset.Box(w.Text)
	if w.Turned {
		b.Min.Y, b.Max.Y = widened(b.Min.Y, b.Max.Y, w, d.wider)
	} else {
		b.Min.X, b.Max.X = widened(b.Min.X, b.Max.X, w, d.wider)
	}
	return b
}

// widened stretches a text's extent about where it is anchored.
func widened(lo, hi geometry.Length, w record.Written, by float64) (geometry.Length, geometry.Length) {
	more := (hi - lo) * geometry.Length(by-1)
	switch {
	case w.Align == render.Middle:
		return lo - more/2, hi + more/2
	case (w.Align == render.Start) != w.Turned: // turned text reads toward smaller Y
		return lo, hi + more
	}
	return lo - more, hi
}

// onDrawing takes a point of the piece to the drawing.
func (d drawing) onDrawing(p geometry.Point) geometry.Point {
	_, h := d.piece.Size()
	return geometry.Pt(p.X+border, border+h-p.Y)
}

// slack is what boxes may share by the rounding of floats.
const slack geometry.Length = 1e-6

// overlapping finds two texts that lie on each other.
func (d drawing) overlapping() error {
	for i, a := range d.Texts {
		for _, b := range d.Texts[:i] {
			if d.box(a).Grow(-slack).Overlaps(d.box(b).Grow(-slack)) {
				return fmt.Errorf("%q at %.1f lies on %q at %.1f", a.String, d.box(a), b.String, d.box(b))
			}
		}
	}
	return nil
}

// outside finds a text that leaves the window.
func (d drawing) outside() error {
	for _, a := range d.Texts {
		if !d.window.Grow(slack).Contains(d.box(a)) {
			return fmt.Errorf("%q at %.1f leaves %.1f", a.String, d.box(a), d.window)
		}
	}
	return nil
}

// struckThrough finds a text that a stroke of one of the layers runs through,
// counting the stroke's width; a leader may end at the box of its words.
func (d drawing) struckThrough(layers ...render.Layer) error {
	for _, s := range d.Strokes {
		if !slices.Contains(layers, s.Layer) {
			continue
		}
		points := s.Path.Flatten(0.01)
		if s.Path.Closed {
			points = append(points, points[0])
		}
		for _, a := range d.Texts {
			box := d.box(a).Grow(-slack)
			if s.Layer != render.Legend {
				box = box.Grow(s.Stroke.Width / 2)
			}
			for i := 1; i < len(points); i++ {
				if pagetest.Enters(points[i-1], points[i], box) {
					return fmt.Errorf("a line of %s from %.1f to %.1f runs through %q at %.1f", s.Layer, points[i-1], points[i], a.String, box)
				}
			}
		}
	}
	return nil
}

// says tells whether a text names a piece, alone or with its count.
func says(text, name string) bool {
	return text == name || strings.HasPrefix(text, name+" × ") || strings.HasPrefix(text, name+", cut ")
}
