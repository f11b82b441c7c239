package packtest

import "forel/paper/pack"

// strips looks whether the pieces of each key came off strips of one breadth: a
// strip is a part whose own parts are cut off it side by side. A strip of one
// piece may be as broad as either of its sides; pieces of one size side by side
// may be strips of one piece each, all cut at the other side's length.
func strips(f *faults, l *pack.Layout, items []pack.Item) {
	type breadths struct{ of, or float64 }
	found := map[string][]breadths{}
	var walk func(p *pack.Part)
	walk = func(p *pack.Part) {
		on := map[string][]pack.Box{}
		for i := range p.Parts {
			c := &p.Parts[i]
			if c.Item >= 0 && c.Item < len(items) && items[c.Item].Strip != "" {
				key := items[c.Item].Strip
				on[key] = append(on[key], c.Box)
			}
			walk(c)
		}
		for key, boxes := range on {
			breadth, across := p.Height.MM(), func(b pack.Box) float64 { return b.Width.MM() }
			if p.Cut == pack.AlongX {
				breadth, across = p.Width.MM(), func(b pack.Box) float64 { return b.Height.MM() }
			}
			two := breadths{breadth, across(boxes[0])}
			for _, o := range boxes {
				if !same(across(o), two.or) {
					two.or = breadth
					break
				}
			}
			found[key] = append(found[key], two)
		}
	}
	for i := range l.Sheets {
		if c := l.Sheets[i].Cuts; c != nil {
			walk(c)
		}
	}
	for key, all := range found {
		fits := func(b float64) bool {
			for _, two := range all {
				if !same(two.of, b) && !same(two.or, b) {
					return false
				}
			}
			return true
		}
		if !fits(all[0].of) && !fits(all[0].or) {
			f.add("strip %s: its pieces came off strips of different breadths", key)
		}
	}
}
