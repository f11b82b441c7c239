package slipcase

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// minded tells whether a pattern is to be minded at all.
func (p Pattern) minded() bool {
	return p.Across > 0 || p.Along > 0 || p.Direction == OneWay
}

// patternedPieces are those that can have the pattern: what covers the sides, and
// with a wrap its panels.
var patternedPieces = []string{"side paper", "wrap", "head panel", "tail panel"}

// matches tells whether the pattern is to fall on a line at all.
func (p Pattern) matches() bool { return p.Match != MatchNothing && p.Match != "" }

// matchesAcross tells whether it is to at right angles to the grain too.
func (p Pattern) matchesAcross() bool { return p.Match == MatchMirrored || p.Match == MatchRound }

// leastRepeat is the smallest repeat that is taken for one.
const leastRepeat Length = 0.1

// limit: what is to line up must come again, and not too soon. The table is that of the
// pattern in a job file.
func (p Pattern) limit(table string, l *job.Limits) {
	for _, r := range []struct {
		key    string
		repeat Length
	}{{table + ".repeat_across", p.Across}, {table + ".repeat_along", p.Along}} {
		if r.repeat != 0 {
			l.AtLeast(r.key, r.repeat, leastRepeat, "is too fine to lay pieces to")
		}
	}
	needs := func(repeat, what, right string) {
		l.Instead(table+".match", p.Match, "needs "+table+"."+repeat+", the repeat "+what+" the grain", right)
	}
	switch {
	case p.matchesAcross() && p.Across == 0 && p.Along > 0:
		needs("repeat_across", "across", MatchHeight)
	case p.matchesAcross() && p.Across == 0:
		needs("repeat_across", "across", MatchNothing)
	case p.Match == MatchHeight && p.Along == 0:
		needs("repeat_along", "along", MatchNothing)
	}
}

// wetAcross returns the repeat across the grain when the covering has grown from
// the paste, and by how much less of it is cut for a length on the case.
func (j Job) wetAcross(m geometry.Material) (repeat Length, cut float64) {
	percent := j.SidePaper.Stretch
	if m == geometry.Cloth {
		percent = j.Cloth.Stretch
	}
	grown := 1 + percent/100
	return j.Pattern.Across * Length(grown), 1 / grown
}

// patternOn returns where lines of the pattern fall on a piece as it is drawn, back up
// and before it is cut smaller for stretch, for its place on the case: "right"
// or "left" for a side paper, else empty.
//
// A line runs at FromSpine from the spine edge of the right side. On the left one
// runs as far from its spine edge where the pattern is mirrored; where it goes on round
// the spine, a repeat or several on, the spine counted in. In a wrap a
// mirrored pattern has a line, or the middle between two, on the middle of the spine.
func (j Job) patternOn(p geometry.Piece, place string) geometry.Repeat {
	r := geometry.Repeat{Across: j.Pattern.Across, Along: j.Pattern.Along, OneWay: j.Pattern.Direction == OneWay}
	if !j.Pattern.matches() {
		return r
	}
	out, s := j.Outside(), j.Edge()
	wet, _ := j.wetAcross(p.Material)
	r.AtX, r.AtY = j.Pattern.matchesAcross(), j.Pattern.Along > 0
	fromSpine, fromTail := j.Pattern.FromSpine, j.Pattern.FromTail
	wrapped := func() Length { // on the wrap, from its left end
		spine := j.Cloth.MouthTurnIn + out.Width // the left edge of the spine
		if j.Pattern.Match == MatchRound {
			return spine + out.Thickness + fromSpine
		}
		return spine + out.Thickness/2 + j.Pattern.offMiddle(j.Outside().Thickness/2, wet)
	}
	switch p.Name {
	case "side paper":
		inset := j.SidePaper.Inset
		r.First = geometry.Pt(fromSpine-inset, fromTail-inset)
		if place == "left" { // its head is at the bottom
			r.First.Y = out.Height - inset - fromTail
			if j.Pattern.Match == MatchRound {
				r.First.X = -fromSpine - out.Thickness - inset
			}
		}
	case "wrap":
		r.First = geometry.Pt(wrapped(), j.flaps().spine+fromTail)
	case "head panel": // its left edge is a lined board in from the left side
		r.First.X = wrapped() - j.Cloth.MouthTurnIn - out.Width - s
		r.AtY = false
	case "tail panel": // its left edge is that far in from the right side
		r.First.X = j.Cloth.MouthTurnIn + out.Width + out.Thickness - s - wrapped()
		r.AtY = false
	}
	return r
}

// offMiddle returns how far from the middle of the spine, half so wide, a line of a
// mirrored pattern runs: on it, or half a repeat off, whichever brings a line nearer to
// where it is asked for on a side.
func (p Pattern) offMiddle(half, repeat Length) Length {
	off := geometry.Modulo(half+p.FromSpine, repeat) // asked for, from the middle
	if off > repeat/4 && off < repeat*3/4 {
		return repeat / 2
	}
	return 0
}

