package slipcase

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
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
	j := c.Stands
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
	all := m.c.solids()
	board := all[slices.IndexFunc(all, func(s plan.Solid) bool { return s.Name == name })]
	faces := board.Block(name)
	if m.lined {
		faces[0].Front = stage.Lining
	}
	grain := toHead
	if name == "head wall" || name == "tail wall" {
		grain = toMouth
	}
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
func (c covering) object() string { return numbered(c.name, c.seat) }

// numbered names the nth of several objects of a scene, from 0.
func numbered(name string, n int) string {
	if n == 0 {
		return name
	}
	return fmt.Sprintf("%s %d", name, n+1)
}

// hang hangs a covering on the carcass, as the proof did.
func (m model) hang(c covering) draft.Hung {
	hung, ok := m.hung[c]
	if !ok {
		sheet, _ := m.c.Hang(m.pieces[c.name], c.seat)
		hung = draft.Hung{Sheet: sheet, Piece: m.pieces[c.name], Object: c.object(), Late: func(leaf int) bool { return viaRoot(sheet, leaf) }}
		m.hung[c] = hung
	}
	return hung
}

// sheet returns the faces of a covering at a stage; fresh ones are hatched.
func (m model) sheet(c covering, at folds, fresh bool) []stage.Face {
	hung := m.hang(c)
	return hung.Faces(angle(hung.Sheet, at), 10*(c.layer+1), !fresh)
}
