package slipcase

import (
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
)

// patternedLinings are the linings that a pattern is laid to.
var patternedLinings = []string{"side lining", "spine lining", "head lining", "tail lining", "divider lining"}

// drawnFaceUp tells whether a piece is drawn as it is seen, not from its back.
func drawnFaceUp(p geometry.Piece) bool { return strings.HasPrefix(p.FaceUp, "face up") }

// liningCorner returns where the corner of the room inside is on a lining as its face is
// seen: of a side and of the spine wall at the tail, of head and tail at the spine; the
// lower left of each as it is drawn.
func (j Job) liningCorner(p geometry.Piece) geometry.Point {
	if !j.linedBefore() { // it is seated in the carcass, and the others lie on that too
		l := j.Lining.Thickness
		return p.Seats[0].At[0].At.Add(geometry.Pt(l, l))
	}
	at := geometry.Pt(j.Lining.Trim, j.Lining.Trim) // of the board, which walls stand on
	switch p.Name {
	case "side lining":
		return at.Add(geometry.Pt(j.Edge(), j.Edge()))
	case "spine lining":
		return at.Add(geometry.Pt(0, j.Edge()))
	}
	return at
}

// liningPatternOn returns where lines of the pattern fall on a lining as it is drawn, for
// its place in the case: "right" or "left" for that of a side.
//
// A line runs at FromTail up from the tail on both sides and on the spine wall. One runs at
// FromSpine from the spine wall on the right side; on the left one as far from it where the
// pattern is mirrored, with a line, or the middle between two, on the middle of the spine
// wall. Where it goes on round, it does so over the corners. Linings of head and tail have
// their grain from spine to mouth: what runs up the spine wall goes on along them. What
// runs up the sides goes on across them only where it is mirrored and the pattern comes
// again alike both ways. Both faces of a divider are laid as the right side is, so that in
// each compartment lines run round at one height.
func (j Job) liningPatternOn(p geometry.Piece, place string) geometry.Repeat {
	q, in := j.LiningPattern, j.Cavity()
	upright := p.Name != "head lining" && p.Name != "tail lining"
	r := geometry.Repeat{Across: q.Across, Along: q.Along, OneWay: q.Direction == OneWay}
	if !upright { // its grain runs across the drawing
		r = geometry.Repeat{Across: q.Along, Along: q.Across}
	}
	if !q.matches() {
		return r
	}
	spine := in.Thickness/2 + q.offMiddle(in.Thickness/2, q.Across) // a line on the spine wall, from its left end
	if q.Match == MatchRound {
		spine = in.Thickness + q.FromSpine
	}
	switch p.Name {
	case "side lining":
		r.First = geometry.Pt(q.FromSpine, q.FromTail)
		if place == "left" { // its head is at the bottom
			r.First.Y = in.Height - q.FromTail
			if q.Match == MatchRound {
				r.First.X = -q.FromSpine - in.Thickness
			}
		}
	case "divider lining": // the right face has the spine wall at its right
		r.First = geometry.Pt(in.Width-j.Divider.SetBack-q.FromSpine, q.FromTail)
		if place == "left" {
			r.First.Y = in.Height - q.FromTail
		}
	case "spine lining":
		r.First = geometry.Pt(spine, q.FromTail)
	case "head lining": // drawn with the left side at the top
		r.First = geometry.Pt(q.FromSpine, in.Thickness-spine)
	case "tail lining":
		r.First = geometry.Pt(q.FromSpine, spine)
	}
	r.AtX, r.AtY = q.matchesAcross(), q.Along > 0
	if !upright {
		r.AtX, r.AtY = q.Match == MatchMirrored && q.Across.Near(q.Along), q.matchesAcross()
	}
	r.First = r.First.Add(j.liningCorner(p))
	if w, _ := p.Size(); !drawnFaceUp(p) {
		r.First.X = w - r.First.X
	}
	return r
}

// ofLiningPattern tells where lines of the linings meet and where they do not.
func (j Job) ofLiningPattern() (remarks []plan.Remark) {
	q := j.LiningPattern
	if !q.minded() {
		return nil
	}
	switch {
	case !q.matches():
		return []plan.Remark{plan.Say("the linings have a design, and nothing of it is asked to line up")}
	case q.Match == MatchHeight:
		remarks = append(remarks, plan.Say("lines of the linings that run round go on over the corners of sides and spine wall; those of head and tail meet nothing"))
	case q.Match == MatchMirrored && q.Across.Near(q.Along):
		remarks = append(remarks, plan.Say("lines of the linings go on over all eight inner corners"))
	default:
		remarks = append(remarks, plan.Say("lines of the linings go on over the corners of the spine wall with the sides, head and tail; where sides meet head and tail they end"))
	}
	if q.Match == MatchMirrored {
		in := j.Cavity()
		at := geometry.Modulo(in.Thickness/2+q.offMiddle(in.Thickness/2, q.Across), q.Across)
		remarks = append(remarks, plan.Say("the design of the linings is centred on the spine wall: lines fall %s from its left end, and every %s on", at, q.Across))
	}
	if j.Dividers() > 0 {
		says := "lines of the linings run on both faces of a divider at the height that they have on the sides"
		switch q.Match {
		case MatchMirrored:
			says = "the linings of dividers are laid as those of the sides"
		case MatchRound:
			says += "; across, the design does not go on over the corners of a divider: there it begins anew, as far from the spine wall as on the right side"
		}
		remarks = append(remarks, plan.Say(says))
	}
	return remarks
}
