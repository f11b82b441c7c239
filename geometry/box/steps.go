package box

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
	"forel/geometry/wording"
	"forel/geometry/work"
)

// steps returns the order of work: fore-edge wall first and its inside last, ends before
// the walls are turned in (Bibliocat 2007); all else common practice, no source.
func (c made) steps() []plan.Step {
	j, s := c.job, c.stands
	m := c.model()
	measure := plan.Step{
		Title: "Measure the book and the materials",
		Short: plan.Say("Measure the book, and the materials, several layers of each with a caliper."),
		Text:  []stage.Say{plan.Say("Shut the book and press it lightly. Measure the height along both covers, the width with the round of the spine, the thickness through both covers, each at three places. Write every reading on the worksheet; the largest counts.")},
	}
	if j.Wears != "" {
		measure = plan.MeasureWorn(j.Common, "box")
	}
	measure.Text = append(measure.Text,
		plan.Say("Measure the materials too: several layers together, with a caliper, divided by their number. Every layer of cloth counts between two trays that go into each other."),
		plan.Say("Before any board is cut try the paper strips round "+j.Whose(0)+": they are printed at true size with the fit."))
	measure.Pictures = [][]stage.Picture{{draft.MeasuredBook(j.Book().Size())}}
	measure.Checks = j.measureChecks()
	measure.Spells = []work.Spell{work.Do(work.Measure, 1+work.MaterialsIn(c.pieces))}
	out := []plan.Step{
		measure,
		{
			Title:  "Cut the boards of the small tray",
			Short:  plan.Say("Print the small tray alone (on the command line: --only \"small tray\"). Cut its boards, the three walls at one setting in height, and try " + j.Whose(0) + " in them."),
			Spells: []work.Spell{cutTray(c.job.small(), c.job)},
			Text: []stage.Say{
				plan.Say("Print the templates of the small tray alone (on the command line: --only \"small tray\"), at actual size, 100 %%. Measure the rulers at the foot of a page before you cut: 100 mm and 4 in. Join sheets at their circles with tape."),
				plan.Say("Lay the templates on the board with every arrow along the grain. Cut the three walls at one setting in height, then each to its length, in light strokes, your fingers behind the edge of the straightedge. Mark each board with its name."),
				plan.Say("Stand the boards up dry round " + j.Whose(0) + " and look at the check below before you glue anything."),
			},
			Pictures: large(m.boards(c.job.small())),
			Checks:   []plan.Check{j.wallsLevel(j.small()), j.bareSmall()},
		},
		j.glueStep(j.small(), m),
	}
	out = append(out, j.coverSteps(j.small(), m)...)
	out = append(out, c.measureStep(), plan.Step{
		Title:  "Cut the boards of the large tray",
		Short:  plan.Say("Print the large tray for the small one as it measures (on the command line: --only \"large tray\"). Cut its boards and try them over the covered small tray."),
		Spells: []work.Spell{cutTray(s.large(), s)},
		Text: []stage.Say{
			plan.Say("Print the large tray for the measures of the small one (on the command line: --only \"large tray\"). Cut its boards like those of the small tray, the three walls at one setting."),
			plan.Say("Stand the bare boards round the covered small tray on the bench. There must be room for the cloth that is still to come."),
		},
		Pictures: large(m.boards(s.large()), m.tried()),
		Checks:   []plan.Check{s.wallsLevel(s.large()), bareLarge(s)},
	}, s.glueStep(s.large(), m))
	return append(append(out, s.coverLarge(m)), c.caseSteps(m)...)
}

// blocked is what a covered tray dries under.
const blocked = "a light weight, blocks inside"

// cutTray returns the work of cutting a tray's boards and trying them.
func cutTray(w tray, j Job) work.Spell {
	return work.Do(work.Print, 1).And(work.CutBoard, work.CountedOf(j.trayBoards(w), geometry.Board)).And(work.Try, 1)
}

