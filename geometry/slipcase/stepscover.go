package slipcase

import (
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/work"
)

// coverSteps returns the steps of the covering, and what is then on the case.
func (m model) coverSteps() (steps []plan.Step, on []covering) {
	design, _ := m.whole.designs()
	switch m.job.Covering {
	case AllCloth, AllPaper:
		return append(m.designStep(design), m.wrapSteps()...), []covering{wrapCover, headPanel, tailPanel}
	case SidesOnly:
		return append(m.designStep(design), m.paperStep()), []covering{rightPaper, leftPaper}
	}
	steps = append(m.clothSteps(), m.designStep(design)...)
	return append(steps, m.paperStep(spineCloth, headCloth, tailCloth)), []covering{spineCloth, headCloth, tailCloth, rightPaper, leftPaper}
}

// cutOut names what is cut out of the spine cloth beside its spine flaps: wedges,
// or, where side flaps so short end at the apex, notches.
func (j Job) cutOut() (one, many string) {
	if f := j.flaps(); f.side.Near(f.apex) {
		return "notch", "notches"
	}
	return "wedge", "wedges"
}

// clothSteps returns the steps of spine cloth, head cloth and tail cloth.
func (m model) clothSteps() []plan.Step {
	laid, flaps := m.spineFigures()
	ends, tabs := m.endFigures()
	_, cuts := m.job.cutOut()
	prepare := "Cut the spine cloth with its " + cuts + "."
	cutWedges, cutSlits := "", "Check with the template which end is the mouth: there the slits are."
	if m.job.marked() {
		prepare = "Cut the spine cloth as a rectangle and rule its " + cuts + " on the back; do not cut them yet."
		cutWedges = "When the margins lie, cut the " + cuts + " along their lines, as far as the apex and no farther. "
		cutSlits = "When the margins lie, cut the slits at the mouth along their lines, no nearer to the board than they are ruled."
	}
	return []plan.Step{
		{
			Title: "Spine cloth: the spine and the margins",
			Short: plan.Say("Spine cloth: glue the spine, then the margins on the sides."),
			Text: []stage.Say{
				plan.Say(prepare + " Glue it evenly, back up. Stand the case with its spine on the ruled rectangle, mouth up, and press."),
				plan.Say("Turn it on each side in turn: draw the margin up tight and rub it down. It reaches %s onto the side.", m.job.Cloth.Overlap),
			},
			Pictures: [][]stage.Picture{laid},
			Spells:   []work.Spell{work.Do(work.CutSheet, 1).And(work.Cover, 1).And(work.TurnIn, 2).WhileWet()},
		},
		{
			Title: "Spine cloth: the flaps at head and tail",
			Short: plan.Say("At head and tail fold its side flaps over, then the spine flap."),
			Text: []stage.Say{
				plan.Say(cutWedges + "Fold the two side flaps over the head wall. Pinch the bit of cloth that covers the corner flat with the folder. Then fold the spine flap over them. Do the same at the tail."),
				plan.Say("Rub down through waste paper, never on the bare cloth."),
			},
			Pictures: [][]stage.Picture{flaps},
			Spells:   []work.Spell{work.Do(work.TurnIn, 6)},
		},
		{
			Title: "Head cloth and tail cloth: the wall and the margins",
			Short: plan.Say("Head and tail cloth: glue the wall, then the margins."),
			Text: []stage.Say{
				plan.Say(m.job.rules(m.job.tabCuts())+"Glue the head cloth and lay it on the head wall: %s from the spine edge, its long edges evenly over both sides. Fold the margins down and rub them down tight at the edge.", m.job.Cloth.SpineGap),
				plan.Say(cutSlits),
			},
			Pictures: [][]stage.Picture{ends},
			Spells:   []work.Spell{work.Do(work.CutSheet, 2).And(work.Cover, 2).And(work.TurnIn, 4).WhileWet()},
		},
		{
			Title: "Head cloth and tail cloth: the tabs at the mouth",
			Short: plan.Say("At the mouth turn their side tabs in, then the middle tab between them."),
			Text: []stage.Say{
				plan.Say("Fold the side tabs round the edges of the sides and in. Each ends in the corner: trim off what would go on along the wall, where there is the least room. Then fold the middle tab over the edge of the wall and in, between them." + m.job.eachTab() + " Press it into the angle with the folder."),
				plan.Say("Turn the case over and do the same with the tail cloth. Leave it to dry with the mouth open, under a light weight."),
			},
			Pictures: [][]stage.Picture{tabs},
			Spells:   []work.Spell{work.Do(work.TurnIn, 6).And(work.Press, 1).Dry(work.CoveringDry, "the glue of the cloth, the mouth open", "a light weight")},
		},
	}
}

