package cutter_test

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// The reader here knows the W3C's SVG 1.1 and nothing of what writes it. It
// takes what a plain machine takes: groups in groups, paths of M, L, A and Z in
// absolute coordinates, and texts; an attribute that moves, clips or dashes
// anything is an error.

type xy struct{ x, y float64 }

// run is one stretch of a path, arcs in short chords.
type run struct {
	points []xy
	closed bool
}

type element struct {
	XMLName xml.Name
	Attrs   []xml.Attr `xml:",any,attr"`
	Text    string     `xml:",chardata"`
	Inner   []element  `xml:",any"`
}

func (e element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (e element) child(name string) element {
	for _, c := range e.Inner {
		if c.XMLName.Local == name {
			return c
		}
	}
	return element{}
}

// read gives a drawing and what it has that a machine could take wrongly.
func read(file []byte) (element, error) {
	var e element
	if err := xml.Unmarshal(file, &e); err != nil {
		return e, err
	}
	ids := map[string]bool{}
	var look func(element) error
	look = func(e element) error {
		for _, a := range e.Attrs {
			switch a.Name.Local {
			case "transform", "style", "clip-path", "mask", "stroke-dasharray", "class":
				return fmt.Errorf("%s on %s", a.Name.Local, e.XMLName.Local)
			case "id":
				if ids[a.Value] {
					return fmt.Errorf("id %s twice", a.Value)
				}
				ids[a.Value] = true
			}
		}
		for _, c := range e.Inner {
			if err := look(c); err != nil {
				return err
			}
		}
		return nil
	}
	return e, look(e)
}

// runs reads the paths straight in a group.
func (e element) runs() ([]run, error) {
	var out []run
	for _, c := range e.Inner {
		if c.XMLName.Local != "path" {
			continue
		}
		r, err := path(c.attr("d"))
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, nil
}

func path(d string) (run, error) {
	var r run
	words := strings.Fields(d)
	next := func() float64 {
		if len(words) == 0 {
			return math.NaN()
		}
		v, err := strconv.ParseFloat(words[0], 64)
		if err != nil {
			v = math.NaN()
		}
		words = words[1:]
		return v
	}
	for i := 0; len(words) > 0; i++ {
		c := words[0]
		words = words[1:]
		switch {
		case c == "M" && i == 0, c == "L" && i > 0:
			r.points = append(r.points, xy{next(), next()})
		case c == "A" && i > 0:
			rx, ry, turn, large, sweep := next(), next(), next(), next(), next()
			to := xy{next(), next()}
			if rx != ry || turn != 0 {
				return r, fmt.Errorf("an arc of no circle in %q", d)
			}
			r.points = append(r.points, arc(r.points[len(r.points)-1], to, rx, large == 1, sweep == 1)...)
		case c == "Z" && i > 0 && len(words) == 0:
			r.closed = true
		default:
			return r, fmt.Errorf("%q in %q", c, d)
		}
	}
	for _, p := range r.points {
		if math.IsNaN(p.x + p.y) {
			return r, fmt.Errorf("no number in %q", d)
		}
	}
	if n := len(r.points); r.closed && math.Hypot(r.points[0].x-r.points[n-1].x, r.points[0].y-r.points[n-1].y) < 1e-6 {
		r.points = r.points[:n-1]
	}
	return r, nil
}

// arc gives points on an arc after its start, by SVG 1.1, F.6.5.
func arc(from, to xy, r float64, large, sweep bool) []xy {
	hx, hy := (from.x-to.x)/2, (from.y-to.y)/2
	half := math.Hypot(hx, hy)
	r = max(r, half)
	f := math.Sqrt(max(0, r*r-half*half)) / half
	if large == sweep {
		f = -f
	}
	cx, cy := f*hy+(from.x+to.x)/2, -f*hx+(from.y+to.y)/2
	start := math.Atan2(from.y-cy, from.x-cx)
	turn := math.Atan2(to.y-cy, to.x-cx) - start
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	}
	if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	const steps = 720
	var out []xy
	for i := 1; i < steps; i++ {
		a := start + turn*float64(i)/steps
		out = append(out, xy{cx + r*math.Cos(a), cy + r*math.Sin(a)})
	}
	return append(out, to)
}

// box gives the smallest and largest coordinates of runs.
func box(runs []run) (lo, hi xy) {
	lo, hi = xy{math.Inf(1), math.Inf(1)}, xy{math.Inf(-1), math.Inf(-1)}
	for _, r := range runs {
		for _, p := range r.points {
			lo = xy{min(lo.x, p.x), min(lo.y, p.y)}
			hi = xy{max(hi.x, p.x), max(hi.y, p.y)}
		}
	}
	return lo, hi
}

// area gives the area within a closed run.
func (r run) area() float64 {
	var twice float64
	for i, p := range r.points {
		q := r.points[(i+1)%len(r.points)]
		twice += p.x*q.y - q.x*p.y
	}
	return math.Abs(twice / 2)
}

// length gives how long a run is.
func (r run) length() float64 {
	var sum float64
	n := len(r.points)
	for i, p := range r.points {
		if i == n-1 && !r.closed {
			break
		}
		q := r.points[(i+1)%n]
		sum += math.Hypot(p.x-q.x, p.y-q.y)
	}
	return sum
}
