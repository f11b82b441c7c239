package check

import "forel/paper/pack"

// run is one strip: the parent part of some pieces, and the way it is cut.
type run struct {
	breadth float64
	length  float64 // of the pieces of the key on it, gaps between them included
	most    float64 // that any strip of the key could have been long
}

// strips looks whether the pieces of each key came off strips of one breadth,
// side by side, in no more strips than one another's length calls for.
func strips(f *faults, l *pack.Layout, items []pack.Item, some []int) {
	runs := map[string][]run{}
	for i := range l.Sheets {
		if l.Sheets[i].Cuts != nil {
			gather(l.Sheets[i].Cuts, items, l.Gap.MM(), runs)
		}
	}
	for key, rs := range runs {
		for i := 1; i < len(rs); i++ {
			if !same(rs[i].breadth, rs[0].breadth) {
				f.add("strip %s: breadths of %.6g and %.6g mm", key, rs[0].breadth, rs[i].breadth)
			}
		}
	}
}

// gather notes, for every part, the strips whose pieces are cut off it side by
// side: for a key, pieces of one part in one unbroken run.
func gather(p *pack.Part, items []pack.Item, gap float64, runs map[string][]run) {
	last := ""
	for i := range p.Parts {
		c := &p.Parts[i]
		key := ""
		if c.Item >= 0 && c.Item < len(items) {
			key = items[c.Item].Strip
		}
		if key != "" {
			b, at := c.Height.MM(), c.Width.MM()
			if p.Cut == pack.AlongX {
				b, at = at, b
			}
			if key == last {
				r := &runs[key][len(runs[key])-1]
				r.length += gap + at
			} else {
				runs[key] = append(runs[key], run{breadth: b, length: at})
			}
		}
		last = key
		gather(c, items, gap, runs)
	}
	if p.Item >= 0 && p.Parts == nil {
		return
	}
}
