package box

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
)

func TestUsualBoxesAreSound(t *testing.T) {
	for _, walls := range []string{Around, On} {
		j := usualJob()
		j.Walls = walls
		r := prove(j.pieces(), j.conditions())
		assert.Empty(t, r.Faults, walls)
		assert.NotEmpty(t, r.Faces)
	}
}

// kindsOf lists the kinds of fault a proof found.
func kindsOf(r report) []foldup.Kind {
	var out []foldup.Kind
	for _, f := range r.Faults {
		if !slices.Contains(out, f.Kind) {
			out = append(out, f.Kind)
		}
	}
	return out
}

// piece returns the piece with a name, to be changed.
func piece(t *testing.T, ps []geometry.Piece, name string) *geometry.Piece {
	t.Helper()
	for i := range ps {
		if ps[i].Name == name {
			return &ps[i]
		}
	}
	t.Fatal("no " + name)
	return nil
}

// resized makes a rectangle larger.
func resized(name string, wide, high Length) func(*testing.T, []geometry.Piece, *conditions) {
	return func(t *testing.T, ps []geometry.Piece, _ *conditions) {
		p := piece(t, ps, name)
		w, h := p.Size()
		p.Outline = geometry.Rectangle(geometry.Bx(0, 0, w+wide, h+high))
	}
}

// designed takes the pieces of another job, which a maker would have reckoned with a rule
// left out; what is measured stays.
func designed(change func(*Job)) func(*testing.T, []geometry.Piece, *conditions) {
	return func(_ *testing.T, ps []geometry.Piece, _ *conditions) {
		j := usualJob()
		change(&j)
		copy(ps, j.pieces())
	}
}

// redrawn draws the strip of the small tray with something of it changed.
func redrawn(change func(*strip)) func(*testing.T, []geometry.Piece, *conditions) {
	return func(t *testing.T, ps []geometry.Piece, _ *conditions) {
		j := usualJob()
		s := j.stripOf(j.small())
		change(&s)
		*piece(t, ps, ofTray(smallName, clothOf)) = s.piece()
	}
}

// moved moves the corners of the small tray's strip.
func moved(change func(s strip, q geometry.Point) geometry.Point) func(*testing.T, []geometry.Piece, *conditions) {
	return func(t *testing.T, ps []geometry.Piece, _ *conditions) {
		j := usualJob()
		s := j.stripOf(j.small())
		p := piece(t, ps, ofTray(smallName, clothOf))
		for i, v := range p.Outline.Vertices {
			p.Outline.Vertices[i].Point = change(s, v.Point)
		}
	}
}

