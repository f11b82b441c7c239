package slipcase_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// vec is a direction in the finished case, which stands on its tail with the
// mouth toward the viewer: X to the viewer's right, Y to the head, Z out of the
// mouth.
type vec [3]int

var (
	rightward = vec{1, 0, 0}
	headward  = vec{0, 1, 0}
	outOf     = vec{0, 0, 1}
)

func (a vec) neg() vec { return vec{-a[0], -a[1], -a[2]} }

func (a vec) cross(b vec) vec {
	return vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// directions are the words of the trade for the six directions of a case.
var directions = map[string]vec{
	"right": rightward, "left": rightward.neg(),
	"head": headward, "tail": headward.neg(),
	"mouth": outOf, "spine": outOf.neg(),
}

// told gives the direction that a name tells, such as "right edge"; ok is
// false where it tells none or more than one.
func told(name string) (v vec, ok bool) {
	n := 0
	for word, d := range directions {
		for _, w := range strings.Fields(name) {
			if w == word {
				v, n = d, n+1
			}
		}
	}
	return v, n == 1
}

// outward is where each pattern lies in the case, as drawn: the direction that
// the outer face of its board looks. A side is drawn as the right one.
var outward = map[string]vec{
	"side": rightward, "side lining": rightward, "side paper": rightward,
	"spine wall": outOf.neg(), "spine lining": outOf.neg(), "spine cloth": outOf.neg(),
	"head wall": headward, "head lining": headward, "head cloth": headward,
	"tail wall": headward.neg(), "tail lining": headward.neg(), "tail cloth": headward.neg(),
}

// towardViewer gives the direction in the case that looks at whoever has the
// pattern before them. A board shows its lined face, which looks into the case;
// a covering its back, which looks at the board, into the case; a lining its
// back, which looks at the board too, out of the case.
func towardViewer(p geometry.Piece) (vec, error) {
	out := outward[p.Name]
	switch {
	case p.Material == geometry.Board && strings.Contains(p.FaceUp, "inside of the case"):
		return out.neg(), nil
	case (p.Material == geometry.Cloth || p.Material == geometry.Paper) && strings.HasPrefix(p.FaceUp, "back up"):
		return out.neg(), nil
	case p.Material == geometry.Lining && strings.HasPrefix(p.FaceUp, "back up"):
		return out, nil
	}
	return vec{}, fmt.Errorf("%s: which face is up? %q", p.Name, p.FaceUp)
}

// axes are the directions in the case of a pattern's X and Y.
type axes struct{ x, y vec }

// axesOf works out how a pattern lies from the face that is up and from one
// edge: the spine edge of sides and walls, the head edge of spine pieces, the
// mouth edge of head and tail cloth. All other names must then follow.
func axesOf(p geometry.Piece) (axes, error) {
	up, err := towardViewer(p)
	if err != nil {
		return axes{}, err
	}
	anchor := outOf.neg()
	switch {
	case strings.HasPrefix(p.Name, "spine"):
		anchor = headward
	case p.Name == "head cloth" || p.Name == "tail cloth":
		anchor = outOf
	}
	for _, e := range p.Edges {
		d, ok := told(e.Name)
		if !ok || d != anchor {
			continue
		}
		// The piece lies on the left of an edge, so its outside is on the right.
		switch {
		case e.To.Y > e.From.Y: // right edge of the template
			return axes{d, up.cross(d)}, nil
		case e.To.Y < e.From.Y: // left
			return axes{d.neg(), up.cross(d.neg())}, nil
		case e.To.X > e.From.X: // bottom
			return axes{d.neg().cross(up), d.neg()}, nil
		default: // top
			return axes{d.cross(up), d}, nil
		}
	}
	return axes{}, fmt.Errorf("%s: no edge tells how it lies", p.Name)
}

// inCase gives the direction in the case of a direction in the pattern.
func (a axes) inCase(d geometry.Point) [3]float64 {
	var v [3]float64
	for n := range v {
		v[n] = d.X.MM()*float64(a.x[n]) + d.Y.MM()*float64(a.y[n])
	}
	return v
}

// along gives how far a direction in the pattern goes in one of the case.
func (a axes) along(d geometry.Point, v vec) float64 {
	c := a.inCase(d)
	return c[0]*float64(v[0]) + c[1]*float64(v[1]) + c[2]*float64(v[2])
}

// checkEdgeNames: every edge with a name looks where it says, and meets what
// lies there; the four edges of a board or a lining have four names.
func checkEdgeNames(_ slipcase.Job, ps pieces) error {
	for name, p := range ps {
		a, err := axesOf(p)
		if err != nil {
			return err
		}
		seen := map[vec]bool{}
		for _, e := range p.Edges {
			if e.Name == "" {
				continue
			}
			along := e.To.Sub(e.From)
			looks := geometry.Pt(along.Y, -along.X)
			d, ok := told(e.Name)
			if !ok || a.along(looks, d) <= 0 {
				return fmt.Errorf("%s: %q looks to %v", name, e.Name, a.inCase(looks))
			}
			if meets, ok := told(e.Meets); ok && meets != d {
				return fmt.Errorf("%s: %q meets %q", name, e.Name, e.Meets)
			}
			seen[d] = true
		}
		if stiff := p.Material == geometry.Board || p.Material == geometry.Lining; stiff && len(seen) != 4 {
			return fmt.Errorf("%s: edges %v", name, p.Edges)
		}
	}
	return nil
}

// checkRegions: every region of a covering lies to that side of the middle
// that its face, and its name where it tells one, says.
func checkRegions(_ slipcase.Job, ps pieces) error {
	for name, p := range ps {
		a, err := axesOf(p)
		if err != nil {
			return err
		}
		middle := p.Outline.Bounds().Center()
		for _, r := range p.Regions {
			off := r.Room.Center().Sub(middle)
			face := string(r.Face)
			for _, word := range []string{"left", "right", "head", "tail"} {
				d := directions[word]
				if !strings.Contains(face, word) || d == outward[name] {
					continue
				}
				if a.along(off, d) <= 0 {
					return fmt.Errorf("%s: %q for the %s is at %v", name, r.Name, face, a.inCase(off))
				}
			}
			if strings.HasPrefix(face, "inside") && p.Material != geometry.Board && p.Material != geometry.Lining && a.along(off, outOf) <= 0 {
				return fmt.Errorf("%s: %q turns in at %v", name, r.Name, a.inCase(off))
			}
			if d, ok := told(r.Name); ok && d != outward[name] && a.along(off, d) <= 0 && strings.HasSuffix(r.Name, "margin") {
				return fmt.Errorf("%s: %q is at %v", name, r.Name, a.inCase(off))
			}
		}
	}
	return nil
}

func orientedCase(t *testing.T, lining slipcase.Length) (slipcase.Job, pieces) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: readings(220), Width: readings(150), Thickness: readings(30)}}
	j.Lining.Thickness = lining
	c, err := slipcase.Make(j)
	require.NoError(t, err)
	return j, piecesOf(c)
}

