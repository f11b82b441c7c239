package pdf

import (
	"math"

	"github.com/signintech/gopdf"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// sheet is a page as it is in the file: a render.Surface that writes each line as
// it is drawn. Words, which lie above all lines, are set when all of these are.
type sheet struct {
	*writer
	width, height geometry.Length // of the upright sheet
	lies          bool
	black         bool
	across, down  geometry.Length // what a millimetre of the page is in the file
	still         geometry.Point  // which that leaves where it is
	clip          []gopdf.Point   // the corners of what may be printed, or none
	err           error           // the first there was
}

func (w *writer) sheet(p *Page, black bool) *sheet {
	s := &sheet{writer: w, width: p.Width, height: p.Height, lies: p.Width > p.Height, black: black, across: 1, down: 1}
	if s.lies {
		s.width, s.height = p.Height, p.Width
	}
	if p.Setup != nil {
		x, y, center := p.Setup.InFile(s.lies)
		s.across, s.down, s.still = geometry.Length(x), geometry.Length(y), center
		s.clip = s.places(geometry.Rectangle(p.Setup.Printable(s.lies)).Flatten(bend))
	}
	return s
}

// did keeps the first error.
func (s *sheet) did(err error) {
	if s.err == nil {
		s.err = err
	}
}

// places returns where points of the page are in the file: in millimetres from
// the upright sheet's upper left corner, Y downward.
func (s *sheet) places(points []geometry.Point) []gopdf.Point {
	all := make([]gopdf.Point, len(points))
	for i, at := range points {
		from := at.Sub(s.still)
		x, y := s.still.X+from.X*s.across, s.still.Y+from.Y*s.down
		if s.lies {
			x, y = y, s.height-x
		}
		all[i] = gopdf.Point{X: x.MM(), Y: y.MM()}
	}
	return all
}

// bend is how far the chords that stand for an arc may leave it.
const bend geometry.Length = 0.002

// Begin opens a layer; pages have none, so it does nothing.
func (s *sheet) Begin(render.Layer) {}

// End closes a layer.
func (s *sheet) End() {}

// Stroke draws along a path, its arcs as chords within 0.002 mm of themselves.
// Dashes run on from one line or arc of the path to the next.
func (s *sheet) Stroke(path geometry.Path, line render.Stroke) {
	if len(path.Vertices) < 2 {
		return
	}
	if s.black {
		line.Width = max(line.Width, render.Finest)
		if line.Color != render.White {
			line.Color = render.Black
		}
	}
	// A line may run any way: its width and dashes get the mean of both scales.
	mean := geometry.Length(math.Sqrt(float64(s.across * s.down)))
	line.Width *= mean
	line.Phase = phase(line) * mean
	dash := make([]geometry.Length, len(line.Dash))
	for i, l := range line.Dash {
		dash[i] = l * mean
	}
	line.Dash = dash
	s.did(s.stroke(s.places(path.Flatten(bend)), path.Closed, line))
}

// Fill fills a closed path.
func (s *sheet) Fill(path geometry.Path, c render.Color) {
	if len(path.Vertices) < 2 {
		return
	}
	if s.black {
		c = c.InBlack()
	}
	s.fill(s.places(path.Flatten(bend)), c)
}

// Text does nothing: see set.
func (s *sheet) Text(render.Text) {}

// set sets a line of text.
func (s *sheet) set(t render.Text) {
	if t.String == "" {
		return
	}
	if s.black && t.Color != render.White {
		t.Color = render.Black
	}
	var back geometry.Length
	if t.Align != render.Start {
		back = typeset.Width(t.String, t.Size, t.Bold)
		if t.Align == render.Middle {
			back /= 2
		}
	}
	angle, along := 0., s.across
	if t.Turned {
		angle, along = 90, s.down
		t.At.Y += back
	} else {
		t.At.X -= back
	}
	if s.lies {
		angle += 90
	}
	t.Size *= render.Points(along)
	s.did(s.text(s.places([]geometry.Point{t.At})[0], angle, t, typeset.Runs(t.String, t.Bold)))
}

// phase returns how far into its dashes a line starts, from none to one round of
// them: PDF knows no negative phase.
func phase(s render.Stroke) geometry.Length {
	var period geometry.Length
	for _, l := range s.Dash {
		period += l
	}
	if period <= 0 {
		return 0
	}
	left := s.Phase - geometry.Length(int(s.Phase/period))*period
	if left < 0 {
		left += period
	}
	return left
}
