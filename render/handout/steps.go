package handout

import (
	"fmt"

	"forel/geometry/slipcase"
	"forel/render/scene"
)

// step is one step of the work: what to do, in words, and figures in rows of one
// or two.
type step struct {
	title string
	text  []string
	rows  [][]panel
}

// dries says how to dry what was pasted. Times are common practice, no source.
const dries = "until dry: commonly an hour or two for glue, overnight for paste; longer in a damp room"

// steps gives the steps of a case of boards, in the order of work (common
// practice, no source).
func (b *book) steps(m model) []step {
	j := m.job
	mm := b.Round.Pretty
	out := []step{b.measureStep(m), b.cutStep(m), b.dryStep(m)}
	if m.lined {
		out = append(out, step{
			title: "Line the boards",
			text: []string{
				"Brush paste on the back of a lining, from the middle outward, and lay the board into its middle. Turn it over and rub it down through waste paper.",
				"Lay it between release papers and boards, with a weight on top, " + dries + ". Paper pulls a board hollow while it dries; the weight keeps it flat.",
				"Trim the lining flush with the board on all sides. Do the same with every board.",
			},
			rows: [][]panel{m.liningFigures()},
		})
	}
	spine, walls, closed := m.joining()
	out = append(out,
		step{
			title: "Glue the spine wall to a side",
			text: []string{
				"Rule the lines of the pattern on one side, the " + m.insideWord() + " up: they are one board from the edge, and the walls stand on them.",
				"Put a thin line of glue on a long edge of the spine wall. Stand it on the side, flush with the spine edge. Check it with a square and hold it a minute. Wipe off what oozes out inside.",
			},
			rows: [][]panel{spine},
		},
		step{
			title: "Glue the head and tail walls",
			text: []string{
				"Glue one long edge of a wall and the short edge that meets the spine wall. Stand it on its line, tight in the corner. The other end is flush with the mouth edge of the side.",
				"Check both corners with the square. Let the glue set for some ten minutes before going on.",
			},
			rows: [][]panel{walls},
		},
		step{
			title: "Glue the other side on top",
			text: []string{
				"Glue the upper edges of all three walls and lower the other side onto them, " + m.insideWord() + " down. Press it flush all round.",
				"Put a board and a weight on the case, " + dries + ". Then sand any edge that stands out.",
			},
			rows: [][]panel{closed},
		},
		b.tryStep(m),
	)
	var on []covering
	switch j.Covering {
	case slipcase.AllCloth, slipcase.AllPaper:
		out, on = append(out, b.wrapSteps(m)...), []covering{wrapCover, headPanel, tailPanel}
	case slipcase.SidesOnly:
		on = []covering{rightPaper, leftPaper}
		out = append(out, b.paperStep(m))
	default:
		on = []covering{spineCloth, headCloth, tailCloth, rightPaper, leftPaper}
		out = append(out, b.clothSteps(m)...)
		out = append(out, b.paperStep(m, spineCloth, headCloth, tailCloth))
	}
	if j.ThumbHole.Shape != slipcase.NoHole && j.ThumbHole.Shape != "" {
		out = append(out, b.holeStep(m, on))
	}
	base := m.covered(on...)
	if m.has("side lining") && !m.lined {
		out = append(out, step{
			title: "Paste the linings in",
			text: []string{
				fmt.Sprintf("Paste the linings in this order: both sides, the spine, head and tail. Each fits between those before it and stays %s back from the mouth edge.", mm(2)),
				"Slide each in dry first; trim it if it buckles. Paste it, slide it in, rub it down with a folder. Prop the mouth open " + dries + ".",
			},
			rows: [][]panel{m.liningsInFigures(base)},
		})
	}
	if m.has("divider") {
		out = append(out, b.dividerStep(m, base))
	}
	whole := m.boards(boardNames...)
	for _, c := range on {
		whole = append(whole, m.sheet(c, made, true)...)
	}
	done := m.insertFigure(whole, "", false)
	done.notes = []note{{name: bookOrBooks(j), more: "spine outward", spot: bookName(len(j.Books) - 1)}, {name: "mouth", at: m.mouthEdgeMiddle()}, {name: "head", spot: b.topOf(on)}}
	return append(out, step{
		title: "Dry the case and try the book",
		text: []string{
			"Fill the case with something as thick as the book, wrapped in release paper, and leave it under a light weight overnight.",
			"Slide the book in, spine outward. It should go in with a little air under it and stay when the case is tipped. Check the case against the list on the last page.",
		},
		rows: [][]panel{{done}},
	})
}