func TestNamesFollowFromTheCase(t *testing.T) {
	for _, lining := range []slipcase.Length{0, 0.15} {
		j, ps := orientedCase(t, lining)
		assert.NoError(t, checkEdgeNames(j, ps))
		assert.NoError(t, checkRegions(j, ps))
	}
}

// By hand: whoever looks at the back of the head cloth with its mouth end up
// looks up from inside the case, and has the right side at the right; under
// the tail cloth they look down, and have it at the left.
func TestHeadAndTailClothDiffer(t *testing.T) {
	_, ps := orientedCase(t, 0.15)
	for name, want := range map[string]string{"head cloth": "left", "tail cloth": "right"} {
		a, err := axesOf(ps[name])
		require.NoError(t, err)
		assert.Equal(t, outOf, a.y)
		assert.Equal(t, directions[want], a.x.neg())
		assert.Contains(t, ps[name].Hand, "held with the mouth up, its left is at the "+want+" side of the case")
	}
}

// A pattern drawn for the right side serves the left one turned about the
// line from spine to mouth, head for tail: that puts its outer face outward.
func TestTurnedEndForEndServesTheLeft(t *testing.T) {
	_, ps := orientedCase(t, 0.15)
	turn := func(v vec) vec { return vec{-v[0], -v[1], v[2]} }
	for _, name := range []string{"side", "side lining", "side paper"} {
		a, err := axesOf(ps[name])
		require.NoError(t, err)
		assert.Equal(t, outward[name].neg(), turn(outward[name]), "outer face")
		assert.Equal(t, headward, a.y, "%s is drawn with its head up", name)
		assert.Equal(t, headward.neg(), turn(a.y))
		assert.Equal(t, "both sides are alike", ps[name].Hand)
	}
}

// The edge that each piece gives as nearest the spine is the one named so,
// where a piece has one.
func TestSpineEdge(t *testing.T) {
	_, ps := orientedCase(t, 0.15)
	for name, p := range ps {
		if strings.HasPrefix(name, "spine") {
			continue // lies on the spine; all of its edges are as near
		}
		d, ok := told(p.Edges[p.Spine].Name)
		assert.True(t, ok && d == outOf.neg(), "%s: %q", name, p.Edges[p.Spine].Name)
	}
}
