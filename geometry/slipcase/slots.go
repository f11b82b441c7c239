package slipcase

import (
	"slices"

	"forel/geometry"
)

// How what is turned in at head and tail is cut out for a divider (common practice,
// no source).
const (
	slotPlay    Length = 0.5  // beside the strip on a divider
	leastGround Length = 0.01 // what stands between the fold and a cut-out, or depth of a cut-out; less is none
	leastTab    Length = 0.3  // breadth of a tab between two cuts; a narrower one is cut away
)

// slots returns from where to where across the case, from the inner face of the left
// side, a divider with its strip keeps out what is turned in and reaches so far
// inside; none where the dividers stand farther back.
func (j Job) slots(reach Length) [][2]Length {
	if reach-j.Divider.SetBack < leastGround {
		return nil
	}
	var out [][2]Length
	beside := j.Cloth.Thickness + slotPlay
	for _, d := range j.dividerLines() {
		out = append(out, [2]Length{d[0] - beside, d[1] + beside})
	}
	return out
}

// endTurnIn is what is turned in over the inner edge of head or tail wall, back up, mouth
// at the top, between two edges that run from that edge to its end.
type endTurnIn struct {
	left, right [2]geometry.Point
	slots       [][2]Length // for dividers, from left to right
	back        Length      // how far from the mouth the dividers stand
}

// turnedTab is a part of a turn-in between two slots, from its fold to its end.
type turnedTab struct {
	fold [2]Length // along the inner edge of the wall; the same for all where the slots do not reach it
	room geometry.Box
}

// cut returns the way round a turn-in from the foot of its left edge to that of its right
// one, and its tabs. A slot goes as deep as the divider stands, but never past the
// inner edge of the wall, whose edge at the mouth stays covered.
func (t endTurnIn) cut() (way []geometry.Point, tabs []turnedTab) {
	root, tip := t.left[0].Y, t.left[1].Y
	floor := root + t.back
	at := func(edge [2]geometry.Point, y Length) geometry.Point {
		return edge[0].Add(edge[1].Sub(edge[0]).Mul(((y - root) / (tip - root)).MM()))
	}
	way = []geometry.Point{t.left[0]}
	for i := 0; i <= len(t.slots); i++ {
		low, high := at(t.left, floor), t.left[1]
		if i > 0 {
			low, high = geometry.Pt(t.slots[i-1][1], floor), geometry.Pt(t.slots[i-1][1], tip)
		}
		far, farHigh := at(t.right, floor), t.right[1]
		if i < len(t.slots) {
			far, farHigh = geometry.Pt(t.slots[i][0], floor), geometry.Pt(t.slots[i][0], tip)
		}
		fold := [2]Length{low.X, far.X}
		if t.back > 0 {
			fold = [2]Length{t.left[0].X, t.right[0].X}
		}
		if len(t.slots) > 0 && min(far.X-low.X, farHigh.X-high.X) < leastTab {
			if i == 0 {
				way = append(way, low)
			}
			if i == len(t.slots) {
				way = append(way, far)
			}
			continue
		}
		way = append(way, low, high, farHigh, far)
		tabs = append(tabs, turnedTab{fold, geometry.Bx(max(low.X, high.X), floor, min(far.X, farHigh.X), tip)})
	}
	way = append(way, t.right[0])
	// Of points in one place one is kept, and none along a straight edge.
	way = slices.CompactFunc(way, geometry.Point.Near)
	for i := 1; i+1 < len(way); {
		if way[i].ToLine(way[i-1], way[i+1]) < 1e-9 {
			way = slices.Delete(way, i, i+1)
			continue
		}
		i++
	}
	return way, tabs
}

// folds returns where a turn-in is folded over the inner edge of the wall.
func (t endTurnIn) folds() []geometry.Path {
	_, tabs := t.cut()
	if len(t.slots) == 0 || t.back > 0 {
		return []geometry.Path{geometry.Line(t.left[0], t.right[0])}
	}
	var out []geometry.Path
	for _, b := range tabs {
		out = append(out, geometry.Line(geometry.Pt(b.fold[0], t.left[0].Y), geometry.Pt(b.fold[1], t.left[0].Y)))
	}
	return out
}

// turnInBetween returns what is turned in between an edge and its mirror image. The room
// between the boards begins at x, with the right side of the case where turned.
func (j Job) turnInBetween(root, tip geometry.Point, mirror func(geometry.Point) geometry.Point, x Length, turned bool) endTurnIn {
	t := endTurnIn{left: [2]geometry.Point{root, tip}, right: [2]geometry.Point{mirror(root), mirror(tip)}}
	room := j.Between().Thickness
	for _, s := range j.slots(tip.Y - root.Y) {
		if t.back = j.Divider.SetBack; t.back < leastGround {
			t.back = 0
		}
		if turned {
			s = [2]Length{room - s[1], room - s[0]}
		}
		t.slots = append(t.slots, [2]Length{x + s[0], x + s[1]})
	}
	if turned {
		slices.Reverse(t.slots)
	}
	return t
}

// margins tells how a turn-in is cut out for dividers, in words and figures.
func (t endTurnIn) margins() []geometry.Margin {
	if len(t.slots) == 0 {
		return nil
	}
	out := []geometry.Margin{{Name: "cut out for a divider and its strip", Length: t.slots[0][1] - t.slots[0][0]}}
	if t.back > 0 {
		out = append(out, geometry.Margin{Name: "from the inner edge of the wall to the ground of a cut-out", Length: t.back})
	}
	return out
}

// rooms returns the tabs that are named: narrow ones beside wide ones are not, their names
// would crowd.
func rooms(tabs []turnedTab) (out []geometry.Box) {
	var widest Length
	for _, t := range tabs {
		widest = max(widest, t.room.Width())
	}
	for _, t := range tabs {
		if t.room.Width() >= 2*widest/3 {
			out = append(out, t.room)
		}
	}
	return out
}