func bookOrBooks(j slipcase.Job) string {
	if len(j.Books) > 1 {
		return "the books"
	}
	return "the book"
}

// topOf names what is seen on the head of a covered case.
func (b *book) topOf(on []covering) string {
	for _, c := range on {
		switch c.name {
		case "head cloth", "head panel":
			return "head"
		}
	}
	return "head wall"
}

func (b *book) measureStep(m model) step {
	mm := b.Round.Pretty
	tall, wide, _ := m.contents()
	thick := m.job.Book().Thick()
	s := step{
		title: "Measure the book",
		text: []string{
			"Shut the book and press it lightly. Measure the height along both covers, the width with the round of the spine at head, middle and tail, the thickness through both covers at the same three places.",
			"Write every reading on the worksheet. The largest of each counts: a case must clear the largest.",
			"Measure the materials too: several layers together, with a caliper, divided by their number. What a board is sold as is not what it measures.",
		},
	}
	words := [3]string{"here " + mm(Length(tall)), "here " + mm(Length(wide)), "here " + mm(thick)}
	if len(m.job.Books) > 1 {
		s.text[1] += " Measure each volume; of heights and widths the largest of all counts, thicknesses are added up."
		words[2] = "of the first, " + mm(thick)
	}
	s.rows = [][]panel{{m.measures([3]float64{tall, wide, thick.MM()}, words)}}
	return s
}

func (b *book) cutStep(m model) step {
	return step{
		title: "Print the patterns and cut the boards",
		text: []string{
			"Print templates.pdf at actual size, 100 %. Measure the rulers at the foot of a page before you cut: 100 mm and 4 in. Join sheets at their circles with tape.",
			"Lay the patterns on the board with every arrow along the grain. Prick through the corners, join the pricks with a pencil, and cut: a light stroke first, then as many as it takes. Keep the straightedge on the piece and your fingers behind its edge.",
			"The three walls have one width, sides and spine wall one height: cut those at one setting, and lay them on each other to check. Mark each piece with its name.",
		},
		rows: [][]panel{{m.boardsLaid()}},
	}
}

func (b *book) dryStep(m model) step {
	mm := b.Round.Pretty
	fit := b.plan.Fit
	what := "Lay the book on a side"
	if len(m.job.Books) > 1 {
		what = "Lay the tallest and deepest volume on a side"
	}
	return step{
		title: "Try a side against the book, before any glue",
		text: []string{
			fmt.Sprintf("%s, flush with its spine and its head. At the fore-edge %s of the side must show, at the tail %s.", what, mm(fit.ForeEdge), mm(fit.HeadOrTail)),
			"If less shows, the side is too small: check the readings, the thickness of the board and the scale of the print, and cut again. If more shows, the book will rattle: trim the side, and the other pieces of that measure with it.",
		},
		rows: [][]panel{m.dryFigures(mm(fit.ForeEdge), mm(fit.HeadOrTail))},
	}
}

func (b *book) tryStep(m model) step {
	p := m.insertFigure(m.boards(boardNames...), "", true)
	p.notes = []note{{name: bookOrBooks(m.job), more: "half way in", spot: bookName(len(m.job.Books) - 1)}, {name: "bare case", spot: "right side"}}
	return step{
		title: "Try the book in the bare case",
		text: []string{
			fmt.Sprintf("Slide the book in gently. It must go in without force and have play: %s in height and %s in thickness all told. Covering will take some of it at the mouth.", b.Round.Pretty(m.job.Clearance.Height), b.Round.Pretty(m.job.Clearance.Thickness)),
			"If it sticks, look for glue in a corner and sand it away. If it still sticks, do not cover the case: measure again and make a new one. Take the book out.",
		},
		rows: [][]panel{{p}},
	}
}

func (b *book) clothSteps(m model) []step {
	mm := b.Round.Pretty
	laid, flaps := m.spineFigures()
	ends, tabs := m.endFigures()
	j := m.job
	return []step{
		{
			title: "Spine cloth: the spine and the margins",
			text: []string{
				"Cut the spine cloth with its wedges. Glue it evenly, back up. Stand the case with its spine on the ruled rectangle, mouth up, and press.",
				fmt.Sprintf("Turn it on each side in turn: draw the margin up tight and rub it down. It reaches %s onto the side.", mm(j.Cloth.Overlap)),
			},
			rows: [][]panel{laid},
		},
		{
			title: "Spine cloth: the flaps at head and tail",
			text: []string{
				"Fold the two side flaps over the head wall. Pinch the bit of cloth that covers the corner flat with the folder. Then fold the spine flap over them. Do the same at the tail.",
				"Rub down through waste paper, never on the bare cloth.",
			},
			rows: [][]panel{flaps},
		},
		{
			title: "Head cloth and tail cloth: the wall and the margins",
			text: []string{
				fmt.Sprintf("Glue the head cloth and lay it on the head wall: %s from the spine edge, its long edges evenly over both sides. Fold the margins down and rub them down tight at the edge.", mm(j.Cloth.SpineGap)),
				"Check with the pattern which end is the mouth: there the slits are.",
			},
			rows: [][]panel{ends},
		},
		{
			title: "Head cloth and tail cloth: the tabs at the mouth",
			text: []string{
				"Fold the side tabs round the edges of the sides and in, deep into the corners. Then the middle tab over the edge of the wall, in and over them. Press it into the angle with the folder.",
				"Turn the case over and do the same with the tail cloth. Leave it to dry with the mouth open, under a light weight.",
			},
			rows: [][]panel{tabs},
		},
	}
}