// faces returns every piece of patterned stock that is cut, seen from its face
// with its head up, with marks where lines of the pattern fall; and sets on the
// pieces what stock they take beyond their size.
func (j Job) faces(pieces []geometry.Piece) []geometry.Piece {
	var out []geometry.Piece
	for i := range pieces {
		p := &pieces[i]
		switch {
		case j.Pattern.minded() && slices.Contains(patternedPieces, p.Name):
		case j.LiningPattern.minded() && slices.Contains(patternedLinings, p.Name):
		default:
			continue
		}
		places := []string{""}
		switch p.Name {
		case "side paper", "side lining", "divider lining":
			places = []string{"right", "left"}
		}
		for _, place := range places {
			var r geometry.Repeat
			if p.Material == geometry.Lining {
				r = j.liningPatternOn(*p, place)
			} else {
				r = j.patternOn(*p, place)
				_, cut := j.wetAcross(p.Material)
				r.First.X *= Length(cut)
			}
			p.Extra = r.Extra()
			f := faceOf(*p, place, r)
			f.Count = max(1, p.Count/len(places))
			out = append(out, f)
		}
	}
	return out
}

// faceOf returns a piece as it is seen from its face with its head up.
func faceOf(p geometry.Piece, place string, r geometry.Repeat) geometry.Piece {
	w, h := p.Size()
	flip := func(q geometry.Path) geometry.Path { return q.FlipX(w) }
	if drawnFaceUp(p) {
		flip = func(q geometry.Path) geometry.Path { return q }
	} else {
		r.First.X = w - r.First.X
	}
	if place == "left" { // what is drawn with its head at the bottom is turned about
		up := flip
		flip = func(q geometry.Path) geometry.Path { return halfTurn(up(q), w, h) }
		r.First = geometry.Pt(w-r.First.X, h-r.First.Y)
	}
	f := geometry.Piece{
		Name: p.Name + " face", Material: p.Material, Count: 1, Grain: p.Grain, FaceOf: p.Name,
		Outline: flip(p.Outline), Pattern: r, Extra: r.Extra(), Spine: -1,
		FaceUp: "face up (the patterned face)",
		Hand:   "lay it on the pattern, its marks on lines",
	}
	if place != "" {
		f.Name = place + " " + f.Name
	}
	if r.OneWay {
		f.Hand += "; the pattern's top at the head"
	}
	if len(p.Regions) > 0 { // its title stands where the piece's does
		room := flip(geometry.Rectangle(p.Regions[0].Room)).Bounds()
		f.Regions = []geometry.Region{{Name: f.Name, Room: room}}
	}
	for _, c := range p.Slits {
		f.Slits = append(f.Slits, flip(c))
	}
	for _, e := range p.Edges {
		line := flip(geometry.Line(e.From, e.To)).Vertices // turned about by the mirror
		name := e.Name
		if place == "left" { // what is the tail end of the right one is its head end
			name = strings.NewReplacer("tail", "head", "head", "tail").Replace(e.Name)
		}
		f.Edges = append(f.Edges, geometry.Edge{Name: name, From: line[0].Point, To: line[1].Point})
	}
	f.Guides = patternMarks(f)
	return f
}

// halfTurn turns a path by half a turn within its box.
func halfTurn(p geometry.Path, w, h Length) geometry.Path {
	vs := make([]geometry.Vertex, len(p.Vertices))
	for i, v := range p.Vertices {
		vs[i] = geometry.Vertex{Point: geometry.Pt(w-v.X, h-v.Y), Bulge: v.Bulge}
	}
	return geometry.Path{Vertices: vs, Closed: p.Closed}
}

// ofPattern tells what the pattern costs.
func (c Case) ofPattern() (remarks []plan.Remark) {
	j := c.Stands
	if !j.Pattern.minded() && !j.LiningPattern.minded() {
		return nil
	}
	var more float64
	for _, p := range c.Pieces {
		if p.Extra == (geometry.Point{}) {
			continue
		}
		w, h := p.Size()
		rw, rh := p.Rough()
		more += float64(p.Count) * float64(rw*rh-w*h)
		each := ""
		if p.Count > 1 {
			each = "each "
		}
		remarks = append(remarks, plan.Say("the printed design: cut "+each+p.Name+" to %s x %s first, so that lines can fall where they should", rw, rh))
	}
	if more > 0 {
		area := fmt.Sprintf("%.0f cm²", more/100)
		if j.Unit == geometry.IN {
			area = fmt.Sprintf("%.0f in²", more/float64(geometry.Inch*geometry.Inch))
		}
		remarks = append(remarks, plan.Say("the printed design takes "+area+" of stock more than the pieces"))
	}
	if j.Pattern.Match == MatchMirrored && (j.Covering == AllCloth || j.Covering == AllPaper) {
		m := geometry.Cloth
		if j.Covering == AllPaper {
			m = geometry.Paper
		}
		wet, _ := j.wetAcross(m)
		at := geometry.Modulo(j.Pattern.offMiddle(j.Outside().Thickness/2, wet)-j.Outside().Thickness/2, wet)
		remarks = append(remarks, plan.Say("a mirrored design is centred on the spine of a wrap: lines fall %s from the spine edges of the sides, and every %s on", at, wet))
	}
	return append(remarks, j.ofLiningPattern()...)
}
