package slipcase

import (
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
	"forel/geometry/work"
)

// steps returns the one order of work (common practice, no source).
func (c Case) steps() []plan.Step {
	m := c.model()
	before := m
	if c.Job.AsBuilt.Measured() {
		before = c.planned().model()
	}
	out := []plan.Step{before.measureStep(), before.cutStep(), before.dryStep()}
	if m.lined {
		_, lining := before.whole.designs()
		out = append(append(out, before.designStep(lining)...), before.liningStep())
	}
	if m.has("divider") {
		out = append(out, before.dividerStripStep())
	}
	out = append(out, before.joinSteps()...)
	covered, on := m.coverSteps()
	out = append(out, covered...)
	if c.Job.hasHole() {
		out = append(out, m.holeStep(on))
	}
	if m.has("side lining") && !m.lined {
		_, lining := m.whole.designs()
		out = append(out, m.designStep(lining)...)
		out = append(out, m.liningsInStep(m.covered(on...)))
	}
	return append(out, m.lastStep(on))
}

func (m model) measureStep() plan.Step {
	all, thick := m.job.Contents(), m.job.Book().Thick()
	readings, thickness := "", "here %s"
	if len(m.job.Books) > 1 {
		readings = " Measure each volume; of heights and widths the largest of all counts, thicknesses are added up."
		thickness = "of the first, %s"
	}
	s := plan.Step{
		Title: "Measure the book",
		Short: plan.Say("Measure the book and the materials, several layers of each with a caliper."),
		Text: []stage.Say{
			plan.Say("Shut the book and press it lightly. Measure the height along both covers, the width with the round of the spine at head, middle and tail, the thickness through both covers at the same three places."),
			plan.Say("Write every reading on the worksheet. The largest of each counts: a case must clear the largest." + readings),
			plan.Say("Measure the materials too: several layers together, with a caliper, divided by their number. What a board is sold as is not what it measures."),
		},
		Spells: []work.Spell{work.Do(work.Measure, len(m.job.Books)+work.MaterialsIn(m.whole.Pieces))},
	}
	if m.job.Wears != "" { // it is made first, and measured in place of the book
		s, thick, thickness = plan.MeasureWorn(m.job.Common, "slipcase"), all.Thickness, "here %s"
		s.Spells = []work.Spell{work.Do(work.Measure, 1)}
	}
	s.Pictures = [][]stage.Picture{{draft.Measures(all.Height, all.Width, thick,
		[3]stage.Say{plan.Say("here %s", all.Height), plan.Say("here %s", all.Width), plan.Say(thickness, thick)})}}
	s.Checks = []plan.Check{m.job.gaugeCheck(), m.job.thicknessCheck()}
	return s
}

func (m model) cutStep() plan.Step {
	s := plan.Step{
		Title: "Print the templates and cut the boards",
		Short: plan.Say("Cut the boards, the grain as the arrows show; pieces that share a size at one setting."),
		Text: []stage.Say{
			plan.Say("Print templates.pdf at actual size, 100 %%. Measure the rulers at the foot of a page before you cut: 100 mm and 4 in. Join sheets at their circles with tape."),
			plan.Say("Lay the templates on the board with every arrow along the grain. Prick through the corners, join the pricks with a pencil, and cut: a light stroke first, then as many as it takes. Keep the straightedge on the piece and your fingers behind its edge."),
			plan.Say("The three walls have one width, sides and spine wall one height: cut those at one setting, and lay them on each other to check. Mark each piece with its name."),
		},
		Pictures: [][]stage.Picture{{m.boardsLaid()}},
		Checks:   []plan.Check{m.job.cutCheck()},
		Spells:   []work.Spell{work.Do(work.Print, 1).And(work.CutBoard, work.CountedOf(m.whole.Pieces, geometry.Board)).And(work.CutHole, m.job.holes())},
	}
	if m.job.hasHole() {
		where := "both sides"
		if m.job.dividerHole() {
			where = "both sides and in each divider"
		}
		s.Short.Text += " Cut the thumb hole in " + where + " too."
		s.Text = append(s.Text, plan.Say("Cut the thumb hole in both sides now, while they lie flat: hold them together edge to edge, prick the hole through both, and cut it in light strokes from both faces. Sand its edge smooth; the two must match."))
	}
	if m.job.dividerHole() {
		s.Text = append(s.Text, plan.Say("Cut it in each divider too, where its template has it, in line with the sides. A volume in the middle has a divider at both boards: when its neighbours are out, thumb and finger take hold of it through the holes beside it. The outer volumes are drawn out by the board that a side uncovers."))
	}
	return s
}

