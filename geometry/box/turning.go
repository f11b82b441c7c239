package box

import (
	"fmt"
	"math"

	"forel/geometry"
)

// block is a body in the closed box: what it is, its section in X (from the open edges
// to the fore-edge) and Z (up from the back board), and from where to where it reaches
// from tail to head.
type block struct {
	name     string
	section  geometry.Box
	from, to Length
}

// blocks returns the boards of a tray with the thickest of their layers, and what lies
// on its floor heap by heap, as it stands so high above the back board: right way up, or
// turned over.
func (t foldedTray) blocks(below, middle Length, over bool) []block {
	k, rim, under := t.most(t.f.fore), t.rim(), t.most(t.f.under)
	low := middle - t.long/2
	place := func(name string, x0, z0, x1, z1, y0, y1 Length) block {
		z0, z1 = z0+under, z1+under
		if over {
			total := t.high + under + rim
			z0, z1 = total-z1, total-z0
			y0, y1 = t.long-y1, t.long-y0
		}
		return block{t.name + ", " + name, geometry.Bx(x0, z0+below, x1, z1+below), low + y0, low + y1}
	}
	near, away := t.most(t.f.ends[1].in), t.most(t.f.ends[0].in)
	out := []block{
		place("base", 0, -under, t.wide+k, t.t, 0, t.long),
		place("fore-edge wall", t.b-t.most(t.f.foreIn), 0, t.wide+k, t.high+rim, -k, t.long+k),
		place(t.f.ends[0].word+" wall", 0, 0, t.wide+k, t.high+rim, t.long-t.t-away, t.long+k),
		place(t.f.ends[1].word+" wall", 0, 0, t.wide+k, t.high+rim, -k, t.t+near),
	}
	floor := t.f.floor
	for _, h := range t.heaps(floor, t.Surfaces[t.Find(floor)].Extent) {
		b := h.Shape.Bounds()
		out = append(out, place("floor", b.Min.X, t.t, b.Max.X, t.t+h.Thick, t.t+b.Min.Y, t.t+b.Max.Y))
	}
	return out
}

// steps is in how many positions the lid is looked at while it turns by a quarter.
const steps = 90

// turned returns what the large tray would run into while it is turned open: by a quarter
// about the joint at the front board, until it stands on end, then with the spine by
// another quarter about the joint at the back board.
func (c closed) turned() []string {
	middle, high, x := c.laid.High/2, c.between(), -c.stand()
	still := c.small.blocks(c.k, middle, false)
	spine := block{"spine", geometry.Bx(x-c.laid.Thick, (high-c.laid.spine())/2, x, (high+c.laid.spine())/2), 0, c.laid.High}
	front, back := geometry.Pt(x, spine.section.Max.Y), geometry.Pt(x, spine.section.Min.Y)
	var out []string
	for _, m := range c.large.blocks(c.k, middle, true) {
		for _, r := range append(still[:len(still):len(still)], spine) {
			if min(m.to, r.to)-max(m.from, r.from) < hairLength {
				continue
			}
			for n := 0; n <= 2*steps; n++ {
				first, then := min(n, steps), max(0, n-steps)
				at := turned(turned(corners(m.section), front, first), back, then)
				if r.name == spine.name && then > 0 {
					break // it turns with it
				}
				if by := into(at, r.section); by > hairLength {
					out = append(out, fmt.Sprintf("%s runs %.2f mm into %s when the lid is turned by %d degrees", m.name, by.MM(), r.name, n*90/steps))
					break
				}
			}
		}
	}
	return out
}

// hairLength is what bodies may touch by, from rounding alone.
const hairLength Length = 1e-6

// corners returns the corners of a box.
func corners(b geometry.Box) []geometry.Point {
	return []geometry.Point{b.Min, geometry.Pt(b.Max.X, b.Min.Y), b.Max, geometry.Pt(b.Min.X, b.Max.Y)}
}

// turned returns places turned to the left about another by so many steps.
func turned(places []geometry.Point, about geometry.Point, by int) []geometry.Point {
	sin, cos := math.Sincos(float64(by) * math.Pi / 2 / steps)
	out := make([]geometry.Point, len(places))
	for i, q := range places {
		d := q.Sub(about)
		out[i] = about.Add(geometry.Pt(d.X*Length(cos)-d.Y*Length(sin), d.X*Length(sin)+d.Y*Length(cos)))
	}
	return out
}

// into returns how far a rectangle that lies anyhow reaches into an upright box: the
// least of how far they overlap across the directions of their sides.
func into(places []geometry.Point, b geometry.Box) Length {
	box := corners(b)
	side := places[1].Sub(places[0])
	side = side.Mul(1 / places[0].Distance(places[1]).MM())
	least := Length(math.Inf(1))
	for _, axis := range []geometry.Point{geometry.Pt(1, 0), geometry.Pt(0, 1), side, geometry.Pt(-side.Y, side.X)} {
		span := func(ps []geometry.Point) (lo, hi Length) {
			lo, hi = Length(math.Inf(1)), Length(math.Inf(-1))
			for _, p := range ps {
				v := p.X*axis.X + p.Y*axis.Y
				lo, hi = min(lo, v), max(hi, v)
			}
			return lo, hi
		}
		al, ah := span(places)
		bl, bh := span(box)
		least = min(least, min(ah, bh)-max(al, bl))
	}
	return least
}
