package proof

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/record"
)

// Room round a face drawn flat.
const (
	sideRoom  Length = 10 // left and right, for numbers and what lies beyond
	nameRoom  Length = 5  // above and below, for what lies beyond
	leastWide Length = 12 // a face is not drawn narrower than this
	rowGap    Length = 3
	headsTall Length = 20 // the head of a spread, what is said of all of them
)

// scales that faces are drawn at, 1 to each of these. One to one is left out:
// the figures are not to be cut from.
var scales = []float64{1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40}

// faceScale returns the scale at which a page holds any spread.
func (d *doc) faceScale() float64 {
	var room geometry.Box
	d.Aside(func() { room = d.NewPage(false, "") })
	fits := func(n float64) bool {
		for _, sp := range d.Proof.Spreads {
			down := headsTall
			for _, cells := range d.rows(sp) {
				if d.narrow() {
					down = headsTall // it goes on on the next page
				}
				r := d.faceRow(cells, room.Width(), Length(1/n))
				if down += r.tall + rowGap; down > room.Height() {
					return false
				}
				if slices.ContainsFunc(r.faces, func(f flatFace) bool { return f.wide()+2*sideRoom > f.cell }) {
					return false
				}
			}
		}
		return true
	}
	if i := slices.IndexFunc(scales, fits); i >= 0 {
		return scales[i]
	}
	return scales[len(scales)-1]
}

// faceRows draws every face flat. It returns the faces in each block too.
func (d *doc) faceRows() (blocks []document.Block, shown [][]geometry.Face) {
	if len(d.faces) == 0 {
		return nil, nil
	}
	n := d.faceScale()
	for i, sp := range d.Proof.Spreads {
		head := d.Heading(sp.Head)
		head.Bookmark, head.Fresh = sp.Bookmark, i == 0
		blocks, shown = append(blocks, head), append(shown, nil)
		if i == 0 {
			about := d.Paragraph(fmt.Sprintf("Scale 1 : %g for all faces, and narrow ones drawn wider where it says so: not at true size. ", n)+"A number says how many layers of "+d.Proof.Stuff+
				" lie there, one on another. "+d.Proof.Layers+" Areas too narrow to be seen have no number.", render.BodySize, false)
			about.Stays = true
			blocks, shown = append(blocks, about), append(shown, nil)
		}
		rows := d.rows(sp)
		blocks[len(blocks)-1].Stays = true
		for _, cells := range rows {
			var faces []geometry.Face
			for _, c := range cells {
				faces = append(faces, c.Face)
			}
			shown = append(shown, faces)
			blocks = append(blocks, document.Block{Above: rowGap, Draw: func(box geometry.Box) Length {
				row := d.faceRow(cells, box.Width(), Length(1/n))
				d.drawRow(row, box.Min)
				return box.Min.Y + row.tall
			}})
		}
	}
	return blocks, shown
}

// rows returns the faces of a spread beside each other, on a narrow page no more than two.
func (d *doc) rows(sp plan.Spread) [][]plan.Cell {
	if !d.narrow() {
		return sp.Rows
	}
	var out [][]plan.Cell
	for _, row := range sp.Rows {
		for two := range slices.Chunk(row, 2) {
			var cells []plan.Cell
			for _, c := range two {
				cells = append(cells, plan.Cell{Face: c.Face, Part: 1 / Length(len(two))})
			}
			out = append(out, cells)
		}
	}
	return out
}

// table tells of all faces.
func (d *doc) table() []document.Block {
	if len(d.faces) == 0 {
		return nil
	}
	t := faceTable(d.faces, d.Round)
	t.Size, t.Whole = noteSize, !d.narrow()
	blocks := d.Table("Face by face", t)
	blocks[0].Bookmark = "Face by face"
	for _, n := range notes(d.Proof, d.faces, d.Round) {
		blocks[len(blocks)-1].Stays = true
		blocks = append(blocks, d.Paragraph(wording.Sentence(n), noteSize, false).After(1))
	}
	return blocks
}

// faceRow is faces beside each other, their upper edges in line.
type faceRow struct {
	faces      []flatFace
	head, tall Length // above the faces, and of all
}

func (d *doc) faceRow(cells []plan.Cell, wide, scale Length) (row faceRow) {
	for _, c := range cells {
		of, ok := faceOf(d.faces, c.Face)
		if !ok {
			continue
		}
		f := newFlatFace(of, scale)
		f.cell = wide * c.Part
		row.faces = append(row.faces, f)
		row.head = max(row.head, d.faceHead(&record.Surface{}, f, geometry.Point{})+nameRoom)
		row.tall = max(row.tall, f.tall())
	}
	row.tall += row.head + nameRoom
	return row
}

// faceHead sets what a face is and what lies on it, and returns where that ends.
func (d *doc) faceHead(on render.Surface, f flatFace, at geometry.Point) Length {
	box := geometry.Bx(at.X, at.Y, at.X+d.Writable(f.cell-2), at.Y)
	y := document.Paragraph(on, box, box.Min.Y, wording.Capital(string(f.Face)), render.BodySize, true)
	return document.Paragraph(on, box, y-0.7, d.captionOf(f), noteSize, false)
}

// drawRow draws a row from a place to the right and down.
func (d *doc) drawRow(row faceRow, at geometry.Point) {
	for _, f := range row.faces {
		d.faceHead(d, f, at)
		f.at = geometry.Bx(at.X+sideRoom, at.Y+row.head, at.X+sideRoom+f.wide(), at.Y+row.head+f.tall())
		d.drawFace(f)
		at.X += f.cell
	}
}

// flatFace is a face to be drawn flat.
type flatFace struct {
	face
	fx, fy Length       // millimetres of the page to one of the face, across and along
	cell   Length       // how wide its place is
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