func (m model) dryStep() plan.Step {
	lay := "Lay a side down, its inside up. First the thickness: lay " + m.job.inCase() + " on it and stand the spine wall on its long edge beside it."
	if len(m.job.Books) > 1 {
		lay = "Lay a side down, its inside up. First the thickness: lay the volumes on it in a pile and stand the spine wall on its long edge beside it."
		if m.job.Dividers() > 0 {
			lay = "Lay a side down, its inside up. First the thickness: lay the volumes on it in a pile, a divider between each two, and stand the spine wall on its long edge beside it."
		}
	}
	return plan.Step{
		Title: "Try the boards against " + m.job.inCase() + ", before any glue",
		Short: plan.Say("Lay " + m.job.inCase() + " on a side, the spine wall on edge beside it, before any glue."),
		Text: []stage.Say{
			plan.Say(lay),
			plan.Say("Then height and depth: lay " + m.job.whose("deepest") + " with its spine flush with the mouth edge of the side, where it will show when the case is made; lay " + m.job.whose("tallest") + " with its head flush with the head edge."),
			plan.Say("If less shows than it must, check the readings, the thickness of the board and the scale of the print. If much more shows, it will be loose: trim the board, and the others of that measure with it."),
		},
		Pictures: [][]stage.Picture{m.dryFigures()},
		Checks:   []plan.Check{m.job.dryFit()},
		Spells:   []work.Spell{work.Do(work.Try, 1)},
	}
}

func (m model) liningStep() plan.Step {
	dividers := ""
	if m.has("divider") {
		dividers = " Line a divider on both faces, one right after the other: it dries flat."
	}
	middle := ""
	if m.job.LiningPattern.matches() {
		middle = " Prick its outline through from the template before: only where the board lies within it do the lines meet at the corners. The two side linings go to the sides as they are marked, right and left."
	}
	return plan.Step{
		Title: "Line the boards",
		Short: plan.Say("Paste the linings to the boards, let them dry under a weight, trim them flush."),
		Text: []stage.Say{
			plan.Say("Brush paste on the back of a lining, from the middle outward, and lay the board into its middle." + middle + " Turn it over and rub it down through waste paper."),
			plan.Say("Lay it between release papers and boards, with a weight on top, " + plan.Dries + ". Paper pulls a board hollow while it dries; the weight keeps it flat."),
			plan.Say("Trim the lining flush with the board on all sides. Do the same with every board." + dividers),
		},
		Pictures: [][]stage.Picture{m.liningFigures()},
		Spells: []work.Spell{
			m.pasteLinings().And(work.Press, 1).Dry(work.LiningDry, "the paste of the linings", "boards and a weight").As("paste them on"),
			work.Do(work.Trim, m.linings()).As("trim the linings flush"),
		},
	}
}

// joinSteps returns the steps of the carcass.
func (m model) joinSteps() []plan.Step {
	spine, walls, closed := m.joining()
	steps := []plan.Step{
		{
			Title: "Glue the spine wall to a side",
			Short: plan.Say("Glue the spine wall upright on one side, on its ruled line, square against a back-stop."),
			Text: []stage.Say{
				plan.Say("Rule the lines of the template on one side, the " + m.insideWord() + " up: they are one board from the edge, and the walls stand on them."),
				plan.Say("Put a thin line of glue on a long edge of the spine wall. Push the side against the back-stop and stand the wall on it, flush with the spine edge, its back against the stop: it stands square by that. Press it straight from inside with a strip of board, so that it does not bow, and hold it a minute. Wipe off what oozes out inside."),
			},
			Pictures: [][]stage.Picture{spine},
			Spells:   []work.Spell{work.Do(work.Join, 1)},
		},
		{
			Title: "Glue the head and tail walls",
			Short: plan.Say("Glue head wall and tail wall on their lines, tight against the spine wall."),
			Text: []stage.Say{
				plan.Say("Glue one long edge of a wall and the short edge that meets the spine wall. Stand it on its line, tight in the corner. The other end is flush with the mouth edge of the side."),
				plan.Say("Set each wall against the back-stop, press it straight from inside and check both corners with a square. Do the next step while the glue is still wet."),
			},
			Pictures: [][]stage.Picture{walls},
			Spells:   []work.Spell{work.Do(work.Join, 2).WhileWet()},
		},
	}
	if m.has("divider") {
		steps = append(steps, m.dividerStep())
	}
	return append(steps, m.tryStep(),
		plan.Step{
			Title: "Glue the other side on top",
			Short: plan.Say("Glue the other side on top, weight on its edges only, and let it dry. Measure the case outside, then cut its covering."),
			Text: []stage.Say{
				plan.Say("Glue the upper edges of all three walls and lower the other side onto them, " + m.insideWord() + " down. Press it flush all round."),
				plan.Say("Weight the edges only: a strip of board along each wall, a weight on each strip, " + plan.Dries + ". A weight in the middle bows the side in, and it dries so. Then sand any edge that stands out."),
				m.job.playWords(),
				m.outsideWords(),
			},
			Pictures: [][]stage.Picture{closed},
			Checks:   []plan.Check{m.job.bareCheck()},
			Spells: []work.Spell{
				work.Do(work.Join, 1).And(work.Press, 1).Dry(work.GlueDry, "the glue of the walls", "strips of board and weights along the edges").As("glue and weight it"),
				work.Do(work.Trim, 1).And(work.Measure, 1).As("sand the edges, measure the case"),
			},
		})
}

