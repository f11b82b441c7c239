package shape

import (
	"math"
	"slices"

	"forel/geometry"
	"forel/render"
)

// Hatch is a set of parallel lines over an area.
type Hatch struct {
	Angle  float64 // degrees from the page's X toward its lower edge
	Gap    Length  // from line to line
	Stroke render.Stroke
}

// Draw hatches an area, with what is to be kept free left out.
func (h Hatch) Draw(on render.Surface, a Area, keep []geometry.Box) {
	for _, l := range h.Lines(a, keep) {
		on.Stroke(l.Path, l.Stroke)
	}
}

// Lines returns the hatching of an area, with what is to be kept free left out.
// Lines lie on one grid for the whole page, so that areas beside each other
// join; the dashes of every second line are shifted by half a period.
func (h Hatch) Lines(a Area, keep []geometry.Box) []Hatched {
	sin, cos := math.Sincos(h.Angle * math.Pi / 180)
	along := geometry.Pt(Length(cos), Length(sin))
	across := geometry.Pt(-along.Y, along.X)
	dot := func(p, q geometry.Point) Length { return p.X*q.X + p.Y*q.Y }
	lo, hi := Length(math.Inf(1)), Length(math.Inf(-1))
	for _, p := range a.Rings[0] {
		lo, hi = min(lo, dot(p, across)), max(hi, dot(p, across))
	}
	var period Length
	for _, d := range h.Stroke.Dash {
		period += d
	}
	var out []Hatched
	for n := int(math.Ceil(float64(lo / h.Gap))); Length(n)*h.Gap < hi; n++ {
		level := Length(n) * h.Gap
		var stops []Length
		a.Edges(func(p, q geometry.Point) {
			u, v := dot(p, across), dot(q, across)
			if (u > level) != (v > level) {
				x, y := dot(p, along), dot(q, along)
				stops = append(stops, x+(level-u)/(v-u)*(y-x))
			}
		})
		slices.Sort(stops)
		at := func(t Length) geometry.Point { return along.Mul(float64(t)).Add(across.Mul(float64(level))) }
		for i := 1; i < len(stops); i += 2 {
			for _, s := range outside(at, stops[i-1], stops[i], keep) {
				if s[1]-s[0] < 0.05 {
					continue
				}
				stroke := h.Stroke
				if period > 0 {
					shift := s[0] + period/2*Length(n&1)
					stroke.Phase = shift - period*Length(math.Floor(float64(shift/period)))
				}
				out = append(out, Hatched{geometry.Line(at(s[0]), at(s[1])), stroke})
			}
		}
	}
	return out
}

// Hatched is one line of a hatching.
type Hatched struct {
	Path   geometry.Path
	Stroke render.Stroke
}

// outside returns the stretches of a line from one parameter to another that lie
// in none of the boxes.
func outside(at func(Length) geometry.Point, from, to Length, boxes []geometry.Box) [][2]Length {
	left := [][2]Length{{from, to}}
	for _, b := range boxes {
		var next [][2]Length
		for _, s := range left {
			clips := geometry.Line(at(s[0]), at(s[1])).Clip(b, 1)
			if len(clips) == 0 {
				next = append(next, s)
				continue
			}
			c := clips[0]
			start := s[0] + c.Start
			end := start + c.Path.Vertices[0].Distance(c.Path.Vertices[1].Point)
			if start > s[0] {
				next = append(next, [2]Length{s[0], start})
			}
			if end < s[1] {
				next = append(next, [2]Length{end, s[1]})
			}
		}
		left = next
	}
	return left
}
