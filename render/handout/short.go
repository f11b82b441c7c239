package handout

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/figure"
)

// shortPages is how many pages a short handout has, where the sheet is no smaller than A4 or
// Letter.
const shortPages = 4

// brevity is how much is told of a step.
type brevity int

const (
	inFull   brevity = iota
	brief            // its text as briefly as beside the templates
	briefest         // its checks too
)

// leastRest is how much of a page must be left below the worksheet for steps to begin there.
const leastRest Length = 60

// short sets the steps in two columns behind the worksheet, each with one figure as large as
// four pages allow, then the checks and the cautions. Steps that are too long for four pages
// even without figures are told as briefly as beside the templates; then what to do when a
// check fails is left to these too.
func (d *doc) short() {
	rest := d.Rest(blockGap)
	if rest.Height() < leastRest {
		rest = geometry.Box{}
	}
	columns := d.Columns(gutter, rest)
	const most, least, step = 62, 26, 3
	for how := inFull; how <= briefest; how++ {
		for tall := Length(most); tall >= 0; tall -= step {
			if tall < least {
				tall = 0
			}
			columnsTaken := len(d.Try(columns, d.shortBlocks(tall, how, false)...))
			pages := d.Count() + (columnsTaken+1)/2
			if rest.Height() > 0 {
				pages--
			}
			if pages <= shortPages || how == briefest && tall == 0 {
				d.Flow(columns, d.shortBlocks(tall, how, true)...)
				return
			}
		}
	}
}

// shortBlocks returns what a short handout has behind its worksheet, with figures so tall,
// drawn or only room for them.
func (d *doc) shortBlocks(tall Length, how brevity, drawn bool) []document.Block {
	blocks := d.SmallList("Take care", document.Bullet, wording.Cautions())
	blocks[0].Bookmark = "Steps"
	for i, s := range d.plan.Steps {
		blocks = append(blocks, d.shortStep(i+1, s, tall, how, drawn)...)
	}
	good := d.SmallList("Check the finished case", document.ToTick, d.said(d.plan.Finished.Good))
	good[0].Bookmark = "Checks"
	blocks = append(append(blocks, good...), d.SmallList("When a check fails", document.Bullet, d.said(d.plan.Finished.Bad))...)
	return append(blocks, d.Paragraph(d.allTime(), render.NoteSize, false).After(1.5), d.sources())
}

// shortStep returns a step with its last figure, which shows what it comes to, and its checks.
func (d *doc) shortStep(number int, s plan.Step, tall Length, how brevity, drawn bool) []document.Block {
	text := s.Text
	if how >= brief {
		text = []stage.Say{s.Short}
	}
	above, apart := Length(2), Length(0.7)
	if how == briefest {
		above, apart = 1, 0.2
	}
	out := []document.Block{{Above: above, Draw: func(box geometry.Box) Length {
		y := document.Paragraph(d, box, box.Min.Y, fmt.Sprintf("%d   %s", number, s.Title), render.BodySize, true) + 0.3
		said := d.said(text)
		if t := d.timeBriefly(s, how == briefest); t != "" {
			said[len(said)-1] += " Time: " + t + "."
		}
		for _, t := range said {
			y = document.Paragraph(d, box, y, t, render.NoteSize, false)
		}
		if tall > 0 && len(s.Pictures) > 0 {
			if drawn {
				row := s.Pictures[len(s.Pictures)-1]
				p := d.panel(row[len(row)-1]).Uncaptioned() // it tells one of several from another
				p.Draw(d, geometry.Bx(box.Min.X, y+1, box.Max.X, y+1+tall), figure.AtBoth)
			}
			y += 1 + tall
		}
		return y
	}}}
	for _, c := range s.Checks {
		out = append(out, document.Block{Above: apart, Draw: func(box geometry.Box) Length {
			return document.Item(d, box, document.ToTick, 0, d.checkWords(s, c, how), render.NoteSize)
		}})
	}
	return out
}

// checkWords returns a check of a step in one paragraph. What the step's title begins with, such
// as "Chemise: ", is not said again.
func (d *doc) checkWords(s plan.Step, c plan.Check, how brevity) string {
	name := c.Name
	if part, rest, found := strings.Cut(name, ": "); found && strings.HasPrefix(s.Title, wording.Capital(part)+": ") {
		name = rest
	}
	out := wording.Capital(name) + ": " + strings.Join(d.said(c.See), "; ") + "."
	if how == briefest {
		return out
	}
	if c.Fails.Text != "" {
		out += " If not: " + c.Fails.In(d.Round.Pretty) + "."
	}
	for _, f := range c.Found {
		say := func(s stage.Say) string { return s.In(d.Round.Pretty) }
		out += " Where " + say(f.What) + ": " + say(f.Means) + "; " + say(f.Do) + "."
	}
	return out
}
