package templates_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// The SVG reader here is apart from everything that writes SVG: it knows the
// W3C's SVG 1.1 only, and only as much of it as a drawing may use. Anything
// else is an error.

// xy is a point of a drawing, Y downward.
type xy struct{ x, y float64 }

// drawn is one run of a path: its points with those on its arcs, and those of
// its points that are written.
type drawn struct {
	points  []xy // a closed run does not repeat its first point
	written []xy
	closed  bool
}

func (d *drawn) add(p xy) { d.points, d.written = append(d.points, p), append(d.written, p) }

// mark is a path or a text with its attributes.
type mark struct {
	attr map[string]string
	runs []drawn // of a path
	text string  // of a text
}

// group is a layer of a drawing.
type group struct {
	id           string
	paths, texts []mark
}

// drawing is an SVG file as read.
type drawing struct {
	width, height string // as written
	viewBox       []float64
	title, desc   string
	groups        []group
}

func (d drawing) group(id string) group {
	for _, g := range d.groups {
		if g.id == id {
			return g
		}
	}
	return group{}
}

// readDrawing reads a file of one svg element with a title, a description and
// groups of paths and texts.
func readDrawing(file []byte) (drawing, error) {
	var d drawing
	dec := xml.NewDecoder(bytes.NewReader(file))
	var open []string
	var words strings.Builder
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return d, nil
		}
		if err != nil {
			return d, err
		}
		switch e := token.(type) {
		case xml.StartElement:
			if e.Name.Space != "http://www.w3.org/2000/svg" {
				return d, fmt.Errorf("%s is in the name space %q", e.Name.Local, e.Name.Space)
			}
			attr := map[string]string{}
			for _, a := range e.Attr {
				if _, twice := attr[a.Name.Local]; twice {
					return d, fmt.Errorf("%s has two attributes %s", e.Name.Local, a.Name.Local)
				}
				attr[a.Name.Local] = a.Value
			}
			if err := d.start(strings.Join(open, "/"), e.Name.Local, attr); err != nil {
				return d, err
			}
			open = append(open, e.Name.Local)
			words.Reset()
		case xml.EndElement:
			switch strings.Join(open, "/") {
			case "svg/title":
				d.title = words.String()
			case "svg/desc":
				d.desc = words.String()
			case "svg/g/text":
				texts := d.groups[len(d.groups)-1].texts
				texts[len(texts)-1].text = words.String()
			}
			open = open[:len(open)-1]
			words.Reset()
		case xml.CharData:
			words.Write(e)
		}
	}
}

// start takes in an element that opens within others.
func (d *drawing) start(within, name string, attr map[string]string) error {
	if _, has := attr["transform"]; has && name != "text" {
		return fmt.Errorf("transform on %s", name)
	}
	if _, has := attr["style"]; has {
		return fmt.Errorf("style on %s, where a transform could hide", name)
	}
	switch within + "/" + name {
	case "/svg":
		if d.viewBox != nil {
			return errors.New("two drawings")
		}
		d.width, d.height = attr["width"], attr["height"]
		for _, f := range strings.Fields(attr["viewBox"]) {
			v, err := strconv.ParseFloat(f, 64)
			if err != nil {
				return err
			}
			d.viewBox = append(d.viewBox, v)
		}
		if len(d.viewBox) != 4 {
			return fmt.Errorf("viewBox %q", attr["viewBox"])
		}
	case "svg/title", "svg/desc":
	case "svg/g":
		d.groups = append(d.groups, group{id: attr["id"]})
	case "svg/g/path":
		runs, err := readPath(attr["d"])
		if err != nil {
			return fmt.Errorf("path %q: %w", attr["d"], err)
		}
		g := &d.groups[len(d.groups)-1]
		g.paths = append(g.paths, mark{attr: attr, runs: runs})
	case "svg/g/text":
		g := &d.groups[len(d.groups)-1]
		g.texts = append(g.texts, mark{attr: attr})
	default:
		return fmt.Errorf("%s within %q", name, within)
	}
	return nil
}

// readPath reads path data (SVG 1.1, 8.3): M, L, H, V, A and Z, absolute or
// relative.
func readPath(data string) ([]drawn, error) {
	s := pathScanner{rest: data}
	var runs []drawn
	var at xy
	command := byte(0)
	for {
		s.skip()
		if s.rest == "" {
			return runs, s.err
		}
		if c := s.rest[0]; strings.IndexByte("MmLlHhVvAaZz", c) >= 0 {
			command, s.rest = c, s.rest[1:]
		} else if command == 0 || command|' ' == 'z' {
			return nil, fmt.Errorf("no command before %.10q", s.rest)
		}
		if len(runs) == 0 && command|' ' != 'm' {
			return nil, errors.New("does not start with M")
		}
		base := xy{}
		if command >= 'a' {
			base = at
		}
		if command|' ' != 'm' && runs[len(runs)-1].closed {
			runs = append(runs, drawn{})
			runs[len(runs)-1].add(at)
		}
		switch command | ' ' {
		case 'm':
			at = xy{base.x + s.number(), base.y + s.number()}
			runs = append(runs, drawn{})
			runs[len(runs)-1].add(at)
			command -= 'M' - 'L' // more numbers are lines
			continue
		case 'z':
			run := &runs[len(runs)-1]
			run.closed = true
			at = run.points[0]
			if n := len(run.points); n > 1 && run.points[n-1] == at {
				run.points, run.written = run.points[:n-1], run.written[:len(run.written)-1]
			}
			continue
		case 'l':
			at = xy{base.x + s.number(), base.y + s.number()}
		case 'h':
			at.x = base.x + s.number()
		case 'v':
			at.y = base.y + s.number()
		case 'a':
			rx, ry, turn := s.number(), s.number(), s.number()
			large, sweep := s.number() != 0, s.number() != 0
			to := xy{base.x + s.number(), base.y + s.number()}
			if s.err == nil && (rx != ry || rx <= 0 || turn != 0) {
				return nil, errors.New("an arc that is no part of a circle")
			}
			run := &runs[len(runs)-1]
			run.points = append(run.points, arcPoints(at, to, rx, large, sweep)...)
			at = to
		}
		if s.err != nil {
			return nil, s.err
		}
		runs[len(runs)-1].add(at)
	}
}

// arcPoints returns points on an arc between its ends, by the conversion from
// end points to a centre in SVG 1.1, F.6.5.
func arcPoints(from, to xy, r float64, large, sweep bool) []xy {
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
	switch {
	case sweep && turn < 0:
		turn += 2 * math.Pi
	case !sweep && turn > 0:
		turn -= 2 * math.Pi
	}
	const steps = 360
	points := make([]xy, 0, steps-1)
	for i := 1; i < steps; i++ {
		a := start + turn*float64(i)/steps
		points = append(points, xy{cx + r*math.Cos(a), cy + r*math.Sin(a)})
	}
	return points
}

type pathScanner struct {
	rest string
	err  error
}

func (s *pathScanner) skip() { s.rest = strings.TrimLeft(s.rest, " \t\r\n,") }

func (s *pathScanner) number() float64 {
	s.skip()
	n := strings.IndexFunc(s.rest, func(r rune) bool { return !strings.ContainsRune("+-.0123456789eE", r) })
	if n < 0 {
		n = len(s.rest)
	}
	v, err := strconv.ParseFloat(s.rest[:n], 64)
	if err != nil && s.err == nil {
		s.err = err
	}
	s.rest = s.rest[n:]
	return v
}
