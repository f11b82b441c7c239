package handout

import (
	"strings"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/slipcase"
	"forel/render"
	"forel/render/scene"
)

// model is a case of boards in space, as foldup has it: X from left to right, Y
// from tail to head, Z from spine to mouth.
type model struct {
	palette
	job    slipcase.Job
	c      slipcase.Carcass
	pieces map[string]geometry.Piece // as they lie on the case, before they are cut smaller for their stretch
	lined  bool                      // the boards are lined when they are joined
	hung   map[covering]fold.Sheet   // those hung so far: it takes a while
}

func modelOf(c slipcase.Case, pal palette) model {
	j := c.Job
	if j.Cloth.Stretch != 0 || j.SidePaper.Stretch != 0 {
		j.Cloth.Stretch, j.SidePaper.Stretch = 0, 0
		if whole, err := slipcase.Make(j); err == nil {
			c = whole
		}
	}
	m := model{palette: pal, job: j, c: c.Proof.Carcass, pieces: map[string]geometry.Piece{}, hung: map[covering]fold.Sheet{},
		lined: j.Lining.Thickness > 0 && j.Lining.Order != slipcase.LinedAfter}
	for _, p := range c.Pieces {
		m.pieces[p.Name] = p
	}
	return m
}

func (m model) has(piece string) bool {
	_, ok := m.pieces[piece]
	return ok
}

// The measures of the carcass outside, and of a board as it is joined.
func (m model) w() float64 { return m.c.Width.MM() }
func (m model) h() float64 { return m.c.Height.MM() }
func (m model) d() float64 { return m.c.Depth.MM() }
func (m model) s() float64 { return m.c.Lined.MM() }

// The names of the boards as they stand.
var boardNames = []string{"right side", "spine wall", "head wall", "tail wall", "left side"}

// boards gives the faces of boards where they stand in the case.
func (m model) boards(names ...string) []scene.Face {
	var out []scene.Face
	for _, n := range names {
		out = append(out, m.board(n)...)
	}
	return out
}

func (m model) board(name string) []scene.Face {
	s, w, h, d := m.s(), m.w(), m.h(), m.d()
	inside := m.palette.board
	if m.lined {
		inside = m.lining
	}
	rectangle := func(o, u, v scene.Vec) []scene.Vec { return []scene.Vec{o, o.Add(u), o.Add(u).Add(v), o.Add(v)} }
	var outline []scene.Vec // of the inside, counterclockwise for one in the case
	var depth scene.Vec
	grain := scene.Vec{Y: 1}
	switch name {
	case "right side", "left side":
		x := w - s
		depth = scene.Vec{X: s}
		for _, p := range m.c.Side {
			outline = append(outline, scene.Vec{X: x, Y: p.Y.MM(), Z: p.X.MM()})
		}
		if name == "left side" {
			depth = scene.Vec{X: -s}
			n := len(outline)
			for i := range n / 2 {
				outline[i], outline[n-1-i] = outline[n-1-i], outline[i]
			}
			for i := range outline {
				outline[i].X = s
			}
		}
	case "spine wall":
		outline, depth = rectangle(scene.Vec{X: s, Z: s}, scene.Vec{X: w - 2*s}, scene.Vec{Y: h}), scene.Vec{Z: -s}
	case "head wall":
		outline, depth = rectangle(scene.Vec{X: s, Y: h - s, Z: s}, scene.Vec{X: w - 2*s}, scene.Vec{Z: d - s}), scene.Vec{Y: s}
		grain = scene.Vec{Z: 1}
	case "tail wall":
		outline, depth = rectangle(scene.Vec{X: s, Y: s, Z: s}, scene.Vec{Z: d - s}, scene.Vec{X: w - 2*s}), scene.Vec{Y: -s}
		grain = scene.Vec{Z: 1}
	}
	faces := scene.Block(name, outline, depth, inside, m.palette.board, m.palette.board)
	for i := range faces {
		faces[i].Grain = grain
	}
	return faces
}

