package slipcase

import "forel/geometry"

// linings returns the linings of a case; none for an unlined one.
func (j Job) linings(boards []geometry.Piece) []geometry.Piece {
	switch {
	case j.Lining.Thickness == 0:
		return nil
	case j.linedBefore():
		return j.liningsBefore(boards)
	}
	return j.liningsAfter()
}

// liningNames has the name of each board's lining.
var liningNames = map[string]string{
	"side": "side lining", "spine wall": "spine lining", "head wall": "head lining", "tail wall": "tail lining", "divider": "divider lining",
}

// liningStep is how much further in than what is turned in at the mouth a lining
// put in afterwards grows to its full size (common practice, no source).
const liningStep Length = 1

// mouthStep is where a lining put in afterwards is narrower, to lie clear of
// what is turned in on the walls beside it.
type mouthStep struct{ wide, deep Length }

// endStep returns the step of the side linings, at head and tail: as wide as the
// cloth that lies in the corners there is thick.
func (j Job) endStep() mouthStep {
	k := j.cover()
	if j.Covering == SidesOnly {
		return mouthStep{}
	}
	return mouthStep{k, j.Cloth.MouthTurnIn - j.Edge() - linedShort + liningStep}
}

// sideStep returns the step of the head and tail linings at the sides. What is
// turned in on a side reaches the corner in part: cloth of the nearer wall, at
// times of both, and what keeps off the walls by less than what lies on them.
func (j Job) sideStep() mouthStep {
	s, k, p := j.Edge(), j.Cloth.Thickness, j.SidePaper
	lies := j.endStep().wide + j.Lining.Thickness // on head and tail, as far from them as counts
	var wide, deep Length
	add := func(thick, turnIn Length) {
		wide, deep = wide+thick, max(deep, turnIn-s-linedShort+liningStep)
	}
	switch j.Covering {
	case AllCloth, AllPaper:
		if j.wrapInset()-s < lies {
			add(j.cover(), j.Cloth.MouthTurnIn)
		}
		return mouthStep{wide, deep}
	case ClothAndPaper:
		add(k, j.Cloth.MouthTurnIn)
		if j.Cloth.Overlap-s > j.Between().Height-lies {
			add(k, j.Cloth.MouthTurnIn)
		}
	}
	if p.Inset-s < lies {
		add(p.Thickness, p.TurnIn)
	}
	return mouthStep{wide, deep}
}

// liningsAfter returns the linings that are pasted into the carcass when it is
// joined and covered, in the order they go in: sides, spine, head and tail.
// Each fits between those before it. At the mouth they lie over what is turned
// in, and stay back by 2 mm, to leave its edge to be seen; there they are
// narrower by what is turned in on the walls beside them, and the cavity by
// what is turned in under them.
func (j Job) liningsAfter() []geometry.Piece {
	between, in, l := j.Between(), j.Cavity(), j.Lining.Thickness
	pt, thick := geometry.Pt, j.terms().thick
	lining := func(name, over string, w, h Length, step mouthStep, grain geometry.Grain, edges [4]geometry.Edge, seats ...geometry.Seat) geometry.Piece {
		p := panel(name, geometry.Lining, w, h)
		p.Over, p.Seats, p.Count = over, seats, len(seats)
		p.Grain, p.FaceUp = grain, "face up (the face that is seen)"
		hole := over == "side" && j.hasHole()
		p.Outline = j.stepped(w, h, step, hole)
		if low := p.Outline.Bounds().Min; low.Y > 0 { // narrower all the way
			p.Outline = p.Outline.Move(pt(0, -low.Y))
			for i, s := range p.Seats {
				for n := range s.At {
					p.Seats[i].At[n].At.Y -= low.Y
				}
			}
			step = mouthStep{}
		}
		p.Regions = []geometry.Region{{Name: name, Face: seats[0].Face, Room: p.Outline.Bounds()}}
		p.Edges = rectangleEdges(p, edges)
		if over == "spine wall" {
			return p
		}
		mouth := &p.Edges[right]
		mouth.From.Y, mouth.To.Y = step.wide, mouth.To.Y-step.wide
		if hole {
			mouth.From.Y = h/2 + j.hole() + linedShort
		}
		p.Margins = []geometry.Margin{{Name: "back from the mouth edge", Length: linedShort}}
		if step.wide > 0 {
			p.Margins = append(p.Margins,
				geometry.Margin{Name: "narrower at the mouth, each end, by what is turned in beside it", Length: step.wide},
				geometry.Margin{Name: "as far from its mouth edge", Length: min(step.deep, w)})
		}
		return p
	}
	at := func(right, head bool) place { return place{right: right, head: head} }
	side := lining("side lining", "side", between.Width-linedShort, between.Height, j.endStep(), geometry.GrainHeight,
		[4]geometry.Edge{{Name: "tail edge"}, {Name: "mouth edge"}, {Name: "head edge"}, {Name: "spine edge"}},
		seated(RightInside, pt(0, 0), at(true, false), pt(0, between.Height), at(true, true)),
		seated(LeftInside, pt(0, 0), at(false, true), pt(0, between.Height), at(false, false))) // turned end for end
	const stepped = "narrower at the mouth where the template has it"
	side.Hand = j.withHole(j.alikeLinings(), "with a thumb hole at the mouth")
	side.Rule = geometry.SizeRule{Width: "W + cW + l − z", Height: "H + cH + 2l", Remark: stepped}
	spine := lining("spine lining", "spine wall", in.Thickness, between.Height, mouthStep{}, geometry.GrainHeight,
		[4]geometry.Edge{{Name: "tail edge"}, {Name: "right edge"}, {Name: "head edge"}, {Name: "left edge"}},
		seated(SpineInside, pt(-l, 0), at(false, false), pt(-l, between.Height), at(false, true)))
	spine.Rule = geometry.SizeRule{Width: thick, Height: "H + cH + 2l"}
	out := []geometry.Piece{side, spine}
	for _, e := range ends {
		p := lining(e.name+" lining", e.name+" wall", in.Width-linedShort, in.Thickness, j.sideStep(), geometry.GrainWidth,
			[4]geometry.Edge{{Name: e.right + " edge"}, {Name: "mouth edge"}, {Name: e.left + " edge"}, {Name: "spine edge"}},
			seated(e.inside, pt(-l, -l), e.at(e.right, false), pt(-l, in.Thickness+l), e.at(e.left, false)))
		p.Rule = geometry.SizeRule{Width: "W + cW − z", Height: thick, Remark: stepped}
		out = append(out, p)
	}
	return out
}

