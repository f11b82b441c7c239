package slipcase

import "forel/geometry"

// sidePaper returns the paper over a side, back up, spine at the left: inset
// from the three closed edges of the side, and beyond the mouth edge by its
// turn-in, which goes round the board's edge and into the case. Its inset
// keeps the turn-in clear of the head and tail walls (Job.Check sees to it).
func (j Job) sidePaper() geometry.Piece {
	s, out, sp := j.Edge(), j.Outside(), j.SidePaper
	mouth := out.Width - sp.Inset
	width, height := mouth+sp.TurnIn, out.Height-2*sp.Inset

	p := panel("side paper", geometry.Paper, width, height)
	p.Count, p.Grain, p.FaceUp = 2, geometry.GrainHeight, "back up (the face that is glued)"
	hand := "both sides are alike"
	if j.Pattern.minded() {
		hand = "both sides have one size; cut each by its drawing named face"
	}
	p.Hand = j.withHole(hand, "thumb hole: cut it smaller, snip its edge, turn the tabs over the board")
	p.Rule = geometry.SizeRule{Width: "Wo − i + x", Height: "Ho − 2i"}
	turnIn := mouthTurnIn{job: j, mouth: mouth, edge: s, outer: width, from: 0, to: height, middle: height / 2}
	turnIn.put(&p, RightInside)
	if j.hasHole() {
		cutRight(&p, turnIn.hole().edge)
	}
	for _, y := range turnIn.parts() {
		p.Guides = append(p.Guides, geometry.Guide{Name: "mouth edge of the side", Path: geometry.Line(geometry.Pt(mouth, y[0]), geometry.Pt(mouth, y[1]))})
	}
	p.Regions = append([]geometry.Region{{Name: "side", Face: RightOutside, Room: geometry.Bx(0, 0, mouth-turnIn.depth(), height)}}, p.Regions...)
	p.Margins = []geometry.Margin{
		{Name: "from the spine, head and tail edges of the side to the paper", Length: sp.Inset},
		{Name: "beyond the mouth edge, turned in", Length: sp.TurnIn},
	}
	tailCorner, headCorner := geometry.Pt(mouth, -sp.Inset), geometry.Pt(mouth, height+sp.Inset)
	p.Seats = []geometry.Seat{
		glued(RightOutside, tailCorner, place{right: true, mouth: true}, headCorner, place{right: true, mouth: true, head: true}),
		glued(LeftOutside, tailCorner, place{mouth: true, head: true}, headCorner, place{mouth: true}), // turned end for end
	}
	p.Edges = rectangleEdges(p, [4]geometry.Edge{
		{Name: "tail end", Meets: "from the tail edge", Off: sp.Inset},
		{Name: "mouth"},
		{Name: "head end", Meets: "from the head edge", Off: sp.Inset},
		{Name: "spine edge", Meets: "from the spine edge", Off: sp.Inset},
	})
	if j.hasHole() { // name the mouth beside the hole
		p.Edges[right].From.Y = height/2 + j.hole()
	}
	return p
}

// mouthTurnIn is the part of a covering past an upright mouth line on its
// right: over the board's edge, then inside, parted by a thumb hole.
type mouthTurnIn struct {
	job                Job
	mouth, edge, outer Length // the mouth line, the thickness of board, the end of the turn-in
	from, to           Length // the turn-in inside, along the mouth
	middle             Length // of the mouth
}

// depth returns how far a hole reaches from the mouth line, with a border.
func (m mouthTurnIn) depth() Length {
	if !m.job.hasHole() {
		return 0
	}
	return m.job.hole() + holeBorder
}

// parts returns the stretches of the mouth line that are turned in: one, or
// those on either side of a thumb hole.
func (m mouthTurnIn) parts() [][2]Length {
	if !m.job.hasHole() {
		return [][2]Length{{m.from, m.to}}
	}
	r := m.job.hole()
	return [][2]Length{{m.from, m.middle - r}, {m.middle + r, m.to}}
}

// put gives a piece the turn-in's folds, snips, creases and regions.
func (m mouthTurnIn) put(p *geometry.Piece, inside geometry.Face) {
	if m.job.hasHole() {
		h := m.hole()
		p.Slits = append(p.Slits, h.snips...)
		p.Folds = append(p.Folds, h.fold)
		p.Creases = append(p.Creases, geometry.Crease{Path: h.fold, Kind: geometry.Round})
		r, web := m.job.hole(), m.job.holeWeb()
		for _, sign := range []Length{-1, 1} { // the webs are pinched over the corners of the hole
			corner := geometry.Pt(m.mouth, m.middle+sign*r)
			p.Creases = append(p.Creases,
				geometry.Crease{Path: geometry.Line(corner, corner.Add(geometry.Pt(web, 0))), Kind: geometry.Give},
				geometry.Crease{Path: geometry.Line(corner, corner.Add(geometry.Pt(0, -sign*web))), Kind: geometry.Give},
			)
		}
	}
	for _, y := range m.parts() {
		for _, x := range []Length{m.mouth, m.mouth + m.edge} {
			p.Folds = append(p.Folds, geometry.Line(geometry.Pt(x, y[0]), geometry.Pt(x, y[1])))
		}
		p.Regions = append(p.Regions, geometry.Region{Name: "turn-in", Face: inside, Room: geometry.Bx(m.mouth+m.edge, y[0], m.outer, y[1])})
	}
}