// glueStep returns the step of gluing a tray's boards together.
func (j Job) glueStep(w tray, m model) plan.Step {
	how := plan.Say("Glue the edges of the base and set the fore-edge wall against it, then head and tail wall against base and fore-edge wall. The walls stand round the base, down to the bench.")
	if j.Walls == On {
		how = plan.Say("Glue the lower edges of the walls and set the fore-edge wall on the base, flush with its edge, then head and tail wall, flush outside and butting against the fore-edge wall.")
	}
	return plan.Step{
		Title:  "Glue the " + w.name + " together",
		Short:  plan.Say("Glue base and walls together, fore-edge wall first; the end at the spine stays open."),
		Spells: []work.Spell{work.Do(work.Join, 3).Dry(work.GlueDry, "the glue of the "+w.name, "").As("base and walls"), work.Do(work.Trim, 1).As("sand what stands out")},
		Text: []stage.Say{
			how,
			plan.Say("Hold each wall upright against a square or a block until it stands. The end at the spine stays open: head and tail wall end there with the base. Sand what stands out, when it is dry, with a block."),
		},
		Pictures: large(m.glued(w)...),
		Checks:   []plan.Check{j.glued(w)},
	}
}

// coverSteps returns the steps of covering a tray.
func (j Job) coverSteps(w tray, m model) []plan.Step {
	name, st := w.name, j.stripOf(w)
	words := facesOf(name).ends
	first, last := words[0].word, words[1].word
	around, ends, inside, fore := m.covering(w)
	return []plan.Step{
		{
			Title:  "Cover the walls of the " + name,
			Short:  plan.Say("Cut the cloth of the " + name + " by its template. Glue it round the walls from the middle of the fore-edge wall, then under the base."),
			Spells: []work.Spell{work.Do(work.CutSheet, 1).And(work.Cover, 3).And(work.TurnIn, 3)},
			Text: []stage.Say{
				plan.Say("Cut the "+ofTray(name, clothOf)+" by its template; the grain runs along it. Every cut stays %s off the corners of the boards: cut closer, and a corner is bare.", st.a),
				plan.Say("Mark the middle of the fore-edge wall. Glue the fore-edge wall, lay the strip on it middle to middle, %s below the bottom edge and the rest above the rim, and rub it down. Then the "+first+" wall and the "+last+" wall, drawing the cloth tight round the corners. At the open end it stands past the walls by %s.", st.u, st.t+st.v),
				plan.Say("Turn the lower edge under the base, %s all round, and rub it down. At the corners its edges meet in a mitre.", st.u),
			},
			Pictures: large(around...),
			Checks:   []plan.Check{j.stripLaid(w)},
		},
		{
			Title:  "Turn the ends of the " + name,
			Short:  plan.Say("At the open end: turn the end flaps round the ends of the walls, above the slit onto the inside, below it onto the edge of the base. Pinch the webs."),
			Spells: []work.Spell{work.Do(work.TurnIn, 4)},
			Text: []stage.Say{
				plan.Say("At the open end turn the flap of each wall over its end. Above the slit it goes on onto the inside of the wall; below the slit it stays flat on the edge of the base, %s along it.", st.v),
				plan.Say("Pinch the little webs at the top and at the bottom of the ends, and pleat the upper one toward the spine: this end will lie in the joint of the case. Rub it down thin."),
			},
			Pictures: [][]stage.Picture{ends},
		},
		{
			Title:  "Turn " + first + " and " + last + " of the " + name + " in",
			Short:  plan.Say("Turn the cloth of the " + first + " wall and of the " + last + " wall over the rim, down inside and onto the floor; rub the laps into the corners at the fore-edge."),
			Spells: []work.Spell{work.Do(work.TurnIn, 4)},
			Text: []stage.Say{
				plan.Say("Glue the flap of the "+first+" wall, draw it over the rim, rub it down inside and into the edge of the floor, then %s onto the floor. Work the lap, %s wide, into the corner and onto the fore-edge wall. Do the same at the "+last+" wall.", st.n, st.o),
			},
			Pictures: large(inside...),
		},
		{
			Title:  "Turn the fore-edge of the " + name + " in",
			Short:  plan.Say("Turn the cloth of the fore-edge wall in last, over the laps. Dry the tray with blocks inside."),
			Spells: []work.Spell{work.Do(work.TurnIn, 2).And(work.Press, 1).Dry(work.CoveringDry, "the glue of the cloth on the "+name, blocked)},
			Text: []stage.Say{
				plan.Say("Glue the last flap and draw it over the rim of the fore-edge wall, over the laps, down inside and %s onto the floor. It ends %s off head and tail wall, for the cloth there.", st.n, st.k),
				plan.Say("Leave the tray with blocks against the walls, wrapped in release paper, and a light weight " + plan.Dries + "."),
			},
			Pictures: large(fore...),
		},
	}
}

