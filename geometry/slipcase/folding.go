package slipcase

import (
	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/stage/draft"
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

// angle tells how far the part of every leaf is folded at a stage.
func (s folds) angle(hung fold.Sheet) draft.Angle {
	return func(leaf int) float64 {
		l := hung.Leaves[leaf]
		switch {
		case l.Tab:
			return s.holeTabs
		case onSide(l.Face):
			return s.margins
		case onEnd(l.Face) && onSide(hung.Leaves[l.On].Face):
			return s.sideFlaps
		case onEnd(l.Face):
			return s.spineFlap
		case viaRoot(hung, leaf):
			return s.middleTab
		}
		return s.sideTabs
	}
}

// hinge returns the angle of one hinge of a part that is folded so far. Of what is turned in
// those over the edge of the board go first, those into the case after; what pleats and
// bends in the corners goes last.
func hinge(hung fold.Sheet, leaf int, total float64) float64 {
	l := hung.Leaves[leaf]
	switch {
	case l.Tab, onSide(l.Face), onEnd(l.Face):
		return total
	case !l.Folded:
		if total >= 100 {
			return 90
		}
		return 0
	case mouthEdge(hung.Leaves[l.On].Face): // from the edge into the case
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
