package slipcase

import (
	"forel/geometry"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// model is a case of boards in space: X from left to right, Y from tail to head, Z
// from spine to mouth.
type model struct {
	whole  Case
	job    Job
	c      Carcass
	pieces map[string]geometry.Piece // as they lie on the case, before they are cut smaller for their stretch
	lined  bool                      // the boards are lined when they are joined
	hung   map[covering]draft.Hung   // those hung so far: it takes a while
}

// seenArc is how far the chords of an arc leave it in a picture: on the page a hundredth
// of a millimetre or two.
const seenArc Length = 0.1

func (c Case) model() model {
	j := c.stands
	m := model{whole: c, job: j, c: c.Proof.Carcass, pieces: map[string]geometry.Piece{}, hung: map[covering]draft.Hung{},
		lined: j.Lining.Thickness > 0 && j.linedBefore()}
	for _, p := range c.lying {
		m.pieces[p.Name] = p
	}
	m.c.Side = m.pieces["side"].Outline.Flatten(seenArc)
	return m
}

func (m model) has(piece string) bool {
	_, ok := m.pieces[piece]
	return ok
}

// The measures of the carcass outside, and of a board as it is joined.
func (m model) w() Length { return m.c.Width }
func (m model) h() Length { return m.c.Height }
func (m model) d() Length { return m.c.Depth }
func (m model) s() Length { return m.c.Lined }

// The names of the boards as they stand.
var boardNames = []string{"right side", "spine wall", "head wall", "tail wall", "left side"}

// boards returns the faces of boards where they stand in the case.
func (m model) boards(names ...string) []stage.Face {
	var out []stage.Face
	for _, n := range names {
		out = append(out, m.board(n)...)
	}
	return out
}

func (m model) board(name string) []stage.Face {
	s, w, h, d := m.s(), m.w(), m.h(), m.d()
	inside := stage.Board
	if m.lined {
		inside = stage.Lining
	}
	rectangle := func(o, u, v stage.Vec) []stage.Vec { return []stage.Vec{o, o.Add(u), o.Add(u).Add(v), o.Add(v)} }
	var outline []stage.Vec // of the inside, counterclockwise for one in the case
	var depth stage.Vec
	grain := stage.Vec{Y: 1}
	switch name {
	case "right side", "left side":
		x := w - s
		depth = stage.Vec{X: s}
		for _, p := range m.c.Side {
			outline = append(outline, stage.Vec{X: x, Y: p.Y, Z: p.X})
		}
		if name == "left side" {
			depth = stage.Vec{X: -s}
			n := len(outline)
			for i := range n / 2 {
				outline[i], outline[n-1-i] = outline[n-1-i], outline[i]
			}
			for i := range outline {
				outline[i].X = s
			}
		}
	case "spine wall":
		outline, depth = rectangle(stage.Vec{X: s, Z: s}, stage.Vec{X: w - 2*s}, stage.Vec{Y: h}), stage.Vec{Z: -s}
	case "head wall":
		outline, depth = rectangle(stage.Vec{X: s, Y: h - s, Z: s}, stage.Vec{X: w - 2*s}, stage.Vec{Z: d - s}), stage.Vec{Y: s}
		grain = stage.Vec{Z: 1}
	case "tail wall":
		outline, depth = rectangle(stage.Vec{X: s, Y: s, Z: s}, stage.Vec{Z: d - s}, stage.Vec{X: w - 2*s}), stage.Vec{Y: -s}
		grain = stage.Vec{Z: 1}
	}
	faces := stage.Block(name, outline, depth, inside, stage.Board, stage.Board)
	for i := range faces {
		faces[i].Grain = grain
	}
	return faces
}

// covering is a piece of covering on the carcass.
type covering struct {
	name  string
	seat  int
	layer int // in the order of gluing
}

// object names a covering in a scene.
func (c covering) object() string {
	if c.seat > 0 {
		return c.name + " 2"
	}
	return c.name
}

// hang hangs a covering on the carcass; ok is false where it does not fit there.
func (m model) hang(c covering) (hung draft.Hung, ok bool) {
	if hung, ok = m.hung[c]; ok {
		return hung, true
	}
	sheet, ok := m.c.Hang(m.pieces[c.name], c.seat)
	if !ok {
		return draft.Hung{}, false
	}
	hung = draft.Hung{Sheet: sheet, Piece: m.pieces[c.name], Object: c.object(), Late: func(leaf int) bool { return viaRoot(sheet, leaf) }}
	m.hung[c] = hung
	return hung, true
}

// sheet returns the faces of a covering at a stage; fresh ones are hatched.
func (m model) sheet(c covering, at folds, fresh bool) []stage.Face {
	hung, ok := m.hang(c)
	if !ok {
		return nil
	}
	return hung.Faces(at.angle(hung.Sheet), 10*(c.layer+1), !fresh)
}