// eachTab says how what is turned in at head and tail goes past the dividers.
func (j Job) eachTab() string {
	if len(j.slots(j.Cloth.MouthTurnIn-j.Edge())) == 0 {
		return ""
	}
	if j.marked() {
		return " Cut out along the ruled lines what comes where a divider stands; each part then goes into its own compartment, between the strips."
	}
	return " It is cut out where a divider stands, so each part of it goes into its own compartment, between the strips."
}

// tabCuts names what parts the tabs of head and tail cloth.
func (j Job) tabCuts() string {
	if j.eachTab() == "" {
		return "its slits"
	}
	return "its slits and cut-outs"
}

// marked tells whether corners are cut on the case.
func (j Job) marked() bool { return j.Cloth.Corners == CornersMarked }

// rules says what of a rectangle of covering is ruled and cut later; empty where it
// is cut by the template.
func (j Job) rules(what string) string {
	if !j.marked() {
		return ""
	}
	return "Cut it as a rectangle and rule " + what + " on its back; do not cut them yet. "
}

func (m model) paperStep(beneath ...covering) plan.Step {
	p := m.job.SidePaper
	return plan.Step{
		Title: "Side papers",
		Short: plan.Say("Side papers: glue them on, inset all round, and turn them in at the mouth."),
		Text: []stage.Say{
			plan.Say("Paste a side paper and lay it on a side with the same border, %s, at spine, head and tail. It reaches %s past the mouth. Rub it down from the middle outward.", p.Inset, p.TurnIn),
			plan.Say("Fold what is past the mouth round the edge of the board and into the case, and rub it down inside. Do the other side. Dry under boards and a weight, " + plan.Dries + "."),
		},
		Pictures: [][]stage.Picture{m.paperFigures(beneath...)},
		Spells:   []work.Spell{m.cutting("side paper").And(work.Cover, 2).And(work.TurnIn, 2).And(work.Press, 1).Dry(work.PaperDry, "the paste of the side papers", "boards and a weight")},
	}
}

