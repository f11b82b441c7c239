package chemise

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
	"forel/geometry/work"
)

// steps returns the order of work (common practice, no source).
func (c made) steps() []plan.Step {
	m, j := c.model(), c.job
	headAndTail, ends := m.turnedIn()
	open, done := m.closing()
	own := ""
	if j.ForeEdge == Hooks {
		own = " Measure the thickness of the book's own cover too, at its fore-edge: a hook goes over it."
	}
	closing := plan.Step{
		Title: "Dry the chemise and close it round the book",
		Short: plan.Say("Dry it flat under a weight, then crease the joints and close it round the book. Measure it: the slipcase or box is made for what you find."),
		Spells: []work.Spell{
			work.Do(work.Press, 1).Dry(work.LiningDry, "the paste of the chemise's lining", "boards and a weight").As("put it under boards"),
			work.Do(work.Fold, len(c.job.panels())-1).And(work.Press, 1).Dry(work.LastDry, "the chemise, closed round the book", "a light weight").As("crease the joints and close it"),
			work.Do(work.Try, 1).And(work.Measure, 1).As("try and measure it"),
		},
		Text: []stage.Say{
			plan.Say("Lay the chemise flat between release papers and boards, with a weight on top, " + plan.Dries + "."),
			plan.Say("Crease each joint along a straightedge, then close the chemise round the book, wrapped in release paper, and leave it so under a light weight overnight."),
			j.closeWords(),
		},
		Pictures: [][]stage.Picture{open},
		Checks:   []plan.Check{j.closedCheck()},
	}
	if done.Faces != nil {
		closing.Pictures = append(closing.Pictures, []stage.Picture{done})
	}
	return []plan.Step{
		{
			Title:  "Measure the book for its chemise",
			Short:  plan.Say("Measure the book for its chemise, and the materials, several layers of each with a caliper."),
			Spells: []work.Spell{work.Do(work.Measure, 1+work.MaterialsIn(c.pieces))},
			Text: []stage.Say{
				plan.Say("Shut the book and press it lightly. Measure the height along both covers, the width with the round of the spine, the thickness through both covers, each at three places. Write every reading on the worksheet; the largest counts." + own),
				plan.Say("Measure the materials too: several layers together, with a caliper, divided by their number."),
			},
			Pictures: [][]stage.Picture{{draft.MeasuredBook(j.Book().Size())}},
			Checks:   j.measureChecks(),
		},
		{
			Title:  "Cut the boards of the chemise",
			Short:  plan.Say("Cut the thin boards, all at one setting in height, the grain from head to tail. Try a joint on a strip: see the checks."),
			Spells: []work.Spell{work.Do(work.Print, 1).And(work.CutBoard, work.CountedOf(c.pieces, geometry.ThinBoard)).And(work.Try, 1)},
			Text: []stage.Say{
				plan.Say("Print templates.pdf at actual size, 100 %%. Measure the rulers at the foot of a page before you cut: 100 mm and 4 in. Join sheets at their circles with tape."),
				plan.Say("Lay the templates on the board with every arrow along the grain. Cut all boards at one setting in height, then each to its width, in light strokes, your fingers behind the edge of the straightedge. Mark each board with its name."),
			},
			Checks: []plan.Check{j.cutCheck(), j.jointCheck()},
		},
		{
			Title:  "Glue the boards to the covering",
			Short:  plan.Say("Glue the boards to the covering on their ruled lines, a joint of %s between each two.", j.joint()),
			Spells: []work.Spell{work.Do(work.CutSheet, 1).And(work.Paste, work.CountedOf(c.pieces, geometry.ThinBoard))},
			Text: []stage.Say{
				plan.Say("Prick the corners of the boards through the template onto the back of the covering and rule their outlines. Cut a spacer %s wide, as wide as a joint.", j.joint()),
				plan.Say("Glue a board, lay it on its lines and rub it down from the other side; begin with the spine. Lay the next against the spacer. All heads stand on one line."),
			},
			Pictures: [][]stage.Picture{m.laid()},
			Checks:   []plan.Check{j.laidCheck()},
		},
		{
			Title:  "Turn in head and tail",
			Short:  plan.Say("Turn the covering in at head and tail first; work it down into each joint. Pinch in what stands past the corners."),
			Spells: []work.Spell{work.Do(work.TurnIn, 2)},
			Text: []stage.Say{
				plan.Say("Cut the corners of the covering as the template shows: the cut stays %s from the corner of the board, measured along each edge. Cut closer, and the corner is bare.", j.corner()),
				plan.Say("Glue the turn-in at the head, draw it over the edge and rub it down on the inside; work it down into each joint with the edge of a folder. Do the same at the tail. Pinch what stands past the corners round them with a fingernail."),
			},
			Pictures: [][]stage.Picture{headAndTail},
		},
		{
			Title:  "Turn in the ends",
			Short:  plan.Say("Then turn in both ends, over head and tail."),
			Spells: []work.Spell{work.Do(work.TurnIn, 2)},
			Text: []stage.Say{
				plan.Say("Glue the turn-ins at both ends, draw them over the edges and rub them down on the inside, over those of head and tail."),
			},
			Pictures: [][]stage.Picture{ends},
		},
		{
			Title:  "Line the inside",
			Short:  plan.Say("Paste the lining in from the spine outward, down into each joint and up again."),
			Spells: []work.Spell{work.Do(work.CutSheet, 1).And(work.Cover, len(c.job.panels())).And(work.Trim, 1)},
			Text: []stage.Say{
				plan.Say("Paste the lining and lay it down at the middle of the spine, %s back from head and tail. Rub it down into the joints beside the spine with the edge of a folder, then up onto the covers, and so on outward: each joint takes %s of it beyond its own width.", j.Margin, 2*j.Board),
				plan.Say("Before it dries, close each joint to a right angle once and lay it flat again, so that the lining has its length. Trim it at both ends, %s from the edge.", j.Margin),
			},
			Pictures: [][]stage.Picture{m.lined()},
		},
		closing,
	}
}

// closeWords says how the chemise goes round the book.
func (j Job) closeWords() stage.Say {
	switch j.ForeEdge {
	case Lapped:
		return plan.Say("Lay the book on the back cover, close against the spine. Turn the back wall up and its flap over the book, the front cover over the flap, the front wall down over the back wall.")
	case LappedOnly:
		return plan.Say("Lay the book on the back cover, close against the spine. Turn the back wall up, the front cover over the book, the front wall down over the back wall.")
	case Walls:
		return plan.Say("Lay the book on the back cover, close against the spine. Turn the back wall up and the front cover over the book; the front wall comes down to meet the back wall.")
	case Hooks:
		return plan.Say("Open the book and hook the chemise over the fore-edge of each of its covers, the flap inside the cover, as a dust jacket goes on. Shut the book.")
	}
	return plan.Say("Lay the book on the back cover, close against the spine, and turn the front cover over it.")
}
