package box

import (
	"strings"

	"forel/geometry"
	"forel/geometry/laidflat"
)

// The names of the pieces; those of a tray begin as it does: see ofTray.
const (
	baseOf     = "base"
	foreWallOf = "fore-edge wall"
	sideWallOf = "side wall"
	clothOf    = "tray cloth"

	smallLining = "small floor lining"
	largeLining = "large floor lining"

	caseBoardName = "case board"
	spineName     = "case spine"
	caseClothName = "case cloth"
	hingeName     = "hinge"
	fillerName    = "case filler"
)

// ofTray returns the name of a piece of a tray: "small fore-edge wall".
func ofTray(tray, piece string) string { return strings.TrimSuffix(tray, " tray") + " " + piece }

// The materials of the case, the hinge and the large tray's floor. Where nothing else is
// said they are those of the trays.
func (j Job) caseBoardOf() geometry.Material {
	return unless(j.CaseBoard, geometry.Board, geometry.CaseBoard)
}
func (j Job) caseClothOf() geometry.Material {
	return unless(j.CaseCloth, geometry.Cloth, geometry.CaseCloth)
}
func (j Job) hingeClothOf() geometry.Material {
	return unless(j.HingeCloth, geometry.Cloth, geometry.HingeCloth)
}
func (j Job) lidLiningOf() geometry.Material {
	return unless(j.LidLining, geometry.Lining, geometry.LidLining)
}

// unless returns the material of the trays, or one of its own where a thickness is set.
func unless(set Length, trays, own geometry.Material) geometry.Material {
	if set > 0 {
		return own
	}
	return trays
}

// pieces returns every piece as it is cut, in the order of work.
func (j Job) pieces() []geometry.Piece {
	small, large := j.small(), j.large()
	var out []geometry.Piece
	for _, t := range []tray{small, large} {
		out = append(append(out, j.trayBoards(t)...), j.stripOf(t).piece())
	}
	out = append(out, j.caseBoards()...)
	out = append(out, j.caseClothPiece())
	if j.Filler == Filled {
		out = append(out, j.fillerPiece())
	}
	return append(out, j.hingePiece(), j.floorLining(small), j.floorLining(large))
}

// trayBoards returns the boards of a tray: base, fore-edge wall, and a side wall for the
// head and one for the tail.
func (j Job) trayBoards(w tray) []geometry.Piece {
	t, r := j.Board, j.rules(w)
	wide, long, high := w.b, w.l, w.d+t // walls around the base
	if j.Walls == On {
		wide, long, high = w.b+t, w.l+2*t, w.d
	}
	base := geometry.Plain(ofTray(w.name, baseOf), geometry.Board, 1, wide, long, geometry.GrainHeight, r.base)
	fore := geometry.Plain(ofTray(w.name, foreWallOf), geometry.Board, 1, w.l, high, geometry.GrainWidth, r.fore)
	side := geometry.Plain(ofTray(w.name, sideWallOf), geometry.Board, 2, w.b+t, high, geometry.GrainWidth, r.side)
	side.Hand = "one for the head, one for the tail"
	return []geometry.Piece{base, fore, side}
}

// floorLining returns the lining of a tray's floor, its back up, the open edge at the
// left.
func (j Job) floorLining(w tray) geometry.Piece {
	name, of := smallLining, geometry.Lining
	if w.name == largeName {
		name, of = largeLining, j.lidLiningOf()
	}
	wide, high := j.lining(w)
	p := geometry.Plain(name, of, 1, wide, high, geometry.GrainHeight, j.rules(w).lining)
	f := facesOf(w.name)
	// Seen from its back the open edge is at the left and the head at the foot of it.
	y := 2*j.Cloth + j.LiningGap // from a wall
	p.Seats = []geometry.Seat{{Face: f.floor, At: [2]geometry.Anchor{
		{At: geometry.Pt(-j.LiningEdge, -y), On: f.floorCorner(true)}, {At: geometry.Pt(-j.LiningEdge, high+y), On: f.floorCorner(false)},
	}}}
	p.Margins = []geometry.Margin{{Name: "from the cloth on the walls", Length: j.LiningGap}, {Name: "from the open edge", Length: j.LiningEdge}}
	return p
}

// caseBoards returns the two boards of the case and its spine.
func (j Job) caseBoards() []geometry.Piece {
	w, high := j.caseSize()
	of := j.caseBoardOf()
	board := geometry.Plain(caseBoardName, of, 2, w, high, geometry.GrainHeight, geometry.SizeRule{Width: "Wc", Height: "Hc"})
	board.Hand = "front board and back board are alike"
	return []geometry.Piece{board, geometry.Plain(spineName, of, 1, j.spine(), high, geometry.GrainHeight, geometry.SizeRule{Width: "S", Height: "Hc"})}
}

