package slipcase

import (
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/work"
)

// ofDivider tells whether a piece is a divider or goes on one.
func ofDivider(p geometry.Piece) bool {
	return strings.HasPrefix(p.Name, "divider") || p.Name == notchStripName
}

// dividerStripStep returns the step of the cloth on the dividers, which they get before
// they stand.
func (m model) dividerStripStep() plan.Step {
	lap := m.job.Divider.Lap
	strips := work.Counted(m.whole.Pieces, func(p geometry.Piece) bool { return p.Name == dividerStrip || p.Name == notchStripName })
	s := plan.Step{
		Title: "Wrap the mouth edges of the dividers",
		Short: plan.Say("Glue the strips of cloth round the mouth edges of the dividers."),
		Text: []stage.Say{
			plan.Say("Glue a strip and lay the mouth edge of the divider between its folds, head and tail flush. Rub it down on the edge first, then on both faces: it reaches %s onto each.", lap),
		},
		Pictures: [][]stage.Picture{{m.stripFigure()}},
		Spells:   []work.Spell{work.Do(work.CutSheet, strips).And(work.Cover, strips)},
	}
	if m.job.dividerHole() {
		s.Short.Text += " The edge of the thumb hole in them comes first."
		snip := ""
		if m.job.ThumbHole.Shape == Semicircle {
			snip = " Snip what goes onto the faces every few millimetres, so that it follows the curve."
		}
		s.Text = []stage.Say{
			plan.Say("First the edge of the thumb hole: glue the "+notchStripName+" round it, its middle on the edge, %s onto each face. Its two narrow ends go on along the mouth edge."+snip, holeLap),
			plan.Say("Then glue a strip above the hole and one below, over the narrow ends: head or tail flush, the other end at the corner of the hole. Rub each down on the mouth edge first, then on both faces: it reaches %s onto each.", lap),
		}
	}
	return s
}

// dividerStep returns the step of the dividers. They go in while one side is still open:
// each volume is then tried in its place, and nothing is smeared with glue.
func (m model) dividerStep() plan.Step {
	j := m.job
	first := escaped(j.Whose(len(j.Books) - 1))
	flush := "its mouth edge flush with those of the walls"
	lengths := []Length(nil)
	if j.Divider.SetBack > 0 {
		flush, lengths = "its mouth edge %s back from those of the walls", []Length{j.Divider.SetBack}
	}
	s := plan.Step{
		Title: "Glue the dividers between the walls",
		Short: plan.Say("Glue the dividers between the walls, on their ruled lines, with the volumes under them; the other side is not on yet."),
		Text: []stage.Say{
			plan.Say("The case lies on its right side, so build up from the right. Wrap "+first+" in one layer of thin release paper and lay it on the side, fore-edge against the spine wall. Pack it up to the first ruled line with board and paper: it has %s of room.", j.Clearance.Thickness),
			plan.Say("Try the divider dry, from above: it lies on the packing between its lines, its edges tight to the three walls, "+flush+". Put a thin line of glue on its three edges, lower it in and press the walls to it. Wipe off what oozes out.", lengths...),
		},
		Pictures: [][]stage.Picture{m.dividerFigures()},
		Checks:   []plan.Check{j.dividerCheck()},
		Spells:   []work.Spell{work.Do(work.Join, j.Dividers()).And(work.Try, j.Dividers()).WhileWet()},
	}
	if j.Dividers() > 1 {
		s.Text = append(s.Text, plan.Say("Go on with the next volume and the next divider, to the left."))
	}
	if j.dividerHole() {
		s.Text = append(s.Text, plan.Say("The thumb holes stand in line with that of the side: look through them along a straightedge."))
	}
	return s
}
