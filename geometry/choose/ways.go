package choose

import (
	"slices"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/stage"
)

// What is light, thin, or much (common practice, no source).
const (
	light    = 300.0  // grams: folded card holds it well
	lightest = 1000.0 // that corrugated board is advised for
	much     = 3000.0 // more is pulled out of a slipcase by its spine
	thin     = 12     // mm: what two fingers can take hold of at the mouth
)

// way is one way of casing a book, with why.
type way struct {
	kind, construction string
	says               string // what it is called, where not as its kind is
	folded             Reason // of what is folded: why it is so thick
	why                []Reason
	sets               []job.Change
	least              Length       // of its board, by published examples
	hole               []job.Change // a thumb hole, left out where it can't be
	bends              bool         // its board is worked out
}

const holeKey = "thumb_hole.shape"

var (
	boards = way{kind: "slipcase", construction: "boards", bends: true}
	card   = way{kind: "slipcase", construction: "card", says: "a case of scored card, folded from one piece",
		folded: why(practice, "usual for a case that is folded; measure yours, and type that in")}
	worn = way{kind: "chemise and slipcase", construction: "boards", bends: true, hole: []job.Change{{Key: holeKey, Word: "semicircle"}}}
	box  = way{kind: "drop-spine box", bends: true, least: 3 * geometry.Inch / 32}
)

func (w way) because(r ...Reason) way {
	w.why = r
	return w
}

// corrugated is a case of corrugated board.
func corrugated(u geometry.Unit) way {
	w := card
	w.says = "a case of corrugated board, folded from one piece"
	w.folded = why("from memory", "board with one wall is often about so thick; measure yours, and type that in")
	w.sets = []job.Change{{Key: "card.kind", Word: "corrugated"}, {Key: "card.thickness", Value: job.Round(u, 3, 0.12)}}
	return w
}

// ways lists the ways for the books, the best first. Those after it are for where it can't
// be made.
func ways(a Ask, c Choice) (all []way) {
	has := func(condition string) bool { return slices.Contains(a.Conditions, condition) }
	slip := boards.because(why(practice, "five boards, covered and lined, are stiff, last, and take cloth and paper"))
	several := len(a.Books) > 1
	if several {
		return []way{boards.because(why(practice, "a case of boards takes several volumes side by side; where one of them needs a chemise or a box, make that for it alone"))}
	}
	lying := why(practice, "a box opens flat on the table: the book is laid in and lifted out, and nothing slides along it")
	switch {
	case has(Loose):
		all = append(all, box.because(why(practice, "what is loose slides out of a slipcase that is tipped, and catches when it is pushed in"), lying))
	case has(Raised):
		all = append(all, box.because(why(practice, "what stands out is scraped in a slipcase, and scrapes its lining"), lying))
	case has(Fragile):
		w := worn
		if a.Use == Archive {
			w.hole = nil
		}
		all = append(all, w.because(
			why(diehl, "a chemise is made before the case for a leather book that is elaborately tooled: the book does not rub as it slides"),
			why(practice, "a covering that rubs or flakes wants the same")))
	}
	if c.Grams > much {
		all = append(all, box.because(why(practice, "so heavy a book is pulled out of a slipcase by its spine, and lands on its tail"), lying))
	}
	switch {
	case a.Use == Travel:
		all = append(all, box.because(why(practice, "a slipcase leaves the spine bare and lets the book out; a box closes all round"), lying))
	case a.Use == Archive && c.Grams <= lightest && c.Size.Thickness >= thin:
		all = append(all, corrugated(a.Unit).because(
			why(cornell, "a conservation workshop folds a slipcase from one piece of corrugated board"),
			why(practice, "ask for board of archival quality, free of acid")))
	case a.Use != Gift && a.Use != Daily && c.Grams <= light && c.Size.Thickness < thin:
		all = append(all, card.because(why(practice, "folded card is the least work, and holds what is light and thin")))
	}
	return append(all, slip, box.because(why(practice, "a slipcase of boards can't be made for it, or can't carry it"), lying))
}

// out tells how the book comes out; hole is whether there is a thumb hole.
func out(a Ask, c Choice, w way, hole bool) Advice {
	o := Advice{Key: "out", Name: "thumb hole or ribbon", Says: stage.Words("neither")}
	simple := []Reason{why(roberts+`, "slipcase"`, "a simple slipcase without an inner box or a chemise should not be notched")}
	switch {
	case w.kind != worn.kind:
	case w.hole == nil:
		simple = []Reason{why(practice, "without a hole no dust comes in")}
	default:
		simple = []Reason{why(practice, "there is no room for a hole that a thumb can use")}
	}
	switch {
	case w.kind == box.kind:
		o.Why = []Reason{why(practice, "the box opens flat, and the book is lifted out")}
	case hole:
		o.Says = stage.Words("a semicircular thumb hole")
		o.Why = []Reason{why(roberts+`, "thumb hole"`, "it eases the removal of the book, and is a semicircle in the best work"),
			why(roberts+`, "slipcase"`, "only a simple slipcase, without an inner box or a chemise, should not be notched")}
	case c.Size.Thickness < thin || a.Use == Daily:
		// Round the fore-edge, on both sides to the mouth, and enough to take hold of.
		step := job.Round(a.Unit, 10, 0.5)
		long := ((2*c.Size.Width + c.Size.Thickness + 2*ribbonEnd) / step).Round(1) * step
		o.Says = stage.Words("a ribbon, laid in by hand: no key of a job file knows it")
		o.Why = simple
		if c.Size.Thickness < thin {
			o.Why = append(o.Why, why(practice, "so thin a case cannot be reached into"))
		} else {
			o.Why = append(o.Why, why(practice, "what is taken out every day is then not pulled by its spine"))
		}
		o.Why = append(o.Why, why(practice, "cut about %s of a smooth ribbon, lay it round the fore-edge before the book goes in, both ends out at the mouth, and pull them; it takes its own thickness at the fore-edge and on both sides", long))
	default:
		o.Why = append(simple, why(practice, "tip the case, mouth down, over your open hand"))
	}
	return o
}

// ribbonEnd is what stands out at the mouth (common practice, no source).
const ribbonEnd Length = 30

// others tells of what is not advised, and why.
func others(a Ask, c Choice) (all []Other) {
	add := func(w way, text, source string) {
		k, _ := kinds.Find(w.kind, w.construction)
		if k.About != c.Kind.About {
			all = append(all, Other{k.About, text, source})
		}
	}
	add(boards, "stiffer and handsomer than card, the spine in sight, and less work than a box", practice)
	if len(a.Books) > 1 {
		return all // nothing else takes several
	}
	if c.Grams > lightest {
		add(card, "not for so heavy a book", practice)
	} else {
		add(card, "less work than boards, and less stiff; corrugated, for keeping rather than for show", practice)
	}
	add(worn, "for a finely tooled or tender covering, which it keeps from rubbing", diehl)
	add(box, "for what is loose, raised or heavy, and to cover the spine too; the most work", practice)
	return all
}