func (m model) wrapSteps() []plan.Step {
	laid, flaps, mouth := m.wrapFigures()
	what, glue, dry := "cloth", "Glue", work.CoveringDry
	if m.job.Covering == AllPaper {
		what, glue, dry = "paper", "Paste", work.PaperDry
	}
	cutWedges := ""
	if m.job.marked() {
		_, cuts := m.job.cutOut()
		cutWedges = "When the sides lie, cut the " + cuts + " along their lines, as far as the apex and no farther. "
	}
	return []plan.Step{
		{
			Title: "The wrap: spine and sides",
			Short: plan.Say(glue + " the wrap: spine first, then both sides."),
			Text: []stage.Say{
				plan.Say(m.job.rules("its wedges") + glue + " the wrap evenly, back up. Stand the case with its spine on the ruled rectangle, mouth up, and press."),
				plan.Say("Roll the case onto one side, draw the " + what + " tight and rub it down from the spine outward; then the other side."),
			},
			Pictures: [][]stage.Picture{{laid[0]}, {laid[1]}},
			Spells:   []work.Spell{m.cutting("wrap").And(work.Cover, 3).WhileWet()},
		},
		{
			Title:    "The wrap: the flaps at head and tail",
			Short:    plan.Say("At head and tail fold its side flaps over, then the spine flap."),
			Text:     []stage.Say{plan.Say(cutWedges + "Fold the two side flaps over the head wall. Pinch the bit that covers the corner flat. Then fold the spine flap over them. Do the same at the tail.")},
			Pictures: [][]stage.Picture{flaps},
			Spells:   []work.Spell{work.Do(work.TurnIn, 6).WhileWet()},
		},
		{
			Title: "The mouth, and the panels at head and tail",
			Short: plan.Say("Turn the ends of the wrap in at the mouth. " + glue + " the head and tail panels over the flaps and turn them in."),
			Text: []stage.Say{
				plan.Say("Fold the ends of the wrap round the edges of the sides and into the case, and rub them down inside."),
				plan.Say(glue+" the head panel and lay it over the flaps, %s from the spine edge, then turn it in at the mouth."+m.job.eachTab()+" Do the same at the tail. Dry under boards and a weight, "+plan.Dries+".", m.job.Cloth.SpineGap),
			},
			Pictures: [][]stage.Picture{mouth},
			Spells:   []work.Spell{m.cutting("head panel", "tail panel").And(work.Cover, 2).And(work.TurnIn, 4).And(work.Press, 1).Dry(dry, "the "+strings.ToLower(glue)+" of the wrap", "boards and a weight")},
		},
	}
}

// HoleStrip says what is done at a thumb hole before its tabs are turned over the
// edge of the board (common practice, no source).
const HoleStrip = "paste a narrow strip of the covering round the edge of the board, which shows between the tabs"

func (m model) holeStep(on []covering) plan.Step {
	// The covering round the hole is the first that lies on the right side.
	c := rightPaper
	base := m.covered()
	for _, o := range on {
		if o == wrapCover {
			c = o
		}
	}
	for _, o := range on {
		if o != c && o.layer < c.layer {
			base = append(base, m.sheet(o, made, false)...)
		}
	}
	tabs := "The covering is cut smaller than the hole in the board and snipped into tabs. Glue the tabs again, draw each over the edge of the board, and press it down inside, one after another, so that they follow the curve."
	if m.job.ThumbHole.Shape == Triangle {
		tabs = "The covering is cut smaller than the hole in the board and snipped at its point into two tabs. Glue the tabs again, draw each over its straight edge of the board, and press it down inside, tight into the point."
	}
	hole := "hole"
	if m.job.dividerHole() {
		hole = "hole in a side"
	}
	return plan.Step{
		Title: "The thumb holes",
		Short: plan.Say("At the thumb " + hole + " " + HoleStrip + "; then turn the tabs over it."),
		Text: []stage.Say{
			plan.Say("At each "+hole+", before its tabs are turned, "+HoleStrip+". That is the piece called "+holeStripName+": its middle lies on the edge, %s goes onto each face and past each end. On a round, snip what goes onto the faces every few millimetres.", holeLap),
			plan.Say(tabs),
			plan.Say("If a tab will not lie flat, deepen its snip a little, but never as far as the edge of the board."),
		},
		Pictures: [][]stage.Picture{{m.holeFigure(c, base)}},
		Spells:   []work.Spell{work.Do(work.CutSheet, 2).And(work.HoleTabs, 2)},
	}
}

// mouthEdgeMiddle returns a place on the edge of the right side at the mouth.
func (m model) mouthEdgeMiddle() stage.Vec {
	return stage.Vec{X: m.w() - m.s()/2, Y: m.h() * 0.12, Z: m.d()}
}

// cutting returns the work of cutting pieces; those that are cut by a printed design
// before are left out.
func (m model) cutting(names ...string) work.Spell {
	return work.Do(work.CutSheet, work.Counted(m.whole.Pieces, func(p geometry.Piece) bool {
		return slices.Contains(names, p.Name) && !slices.ContainsFunc(m.whole.Faces, func(f geometry.Piece) bool { return f.FaceOf == p.Name })
	}))
}
