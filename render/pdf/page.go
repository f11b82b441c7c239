package pdf

import (
	"math"

	"github.com/signintech/gopdf"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/typeset"
)

// Page is one page: a render.Surface. The library draws one page after the
// other; a page keeps what it is to draw, with every place as it is in the file,
// so that pages can be drawn on side by side.
type Page struct {
	width, height geometry.Length // of the upright sheet
	lies          bool
	black         bool
	across, down  geometry.Length // what a millimetre of the page is in the file
	still         geometry.Point  // which that leaves where it is
	clip          []gopdf.Point   // the corners of what may be printed, or none
	lines, words  []func(*writer) error
	faces         map[typeset.Face]bool // that words are set in
}

func newPage(width, height geometry.Length, setup *paper.Setup, black bool) *Page {
	p := &Page{width: width, height: height, lies: width > height, black: black, across: 1, down: 1, faces: map[typeset.Face]bool{}}
	if p.lies {
		p.width, p.height = height, width
	}
	if setup != nil {
		x, y, center := setup.InFile(p.lies)
		p.across, p.down, p.still = geometry.Length(x), geometry.Length(y), center
		p.clip = p.places(geometry.Rectangle(setup.Printable(p.lies)).Flatten(bend))
	}
	return p
}

// places returns where points of the page are in the file: in millimetres from
// the upright sheet's upper left corner, Y downward.
func (p *Page) places(points []geometry.Point) []gopdf.Point {
	all := make([]gopdf.Point, len(points))
	for i, at := range points {
		from := at.Sub(p.still)
		x, y := p.still.X+from.X*p.across, p.still.Y+from.Y*p.down
		if p.lies {
			x, y = y, p.height-x
		}
		all[i] = gopdf.Point{X: x.MM(), Y: y.MM()}
	}
	return all
}

// bend is how far the chords that stand for an arc may leave it.
const bend geometry.Length = 0.002

// Begin opens a layer; pages have none, so it does nothing.
func (p *Page) Begin(render.Layer) {}

// End closes a layer.
func (p *Page) End() {}

// Stroke draws along a path, its arcs as chords within 0.002 mm of themselves.
// Dashes run on from one line or arc of the path to the next.
func (p *Page) Stroke(path geometry.Path, s render.Stroke) {
	if len(path.Vertices) < 2 {
		return
	}
	if p.black {
		s.Width = max(s.Width, render.Finest)
		if s.Color != render.White {
			s.Color = render.Black
		}
	}
	// A line may run any way: its width and dashes get the mean of both scales.
	mean := geometry.Length(math.Sqrt(float64(p.across * p.down)))
	s.Width *= mean
	s.Phase = phase(s) * mean
	dash := make([]geometry.Length, len(s.Dash))
	for i, l := range s.Dash {
		dash[i] = l * mean
	}
	s.Dash = dash
	points := p.places(path.Flatten(bend))
	p.lines = append(p.lines, func(w *writer) error { return w.stroke(points, path.Closed, s) })
}

// Fill fills a closed path.
func (p *Page) Fill(path geometry.Path, c render.Color) {
	if len(path.Vertices) < 2 {
		return
	}
	if p.black {
		c = c.InBlack()
	}
	points := p.places(path.Flatten(bend))
	p.lines = append(p.lines, func(w *writer) error { return w.fill(points, c) })
}

// Text sets a line of text.
func (p *Page) Text(t render.Text) {
	if t.String == "" {
		return
	}
	if p.black && t.Color != render.White {
		t.Color = render.Black
	}
	var back geometry.Length
	if t.Align != render.Start {
		back = typeset.Width(t.String, t.Size, t.Bold)
		if t.Align == render.Middle {
			back /= 2
		}
	}
	angle, along := 0., p.across
	if t.Turned {
		angle, along = 90, p.down
		t.At.Y += back
	} else {
		t.At.X -= back
	}
	if p.lies {
		angle += 90
	}
	t.Size *= render.Points(along)
	at := p.places([]geometry.Point{t.At})[0]
	runs := typeset.Runs(t.String, t.Bold)
	for _, r := range runs {
		p.faces[r.Face] = true
	}
	p.words = append(p.words, func(w *writer) error { return w.text(at, angle, t, runs) })
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
