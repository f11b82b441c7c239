package labelled_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/render"
	"forel/render/typeset"
)

// forPieces holds every piece of a random book's case, drawn whole, to a rule.
func forPieces(book func(*rapid.T) slipcase.Case, rule func(drawing) error) func(*testing.T) {
	return rapid.MakeCheck(func(t *rapid.T) {
		style := styles(t)
		for _, p := range book(t).Pieces {
			if err := rule(draw(p, style)); err != nil {
				w, h := p.Size()
				t.Errorf("%s, %.2f x %.2f mm: %v", p.Name, w.MM(), h.MM(), err)
			}
		}
	})
}

// Words can be read, and are in no machine's way.
func TestWordsStandClear(t *testing.T) {
	forPieces(anyBook, func(d drawing) error {
		return errors.Join(
			d.overlapping(),
			d.outside(),
			d.struckThrough(render.Cutting, render.Creasing, render.Positions),
			onFills(d),
			named(d),
			inLegend(d),
		)
	})(t)
}

// The line from a label to what it names, and the grain arrow, run through no
// words.
func TestLeadersRunThroughNoWords(t *testing.T) {
	forPieces(anyBook, func(d drawing) error { return d.struckThrough(render.Legend) })(t)
}

// onFills finds a text on a filled shape.
func onFills(d drawing) error {
	for _, f := range d.Fills {
		for _, w := range d.Texts {
			if f.Path.Bounds().Grow(-slack).Overlaps(d.box(w)) {
				return fmt.Errorf("%q lies on a black shape", w.String)
			}
		}
	}
	return nil
}

func named(d drawing) error {
	for _, w := range d.Texts {
		if w.Bold && says(w.String, d.piece.Name) {
			return nil
		}
	}
	return errors.New("the piece is not named")
}

func inLegend(d drawing) error {
	for _, w := range d.Texts {
		if w.Layer != render.Legend {
			return fmt.Errorf("%q is in %q", w.String, w.Layer)
		}
	}
	return nil
}

func TestOrdinaryBooksMissNoLabel(t *testing.T) {
	forPieces(ordinaryBook, func(d drawing) error {
		if len(d.missed) > 0 {
			return fmt.Errorf("no room for %q", d.missed)
		}
		return nil
	})(t)
}

// Whoever cuts a piece that could be mistaken for another sees its spine edge,
// marked in bold, on that side of the piece.
func TestSpineMarks(t *testing.T) {
	forPieces(func(t *rapid.T) slipcase.Case {
		side := rapid.Float64Range(60, 400).Draw(t, "height and width")
		return caseOf(t, span{side, side}, span{side, side + 4}, span{1, 100})
	}, spineMarked)(t)
}

func spineMarked(d drawing) error {
	if len(d.piece.Confused) == 0 || d.piece.Spine < 0 {
		return nil
	}
	word := false
	for _, w := range d.Texts {
		word = word || w.String == "SPINE" && w.Bold
	}
	if !word {
		return errors.New("no word at the spine edge")
	}
	for _, f := range d.Fills {
		if len(f.Path.Vertices) == 4 { // no head of an arrow
			return d.atEdge(d.piece.Edges[d.piece.Spine], "the bar", f.Path.Bounds())
		}
	}
	return errors.New("no bar at the spine edge")
}

// atEdge tells what is wrong with a mark that is nearer the edge across the
// piece than its own.
func (d drawing) atEdge(e geometry.Edge, what string, mark geometry.Box) error {
	c := mark.Center()
	own, across := d.onDrawing(e.From), d.window.Center().Mul(2).Sub(d.onDrawing(e.From))
	near, far := (c.Y - own.Y).Abs(), (c.Y - across.Y).Abs()
	if d.onDrawing(e.To).X.Near(own.X) { // upright
		near, far = (c.X - own.X).Abs(), (c.X - across.X).Abs()
	}
	if near > far {
		return fmt.Errorf("%q stands at the edge across from %q", what, e.Name)
	}
	return nil
}

// The name of an edge stands at that edge, and what it meets with it.
func TestEdgeNames(t *testing.T) {
	forPieces(ordinaryBook, func(d drawing) error {
		for _, e := range d.piece.Edges {
			found := e.Name == ""
			for _, w := range d.Texts {
				if w.String != e.Name && !strings.HasPrefix(w.String, e.Name+": ") {
					continue
				}
				found = true
				if err := d.atEdge(e, w.String, typeset.Box(w.Text)); err != nil {
					return err
				}
			}
			if !found {
				return fmt.Errorf("no %q", e.Name)
			}
		}
		return nil
	})(t)
}

// The grain arrow runs the way the grain does.
func TestGrainArrow(t *testing.T) {
	forPieces(ordinaryBook, func(d drawing) error {
		for _, w := range d.Texts {
			if w.String != "grain" {
				continue
			}
			arrow := nearestLine(d, typeset.Box(w.Text).Center())
			upright := arrow[0].X.Near(arrow[1].X)
			if upright != (d.piece.Grain == geometry.GrainHeight) {
				return fmt.Errorf("the arrow from %v to %v does not run along the %s", arrow[0], arrow[1], d.piece.Grain)
			}
			return nil
		}
		return errors.New("no grain arrow")
	})(t)
}

// nearestLine gives the ends of the line to read whose middle is nearest.
func nearestLine(d drawing, to geometry.Point) [2]geometry.Point {
	var best [2]geometry.Point
	away := geometry.Length(1e9)
	for _, s := range d.Strokes {
		if s.Layer != render.Legend {
			continue
		}
		a, b := s.Path.Vertices[0].Point, s.Path.Vertices[1].Point
		if m := a.Add(b).Mul(0.5); m.Distance(to) < away {
			best, away = [2]geometry.Point{a, b}, m.Distance(to)
		}
	}
	return best
}
