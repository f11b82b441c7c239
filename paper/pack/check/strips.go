package check

import "forel/paper/pack"

// strips looks whether the pieces of each key came off strips of one breadth: a
// strip is a part whose own parts are cut off it side by side. A strip of one
// piece may be as broad as either of its sides.
func strips(f *faults, l *pack.Layout, items []pack.Item) {
	type breadths struct{ of, or float64 }
	found := map[string][]breadths{}
	var walk func(p *pack.Part)
	walk = func(p *pack.Part) {
		on := map[string]int{}
		alone := map[string]int{}
		for i := range p.Parts {
			c := &p.Parts[i]
			if c.Item >= 0 && c.Item < len(items) && items[c.Item].Strip != "" {
				on[items[c.Item].Strip]++
				alone[items[c.Item].Strip] = i
			}
			walk(c)
		}
		for key, n := range on {
			b := p.Height.MM()
			if p.Cut == pack.AlongX {
				b = p.Width.MM()
			}
			two := breadths{b, b}
			if n == 1 {
				c := p.Parts[alone[key]].Box
				two = breadths{c.Width.MM(), c.Height.MM()}
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