// The names of the case boards as they lie flat.
const (
	frontBoard = "front board"
	backBoard  = "back board"
)

// caseClothPiece returns the covering of the case, its back up, head away: front board,
// spine and back board from left to right.
func (j Job) caseClothPiece() geometry.Piece {
	e, c := j.turnIn(), j.corner()
	p := laidflat.Covering{Boards: j.laid(), TurnIn: e, Left: e, Right: e, Corner: c}.Piece(caseClothName, j.caseClothOf(), geometry.SizeRule{Width: "2Wc + 2j + S + 2e", Height: "Hc + 2e"}, frontForeEdge, backForeEdge)
	p.Margins = []geometry.Margin{
		{Name: "turned in on every side", Length: e},
		{Name: "from the corner of a board to the mitre, along each edge", Length: c},
		{Name: "joint between a board and the spine", Length: j.joint()},
	}
	return p
}

// fillerGap is what a filler stays back from turn-ins and from the spine edge (common
// practice, no source).
const fillerGap Length = 1

// fillerPiece returns the filler that levels a case board between its turn-ins.
func (j Job) fillerPiece() geometry.Piece {
	w, high := j.caseSize()
	in := j.turnIn() - j.caseBoard()
	p := geometry.Plain(fillerName, geometry.Paper, 2, w-in-2*fillerGap, high-2*in-2*fillerGap, geometry.GrainHeight,
		geometry.SizeRule{Width: "Wc − e + b − 2y", Height: "Hc − 2e + 2b − 2y"})
	p.Hand = "one inside each case board"
	p.Margins = []geometry.Margin{{Name: "back from turn-ins and the spine edge", Length: fillerGap}}
	return p
}

// hingePiece returns the hinge, its back up, tail away, the large tray at the left: from
// its floor down over its base and the case board into the joint, up over the spine, and
// likewise to the floor of the small tray.
func (j Job) hingePiece() geometry.Piece {
	w, down, b, joint, s, high := j.hinge(), j.downToBoard()+j.caseBoard(), j.caseBoard(), j.joint(), j.spine(), j.hingeHigh()
	p := geometry.Piece{
		Name: hingeName, Material: j.hingeClothOf(), Count: 1,
		Grain: geometry.GrainHeight, FaceUp: "back up (the face that is glued)", Spine: -1,
		Rule: geometry.SizeRule{Width: "2w + 2t + 2k + 2K + 4b + 2j + S", Height: "Ah"},
	}
	const folded, creased = "folded", "creased" // at its right end
	var x Length
	for _, part := range []struct {
		name string
		face geometry.Face
		wide Length
		then string
	}{
		{"large floor", wayLargeFloor, w, folded}, {"down", wayLargeDown, down, creased}, {"joint", wayLargeJoint, joint, creased}, {"", wayLargeUp, b, folded},
		{"spine", waySpine, s, folded},
		{"", waySmallUp, b, creased}, {"joint again", waySmallJoint, joint, creased}, {"down again", waySmallDown, down, folded}, {"small floor", waySmallFloor, w, ""},
	} {
		if part.name != "" {
			p.Regions = append(p.Regions, geometry.Region{Name: part.name, Face: part.face, Room: geometry.Bx(x, 0, x+part.wide, high)})
		}
		x += part.wide
		switch line := geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, high)); part.then {
		case folded:
			p.Folds = append(p.Folds, line)
		case creased:
			p.Creases = append(p.Creases, geometry.Crease{Path: line, Kind: geometry.Away})
			p.Guides = append(p.Guides, geometry.Guide{Name: "into the joint", Path: line})
		}
	}
	from := w + down + joint + b
	p.Seats = []geometry.Seat{{Face: waySpine, At: [2]geometry.Anchor{
		{At: geometry.Pt(from, -j.beyondHinge()), On: wayHeadLeft}, {At: geometry.Pt(from+s, -j.beyondHinge()), On: wayHeadRight},
	}}}
	p.Outline = geometry.Rectangle(geometry.Bx(0, 0, x, high))
	p.Margins = []geometry.Margin{{Name: "on the floor of each tray", Length: w}, {Name: "from the head and from the tail of the spine", Length: j.beyondHinge()}}
	return p
}

// downToBoard returns what the hinge goes down from a floor to the case board: base,
// cloth under it, turn-in.
func (j Job) downToBoard() Length { return j.Board + j.Cloth + j.caseCloth() }