// look gives how a sheet of a material is drawn.
func (m model) look(material geometry.Material) sheetLook {
	switch material {
	case geometry.Cloth:
		return m.cloth
	case geometry.Paper:
		return m.paper
	case geometry.Lining:
		return sheetLook{face: m.lining, back: scene.Look{Tint: white}}
	}
	return m.card
}

// foldLine is how a fold that is not made yet is drawn on a flat piece.
var (
	foldLine = render.Stroke{Width: 0.25, Dash: []Length{1.4, 0.8}, Color: render.Black}
	slitLine = render.Stroke{Width: 0.35, Color: render.Black}
)

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
func (m model) hang(c covering) (hung fold.Sheet, ok bool) {
	if hung, ok = m.hung[c]; ok {
		return hung, true
	}
	if hung, ok = m.c.Hang(m.pieces[c.name], c.seat); ok {
		m.hung[c] = hung
	}
	return hung, ok
}

// sheet gives the faces of a covering at a stage; fresh ones are hatched.
func (m model) sheet(c covering, at stage, fresh bool) []scene.Face {
	p := m.pieces[c.name]
	hung, ok := m.hang(c)
	if !ok {
		return nil
	}
	return leaves(p, hung, hung.Pose(at.angle(hung)), c.object(), 10*(c.layer+1), m.look(p.Material), fresh, at.flat())
}

// leaves gives the faces of the parts of a piece as they are posed.
func leaves(p geometry.Piece, hung fold.Sheet, posed []fold.Posed, object string, layer int, look sheetLook, fresh, flat bool) []scene.Face {
	if !fresh {
		look.face, look.back = plain(look.face), plain(look.back)
	}
	var out []scene.Face
	for i, q := range posed {
		if len(q.Outline) < 3 || q.Web && !flat || q.Tab && q.Turned >= 90 {
			continue
		}
		at := func(g geometry.Point) scene.Vec {
			v := q.At(g)
			return scene.Vec{X: v.X.MM(), Y: v.Y.MM(), Z: v.Z.MM()}
		}
		f := scene.Face{
			Object: object, Name: leafName(p, q.Leaf), Front: look.back, Back: &look.face,
			Layer: layer + depthOf(hung, i), Grain: at(geometry.Pt(0, 1)).Sub(at(geometry.Pt(0, 0))),
		}
		for _, g := range q.Outline {
			f.Points = append(f.Points, at(g))
		}
		// A hair within the leaf, so that it is on this and not its neighbour.
		on := func(path geometry.Path, stroke render.Stroke) {
			pts := path.Flatten(0.2)
			for k := 1; k < len(pts); k++ {
				a, b := pts[k-1], pts[k]
				if a.Near(b) {
					continue
				}
				side := b.Sub(a).Mul(0.03 / a.Distance(b).MM())
				for _, d := range []geometry.Point{geometry.Pt(-side.Y, side.X), geometry.Pt(side.Y, -side.X)} {
					if q.Holds(a.Add(b).Mul(0.5).Add(d)) {
						f.Lines = append(f.Lines, scene.Line{Points: []scene.Vec{at(a.Add(d)), at(b.Add(d))}, Stroke: stroke})
					}
				}
			}
		}
		for _, s := range p.Slits {
			on(s, slitLine)
		}
		if q.On >= 0 && q.Turned == 0 && !q.Tab {
			from, to := q.Hinge()
			on(geometry.Line(from, to), foldLine)
		}
		out = append(out, f)
	}
	return out
}

// depthOf gives how many folds a leaf is from the one laid first, plus one for
// what is folded last.
func depthOf(s fold.Sheet, i int) int {
	n := 0
	for k := i; s.Leaves[k].On >= 0; k = s.Leaves[k].On {
		n++
	}
	if viaRoot(s, i) && n > 0 {
		n += 5
	}
	return n
}

// leafName gives the name of the region that a leaf is, or of its piece.
func leafName(p geometry.Piece, l fold.Leaf) string {
	for _, r := range p.Regions {
		if l.Holds(r.Room.Center()) {
			name, _, _ := strings.Cut(r.Name, ":")
			return name
		}
	}
	return p.Name
}
