package slipcase

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/foldup"
)

// corner is an inner corner of the case on a lining as it is seen from its face with the
// head up, or as it is drawn: the line that it is there, and how places along it are
// counted.
type corner struct {
	upright bool   // it runs along the Y of the lining
	from    Length // the place that it is counted from: at the tail, the spine wall or the right side
	way     Length // 1 where the count grows with X or Y, else -1
}

// meeting is where lines of two linings meet at an inner corner.
type meeting struct {
	at     string // "spine wall and right side"
	off    Length // by which those of one run past those of the other
	counts bool   // lines are to meet there
	times  int    // how often there is such a corner: at each divider
}

// inside returns the room inside, on the face of a lining: from the board that it is pasted
// to, or from where it is seated. l is the thickness of the linings.
func inside(p geometry.Piece, boards []geometry.Piece, place string, l Length) geometry.Box {
	w, h := p.Size()
	var box geometry.Box
	if drawnFaceUp(p) {
		lo, hi := p.Seats[0].At[0].At, p.Seats[0].At[1].At
		box = geometry.Bx(lo.X+l, lo.Y+l, w, hi.Y-l)
	} else {
		b, _ := geometry.Find(boards, p.Over)
		at := p.Regions[0].Room // of the board, on the back
		box = b.Regions[0].Room.Move(geometry.Pt(w-at.Max.X, at.Min.Y))
	}
	if place == "left" {
		box = geometry.Bx(w-box.Max.X, h-box.Max.Y, w-box.Min.X, h-box.Min.Y)
	}
	return box
}

// corners returns the inner corners on a face drawing, by what stands beside it there.
func corners(name string, in geometry.Box) map[string]corner {
	switch name {
	case "right side lining face", "left divider lining face":
		return map[string]corner{"spine wall": {true, in.Min.Y, 1}, "head": {false, in.Min.X, 1}, "tail": {false, in.Min.X, 1}}
	case "left side lining face", "right divider lining face":
		return map[string]corner{"spine wall": {true, in.Min.Y, 1}, "head": {false, in.Max.X, -1}, "tail": {false, in.Max.X, -1}}
	case "spine lining face":
		return map[string]corner{"right side": {true, in.Min.Y, 1}, "left side": {true, in.Min.Y, 1}, "head": {false, in.Max.X, -1}, "tail": {false, in.Max.X, -1},
			rightOfDivider: {true, in.Min.Y, 1}, leftOfDivider: {true, in.Min.Y, 1}}
	}
	ends := map[string]corner{"spine wall": {true, in.Min.Y, 1}} // the head: drawn with the right side below, the spine on the left
	if name == "tail lining face" {
		ends["spine wall"] = corner{true, in.Max.Y, -1}
	}
	for _, side := range []string{"right side", "left side", rightOfDivider, leftOfDivider} {
		ends[side] = corner{false, in.Min.X, 1}
	}
	return ends
}

// line returns where a line of the pattern meets a corner, counted along it, and how far on
// the next does; ok is false where none is to fall on a place.
func (c corner) line(r geometry.Repeat) (at, step Length, ok bool) {
	if c.upright {
		return c.way * (r.First.Y - c.from), r.Along, r.AtY
	}
	return c.way * (r.First.X - c.from), r.Across, r.AtX
}

// walls of the linings, by the names of their face drawings.
var liningWalls = []struct{ wall, face string }{
	{"right side", "right side lining face"}, {"left side", "left side lining face"}, {"spine wall", "spine lining face"},
	{"head", "head lining face"}, {"tail", "tail lining face"},
	{rightOfDivider, "right divider lining face"}, {leftOfDivider, "left divider lining face"},
}

const (
	rightOfDivider = "right face of a divider"
	leftOfDivider  = "left face of a divider"
)

// meetings returns how lines of the linings meet at each inner corner, measured on their
// face drawings. l is the thickness of the linings.
func meetings(pieces, faces []geometry.Piece, l Length) (out []meeting) {
	at := map[string]map[string]corner{}
	of := map[string]geometry.Repeat{}
	times := map[string]int{}
	for _, w := range liningWalls {
		f, ok := geometry.Find(faces, w.face)
		switch {
		case !ok && (w.wall == rightOfDivider || w.wall == leftOfDivider):
			continue
		case !ok:
			return nil
		}
		p, _ := geometry.Find(pieces, f.FaceOf)
		place := ""
		if w.wall == "left side" || w.wall == leftOfDivider {
			place = "left"
		}
		at[w.wall], of[w.wall] = corners(f.Name, inside(p, pieces, place, l)), f.Pattern
		times[w.wall] = f.Count
	}
	for i, a := range liningWalls {
		for _, b := range liningWalls[i+1:] {
			c, meet := at[a.wall][b.wall]
			if !meet || at[b.wall] == nil {
				continue
			}
			one, step, ok := c.line(of[a.wall])
			two, other, also := at[b.wall][a.wall].line(of[b.wall])
			m := meeting{at: b.wall + " and " + a.wall, counts: ok && also && step.Near(other), times: max(times[a.wall], times[b.wall])}
			if m.counts {
				m.off = Length(math.Abs(math.Remainder((one - two).MM(), step.MM())))
			}
			out = append(out, m)
		}
	}
	return out
}

// meet tells of the corners at which lines of the linings meet, as a remark, and of those
// where they do not as faults.
func meet(all []meeting) (remarks []string, faults []foldup.Fault) {
	n, of := 0, 0
	var most Length
	for _, m := range all {
		of += m.times
		if !m.counts {
			continue
		}
		n, most = n+m.times, max(most, m.off)
		if m.off > linesOff {
			faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: "linings", What: fmt.Sprintf("lines of the design miss each other by %.2f mm at the corner of %s", m.off.MM(), m.at)})
		}
	}
	if n > 0 {
		remarks = []string{fmt.Sprintf("lines of the linings meet at %d of the %d inner corners, to %.2f mm", n, of, most.MM())}
	}
	return remarks, faults
}

// linesOff is by how much lines may miss each other: less than can be seen.
const linesOff Length = 0.01