func (b *book) paperStep(m model, beneath ...covering) step {
	j := m.job
	return step{
		title: "Side papers",
		text: []string{
			fmt.Sprintf("Paste a side paper and lay it on a side with the same border, %s, at spine, head and tail. It reaches %s past the mouth. Rub it down from the middle outward.", b.Round.Pretty(j.SidePaper.Inset), b.Round.Pretty(j.SidePaper.TurnIn)),
			"Fold what is past the mouth round the edge of the board and into the case, and rub it down inside. Do the other side. Dry under boards and a weight, " + dries + ".",
		},
		rows: [][]panel{m.paperFigures(beneath...)},
	}
}

func (b *book) wrapSteps(m model) []step {
	laid, flaps, mouth := m.wrapFigures()
	what, glue := "cloth", "Glue"
	if m.job.Covering == slipcase.AllPaper {
		what, glue = "paper", "Paste"
	}
	return []step{
		{
			title: "The wrap: spine and sides",
			text: []string{
				glue + " the wrap evenly, back up. Stand the case with its spine on the ruled rectangle, mouth up, and press.",
				"Roll the case onto one side, draw the " + what + " tight and rub it down from the spine outward; then the other side.",
			},
			rows: [][]panel{{laid[0]}, {laid[1]}},
		},
		{
			title: "The wrap: the flaps at head and tail",
			text:  []string{"Fold the two side flaps over the head wall. Pinch the bit that covers the corner flat. Then fold the spine flap over them. Do the same at the tail."},
			rows:  [][]panel{flaps},
		},
		{
			title: "The mouth, and the panels at head and tail",
			text: []string{
				"Fold the ends of the wrap round the edges of the sides and into the case, and rub them down inside.",
				fmt.Sprintf("%s the head panel and lay it over the flaps, %s from the spine edge, then turn it in at the mouth. Do the same at the tail. Dry under boards and a weight, %s.", glue, b.Round.Pretty(m.job.Cloth.SpineGap), dries),
			},
			rows: [][]panel{mouth},
		},
	}
}

func (b *book) holeStep(m model, on []covering) step {
	// The covering round the hole is the first that lies on the right side.
	c := rightPaper
	base := m.boards(boardNames...)
	for _, o := range on {
		if o.name == "wrap" {
			c = o
		}
	}
	for _, o := range on {
		if o != c && o.layer < c.layer {
			base = append(base, m.sheet(o, made, false)...)
		}
	}
	return step{
		title: "The thumb holes",
		text: []string{
			"The covering is cut smaller than the hole in the board and snipped into tabs. Glue the tabs again, draw each over the edge of the board, and press it down inside, one after another, so that they follow the curve.",
			"If a tab will not lie flat, deepen its snip a little, but never as far as the edge of the board.",
		},
		rows: [][]panel{{m.holeFigure(c, base)}},
	}
}

func (b *book) dividerStep(m model, base []scene.Face) step {
	return step{
		title: "The dividers",
		text: []string{
			fmt.Sprintf("Line both faces of each divider, dry it under a weight and trim it. Glue the strip of cloth round its mouth edge, %s onto each face.", b.Round.Pretty(m.job.Divider.Lap)),
			"Try each divider dry: it slides in on its ruled lines, against the spine wall. Put a thin line of glue on its three edges and slide it in. Stand the volumes in, wrapped in release paper, to keep it straight while it dries.",
		},
		rows: [][]panel{m.dividerFigures(base)},
	}
}

// mouthEdgeMiddle gives a place on the edge of the right side at the mouth.
func (m model) mouthEdgeMiddle() scene.Vec {
	return scene.Vec{X: m.w() - m.s()/2, Y: m.h() * 0.12, Z: m.d()}
}
