package bed

import (
	"errors"
	"fmt"

	"forel/geometry"
	"forel/geometry/offset"
)

// shape is a piece with the way of the tool, as the piece is drawn, Y upward.
type shape struct {
	piece   geometry.Piece
	job     string
	stock   stockKey
	cut     geometry.Path
	inside  []geometry.Path
	creases []geometry.Path
	short   Length
	box     geometry.Box // of all that the tool follows
	spots   []tab
}

// shaped works out the way of the tool round a piece; where there is none, its outline
// stands for it.
func (s Setup) shaped(p geometry.Piece, job string) (shape, error) {
	out := shape{piece: p, job: job, cut: p.Outline, box: p.Outline.Bounds()}
	r, err := offset.Outward(p.Outline, s.Kerf/2)
	if err != nil {
		return out, s.narrow("a notch of its outline", err)
	}
	out.cut, out.short = r.Path, r.Short
	for _, c := range p.Slits {
		if !c.Closed { // a slit frees nothing: the knife goes along its line
			out.inside = append(out.inside, c)
			continue
		}
		r, err := offset.Inward(c, s.Kerf/2)
		if err != nil {
			return out, s.narrow("a hole", err)
		}
		out.inside = append(out.inside, r.Path)
		out.short = max(out.short, r.Short)
	}
	if s.Creased[p.Material] {
		out.creases = p.Folds
	}
	out.box = out.cut.Bounds()
	return out, nil
}

// narrow tells why a piece can't be cut with this kerf.
func (s Setup) narrow(what string, err error) error {
	var e *offset.NarrowError
	if !errors.As(err, &e) {
		return err
	}
	return fmt.Errorf("%s near %.1f, %.1f mm is too narrow for a kerf of %.4g mm", what, e.At.X.MM(), e.At.Y.MM(), s.Kerf.MM())
}

// placed returns a shape as it lies on the bed: the upper left corner of its box
// at a place, turned by a quarter counterclockwise or not.
func (sh shape) placed(at geometry.Point, turned bool) Part {
	put := sh.put(at, turned)
	all := func(paths []geometry.Path) []geometry.Path {
		out := make([]geometry.Path, len(paths))
		for i, p := range paths {
			out[i] = put(p)
		}
		return out
	}
	return Part{Piece: sh.piece, Job: sh.job, All: sh.piece.Count, Turned: turned, Short: sh.short,
		Outline: put(sh.piece.Outline), Cut: put(sh.cut), Rulings: all(sh.piece.Rulings()),
		Inside: all(sh.inside), creases: all(sh.creases), outline: all(gapped(sh.cut, sh.spots))}
}

// put returns what takes a path of the piece to the bed.
func (sh shape) put(at geometry.Point, turned bool) func(geometry.Path) geometry.Path {
	b := sh.box
	return func(p geometry.Path) geometry.Path {
		p = p.Move(geometry.Pt(-b.Min.X, -b.Min.Y))
		h := b.Height()
		if turned {
			p, h = p.QuarterTurn(h), b.Width()
		}
		return p.FlipY(h).Move(at)
	}
}