// Each rule of the design, left out, is found.
func TestSpoiltBoxes(t *testing.T) {
	for name, c := range map[string]struct {
		want  foldup.Kind
		says  string // of one fault
		spoil func(*testing.T, []geometry.Piece, *conditions)
	}{
		"no lap in the corners": {foldup.Bare, "inside, fore-edge wall", redrawn(func(s *strip) { s.o, s.c = 0.001, 0 })},
		"cuts to the corners":   {foldup.Bare, "corner", redrawn(func(s *strip) { s.a = 0.01 })},
		"no slits":              {foldup.Overhang, "end", redrawnPiece(func(p *geometry.Piece) { p.Slits = nil })},
		"end flaps too short": {foldup.Bare, "edge of the base", func(t *testing.T, ps []geometry.Piece, _ *conditions) {
			j := usualJob()
			s := j.stripOf(j.large())
			s.v = 4
			*piece(t, ps, ofTray(largeName, clothOf)) = s.piece()
		}},
		"cloth too short on the floor":     {foldup.Bare, "floor", redrawn(func(s *strip) { s.n = 0.3 })},
		"end flaps turned with the walls":  {foldup.Collision, "same time", redrawnPiece(func(p *geometry.Piece) { turnAll(p, 2) })},
		"fore-edge flap as long as inside": {foldup.Collision, "turn-in ends", redrawn(func(s *strip) { s.k = 0 })},
		"no mitres on the floor": {foldup.Collision, "lie on each other", moved(func(s strip, q geometry.Point) geometry.Point {
			if end := s.at(0, s.h+s.t+s.d+s.n); q.Y.Near(end.Y) {
				for _, p := range []Length{s.A + s.t + s.k, s.A - s.t} {
					for _, want := range []geometry.Point{s.at(p, s.h+s.t+s.d), s.mirror(s.at(p, s.h+s.t+s.d))} {
						if (q.X - want.X).Abs().Near(s.n) {
							q.X = want.X
						}
					}
				}
			}
			return q
		})},
		"no mitres under the base": {foldup.Collision, "lie on each other", moved(func(s strip, q geometry.Point) geometry.Point {
			for _, p := range []Length{s.A + s.u, s.A - s.u} {
				at := s.at(p, -s.u)
				foot := s.at(s.A+0.9, -s.u)
				if p < s.A {
					foot = s.at(s.A-0.9, -s.u)
				}
				if q.Near(at) {
					return foot
				}
				if q.Near(s.mirror(at)) {
					return s.mirror(foot)
				}
			}
			return q
		})},
		"cloth past the rim's outside": {foldup.Overhang, "", redrawn(func(s *strip) { s.t += 0.5 })},

		"a base 0.5 wide":          {foldup.Misfit, "meet", resized(ofTray(smallName, baseOf), 0.5, 0)},
		"a base 0.5 long":          {foldup.Misfit, "meet", resized(ofTray(largeName, baseOf), 0, 0.5)},
		"a side wall 0.5 short":    {foldup.Misfit, "meet", resized(ofTray(largeName, sideWallOf), -0.5, 0)},
		"a fore-edge wall 0.5 low": {foldup.Misfit, "meet", resized(ofTray(smallName, foreWallOf), 0, -0.5)},
		"one side wall": {foldup.Misfit, "needed", func(t *testing.T, ps []geometry.Piece, _ *conditions) {
			piece(t, ps, ofTray(smallName, sideWallOf)).Count = 1
		}},
		"case boards 0.5 high":         {foldup.Misfit, "", resized(caseBoardName, 0, 0.5)},
		"a spine 0.5 wide":             {foldup.Misfit, "spine", resized(spineName, 0.5, 0)},
		"a spine 0.5 narrow":           {foldup.Tight, "spine", resized(spineName, -0.5, 0)},
		"a lining against the walls":   {foldup.Collision, "", resized(smallLining, 1, 0)},
		"a lining 10 short":            {foldup.Bare, "floor", resized(largeLining, -30, 0)},
		"a hinge 12 too low":           {foldup.Bare, "hinge", resizedHinge(-12)},
		"a hinge as high as the spine": {foldup.Collision, "", resizedHinge(20)},
		"a hinge straight across":      {foldup.Overhang, "lands on no face", func(t *testing.T, ps []geometry.Piece, _ *conditions) { piece(t, ps, hingeName).Creases = nil }},
		"the hinge past the floor": {foldup.Collision, "", func(t *testing.T, ps []geometry.Piece, _ *conditions) {
			j := usualJob()
			j.Hinge = 40
			wide := j.hingePiece()
			for i := range wide.Regions {
				wide.Regions[i].Room.Max.X++
			}
			p := piece(t, ps, hingeName)
			*p = wide
			b := p.Outline.Bounds()
			p.Outline = geometry.Rectangle(geometry.Bx(0, 0, b.Width()+150, b.Height()))
		}},
		"a turn-in of the case too low": {foldup.Bare, "case: inside", designed(func(j *Job) { j.TurnIn = 8 })},
		"a mitre to the board's corner": {foldup.Bare, "corner", func(t *testing.T, ps []geometry.Piece, _ *conditions) {
			p := piece(t, ps, caseClothName)
			e := usualJob().turnIn()
			x, pt := p.Outline.Bounds().Max, geometry.Pt
			p.Outline = geometry.Polygon(pt(e, 0), pt(x.X-e, 0), pt(x.X-e, e), pt(x.X, e), pt(x.X, x.Y-e), pt(x.X-e, x.Y-e), pt(x.X-e, x.Y), pt(e, x.Y), pt(e, x.Y-e), pt(0, x.Y-e), pt(0, e), pt(e, e))
			p.Creases = nil
		}},
		"head, tail and fore-edges of the case at once": {foldup.Collision, "same time", func(t *testing.T, ps []geometry.Piece, _ *conditions) {
			for i := range piece(t, ps, caseClothName).Regions {
				piece(t, ps, caseClothName).Regions[i].Turn = 0
			}
		}},

		"a layer forgotten from head to tail": {foldup.Tight, "head to tail", designed(func(j *Job) { j.Room.Height -= 2 * j.Cloth })},
		"a layer forgotten at the fore-edge":  {foldup.Tight, "fore-edge", designed(func(j *Job) { j.Room.Width -= j.Cloth })},
		"the lid's lining forgotten":          {foldup.Tight, "rim", designed(func(j *Job) { j.LidLining = 0.0001 })},
		"the book's lining forgotten":         {foldup.Tight, "floors", designed(func(j *Job) { j.Lining = 0; j.LidLining = 0.15 })},
		"cloth forgotten in the small tray":   {foldup.Tight, "book", designed(func(j *Job) { j.Clearance.Height -= 2 * j.Cloth })},
		"the case's cloth forgotten":          {foldup.Tight, "spine", designed(func(j *Job) { j.CaseCloth, j.HingeCloth = 0.0001, 0.35; j.TurnIn = j.turnIn() })},
		"the square forgotten":                {foldup.Tight, "square", designed(func(j *Job) { j.Square = 3 })},
		"a joint that presses": {foldup.Tight, "presses", func(_ *testing.T, ps []geometry.Piece, k *conditions) {
			j := usualJob()
			j.Joint = j.leastJoint() - 0.1
			copy(ps, j.pieces())
			*k = j.conditions()
		}},
	} {
		t.Run(name, func(t *testing.T) {
			j := usualJob()
			ps, k := j.pieces(), j.conditions()
			c.spoil(t, ps, &k)
			r := prove(ps, k)
			require.NotEmpty(t, r.Faults)
			assert.Contains(t, kindsOf(r), c.want, r.Faults)
			assert.True(t, slices.ContainsFunc(r.Faults, func(f foldup.Fault) bool {
				return f.Kind == c.want && strings.Contains(f.String(), c.says)
			}), r.Faults)
		})
	}
}

