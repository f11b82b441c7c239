package handout

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/slipcase"
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
		out, on = append(append(out, b.designStep(m)...), b.wrapSteps(m)...), []covering{wrapCover, headPanel, tailPanel}
	case slipcase.SidesOnly:
		on = []covering{rightPaper, leftPaper}
		out = append(append(out, b.designStep(m)...), b.paperStep(m))
	default:
		on = []covering{spineCloth, headCloth, tailCloth, rightPaper, leftPaper}
		out = append(append(out, b.clothSteps(m)...), b.designStep(m)...)
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
		title: "Dry the case and try " + bookOrBooks(j),
		text: []string{
			"Fill the case with something as thick as " + bookOrBooks(j) + ", wrapped in release paper, and leave it under a light weight overnight.",
			finalTry(j) + " Check the case against the list on the last page.",
		},
		rows: [][]panel{{done}},
	})
}

// finalTry says how what the case is for goes into it.
func finalTry(j slipcase.Job) string {
	if len(j.Books) > 1 {
		return "Slide the books in, spine outward. Each should go in easily, the tallest with a little air above it, and stay when the case is tipped."
	}
	return "Slide the book in, spine outward. It should go in with a little air above it and stay when the case is tipped."
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
	what := fmt.Sprintf("Lay the book on a side, flush with its spine and its head. At the fore-edge %s of the side must show, at the tail %s.", mm(fit.ForeEdge), mm(fit.HeadOrTail))
	if len(m.job.Books) > 1 {
		what = fmt.Sprintf("Lay the deepest volume on a side, flush with its spine: at the fore-edge %s of the side must show. Lay the tallest flush with its head: at the tail %s must show.", mm(fit.ForeEdge), mm(fit.HeadOrTail))
	}
	return step{
		title: "Try a side against the book, before any glue",
		text: []string{
			what,
			"If less shows, the side is too small: check the readings, the thickness of the board and the scale of the print, and cut again. If more shows, the book will rattle: trim the side, and the other pieces of that measure with it.",
		},
		rows: [][]panel{m.dryFigures(mm(fit.ForeEdge), mm(fit.HeadOrTail))},
	}
}

func (b *book) tryStep(m model) step {
	p := m.insertFigure(m.boards(boardNames...), "", true)
	what := bookOrBooks(m.job)
	p.notes = []note{{name: what, more: "half way in", spot: bookName(len(m.job.Books) - 1)}, {name: "bare case", spot: "right side"}}
	return step{
		title: "Try " + what + " in the bare case",
		text: []string{
			b.playWords(m.job),
			"If it sticks, look for glue in a corner and sand it away. If it still sticks, do not cover the case: measure again and make a new one. Take " + what + " out.",
			b.outsideWords(),
		},
		rows: [][]panel{{p}},
	}
}

// playWords says what play there is in the bare case: what lies between the
// boards, less the book, or less all volumes side by side where the dividers are
// still to come.
func (b *book) playWords(j slipcase.Job) string {
	mm, room := b.Round.Pretty, j.Between()
	var tall, thick Length
	for _, v := range j.Books {
		tall, thick = max(tall, v.Height.Largest()), thick+v.Thick()
	}
	height, thickness := mm(room.Height-tall), mm(room.Thickness-thick)
	if len(j.Books) < 2 {
		return fmt.Sprintf("Slide the book in gently. It must go in without force and have play: %s in height and %s in thickness all told. Covering will take some of it at the mouth.", height, thickness)
	}
	text := fmt.Sprintf("Slide the books in gently, side by side. They must go in without force and have play: %s in height, the tallest, and %s in thickness, all together.", height, thickness)
	if n := j.Dividers(); n > 0 {
		what := "A divider, still to come, takes %s of that"
		if n > 1 {
			what = "Dividers, still to come, take %s of that"
		}
		text += fmt.Sprintf(" "+what+"; it leaves each volume %s.", mm(Length(n)*j.DividerThickness()), mm(j.Clearance.Thickness))
	}
	return text + " Covering will take some at the mouth."
}

// outsideWords says what the bare case must measure before its covering is cut.
func (b *book) outsideWords() string {
	mm, o := b.Round.Pretty, b.plan.Outside
	later := ""
	if what := b.designed(); what != "" {
		later = " The " + what + " come later: they are cut by the printed design."
	}
	return fmt.Sprintf("Measure the case outside: %s high, %s deep, %s thick. If it is off by more than %s, measure the board again, mend the job and print the covering anew. Then cut the covering from its patterns, the grain as the arrows show.",
		mm(o.Height), mm(o.Width), mm(o.Thickness), mm(b.halfMillimetre())) + later
}

// halfMillimetre gives half a millimetre, or 1/64 in, which is near it, as it can
// be read off a ruler.
func (b *book) halfMillimetre() Length {
	if b.Round.Unit == geometry.IN {
		return geometry.Inch / 64
	}
	return 0.5
}
