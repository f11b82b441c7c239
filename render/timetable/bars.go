package timetable

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"forel/geometry"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// Of the pictures of the days.
const (
	laneTall Length = 3.2 // of a case
	laneGap  Length = 0.8
	mostLane        = 12 // cases that have a lane each; of more there is one for all
	hourTick Length = 1
	openWide Length = 0.9 // of the line where the bench is open
)

// bar is part of a day, in a lane.
type bar struct {
	lane     int
	from, to time.Time
	dries    bool
}

// overview returns the picture of each day on which something is done or dries: a line for
// the hours of the day, thick where the bench is open; above it the work, and what dries.
func (t Table) overview(d *document.Document, lines []line) []document.Block {
	lanes := len(t.Cases)
	if lanes > mostLane {
		lanes = 1
	}
	var bars []bar
	for _, l := range lines {
		lane := l.cases[0]
		if lanes == 1 {
			lane = 0
		}
		bars = append(bars, bar{lane, l.from, l.to, false})
		if !l.dry.IsZero() {
			bars = append(bars, bar{lane, l.to, l.dry, true})
		}
	}
	out := []document.Block{d.Heading("Work and drying, day by day"), t.legend(d, lanes)}
	out[1].Stays = true
	first, last := day(t.Entries[0].From), day(t.Last().Add(-time.Nanosecond))
	for at := first; !at.After(last); at = at.AddDate(0, 0, 1) {
		var today []bar
		for _, b := range bars {
			next := at.AddDate(0, 0, 1)
			if !b.from.Before(next) || !b.to.After(at) && !b.from.Equal(at) {
				continue
			}
			if b.from.Before(at) {
				b.from = at
			}
			if b.to.After(next) {
				b.to = next
			}
			today = append(today, b)
		}
		today = merged(today)
		if len(today) > 0 {
			out = append(out, t.picture(d, at, today, lanes))
		}
	}
	return out
}

// legend returns the key of the pictures.
func (t Table) legend(d *document.Document, lanes int) document.Block {
	samples := []document.Sample{
		{Draw: func(box geometry.Box) { worked(d, box) }, Text: "work"},
		{Draw: func(box geometry.Box) { dries(d, box) }, Text: "drying"},
		{Draw: func(box geometry.Box) {
			mid := box.Center().Y
			d.Stroke(geometry.Line(geometry.Pt(box.Min.X, mid), geometry.Pt(box.Max.X, mid)), render.Stroke{Width: openWide, Color: render.Black})
		}, Text: "the bench is open"},
	}
	text := "A number is that of a case in the table above."
	if lanes == 1 {
		text = "All cases are in one row."
	}
	return document.Block{Above: 1, Draw: func(box geometry.Box) Length {
		y := document.Key(d, box, 5.5, 2.2, samples)
		if t.several() {
			y = document.Paragraph(d, box, y, text, render.NoteSize, false)
		}
		return y
	}}
}

func worked(d *document.Document, box geometry.Box) { d.Fill(geometry.Rectangle(box), render.Blue) }

func dries(d *document.Document, box geometry.Box) {
	d.Stroke(geometry.Rectangle(box.Grow(-0.1)), render.Stroke{Width: render.Finest, Color: render.Black})
}

// picture draws one day.
func (t Table) picture(d *document.Document, at time.Time, bars []bar, lanes int) document.Block {
	return document.Block{Above: 2, Draw: func(box geometry.Box) Length {
		y := box.Min.Y + typeset.LineHeight(render.NoteSize)
		document.Write(d, geometry.Pt(box.Min.X, y), t.dayName(at), render.NoteSize, true)
		left, right := box.Min.X+6, box.Max.X-4
		x := func(when time.Time) Length { return left + (right-left)*Length(when.Sub(at).Hours()/24) }
		y += 1.5
		for lane := range lanes {
			if t.several() && lanes > 1 {
				document.WriteEnd(d, geometry.Pt(left-1.5, y+laneTall-0.6), fmt.Sprint(lane+1), render.SmallSize, false)
			}
			half := laneTall / 2
			for _, b := range bars {
				switch {
				case b.lane != lane:
				case b.dries:
					dries(d, geometry.Bx(x(b.from), y+half+0.1, max(x(b.to), x(b.from)+0.3), y+laneTall))
				case b.to.After(b.from):
					worked(d, geometry.Bx(x(b.from), y, x(b.to), y+half-0.1))
				}
			}
			y += laneTall + laneGap
		}
		d.Stroke(geometry.Line(geometry.Pt(left, y), geometry.Pt(right, y)), render.Stroke{Width: render.Finest, Color: render.Grey})
		for _, s := range t.Hours.On(at) {
			d.Stroke(geometry.Line(geometry.Pt(x(s[0]), y), geometry.Pt(x(s[1]), y)), render.Stroke{Width: openWide, Color: render.Black})
		}
		bottom := y + hourTick + typeset.LineHeight(render.SmallSize)
		for h := 0; h <= 24; h += 3 {
			px := x(at.Add(time.Duration(h) * time.Hour))
			d.Stroke(geometry.Line(geometry.Pt(px, y), geometry.Pt(px, y+hourTick)), render.Stroke{Width: render.Finest, Color: render.Grey})
			d.Text(render.Text{At: geometry.Pt(px, bottom-0.4), String: fmt.Sprintf("%02d", h), Size: render.SmallSize, Align: render.Middle, Color: render.Black})
		}
		return bottom
	}}
}

// merged returns bars with those of the same in a lane that touch as one.
func merged(bars []bar) (out []bar) {
	slices.SortStableFunc(bars, func(a, b bar) int {
		kind := func(b bar) int {
			if b.dries {
				return 1
			}
			return 0
		}
		return cmp.Or(cmp.Compare(a.lane, b.lane), cmp.Compare(kind(a), kind(b)), a.from.Compare(b.from))
	})
	for _, b := range bars {
		if n := len(out); n > 0 && out[n-1].lane == b.lane && out[n-1].dries == b.dries && !b.from.After(out[n-1].to) {
			if b.to.After(out[n-1].to) {
				out[n-1].to = b.to
			}
			continue
		}
		out = append(out, b)
	}
	return out
}