func redrawnPiece(change func(*geometry.Piece)) func(*testing.T, []geometry.Piece, *conditions) {
	return func(t *testing.T, ps []geometry.Piece, _ *conditions) {
		change(piece(t, ps, ofTray(smallName, clothOf)))
	}
}

// turnAll makes all that is turned after the ends be turned with them.
func turnAll(p *geometry.Piece, turn int) {
	for i := range p.Regions {
		p.Regions[i].Turn = turn
	}
}

// resizedHinge makes the hinge higher.
func resizedHinge(more Length) func(*testing.T, []geometry.Piece, *conditions) {
	return func(t *testing.T, ps []geometry.Piece, _ *conditions) {
		p, j := piece(t, ps, hingeName), usualJob()
		high := j.hingeHigh()
		*p = j.hingePiece()
		w, _ := p.Size()
		p.Outline = geometry.Rectangle(geometry.Bx(0, 0, w, high+more))
		for _, lines := range [][]geometry.Path{p.Folds} {
			for _, l := range lines {
				l.Vertices[1].Y = high + more
			}
		}
		for _, c := range p.Creases {
			c.Path.Vertices[1].Y = high + more
		}
		for i := range p.Seats[0].At {
			p.Seats[0].At[i].At.Y += more / 2
		}
	}
}

// The lid meets what is in its way as it turns: with a spine much too narrow it turns about
// a place too low.
func TestTurningIsLookedAt(t *testing.T) {
	j := usualJob()
	r := prove(j.pieces(), j.conditions())
	assert.Empty(t, r.closed.turned())
	c := r.closed
	c.laid.All[1].Wide = 5
	assert.NotEmpty(t, c.turned())
	c = r.closed
	c.small.d, c.small.high = c.small.d+1, c.small.high+1
	assert.NotEmpty(t, c.turned())
}
