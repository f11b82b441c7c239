package bench

import (
	"cmp"
	"math"
	"slices"

	"forel/paper/pack"
)

// bundle is what the search lays as one: a piece, or pieces side by side in a strip.
type bundle struct {
	pack.Item
	along  axis   // that they lie along
	which  []int  // they are, by index
	turned []bool // each by a quarter, as it lies in the bundle
}

// strip bundles pieces, each a bundle alone, in as few strips as the longest first needs. Where
// no sheet takes such a strip, or the pieces have no side in common, they stay as they are.
func strip(pieces []bundle, on []pack.Stock, kerf Length) []bundle {
	w, h := pieces[0].Width, pieces[0].Height
	best := inStrips(pieces, min(w, h), on, kerf)
	if other := inStrips(pieces, max(w, h), on, kerf); best == nil || other != nil && len(other) < len(best) {
		best = other
	}
	if best == nil {
		return pieces
	}
	return best
}

// inStrips returns pieces in strips of a breadth, nil where that can't be.
func inStrips(pieces []bundle, breadth Length, on []pack.Stock, kerf Length) (out []bundle) {
	row, stack := true, true // they can lie side by side, one below the other
	for _, p := range pieces {
		wide, high := p.Width.Near(breadth), p.Height.Near(breadth)
		row, stack = row && (high || p.Turn && wide), stack && (wide || p.Turn && high)
	}
	along, across := acrossX, pack.Item{Height: breadth, Turn: stack}
	if !row {
		along, across = acrossY, pack.Item{Width: breadth}
	}
	long := func(p bundle) Length {
		if p.Height.Near(breadth) {
			return p.Width
		}
		return p.Height
	}
	pieces = slices.Clone(pieces)
	slices.SortStableFunc(pieces, func(a, b bundle) int { return cmp.Compare(long(b), long(a)) })
	most := longest(on, breadth, row, stack, long(pieces[0]))
	if !row && !stack || long(pieces[0]) > most+hair {
		return nil
	}
	for _, p := range pieces {
		i := slices.IndexFunc(out, func(s bundle) bool { return *along.side(&s.Item)+kerf+long(p) <= most+hair })
		if i < 0 {
			i = len(out)
			out = append(out, bundle{Item: across, along: along})
		} else {
			*along.side(&out[i].Item) += kerf
		}
		*along.side(&out[i].Item) += long(p)
		turned := !along.other().side(&p.Item).Near(breadth)
		out[i].which, out[i].turned = append(out[i].which, p.which[0]), append(out[i].turned, p.turned[0] != turned)
	}
	return out
}

// longest returns how long a strip can be on stock: on what is without count, where that takes
// the piece that is longest.
func longest(on []pack.Stock, breadth Length, row, stack bool, piece Length) Length {
	var most, scarce Length
	for _, s := range on {
		h, long := s.Height, Length(0)
		if s.Roll && h == 0 {
			h = Length(math.Inf(1))
		}
		if row && breadth <= h {
			long = s.Width
		}
		if stack && breadth <= s.Width {
			long = max(long, h)
		}
		if s.Count > 0 {
			scarce = max(scarce, long)
		} else {
			most = max(most, long)
		}
	}
	if most < piece {
		return scarce
	}
	return most
}

// bundles puts pieces that come off one strip side by side.
func (g *group) bundles(pieces []bundle, on []pack.Stock) (out []bundle) {
	strips := map[string][]bundle{}
	var keys []string
	for _, p := range pieces {
		key := g.items[p.which[0]].together
		switch {
		case key == "":
			out = append(out, p)
			continue
		case strips[key] == nil:
			keys = append(keys, key)
		}
		strips[key] = append(strips[key], p)
	}
	for _, key := range keys {
		out = append(out, strip(strips[key], on, g.kerf())...)
	}
	return out
}
