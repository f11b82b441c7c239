package geometry

import "slices"

// Material is what a piece is cut from.
type Material string

// The materials that pieces are cut from.
const (
	Board  Material = "board"
	Lining Material = "lining"
	Cloth  Material = "cloth"
	Paper  Material = "paper"
	Card   Material = "card" // solid, scored and folded

	// Corrugated is folded like card, but its folds are crushed, never cut half
	// through, and flutes are to it what grain is to solid board.
	Corrugated Material = "corrugated board"

	// Of a chemise, which may stand in a case of other board and cloth.
	ThinBoard     Material = "thin board"
	ChemiseLining Material = "chemise lining"
	ChemiseCloth  Material = "chemise cloth"

	// Of a drop-spine box, where they are other than those of its trays.
	CaseBoard  Material = "case board"
	CaseCloth  Material = "case cloth"
	HingeCloth Material = "hinge cloth"
	LidLining  Material = "lid lining"
)

// Materials lists them all.
var Materials = []Material{Board, Lining, Cloth, Paper, Card, Corrugated, ThinBoard, ChemiseLining, ChemiseCloth, CaseBoard, CaseCloth, HingeCloth, LidLining}

// Like returns the material that one is sold like and looks like: most often
// itself.
func (m Material) Like() Material {
	switch m {
	case ThinBoard, CaseBoard:
		return Board
	case ChemiseLining, LidLining:
		return Lining
	case ChemiseCloth, CaseCloth, HingeCloth:
		return Cloth
	}
	return m
}

// Words returns the material as a maker asks for it.
func (m Material) Words() string {
	switch m {
	case Lining:
		return "lining paper"
	case Cloth:
		return "book cloth"
	case Paper:
		return "covering paper"
	}
	return string(m)
}

// Direction returns what runs along a material: its grain, or its flutes.
func (m Material) Direction() string {
	if m == Corrugated {
		return "flutes"
	}
	return "grain"
}

// Crushed tells whether a material is folded along a crushed line, which no knife
// and no beam may follow.
func (m Material) Crushed() bool { return m == Corrugated }

// Directions returns what runs along some pieces: "grain", "flutes" or "grain or
// flutes".
func Directions(pieces []Piece) string {
	crushed := func(p Piece) bool { return p.Material == Corrugated }
	switch n := len(slices.DeleteFunc(slices.Clone(pieces), crushed)); {
	case n == len(pieces):
		return Board.Direction()
	case n == 0:
		return Corrugated.Direction()
	}
	return Board.Direction() + " or " + Corrugated.Direction()
}

// Grain is the direction of a piece along which its material's grain, or flutes, run.
type Grain string

// Grain runs along a piece's X ("width") or along its Y ("height").
const (
	GrainWidth  Grain = "width"
	GrainHeight Grain = "height"
)

// Face is the name of a surface of the finished thing. Each kind of case names
// its own.
type Face string

// Piece is one flat part of the case as it is cut, seen with the face that
// FaceUp names toward the viewer.
type Piece struct {
	Name     string
	Material Material
	Count    int
	Outline  Path     // closed, counterclockwise, from the origin
	Slits    []Path   // cuts that start inside the outline or on it and free no waste
	Folds    []Path   // each a straight line within the outline, folded toward the viewer
	Creases  []Crease // what a covering does by itself at a corner; not drawn
	Guides   []Guide  // lines to rule, not to cut or fold
	Seats    []Seat   // where each of the pieces cut lies on the carcass
	Grain    Grain    //
	FaceUp   string   // the face toward the viewer
	Regions  []Region // what each part between folds is for
	Over     string   // the board a lining goes on; empty for others
	Trimmed  bool     // it is cut larger, and trimmed flush with what it goes on
	Rule     SizeRule // the worksheet's rules for its size
	Edges    []Edge   // the straight edges that have a name
	Spine    int      // index in Edges of the edge that lies nearest the spine; -1: the spine runs down the middle
	Hand     string   // how one template serves a left and a right, head and tail
	Margins  []Margin // how the piece lies on the carcass, in words and figures
	Pattern  Repeat   // of patterned stock, where it falls on a piece seen from its face
	Extra    Point    // of patterned stock, what is taken beyond the size, in X and in Y
	FaceOf   string   // the piece that this is, seen from the face that has the pattern; empty for others
	Confused []string // other pieces, or this one turned, that are within 5 mm
}

// Crease is a line along which a covering bends or gives at a corner of the
// carcass without being told to.
type Crease struct {
	Path Path
	Kind CreaseKind
}

// CreaseKind tells how a covering behaves at a crease.
type CreaseKind int

// Kinds of crease.
const (
	Bend   CreaseKind = iota // a right angle away from the viewer, into an inner corner
	Pleat                    // folded flat on itself
	Give                     // no hinge: the material is pinched or stretched
	Round                    // turned over the edge of a hole, in tabs
	Away                     // a right angle away from the viewer; laid flat there, as into a joint between two boards
	Toward                   // a right angle toward the viewer, as out of a joint; a fold that is not drawn
)

// Corner is the name of a place on what is covered that pieces are laid by,
// most often a corner of a board. Each kind of case names its own.
type Corner string