// stepped returns a rectangle that is narrower near its right edge, at the mouth,
// with the thumb hole in that edge if it has one.
func (j Job) stepped(w, h Length, step mouthStep, hole bool) geometry.Path {
	corner := func(x, y Length) geometry.Vertex { return geometry.Vertex{Point: geometry.Pt(x, y)} }
	from := max(0, w-step.deep)
	if from.Near(0) {
		from = 0
	}
	var vs []geometry.Vertex
	if step.wide > 0 && from > 0 {
		vs = append(vs, corner(0, 0), corner(from, 0), corner(from, step.wide))
	} else {
		vs = append(vs, corner(0, step.wide))
	}
	vs = append(vs, corner(w, step.wide))
	if hole {
		vs = append(vs, j.holeAt(w, h/2, j.hole()+linedShort, linedShort)...)
	}
	vs = append(vs, corner(w, h-step.wide))
	if step.wide > 0 && from > 0 {
		vs = append(vs, corner(from, h-step.wide), corner(from, h), corner(0, h))
	} else {
		vs = append(vs, corner(0, h-step.wide))
	}
	return geometry.Path{Vertices: vs, Closed: true}
}

// liningOf returns the lining that is pasted to a board before it is joined, larger than it
// by the trim on every side. The guide is the board, drawn as it lies on the back of the
// lining, mirrored where the board is drawn from its lined face; what stands over is trimmed
// flush when dry, in a thumb hole too.
func (j Job) liningOf(b geometry.Piece, mirrored bool) geometry.Piece {
	w, h := b.Size()
	trim, lies := j.Lining.Trim, b.Outline
	var edges [4]geometry.Edge
	for i, e := range b.Edges {
		edges[i] = geometry.Edge{Name: e.Name}
	}
	p := panel(liningNames[b.Name], geometry.Lining, w+2*trim, h+2*trim)
	if mirrored {
		lies = lies.FlipX(w)
		edges[right], edges[left] = edges[left], edges[right]
		p.Spine = right // each board has its spine edge on the left
	}
	p.Over, p.Trimmed = b.Name, true
	p.Count, p.Grain = b.Count, b.Grain
	p.FaceUp = "back up (the face that is pasted)"
	p.Rule = geometry.SizeRule{Width: b.Rule.Width + " + 2r", Height: b.Rule.Height + " + 2r"}
	p.Regions = []geometry.Region{{Name: b.Name + " lies here", Face: b.Regions[0].Face, Room: geometry.Bx(trim, trim, trim+w, trim+h)}}
	p.Margins = []geometry.Margin{{Name: "beyond the board all round, trimmed flush when dry", Length: trim}}
	if trim > 0 {
		p.Guides = []geometry.Guide{{Name: b.Name, Path: lies.Move(geometry.Pt(trim, trim))}}
	}
	p.Edges = rectangleEdges(p, edges)
	return p
}

// liningsBefore returns a lining for each board of the carcass.
func (j Job) liningsBefore(boards []geometry.Piece) []geometry.Piece {
	var out []geometry.Piece
	for _, b := range boards {
		p := j.liningOf(b, true)
		if b.Name == "side" {
			p.Hand = j.withHole(j.alikeLinings(), "trim the thumb hole flush too")
		}
		out = append(out, p)
	}
	return out
}

// alikeLinings says how the two linings of the sides compare.
func (j Job) alikeLinings() string {
	if j.LiningPattern.minded() {
		return "both sides have one size; cut each by its drawing named face"
	}
	return "both sides are alike"
}
