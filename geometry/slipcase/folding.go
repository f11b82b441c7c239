package slipcase

import (
	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/stage/draft"
)

// The groups of leaves of a covering. What is turned in at the mouth has two folds, over the
// edge of the board and into the case, and goes from 0 to 180 degrees.
const (
	margins   = iota // what goes onto the sides
	sideFlaps        // at head and tail, hung on what lies on a side
	spineFlap        // at head and tail, hung on the spine
	sideTabs         // at the mouth, hung on what lies on a side
	middleTab        // at the mouth, hung on the part that is laid first
	holeTabs         // at a thumb hole
)

// folds is how far the groups of a covering are folded.
type folds = draft.Folded

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

// angle returns the angle of every leaf at a stage.
func angle(hung fold.Sheet, s folds) draft.Angle {
	return func(leaf int) float64 {
		l := hung.Leaves[leaf]
		switch {
		case l.Tab:
			return s[holeTabs]
		case onSide(l.Face):
			return s[margins]
		case onEnd(l.Face) && onSide(hung.Leaves[l.On].Face):
			return s[sideFlaps]
		case onEnd(l.Face):
			return s[spineFlap]
		case viaRoot(hung, leaf):
			return turnedIn(hung, leaf, s[middleTab])
		}
		return turnedIn(hung, leaf, s[sideTabs])
	}
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