// Anchor ties a point of a piece's plane to a corner; the point may lie beyond the piece's edge.
type Anchor struct {
	At Point
	On Corner
}

// Seat is where a piece lies before any fold is made: on a face, two points of
// it on two corners. Its back is toward the viewer of the template, unless the seat
// says Shown: then it is the face that is seen when the piece lies there.
type Seat struct {
	Face  Face
	At    [2]Anchor
	Shown bool
}

// Guide is a line that is ruled on a piece to place it or what stands on it.
type Guide struct {
	Name  string
	Path  Path
	Named bool // its name is to stand beside it: nothing else on the piece tells of it
}

// Region is a part of a piece between folds: the face it ends up on and a box
// within it where its name can stand.
type Region struct {
	Name string
	Fold string // when it is folded, such as "fold first"; empty: it is in no order
	Face Face
	Room Box
	Turn int // of flaps that hang on equally many folds the lower is turned first
}

// Label returns the region's name with when it is folded.
func (r Region) Label() string {
	if r.Fold == "" {
		return r.Name
	}
	return r.Name + ": " + r.Fold
}

// Edge is a straight edge of a piece. From and To keep the piece on the left.
type Edge struct {
	Name     string
	Meets    string
	Off      Length // how far from what Meets names the edge is laid; 0 on it
	From, To Point
}

// SizeRule is the rules for the width and the height of a piece in the symbols
// of the worksheet, with a remark; empty where the worksheet has none.
type SizeRule struct {
	Width, Height, Remark string
	Part                  string // of several things made together, the one whose symbols they are
}

// Margin is a distance a maker rules or checks when placing the piece.
type Margin struct {
	Name   string
	Length Length
}

// Size returns the width (X) and height (Y) of the piece's bounding box.
func (p Piece) Size() (width, height Length) {
	b := p.Outline.Bounds()
	return b.Width(), b.Height()
}

// FoldsAway tells whether some of the piece is folded away from the viewer, which is ruled
// on it.
func (p Piece) FoldsAway() bool {
	return slices.ContainsFunc(p.Creases, func(c Crease) bool { return c.Kind == Away })
}

// Cuts returns all that a knife cuts: the outline, then the slits.
func (p Piece) Cuts() []Path { return append([]Path{p.Outline}, p.Slits...) }

// Lines returns all that is drawn of a piece: cuts, folds and rulings.
func (p Piece) Lines() []Path { return slices.Concat(p.Cuts(), p.Folds, p.Rulings()) }

// Rulings returns the guide lines with every stretch left out that a cut, a fold
// or another guide already draws, so that no line of a template is drawn twice.
func (p Piece) Rulings() []Path {
	if len(p.Guides) == 0 {
		return nil
	}
	var drawn []Segment
	for _, l := range slices.Concat(p.Cuts(), p.Folds) {
		drawn = append(drawn, l.Segments()...)
	}
	var out []Path
	for _, g := range p.Guides {
		for _, s := range g.Path.Segments() {
			left := s.Without(drawn, nanometre)
			drawn = append(drawn, left...)
			for _, r := range left {
				out = append(out, Path{Vertices: []Vertex{{r.From, r.Bulge}, {r.To, 0}}})
			}
		}
	}
	return out
}

// Without returns what is left of a straight segment where none of the others
// lies on it, to within a distance; all of an arc.
func (s Segment) Without(others []Segment, within Length) []Segment {
	length := s.From.Distance(s.To)
	if s.Bulge != 0 || length <= within {
		return []Segment{s}
	}
	along := s.To.Sub(s.From).Mul(1 / float64(length))
	left := [][2]Length{{0, length}}
	for _, o := range others {
		a, offA := project(o.From.Sub(s.From), along)
		b, offB := project(o.To.Sub(s.From), along)
		if o.Bulge != 0 || offA.Abs() > within || offB.Abs() > within {
			continue
		}
		left = cutOut(left, min(a, b), max(a, b))
	}
	var out []Segment
	for _, l := range left {
		if l[1]-l[0] <= within {
			continue
		}
		out = append(out, Segment{From: s.From.Add(along.Mul(float64(l[0]))), To: s.From.Add(along.Mul(float64(l[1])))})
	}
	return out
}

// project splits v into its parts along and across a unit direction.
func project(v, unit Point) (along, across Length) {
	return v.X*unit.X + v.Y*unit.Y, v.Y*unit.X - v.X*unit.Y
}

// cutOut takes the stretch from lo to hi out of a list of stretches.
func cutOut(stretches [][2]Length, lo, hi Length) [][2]Length {
	var out [][2]Length
	for _, s := range stretches {
		if hi <= s[0] || lo >= s[1] {
			out = append(out, s)
			continue
		}
		if s[0] < lo {
			out = append(out, [2]Length{s[0], lo})
		}
		if hi < s[1] {
			out = append(out, [2]Length{hi, s[1]})
		}
	}
	return out
}

// Find returns the piece with a name.
func Find(pieces []Piece, name string) (p Piece, ok bool) {
	i := slices.IndexFunc(pieces, func(p Piece) bool { return p.Name == name })
	if i < 0 {
		return Piece{}, false
	}
	return pieces[i], true
}
