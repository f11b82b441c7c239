package paper

import (
	"context"
	"math"

	"forel/geometry"
	"forel/paper/pack"
)

// between is the white between two tiles on one sheet.
const between Length = 4

// effort is how many steps the search takes for a place for every tile.
const effort = 50

// lay lays templates over sheets.
func (s Setup) lay(pieces []geometry.Piece, o Options) []placed {
	areas := s.areas()
	var ways [][]split
	sets := [][]int{nil} // the ways of each
	if o.Corner != (geometry.Point{}) {
		box := geometry.Bx(0, 0, o.Corner.X, o.Corner.Y)
		ways, sets[0] = [][]split{{{words: true, tiles: []Tile{{Row: 1, Col: 1, Window: box, Core: box}}}}}, []int{0}
	}
	number := map[string]int{} // of a set
	for _, p := range pieces {
		name := ""
		if o.Set != nil {
			name = o.Set(p)
		}
		if _, known := number[name]; !known {
			if len(number) > 0 {
				sets = append(sets, nil)
			}
			number[name] = len(number)
		}
		n := number[name]
		sets[n], ways = append(sets[n], len(ways)), append(ways, splits(p, s.Overlap, areas))
	}
	all, sheets := make([]placed, len(ways)), 0
	for _, set := range sets {
		var own [][]split
		for _, i := range set {
			own = append(own, ways[i])
		}
		laid := after(search(own, areas), sheets)
		for k, p := range laid {
			all[set[k]] = p
		}
		sheets = max(sheets, pages(laid))
	}
	return all
}

// search chooses a way to cut up each template and a place for each tile: from
// the fewest tiles, one template after the other is cut in another way as long
// as that brings them nearer to a sheet less. It never takes more sheets than the
// templates one by one.
func search(ways [][]split, areas []geometry.Box) []placed {
	chosen := make([]split, len(ways))
	for i, w := range ways {
		chosen[i] = w[0]
		for _, v := range w {
			if len(v.tiles) < len(chosen[i].tiles) {
				chosen[i] = v
			}
		}
	}
	r := rough{areas: areas}
	cost, _ := r.try(chosen, math.Inf(1))
	best := r.placed(chosen)
	// Until each was tried since the last that helped.
	for i, since := 0, 0; since < len(ways); i = (i + 1) % len(ways) {
		since++
		keep := chosen[i]
		for _, w := range ways[i] {
			chosen[i] = w
			if c, ok := r.try(chosen, cost-tiny.MM()); ok {
				best, cost, keep, since = r.placed(chosen), c, w, 1
			}
		}
		chosen[i] = keep
	}
	if len(chosen) > 0 && !chosen[0].words { // the other search would put words anywhere
		if got := place(chosen, areas); pages(got) < pages(best) && !mixed(got) {
			best = got
		}
	}
	for i := range best {
		if best[i].turned90 {
			best[i].split = best[i].turn()
		}
	}
	if len(ways) > 1 && pages(best) > atLeast(ways, areas) { // greedy: it may miss what each by itself comes to
		var apart []placed
		for i := range ways {
			apart = append(apart, after(search(ways[i:i+1], areas), pages(apart))...)
		}
		if pages(apart) < pages(best) {
			best = apart
		}
	}
	return best
}

// atLeast returns a number of sheets that templates, each by itself, can't do with less than:
// by the area of the tiles.
func atLeast(ways [][]split, areas []geometry.Box) (sheets int) {
	var whole float64
	for _, a := range areas {
		whole = max(whole, (a.Width() * a.Height()).MM())
	}
	for _, w := range ways {
		least := math.Inf(1)
		for _, s := range w {
			var sum float64
			for _, t := range s.tiles {
				sum += (t.Window.Width() * t.Window.Height()).MM()
			}
			least = min(least, sum)
		}
		sheets += max(1, int(math.Ceil(least/whole-tiny.MM())))
	}
	return sheets
}

// after moves what is laid so many sheets on.
func after(all []placed, sheets int) []placed {
	for _, p := range all {
		for m := range p.on {
			p.on[m].page += sheets
		}
	}
	return all
}

// mixed tells whether parts of two templates share a sheet.
func mixed(all []placed) bool {
	of := map[int]int{}
	for i, p := range all {
		for _, o := range p.on {
			if other, ok := of[o.page]; ok && other != i && !p.whole() {
				return true
			}
			if !p.whole() {
				of[o.page] = i
			}
		}
	}
	return false
}

// place finds a place on a sheet for every tile. A template that is whole may be
// turned to fit, the tiles of others not: they all lie the same way.
func place(chosen []split, areas []geometry.Box) (out []placed) {
	p := pack.Problem{Gap: between, Free: true}
	for _, a := range areas {
		p.Stock = append(p.Stock, pack.Stock{Width: a.Width(), Height: a.Height(), Cost: 1})
	}
	var from []Part
	for i, s := range chosen {
		out = append(out, placed{s, make([]spot, len(s.tiles))})
		for k, t := range s.tiles {
			// One as large as a sheet must not come out larger by the rounding of floats.
			w, h := t.Window.Width()-tiny, t.Window.Height()-tiny
			p.Items = append(p.Items, pack.Item{Width: w, Height: h, Turn: s.whole()})
			from = append(from, Part{i, k})
		}
	}
	for n, sheet := range pack.Solve(context.Background(), p, pack.Effort{Iterations: effort}).Sheets {
		for _, at := range sheet.Places {
			o := from[at.Item]
			if at.Turned {
				out[o.Tiling].turned90 = true
			}
			out[o.Tiling].on[o.Tile] = spot{n, sheet.Stock == 1, geometry.Pt(at.X, at.Y)}
		}
	}
	return out
}