// tryStep returns the try that decides: with one side still open all can be mended.
func (m model) tryStep() plan.Step {
	what := m.job.inCase()
	lay := "Wipe off glue that oozed out inside. Wrap " + what + " in one layer of thin release paper and lay it between the walls on the side, fore-edge against the spine wall."
	if len(m.job.Books) > 1 {
		lay = "Wipe off glue that oozed out inside. Wrap each volume in one layer of thin release paper and lay them between the walls on the side, fore-edge against the spine wall."
	}
	out := "Take " + what + " out. Press the walls straight again and let the glue set for some ten minutes before going on."
	if m.job.Dividers() > 0 {
		lay = "Wrap the last volume, " + escaped(m.job.Whose(0)) + ", in one layer of thin release paper too and lay it on the last divider, fore-edge against the spine wall. Draw each volume out at the mouth and slide it in again: each must go without force."
		out = "Draw all volumes and packing out at the mouth. Press walls and dividers straight again and let the glue set for some ten minutes before going on."
	}
	return plan.Step{
		Title: "Try " + what + " between the walls, before the other side goes on",
		Short: plan.Say("Try " + what + " between the walls while the glue is wet: the other side is not on yet."),
		Text: []stage.Say{
			plan.Say(lay + " This is the try that decides: what is glued can still be moved, or taken off and cut anew."),
			plan.Say(out),
		},
		Pictures: [][]stage.Picture{{m.betweenFigure()}},
		Checks:   []plan.Check{m.job.wallsCheck()},
		Spells:   []work.Spell{work.Do(work.Try, max(1, m.job.Dividers())).Dry(work.GlueSet, "the glue of the walls, until it holds", "")},
	}
}

// lastStep returns the step of the finished case with the books in it.
func (m model) lastStep(on []covering) plan.Step {
	whole := m.covered()
	for _, c := range on {
		whole = append(whole, m.sheet(c, made, true)...)
	}
	done := m.insertFigure(whole, "", false)
	done.Notes = []stage.Note{
		{Name: plan.Say(m.job.inCase()), More: plan.Say("spine at the mouth"), Spot: bookName(len(m.job.Books) - 1)},
		{Name: plan.Say("mouth"), At: m.mouthEdgeMiddle()}, {Name: plan.Say("head"), Spot: topOf(on)},
	}
	try := "Slide " + m.job.inCase() + " in, fore-edge first: its spine shows at the mouth. "
	if len(m.job.Books) > 1 {
		try = "Slide the books in, fore-edge first: their spines show at the mouth. "
	}
	return plan.Step{
		Title: "Dry the case and try " + m.job.inCase(),
		Short: plan.Say("Dry the case, filled with something as thick as " + m.job.inCase() + "."),
		Text: append([]stage.Say{
			plan.Say("Fill the case with something as thick as " + m.job.inCase() + ", wrapped in release paper, and leave it under a light weight overnight."),
			plan.Say(try + "Check the case against the list on the last page."),
		}, m.job.takenOut()...),
		Pictures: [][]stage.Picture{{done}},
		Checks:   []plan.Check{m.job.finishedCheck()},
		Spells:   []work.Spell{work.Do(work.Press, 1).Dry(work.LastDry, "the case in its shape, filled", "a light weight").As("fill it and put it under a weight"), work.Do(work.Try, 1).As("try it")},
	}
}