// coverLarge returns the step of covering the large tray, which goes like the small one.
func (j Job) coverLarge(m model) plan.Step {
	w := j.large()
	st := j.stripOf(w)
	_, _, inside, fore := m.covering(w)
	first, then := inside[0], fore[1]
	first.Caption, then.Caption = plan.Say("head and tail before the fore-edge"), plan.Say("covered; the floor is lined last")
	return plan.Step{
		Title:  "Cover the large tray",
		Short:  plan.Say("Cover the large tray like the small one, with its own cloth: round the walls, under the base, the ends, head and tail inside, the fore-edge last. Try it over the small tray."),
		Spells: []work.Spell{work.Do(work.CutSheet, 1).And(work.Cover, 3).And(work.TurnIn, 3+4+4+2).And(work.Press, 1).Dry(work.CoveringDry, "the glue of the cloth on the "+w.name, blocked).As("with its cloth, as the small one"), work.Do(work.Try, 1).As("try it over the small tray")},
		Text: []stage.Say{
			plan.Say("Cut the "+ofTray(w.name, clothOf)+" by its template and cover the large tray like the small one, in the same order: round the walls from the middle of the fore-edge wall; %s under the base; the ends, above the slit inside the wall, below it on the edge of the base; head and tail over the rim, down inside and %s onto the floor, their laps rubbed into the corners; the fore-edge last.", st.u, st.n),
			plan.Say("Leave it with blocks inside " + plan.Dries + ". Then turn it over the small tray and look at the check below."),
		},
		Pictures: large(append([]stage.Picture{first, then}, m.nested()...)...),
		Checks:   []plan.Check{j.stripLaid(w), coveredLarge(j)},
	}
}

