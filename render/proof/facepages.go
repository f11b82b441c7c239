package proof

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/typeset"
)

// Room round a face drawn flat.
const (
	sideRoom  Length = 10 // left and right, for numbers and what lies beyond
	nameRoom  Length = 5  // above and below, for what lies beyond
	leastWide Length = 12 // a face is not drawn narrower than this
	rowGap    Length = 3
)

// scales that faces are drawn at, 1 to each of these. One to one is left out:
// the figures are not to be cut from.
var scales = []float64{1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40}

// faceScale returns the scale at which every page of faces holds its own.
func (d *doc) faceScale(wide, tall Length) float64 {
	for _, n := range scales {
		fits := true
		for _, sp := range d.Proof.Spreads {
			var down Length
			for _, row := range sp.Rows {
				r := d.faceRow(row, wide, Length(1/n))
				down += r.tall() + rowGap
				for i, f := range r.faces {
					fits = fits && f.wide()+2*sideRoom <= r.cells[i]
				}
			}
			fits = fits && down <= tall
		}
		if fits {
			return n
		}
	}
	return scales[len(scales)-1]
}

// facePages draws every face flat, then the table of them.
func (d *doc) facePages() {
	room := d.Room(false)
	tall := d.legendTop(room) - 2 - d.measured(func() Length { return d.faceHead(room, d.Proof.Spreads[len(d.Proof.Spreads)-1], 1.25) })
	n := d.faceScale(room.Width(), tall)
	var box geometry.Box
	var y Length
	for i, sp := range d.Proof.Spreads {
		var rows []faceRow
		var down Length
		for _, r := range sp.Rows {
			row := d.faceRow(r, room.Width(), Length(1/n))
			rows, down = append(rows, row), down+row.tall()+rowGap
		}
		head := rowGap + typeset.LineHeight(render.HeadSize) + 2
		if i > 0 && y+head+down <= d.legendTop(box)-2 { // below the one before it
			if sp.Bookmark != "" {
				d.Bookmark(sp.Bookmark)
			}
			y = d.paragraph(box, y+rowGap, sp.Head, render.HeadSize, true) + 2
		} else {
			box = d.NewPage(false, sp.Bookmark)
			y = d.faceHead(box, sp, n)
			d.legend(box, box.Max.Y)
		}
		for _, row := range rows {
			d.drawRow(row, box.Min.X, y)
			y += row.tall() + rowGap
		}
	}
	d.table(geometry.Bx(box.Min.X, y, box.Max.X, d.legendTop(box)))
}

// legendTop returns where the legend of a page starts.
func (d *doc) legendTop(box geometry.Box) Length {
	return d.measured(func() Length { return d.legend(box, box.Max.Y) })
}

// faceHead sets the head of a page of faces.
func (d *doc) faceHead(box geometry.Box, sp plan.Spread, n float64) Length {
	layers := "A number says how many layers of " + d.Proof.Stuff + " lie there, one on another. "
	if d.Proof.Layers != "" {
		layers += d.Proof.Layers + " "
	}
	return d.heading(box, sp.Head, fmt.Sprintf("Scale 1 : %g, and narrow faces drawn wider where it says so: not at true size. ", n)+
		layers+"Areas too narrow to be seen have no number.")
}

// faceRow is faces beside each other, their upper edges in line.
type faceRow struct {
	faces    []flatFace
	names    [][]string
	captions [][]string
	cells    []Length // how wide the place of each is
	head     Length   // above the faces
}

func (d *doc) faceRow(cells []plan.Cell, wide, scale Length) faceRow {
	var row faceRow
	var most Length
	for _, c := range cells {
		of, ok := faceOf(d.faces, c.Face)
		if !ok {
			continue
		}
		f, cell := newFlatFace(of, scale), wide*c.Part
		caption := wrapped(d.captionOf(f), noteSize, false, cell-5)
		head := wrapped(wording.Capital(string(c.Face)), render.BodySize, true, cell-3)
		most = max(most, Length(len(head))*typeset.LineHeight(render.BodySize)+Length(len(caption))*typeset.LineHeight(noteSize))
		row.faces, row.names = append(row.faces, f), append(row.names, head)
		row.captions, row.cells = append(row.captions, caption), append(row.cells, cell)
	}
	row.head = most + 1 + nameRoom
	return row
}

// tall returns the height a row takes.
func (r faceRow) tall() Length {
	var most Length
	for _, f := range r.faces {
		most = max(most, f.tall())
	}
	return r.head + most + nameRoom
}

// drawRow draws a row from x to the right and from y down.
func (d *doc) drawRow(row faceRow, x, y Length) {
	for i, face := range row.faces {
		left, down := x, y
		x += row.cells[i]
		for _, l := range row.names[i] {
			down += typeset.LineHeight(render.BodySize)
			d.Text(render.Text{At: geometry.Pt(left, down), String: l, Size: render.BodySize, Bold: true, Color: render.Black})
		}
		for _, l := range row.captions[i] {
			down += typeset.LineHeight(noteSize)
			d.Text(render.Text{At: geometry.Pt(left, down), String: l, Size: noteSize, Color: render.Black})
		}
		face.at = geometry.Bx(left+sideRoom, y+row.head, left+sideRoom+face.wide(), y+row.head+face.tall())
		d.drawFace(face)
	}
}

// flatFace is a face to be drawn flat.
type flatFace struct {
	face
	fx, fy Length       // millimetres of the page to one of the face, across and along
	more   [2]int       // how many times as large as at scale
	at     geometry.Box // on the page
}

func newFlatFace(of face, f Length) flatFace {
	face := flatFace{face: of}
	widen := func(l Length) int {
		n := 1
		for l*f*Length(n) < leastWide && n < 99 {
			n++
		}
		return n
	}
	face.more = [2]int{widen(of.Extent.Width()), widen(of.Extent.Height())}
	face.fx, face.fy = f*Length(face.more[0]), f*Length(face.more[1])
	return face
}

func (f flatFace) wide() Length { return f.Extent.Width() * f.fx }
func (f flatFace) tall() Length { return f.Extent.Height() * f.fy }

// onPage returns where a point of the face is drawn.
func (f flatFace) onPage(q geometry.Point) geometry.Point {
	e := f.Extent
	x, y := (q.X-e.Min.X)*f.fx, (e.Max.Y-q.Y)*f.fy
	if f.place.flipX {
		x = (e.Max.X - q.X) * f.fx
	}
	if f.place.flipY {
		y = (q.Y - e.Min.Y) * f.fy
	}
	return f.at.Min.Add(geometry.Pt(x, y))
}

// captionOf says what lies on a face.
func (d *doc) captionOf(f flatFace) string {
	var s []string
	size := d.Round.Number(f.Extent.Width()) + " × " + d.Round.Pretty(f.Extent.Height())
	names := strings.Join(f.pieces(), ", ")
	switch {
	case !f.Inside:
		s = append(s, fmt.Sprintf("%s, %g %% covered", size, percent(f.covered)))
		if names != "" {
			s = append(s, d.Proof.From+": "+names)
		}
	case len(f.layers) == 0:
		s = append(s, size, f.Ground.Name+" only")
	default:
		s = append(s, size, f.Ground.Name+", then "+names, "thickest pile "+geometry.Fine(f.Corners, d.Round.Unit))
	}
	if f.more[0] > 1 {
		s = append(s, fmt.Sprintf("width drawn %d times as large as at scale", f.more[0]))
	}
	if f.more[1] > 1 {
		s = append(s, fmt.Sprintf("height drawn %d times as large as at scale", f.more[1]))
	}
	return strings.Join(s, "; ")
}
