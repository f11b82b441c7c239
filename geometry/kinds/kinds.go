// Package kinds is the table of the kinds of case. It is the one package that
// knows them all; a new kind is a package of its own and a row here.
package kinds

import (
	"slices"

	"forel/geometry"
	"forel/geometry/box"
	"forel/geometry/chemise"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
)

// All lists the kinds. The first is made where a job file names none; of several
// constructions of a kind, the first.
var All = []plan.Kind{boards, card, worn, wornIn(boards), wornIn(card), trays, wornIn(trays)}

var (
	boards = plan.Kind{
		Name: "slipcase", Construction: "boards", About: "a case of boards",
		New:   func(u geometry.Unit) plan.Job { j := slipcase.DefaultJob(u); return &j },
		Named: slipcase.Named,
	}
	card = plan.Kind{
		Name: "slipcase", Construction: "card", About: "a case of card",
		New:   func(u geometry.Unit) plan.Job { j := onepiece.DefaultJob(u); return &j },
		Named: onepiece.Named,
	}
	worn = plan.Kind{
		Name: "chemise", About: "a chemise",
		New:   func(u geometry.Unit) plan.Job { j := chemise.DefaultJob(u); return &j },
		Named: chemise.Named,
	}
	trays = plan.Kind{
		Name: "drop-spine box", About: "a drop-spine box",
		New:   func(u geometry.Unit) plan.Job { j := box.DefaultJob(u); return &j },
		Named: box.Named,
	}
)

// wornIn returns the kind of a chemise in a case of another kind, both made from one
// job.
func wornIn(outer plan.Kind) plan.Kind {
	return plan.Kind{
		Name: worn.Name + " and " + outer.Name, Construction: outer.Construction, About: worn.About + " in " + outer.About,
		New: func(u geometry.Unit) plan.Job {
			return plan.Within(func() (plan.Inner, plan.Outer) { return worn.New(u).(plan.Inner), outer.New(u).(plan.Outer) }, worn.Name, outer.Name)
		},
		Named: slices.Concat(worn.Named, outer.Named),
	}
}

// Names lists the words of the key "kind".
func Names() []string { return words(func(k plan.Kind) string { return k.Name }) }

// Constructions lists the words of the key "construction".
func Constructions() []string { return words(func(k plan.Kind) string { return k.Construction }) }

// Named lists the keys for what materials of every kind are called.
func Named() (all []plan.Named) {
	for _, k := range All {
		for _, n := range k.Named {
			if !slices.Contains(all, n) {
				all = append(all, n)
			}
		}
	}
	return all
}

// words lists what is said of the kinds, each once, in the order of the table.
func words(said func(plan.Kind) string) (out []string) {
	for _, k := range All {
		if w := said(k); w != "" && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// Find returns the kind of a name and a construction; where it is made in one
// way, or the construction is not one of its own, the first of the name.
func Find(name, construction string) (plan.Kind, bool) {
	for _, want := range []func(plan.Kind) bool{
		func(k plan.Kind) bool { return k.Name == name && k.Construction == construction },
		func(k plan.Kind) bool { return k.Name == name },
	} {
		if i := slices.IndexFunc(All, want); i >= 0 {
			return All[i], true
		}
	}
	return plan.Kind{}, false
}