// measureStep returns the step between the two trays.
func (c made) measureStep() plan.Step {
	j, s := c.job, c.stands
	size := s.covered(s.small())
	step := plan.Step{
		Title:    "Measure the small tray, before anything else is cut",
		Short:    plan.Say("Try " + j.Whose(0) + " in the covered small tray, then measure the tray over its cloth at three places and type it in under [as_built]: everything that follows is cut for it."),
		Spells:   []work.Spell{work.Do(work.Try, 1).And(work.Measure, 1)},
		Text:     []stage.Say{plan.Say("Try " + j.Whose(0) + " in the small tray: it is the last time that a size can be put right without loss.")},
		Pictures: large(c.model().measured()),
		Checks:   []plan.Check{s.coveredSmall(), s.measuredSmall()},
	}
	tell := func(text string, lengths ...Length) { step.Text = append(step.Text, plan.Say(text, lengths...)) }
	if !s.measured {
		tell("Measure over the cloth, with a caliper or between two squares: from head to tail at the open end, in the middle and at the fore-edge (planned %s); from the open edge to the fore-edge at head, middle and tail (planned %s); from bench to rim at all corners (planned %s). Do not press the cloth.", size.Height, size.Width, size.Thickness)
		tell("Write every reading under [as_built] in the job: height from head to tail, width from the open edge to the fore-edge, thickness from bench to rim. The largest counts. Templates of the large tray and of the case that were printed before that no longer hold: print them anew.")
		if j.Order == AsPlanned {
			tell("This job has the large tray cut as planned, with the small one. If its boards are not cut yet, wait for the measures all the same.")
		}
		return step
	}
	step.Title = "Try the small tray, as it was measured"
	step.Short = plan.Say("Try " + j.Whose(0) + " in the covered small tray. It was measured: all that follows is cut for what was found.")
	step.Spells = []work.Spell{work.Do(work.Try, 1)}
	tell("This job has the tray as it measures over its cloth: %s from head to tail, %s from the open edge to the fore-edge, %s from bench to rim. The large tray and the case are cut for that. Templates of them that are older no longer hold.", size.Height, size.Width, size.Thickness)
	var missing []string
	for i, way := range []string{"from head to tail", "from the open edge to the fore-edge", "from bench to rim"} {
		if len(j.AsBuilt.Each()[i]) == 0 {
			missing = append(missing, way)
		}
	}
	if len(missing) > 0 {
		tell("Taken as planned, since it was not measured: " + wording.And(missing) + ". Measure that too, and add it under [as_built].")
	}
	return step
}

