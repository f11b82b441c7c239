package handout

import (
	"fmt"

	"forel/geometry/slipcase"
	"forel/render/scene"
)

// cutOut names what is cut out of the spine cloth beside its spine flaps: wedges,
// or, where side flaps so short end at the apex, notches.
func (m model) cutOut() (one, many string) {
	var flap, apex Length
	for _, g := range m.pieces["spine cloth"].Margins {
		switch g.Name {
		case "side flaps over head and tail":
			flap = g.Length
		case "from the corner of the board to the apex of a wedge":
			apex = g.Length
		}
	}
	if flap.Near(apex) {
		return "notch", "notches"
	}
	return "wedge", "wedges"
}

// clothSteps gives the steps of spine cloth, head cloth and tail cloth.
func (b *book) clothSteps(m model) []step {
	mm := b.Round.Pretty
	laid, flaps := m.spineFigures()
	ends, tabs := m.endFigures()
	_, cuts := m.cutOut()
	j := m.job
	return []step{
		{
			title: "Spine cloth: the spine and the margins",
			text: []string{
				"Cut the spine cloth with its " + cuts + ". Glue it evenly, back up. Stand the case with its spine on the ruled rectangle, mouth up, and press.",
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
	tabs := "The covering is cut smaller than the hole in the board and snipped into tabs. Glue the tabs again, draw each over the edge of the board, and press it down inside, one after another, so that they follow the curve."
	if m.job.ThumbHole.Shape == slipcase.Triangle {
		tabs = "The covering is cut smaller than the hole in the board and snipped at its point into two tabs. Glue the tabs again, draw each over its straight edge of the board, and press it down inside, tight into the point."
	}
	return step{
		title: "The thumb holes",
		text: []string{
			"At each hole, before its tabs are turned, " + slipcase.HoleStrip + ".",
			tabs,
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
			"Try each divider dry: it slides in on its ruled lines, against the spine wall. With the dividers standing, try each volume in its place: it must go in without force. Take them out. Put a thin line of glue on its three edges and slide it in. Stand the volumes in, wrapped in release paper, to keep it straight while it dries.",
		},
		rows: [][]panel{m.dividerFigures(base)},
	}
}

// mouthEdgeMiddle gives a place on the edge of the right side at the mouth.
func (m model) mouthEdgeMiddle() scene.Vec {
	return scene.Vec{X: m.w() - m.s()/2, Y: m.h() * 0.12, Z: m.d()}
}
