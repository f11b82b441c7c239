package slipcase_test

import (
	"fmt"

	"forel/geometry/slipcase"
)

// checkTurnIn: the side paper's turn-in stands clear of head and tail walls
// and of the cloth folded over them, which lies double in the corners where the
// middle tab covers the tuck of a side tab. It gets round the board's edge.
func checkTurnIn(j slipcase.Job, ps pieces) error {
	q := truthOf(j)
	wide, high := ps["side paper"].Size()
	// The paper lies in the middle of the side's height, turned in as it lies.
	layers, cloth := 1.0, ps["head cloth"]
	_, end := cloth.Size()
	if sideTab(cloth, end-1) > q.m-q.s+eps { // past the inner face of the side
		layers = 2
	}
	if clear := (q.Ho-high.MM())/2 - q.s - layers*q.k; clear < -eps {
		return fmt.Errorf("turn-in is %v over the walls or the cloth on them", -clear)
	}
	if in := wide.MM() - (q.Wo - q.i) - q.s; in <= 0 || in > q.cavW+eps {
		return fmt.Errorf("turn-in goes %v into a cavity %v deep", in, q.cavW)
	}
	return nil
}

// checkPaperLapsCloth: the paper covers the edge of the cloth on the sides.
func checkPaperLapsCloth(j slipcase.Job, ps pieces) error {
	q := truthOf(j)
	wide, high := ps["side paper"].Size()
	spine, _ := ps["spine cloth"].Size()
	head, _ := ps["head cloth"].Size()
	if onSide, bare := (spine.MM()-q.To)/2, q.Wo-(wide.MM()-q.x); bare >= onSide {
		return fmt.Errorf("paper starts %v from the spine, the cloth ends at %v", bare, onSide)
	}
	if onSide, bare := (head.MM()-q.To)/2, (q.Ho-high.MM())/2; bare >= onSide {
		return fmt.Errorf("paper starts %v from the head, the cloth ends at %v", bare, onSide)
	}
	return nil
}

// checkPaperFolds: the paper folds at the two edges of the board at the mouth.
func checkPaperFolds(j slipcase.Job, ps pieces) error {
	q, p := truthOf(j), ps["side paper"]
	_, high := p.Size()
	if len(p.Folds) != 2 {
		return fmt.Errorf("%d folds", len(p.Folds))
	}
	for n, x := range []float64{q.Wo - q.i, q.Wo - q.i + q.s} {
		from, to, _ := ends(p.Folds[n])
		if !same(from.X.MM(), x) || from.X != to.X || from.Distance(to) != high {
			return fmt.Errorf("a fold from %v to %v", from, to)
		}
	}
	return nil
}

// checkBareStrip: on a side, between the end of the spine cloth's margin and
// the spine edge of head and tail cloth, nothing covers the board outside the
// side paper; so the gap must not be wider than that margin.
func checkBareStrip(j slipcase.Job, ps pieces) error {
	q := truthOf(j)
	spine, _ := ps["spine cloth"].Size()
	_, head := ps["head cloth"].Size()
	gap, margin := q.Wo-(head.MM()-q.mouthTurnIn), (spine.MM()-q.To)/2
	if gap > margin+eps {
		return fmt.Errorf("board is bare for %v x %v on the side at head and tail", gap-margin, q.i)
	}
	return nil
}
