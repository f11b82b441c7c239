package bench

import "slices"

// option is a cut that can be made next in a part.
type option struct {
	along axis
	fence Length
	kid   int // the cell that comes off, -1 for all that is in the part
	times int // how many cuts the part has ready at this setting
}

// options returns the cuts that can be made next in a part. What is left over
// beside all it holds goes away first, in the way that leaves the larger
// piece; then any of its cells may come off.
func (p *part) options(keep Length) []option {
	c := p.cell
	var open [2]bool
	for a := range 2 {
		open[a] = axis(a).extent(p.box)-c.size[a] > slack
	}
	all := func(a axis) []option { return []option{{a, c.size[a], -1, 1}} }
	if c.item >= 0 {
		switch {
		case open[0] && open[1]:
			return all(p.larger())
		case open[0]:
			return all(acrossX)
		}
		return all(acrossY)
	}
	cross := c.along.other()
	if sliver := cross.extent(p.box)-c.size[cross] < 3*keep; open[cross] && !(sliver && c.stacksExact()) {
		if open[c.along] && p.larger() == c.along && p.gain() {
			return all(c.along)
		}
		return all(cross)
	}
	var out []option
	// The last cell of a row that leaves nothing over is what is left, off by as
	// much as all cuts before it: let it be one for which that is no matter.
	last := c.flexible() == 1 && c.along.extent(p.box)-c.size[c.along] < spare
	for i, k := range c.kids {
		if last && !k.exact[c.along] {
			continue
		}
		f := k.size[c.along]
		if n := slices.IndexFunc(out, func(o option) bool { return keyOf(o.fence) == keyOf(f) }); n >= 0 {
			out[n].times++
		} else {
			out = append(out, option{c.along, f, i, 1})
		}
	}
	return out
}

// largest returns the area of the larger of the two offcuts that clear a part, where the one
// across a is cut off first.
func (p *part) largest(a axis) float64 {
	o := a.other()
	first := float64(a.extent(p.box)-p.cell.size[a]) * float64(o.extent(p.box))
	second := float64(o.extent(p.box)-p.cell.size[o]) * float64(p.cell.size[a])
	return max(first, second)
}

// larger returns the axis to clear first, so that the larger part of what is left
// over stays in one.
func (p *part) larger() axis {
	if p.largest(acrossX) > p.largest(acrossY) {
		return acrossX
	}
	return acrossY
}

// gain tells whether it is worth a fence setting of its own to clear along a
// row of cells first: the offcut is half as large again.
func (p *part) gain() bool {
	return p.largest(p.cell.along) > 1.5*p.largest(p.cell.along.other())
}