// takenOut says how what is in a case comes out again that is too thin to reach into
// and has no thumb hole.
func (j Job) takenOut() []stage.Say {
	if j.hasHole() {
		return nil
	}
	return plan.TakenOut(j.inCase(), j.Contents().Thickness)
}

// inCase names what the case is for.
func (j Job) inCase() string {
	if len(j.Books) > 1 {
		return "the books"
	}
	return j.Whose(0)
}

// holes returns how many boards have a thumb hole.
func (j Job) holes() int {
	switch {
	case j.dividerHole():
		return 2 + j.Dividers()
	case j.hasHole():
		return 2
	}
	return 0
}

// linings returns how many linings there are.
func (m model) linings() int { return work.CountedOf(m.whole.Pieces, geometry.Lining) }

// pasteLinings returns the work of cutting and pasting all linings.
func (m model) pasteLinings() work.Spell {
	return work.Do(work.CutSheet, m.linings()).And(work.Paste, m.linings())
}

// topOf names what is seen on the head of a covered case.
func topOf(on []covering) string {
	if slices.Contains(on, headCloth) || slices.Contains(on, headPanel) {
		return "head"
	}
	return "head wall"
}

// playWords says what play there is in the bare case.
func (j Job) playWords() stage.Say {
	room, all := j.Between(), j.Contents()
	height, thickness := room.Height-all.Height, room.Thickness-all.Thickness
	switch {
	case len(j.Books) < 2:
		return plan.Say("When the case is dry "+j.inCase()+" has play in it: %s in height and %s in thickness all told. Covering will take some of it at the mouth.", height, thickness)
	case j.Dividers() > 0:
		return plan.Say("When the case is dry the books have play in it: %s in height, the tallest, and %s in thickness, each. Covering will take some at the mouth.", height, j.Clearance.Thickness)
	}
	return plan.Say("When the case is dry the books have play in it: %s in height, the tallest, and %s in thickness, all together. Covering will take some at the mouth.", height, thickness)
}

// outsideWords says what the bare case must measure before its covering is cut.
func (m model) outsideWords() stage.Say {
	o, later := m.whole.Stands.Outside(), ""
	covering, _ := m.whole.designs()
	if what := m.whole.designed(covering); what != "" {
		later = " The " + what + " come later: they are cut by the printed design."
	}
	measure := "Measure the bare case outside, each way at several places: as planned it is %s high, %s deep, %s thick. What stands on the bench counts from now on."
	lengths := []Length{o.Height, o.Width, o.Thickness}
	if m.job.AsBuilt.Measured() {
		measure += " This job has it as built: the covering is worked out for that."
	} else {
		measure += " If a measure is off by more than %s, write yours under [as_built] in the job and print the covering anew: forel templates --only " + m.whole.coveredWith() + "."
		lengths = append(lengths, plan.Readable(m.job.Unit))
	}
	return plan.Say(measure+" Then cut the covering from its templates, the grain as the arrows show."+later, lengths...)
}

// coveredWith names the materials of the covering, as a command takes them.
func (c Case) coveredWith() string {
	var names []string
	for _, p := range c.Pieces {
		if name := string(p.Material); (p.Material == geometry.Cloth || p.Material == geometry.Paper) && !ofDivider(p) && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return strings.Join(names, ",")
}

// liningsInStep returns the step of linings that go in when the case is covered.
func (m model) liningsInStep(base []stage.Face) plan.Step {
	slide := "Slide each in dry first; trim it if it buckles."
	if m.job.LiningPattern.matches() {
		slide = "Slide each in dry first, right and left as they are marked, and see that the lines meet at the corners; trim it if it buckles, at the mouth only."
	}
	return plan.Step{
		Title: "Paste the linings in",
		Short: plan.Say("Paste the linings in: sides, spine, head and tail."),
		Text: []stage.Say{
			plan.Say("Paste the linings in this order: both sides, the spine, head and tail. Each fits between those before it and stays %s back from the mouth edge.", linedShort),
			plan.Say(slide + " Paste it, slide it in, rub it down with a folder. Prop the mouth open " + plan.Dries + "."),
		},
		Pictures: [][]stage.Picture{m.liningsInFigures(base)},
		Spells:   []work.Spell{m.pasteLinings().Dry(work.LiningDry, "the paste of the linings, the mouth propped open", "")},
	}
}
