package slipcase

import (
	"forel/geometry"
	"forel/geometry/fold"
)

// folds is how far the folds of a covering are made, in degrees: 0 is flat, 90
// folded over an edge. What is turned in at the mouth has two folds, over the
// edge of the board and into the case, and goes from 0 to 180.
type folds struct {
	margins   float64 // what goes onto the sides
	sideFlaps float64 // at head and tail, hung on what lies on a side
	spineFlap float64 // at head and tail, hung on the spine
	sideTabs  float64 // at the mouth, hung on what lies on a side
	middleTab float64 // at the mouth, hung on the part that is laid first
	holeTabs  float64 // at a thumb hole
}

// made is a covering that is on.
var made = folds{margins: 90, sideFlaps: 90, spineFlap: 90, sideTabs: 180, middleTab: 180, holeTabs: 90}

// between returns the stage part of the way to another.
func (s folds) between(t folds, part float64) folds {
	mix := func(a, b float64) float64 { return a + (b-a)*part }
	return folds{
		margins: mix(s.margins, t.margins), sideFlaps: mix(s.sideFlaps, t.sideFlaps), spineFlap: mix(s.spineFlap, t.spineFlap),
		sideTabs: mix(s.sideTabs, t.sideTabs), middleTab: mix(s.middleTab, t.middleTab), holeTabs: mix(s.holeTabs, t.holeTabs),
	}
}

func onSide(f geometry.Face) bool { return f == LeftOutside || f == RightOutside }
func onEnd(f geometry.Face) bool  { return f == HeadOutside || f == TailOutside }

// viaRoot tells whether a leaf hangs on the part that is laid first other than
// over what lies on a side.
func viaRoot(s fold.Sheet, i int) bool {
	for ; s.Leaves[i].On >= 0; i = s.Leaves[i].On {
		if on := s.Leaves[i].On; onSide(s.Leaves[i].Face) && s.Leaves[on].On < 0 {
			return false
		}
	}
	return true
}

// angle returns the angle of every leaf at a stage.
func (s folds) angle(hung fold.Sheet) func(leaf int) float64 {
	angles := map[int]float64{}
	for i, l := range hung.Leaves {
		if l.On < 0 {
			continue
		}
		on := hung.Leaves[l.On]
		switch {
		case l.Tab:
			angles[i] = s.holeTabs
		case onSide(l.Face):
			angles[i] = s.margins
		case onEnd(l.Face) && onSide(on.Face):
			angles[i] = s.sideFlaps
		case onEnd(l.Face):
			angles[i] = s.spineFlap
		default:
			total := s.middleTab
			if !viaRoot(hung, i) {
				total = s.sideTabs
			}
			angles[i] = turnedIn(hung, i, total)
		}
	}
	return func(leaf int) float64 { return angles[leaf] }
}

// turnedIn returns the angle of one hinge of what is turned in: those over the
// edge of the board go first, those into the case after; what pleats and bends
// in the corners goes last.
func turnedIn(hung fold.Sheet, i int, total float64) float64 {
	l := hung.Leaves[i]
	on := hung.Leaves[l.On]
	switch {
	case !l.Folded:
		if total >= 100 {
			return 90
		}
		return 0
	case mouthEdge(on.Face): // from the edge into the case
		return max(0, total-90)
	}
	return min(90, total)
}

func mouthEdge(f geometry.Face) bool {
	switch f {
	case LeftMouth, RightMouth, HeadMouth, TailMouth:
		return true
	}
	return false
}
