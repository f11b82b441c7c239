package fit

import (
	"fmt"
	"math"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// Plot is the drawing of one dimension as a file.
type Plot struct {
	File string
	SVG  []byte
}

// The size of a plot as a drawing of its own, but for the length of its chain.
const plotWide Length = 186

// Plots returns the drawing of each dimension: the distribution of its clearances
// with the limits, the worst case, and the chain it comes from.
func Plots(r fit.Report, o Options) []Plot {
	var out []Plot
	for _, dim := range r.Chain.Dimensions {
		d := &doc{&document.Document{Options: o, Title: "Fit in " + dim.Name + ": " + wording.Titled(r.Title, r.Kind), Wider: typeset.Substitute,
			About: "Distribution of the clearance in " + dim.Name + " with its limits, its worst case, and the chain of dimensions. A figure, not at true size."}, r}
		page := d.AddPage(plotWide, 0)
		page.Height = d.plot(geometry.Bx(5, 4, plotWide-5, 1000), dim) + 4
		out = append(out, Plot{"fit-" + strings.ReplaceAll(dim.Name, " ", "-") + ".svg", d.SVG()})
	}
	return out
}

// shown returns the gaps of a dimension from the widest to the tightest, of
// several compartments those of the one most likely to be too tight.
func shown(r fit.Report, d string) []fit.Gap {
	tightest := r.Gaps[r.Tightest(d)]
	var out []fit.Gap
	for _, g := range r.Gaps {
		if g.Dimension == d && g.Volume == tightest.Volume {
			out = append(out, g)
		}
	}
	return out
}

// plot draws one dimension into a box and returns where it ends.
func (d *doc) plot(box geometry.Box, dim plan.Dimension) Length {
	gaps := shown(d.report, dim.Name)
	y := d.named(box, gaps) + 1.5
	high := 72 + barTall*Length(len(gaps))
	d.curves(geometry.Bx(box.Min.X, y, box.Max.X, y+high), gaps, dim.Tight)
	return d.chain(geometry.Bx(box.Min.X, y+high+4, box.Max.X, box.Max.Y), gaps[len(gaps)-1])
}

// named sets the heading of a dimension and what each curve is of, and returns where
// it ends.
func (d *doc) named(box geometry.Box, gaps []fit.Gap) Length {
	u := d.Round.Unit
	head := "Fit in " + gaps[0].Dimension
	if gaps[0].Volume != "" {
		head += ": " + wording.OneLine(gaps[0].Volume) + ", the tightest compartment"
	}
	y := d.paragraph(box, box.Min.Y, typeset.Fit(head, render.HeadSize, true, box.Width()*0.85), render.HeadSize, true) + 1
	for n, g := range gaps {
		y += typeset.LineHeight(render.NoteSize) + 0.3
		dist := g.Distribution
		d.line(box.Min.X, y-1, box.Min.X+12, y-1, curve(n))
		drawn := geometry.Fine(g.Drawn, u)
		if g.Swell > 0 {
			drawn += ", " + geometry.FineNumber(g.Left(), u) + " when damp"
		}
		told := fmt.Sprintf(": %s, expected %s ± %s; too tight %s", drawn,
			geometry.FineNumber(dist.Expected(), u), geometry.Fine(2*dist.StandardDeviation(), u), chance(g.Chance.Tight))
		if g.Loose > 0 {
			told += ", too loose " + chance(g.Chance.Loose)
		}
		g.Volume = "" // it is in the heading
		for i, l := range typeset.Break(Name(g)+told, render.NoteSize, false, box.Width()-14) {
			if i > 0 {
				y += typeset.LineHeight(render.NoteSize)
			}
			d.words(box.Min.X+14, y, l, render.NoteSize, render.Start, false)
		}
	}
	return y + 1
}

// limit is what is too little or too much room, and how the zone beyond it is named:
// from its line to the left or to the right.
type limit struct {
	at         Length
	name, side string
	align      render.Align
}

// curves draws in a box the distributions over an axis of clearance, then the worst
// cases as bars below, their names from the left. tightName is what too little room
// is called.
func (d *doc) curves(box geometry.Box, gaps []fit.Gap, tightName string) {
	u, left := d.Round.Unit, box.Min.X
	bars := 8 + barTall*Length(len(gaps)) + 3.5
	frame := geometry.Bx(left+24, box.Min.Y, box.Max.X, box.Max.Y-bars)
	held := gaps[len(gaps)-1] // the tightest place
	zones := []limit{{held.Tight, tightName, "under ", render.End}}
	if held.Loose > 0 {
		zones = append(zones, limit{held.Loose, "too loose", "over ", render.Start})
	}
	tight, loose := zones[0].at, zones[len(zones)-1].at
	lo, hi, most := tight, loose, 0.0
	for _, g := range gaps {
		lo, hi = min(lo, g.Low), max(hi, g.High)
		for i := range 200 {
			most = max(most, g.Distribution.Density(g.Low+(g.High-g.Low)*Length(i)/200))
		}
	}
	lo, hi = lo-(hi-lo)*0.06, hi+(hi-lo)*0.06
	// The zones beyond the limits are wide enough for their names.
	const zone = 24
	for range 20 {
		scale := frame.Width() / (hi - lo)
		if need := zone/scale - (tight - lo); need > 0 {
			lo -= need
		}
		if need := zone/scale - (hi - loose); need > 0 {
			hi += need
		}
	}
	x := func(l Length) Length { return frame.Min.X + frame.Width()*(l-lo)/(hi-lo) }
	const band = 9 // for the names of the zones
	top := frame.Min.Y + band
	y := func(density float64) Length {
		return frame.Max.Y - (frame.Max.Y-top-2)*Length(density/math.Max(most, 1e-9))
	}
	for _, z := range zones {
		beyond := geometry.Bx(x(lo), top, x(z.at), frame.Max.Y)
		if z.align == render.Start {
			beyond = geometry.Bx(x(z.at), top, x(hi), frame.Max.Y)
		}
		beyondLimit.Draw(d, polygon.Box(beyond)[0], nil)
	}
	for n, g := range gaps {
		if most == 0 {
			continue
		}
		var points []geometry.Point
		const steps = 240
		for i := range steps + 1 {
			at := lo + (hi-lo)*Length(i)/steps
			if v := g.Distribution.Density(at); v > most/400 {
				points = append(points, geometry.Pt(x(at), y(v)))
			}
		}
		d.Stroke(geometry.Line(points...), curve(n))
	}
	for _, z := range zones {
		at := x(z.at)
		d.line(at, top, at, frame.Max.Y, limitLine)
		if z.align == render.End {
			at--
		} else {
			at++
		}
		d.words(at, frame.Min.Y+3, z.name, render.NoteSize, z.align, true)
		d.words(at, frame.Min.Y+7, z.side+geometry.Fine(z.at, u), render.NoteSize, z.align, false)
	}
	snug, upTo := x(tight), frame.Max.X
	if held.Loose > 0 {
		upTo = x(loose)
	}
	d.words((snug+upTo)/2, frame.Min.Y+3, "snug", render.NoteSize, render.Middle, true)
	d.words(left, (top+frame.Max.Y)/2, "how likely", render.NoteSize, render.Start, false)

	d.line(frame.Min.X, frame.Max.Y, frame.Max.X, frame.Max.Y, axis)
	step := tickStep(hi-lo, u)
	end := frame.Max.Y
	for n := math.Ceil(float64(lo / step)); Length(n)*step <= hi; n++ {
		at := x(Length(n) * step)
		d.line(at, end, at, end+1.5, axis)
		label := strings.TrimSuffix(fmt.Sprintf("%.2f", float64(Length(n)*step/u.Length())), "0")
		if label == "-0.0" {
			label = "0.0"
		}
		if half := typeset.Width(label, render.NoteSize, false) / 2; at+half <= frame.Max.X {
			d.words(at, end+5, label, render.NoteSize, render.Middle, false)
		}
	}
	d.words(left, end+5, "clearance, "+u.String(), render.NoteSize, render.Start, false)
	bar, dots := end+8, "dot: nothing off"
	d.words(left, bar+3.4, "worst case", render.NoteSize, render.Start, true)
	for n, g := range gaps {
		mid := bar + 2.4
		s := curve(n)
		d.line(x(g.Low), mid, x(g.High), mid, s)
		s.Dash = nil
		for _, e := range []Length{g.Low, g.High} {
			d.line(x(e), mid-1.5, x(e), mid+1.5, s)
		}
		d.Fill(geometry.Circle(geometry.Pt(x(g.Drawn), mid), 0.9), s.Color)
		if g.Swell > 0 {
			ring := geometry.Circle(geometry.Pt(x(g.Left()), mid), 0.9)
			d.Fill(ring, white)
			s.Width = 0.3
			d.Stroke(ring, s)
			dots = "dot: nothing off; ring: when damp"
		}
		bar += barTall
	}
	d.words(frame.Max.X, bar+3, "bar: every error at its end at once; "+dots, render.SmallSize, render.End, false)
}

// barTall is what the bar of a worst case takes.
const barTall = 5

// tickStep returns a round step that parts a range in no more than a dozen.
func tickStep(wide Length, u geometry.Unit) Length {
	for scale := 0.01; ; scale *= 10 {
		for _, s := range []float64{1, 2, 5} {
			if step := Length(s*scale) * u.Length(); wide/step <= 12 {
				return step
			}
		}
	}
}
