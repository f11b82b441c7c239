package pack

import (
	"math"

	"forel/paper/pack/internal/search"
)

// unit is what lengths are whole multiples of: an eighth of a micrometre.
const unit Length = 0.000125

func whole(l Length) int  { return int(math.Round(float64(l / unit))) }
func length(n int) Length { return Length(n) / 8000 }

// model is a problem in whole numbers, and the way back.
type model struct {
	p       *Problem
	gap     int
	in      search.Problem
	members [][]int // of each item there, the items of p that it stands for
}

func (s *Stock) endless() bool { return s.Roll && s.Height == 0 }

func newModel(p *Problem) *model {
	m := &model{p: p, gap: whole(p.Gap)}
	m.in.Free = p.Mode == Free
	m.addItems()
	reach := 0 // of all items end to end
	for _, it := range m.in.Items {
		reach += max(it.W, it.H)
		m.in.Step = gcd(gcd(m.in.Step, it.W), it.H)
	}
	for i := range p.Stock {
		s := &p.Stock[i]
		k := search.Kind{W: whole(s.Width) + m.gap, H: whole(s.Height) + m.gap, Count: s.Count, Cost: s.Cost, Roll: s.Roll}
		if len(p.Stock) == 1 {
			k.Cost = 1
		}
		if s.endless() {
			k.Count, k.H = 1, reach
		}
		m.in.Kinds = append(m.in.Kinds, k)
	}
	return m
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// addItems gives the search its items: one of ours each, or a strip of them.
func (m *model) addItems() {
	strips := map[string][]int{}
	var keys []string
	for i, it := range m.p.Items {
		if key := it.Strip; key != "" && m.p.Mode == Guillotine {
			if strips[key] == nil {
				keys = append(keys, key)
			}
			strips[key] = append(strips[key], i)
			continue
		}
		m.addPiece(i)
	}
	for _, key := range keys {
		m.addStrips(strips[key])
	}
}

// addPiece gives the search an item alone.
func (m *model) addPiece(i int) {
	it := &m.p.Items[i]
	m.in.Items = append(m.in.Items, search.Item{W: whole(it.Width) + m.gap, H: whole(it.Height) + m.gap, Turn: it.Turn})
	m.members = append(m.members, []int{i})
}
