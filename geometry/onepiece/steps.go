package onepiece

import (
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
	"forel/geometry/work"
)

// steps returns the order of work (common practice, no source).
func (c Case) steps() []plan.Step {
	m := c.model()
	j, w := c.Job, c.Job.Card.words()
	blank, sides, flaps, done := m.pictures()
	what := j.Whose(0)
	measure := plan.Step{
		Title: "Measure the book",
		Short: plan.Say("Measure the book, and the " + w.name + ": several layers together with a caliper" + w.gently + "."),
		Text: []stage.Say{
			plan.Say("Shut the book and press it lightly. Measure height, width with the round of the spine, and thickness at three places each. Write every reading on the worksheet; the largest counts."),
			plan.Say("Measure the " + w.name + " with a caliper: several layers together, divided by their number" + w.gently + "."),
		},
		Pictures: [][]stage.Picture{{draft.MeasuredBook(j.Book().Size())}},
		Checks:   j.measureChecks(),
		Spells:   []work.Spell{work.Do(work.Measure, len(j.Books)+1)},
	}
	if j.Wears != "" {
		worn := plan.MeasureWorn(j.Common, "slipcase")
		measure.Title, measure.Short, measure.Text = worn.Title, worn.Short, append(worn.Text, measure.Text[1])
	}
	return []plan.Step{
		measure,
		{
			Title:  "Print the template, " + w.score + " and cut",
			Short:  plan.Say(w.strip + " first, fold it and measure it: if an inside measure is off, change card.bend. " + w.short + ", then cut the outline and the slits."),
			Spells: []work.Spell{work.Do(work.Print, 1).And(work.Score, len(c.Pieces[0].Folds)).And(work.CutCard, 1)},
			Text: []stage.Say{
				plan.Say("Print templates.pdf at actual size, 100 %%, and measure its rulers: 100 mm and 4 in. Join its sheets at their circles and prick the corners through onto the inside of the " + w.name + ", the arrow along the " + j.Card.material().Direction() + "."),
				plan.Say(w.strip + " first, fold it and measure it: if an inside measure is off, change card.bend in the job and print again."),
				plan.Say(w.folds + " Then cut the outline and the slits, in light strokes, fingers behind the edge of the straightedge."),
			},
			Pictures: [][]stage.Picture{{blank}},
			Checks:   []plan.Check{j.stripCheck()},
		},
		{
			Title:  "Fold the sides and the inner flaps",
			Short:  plan.Say("Fold both sides up from the spine, inside in. Fold the inner flaps of the left side in at head and tail: they lie inside."),
			Spells: []work.Spell{work.Do(work.Fold, 4).And(work.Try, 1)},
			Text: []stage.Say{
				plan.Say(w.slowly+"Fold both sides up from the spine, inside in, and try "+what+" between them: it must lie there with %s of play.", j.Clearance.Thickness),
				plan.Say("Fold the inner flaps of the left side in, at head and at tail. They make the smooth inside."),
			},
			Pictures: [][]stage.Picture{sides},
			Checks:   []plan.Check{j.blankCheck()},
		},
		{
			Title:  "Glue the spine flaps, then the outer flaps",
			Short:  plan.Say("Glue the inside of the spine flaps and fold them onto the inner flaps; then the outer flaps, beside the spine flaps: they lie outside. Let it dry under a weight with the mouth open, filled with something as thick as " + what + "."),
			Spells: []work.Spell{work.Do(work.Join, 4).And(work.Press, 1).Dry(work.GlueDry, "the glue of the flaps", "a weight, the case filled")},
			Text: []stage.Say{
				plan.Say("Glue the inside of the spine flap and fold it onto the inner flap; press. Glue the inside of the outer flap and fold it down beside it. They meet in a slanting line. Do the same at the tail."),
				plan.Say("Fill the case with something as thick as " + what + ", wrapped in release paper, and put a weight on it, mouth open, " + plan.Dries + "."),
			},
			Pictures: [][]stage.Picture{flaps},
		},
		{
			Title:  "Try " + what,
			Short:  plan.Say("Slide " + what + " in, fore-edge first."),
			Spells: []work.Spell{work.Do(work.Try, 1)},
			Text: append([]stage.Say{
				plan.Say("Slide "+what+" in, fore-edge first: its spine shows at the mouth. It has %s of play in height and %s in thickness. If it sticks, look for glue inside; if a flap stands in the way, the case was folded in another order than the figures show.", j.Clearance.Height, j.Clearance.Thickness),
			}, plan.TakenOut(what, j.Book().Thick())...),
			Pictures: [][]stage.Picture{{done}},
			Checks:   []plan.Check{j.finishedCheck()},
		},
	}
}