// caseSteps returns the steps of the case, the hinge and the linings.
func (c made) caseSteps(m model) []plan.Step {
	s := c.stands
	filler := plan.Say("Before the trays go on, a filler levels each board between its turn-ins: with cloth so thin it may be left out.")
	if s.Filler == Filled {
		filler = plan.Say("Paste a filler onto each board between the turn-ins, %s back from them and from the spine edge, so that the trays stand level.", fillerGap)
	}
	down := s.downToBoard() + s.caseBoard()
	fillers := work.Counted(c.pieces, func(p geometry.Piece) bool { return p.Name == fillerName })
	return []plan.Step{
		{
			Title:  "Cut the boards of the case",
			Short:  plan.Say("Cut the case boards and the spine for the nested trays as they measure, all at one setting in height."),
			Spells: []work.Spell{work.Do(work.Print, 1).And(work.Measure, 1).And(work.CutBoard, 3)},
			Text: []stage.Say{
				plan.Say("Print the templates of the case (on the command line: --only case). Lay the large tray over the small one and measure the pair: planned %s from head to tail, %s from the open edge to the fore-edge, %s thick. The boards are larger by the square, %s, at head, tail and fore-edge; at the spine they are flush with the trays.", s.covered(s.large()).Height, s.covered(s.large()).Width, s.covered(s.large()).Thickness, s.Square),
				plan.Say("Where the pair measures otherwise, cut the case for the pair, never from the sheet. Cut boards and spine at one setting in height, the grain from head to tail."),
			},
			Pictures: large(m.caseOnPair()),
			Checks:   []plan.Check{caseOnTrays(s)},
		},
		{
			Title:  "Cover the case",
			Short:  plan.Say("Glue front board, spine and back board to the case cloth, a joint of %s between each two. Turn in head and tail, then the fore-edges.", s.joint()),
			Spells: []work.Spell{work.Do(work.CutSheet, 1+fillers).And(work.Paste, 3+fillers).And(work.TurnIn, 4)},
			Text: []stage.Say{
				plan.Say("Cut the case cloth by its template; at the corners the cut stays %s from the corner of the board, measured along each edge. Rule the boards on its back. Cut a spacer %s wide, as wide as a joint.", s.corner(), s.joint()),
				plan.Say("Glue the front board and lay it on its lines, then the spine against the spacer, then the back board. All heads stand on one line. Rub down from the other side, and look at the check below before you turn anything in."),
				plan.Say("Turn in head and tail first, and work them down into the joints. Pinch in what stands past the corners, then turn in the fore-edges."),
				filler,
			},
			Pictures: large(m.caseCovered()...),
			Checks:   []plan.Check{caseLaid(s)},
		},
		{
			Title: "Glue the trays to the case",
			Short: plan.Say("Glue the small tray to the back board, put the large tray over it, and close the case on it: the front board is glued down on the large tray."),
			Spells: []work.Spell{
				work.Do(work.Join, 1).And(work.Press, 1).Dry(work.GlueSet, "the glue of the small tray, until it holds", "a weight inside").As("the small tray"),
				work.Do(work.Join, 1).And(work.Press, 1).And(work.Try, 1).Dry(work.GlueDry, "the glue of the trays", "a weight, the box closed").As("the large tray"),
			},
			Text: []stage.Say{
				plan.Say("Try it all dry first, by the first check below: glued trays stay where they are."),
				plan.Say("Lay the case open, inside up, head away: the back board is at the right. Glue the underside of the small tray and set it on the back board, its open edge flush with the spine edge of the board, %s from head and tail. Weight it inside.", (s.laid().High-s.covered(s.small()).Height)/2),
				plan.Say("When it holds, put the large tray over the small one as it will lie, with slips of paper as thick as the room between them, so that it stands evenly. Glue its base, stand the spine up and turn the front board down onto it. Rub it down, look that the squares are alike, then open it once, while the glue is wet, for the last check below. Leave it closed under a weight " + plan.Dries + "."),
			},
			Pictures: large(m.casedIn()...),
			Checks:   []plan.Check{casedDry(s), gluedUp(s)},
		},
		{
			Title:  "Put in the hinge",
			Short:  plan.Say("Glue the hinge from floor to floor: %s onto each, down into the joints and over the spine.", s.hinge()),
			Spells: []work.Spell{work.Do(work.CutSheet, 1).And(work.Cover, 3).And(work.Fold, 2)},
			Text: []stage.Say{
				plan.Say("Lay the box open. Rule the hinge on its back: %s for a floor, %s down, %s for the joint, %s up, %s for the spine, and back likewise.", s.hinge(), down, s.joint(), s.caseBoard(), s.spine()),
				plan.Say("Glue the hinge and lay it on the spine, %s from head and tail. Work it down into one joint with the edge of a folder, up the edge of board and tray and %s onto the floor; then the other side. Close the box once while it is damp, so that the hinge has its length, and open it again.", s.beyondHinge(), s.hinge()),
			},
			Pictures: large(m.hinged()...),
			Checks:   []plan.Check{hingeLaid(s)},
		},
		{
			Title: "Line the floors",
			Short: plan.Say("Paste the floor linings in over the hinge, %s from the cloth on the walls. Dry the box, closed last.", s.LiningGap),
			Spells: []work.Spell{
				work.Do(work.CutSheet, 2).And(work.Paste, 2).And(work.Press, 1).Dry(work.LiningDry, "the paste of the linings", "weights on the floors, the box open").As("paste them in"),
				work.Do(work.Press, 1).Dry(work.LastDry, "the box, closed", "a weight").As("close it"),
				work.Do(work.Try, 1).As("try it"),
			},
			Text: []stage.Say{
				plan.Say("Cut the linings for the floors as they are. Paste each and lay it on its floor, %s from the open edge and %s from the cloth on the walls, over the hinge.", s.LiningEdge, s.LiningGap),
				plan.Say("Dry the box open with weights on the floors, then closed under a weight overnight."),
			},
			Pictures: m.lined(),
			Checks:   []plan.Check{c.shutBox()},
		},
	}
}

// large gives each picture a row to itself, so that what is seen whole is seen large.
func large(pictures ...stage.Picture) (rows [][]stage.Picture) {
	for _, p := range pictures {
		rows = append(rows, []stage.Picture{p})
	}
	return rows
}
