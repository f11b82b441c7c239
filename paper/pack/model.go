package pack

import (
	"math"
	"slices"

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

// room returns what of a kind of stock is within its trim; the height is 0 for a
// roll of any length.
func (s *Stock) room() (w, h int) {
	w = whole(s.Width) - whole(s.Trim.Left) - whole(s.Trim.Right)
	if !s.endless() {
		h = whole(s.Height) - whole(s.Trim.Top) - whole(s.Trim.Bottom)
	}
	return w, h
}

func (s *Stock) endless() bool { return s.Roll && s.Height == 0 }

func newModel(p *Problem) (*model, error) {
	if faults := p.faults(); faults != nil {
		return nil, &InputError{faults}
	}
	m := &model{p: p, gap: whole(p.Gap)}
	m.in.Free = p.Mode == Free
	if len(p.Stock) == 1 && p.Stock[0].Roll && len(p.Items) > mostOnBed {
		m.in.Free = false // a cut layout is a free one, and sooner found
	}
	if faults := m.addItems(); faults != nil {
		return nil, &InputError{faults}
	}
	reach := 0 // of all items end to end
	for _, it := range m.in.Items {
		reach += max(it.W, it.H)
		m.in.Step = gcd(gcd(m.in.Step, it.W), it.H)
	}
	costless := !slices.ContainsFunc(p.Stock, func(s Stock) bool { return s.Cost != 0 })
	for i := range p.Stock {
		s := &p.Stock[i]
		k := search.Kind{Count: s.Count, Cost: s.Cost, Roll: s.Roll}
		k.W, k.H = s.room()
		k.W += m.gap
		k.H += m.gap
		switch {
		case len(p.Stock) == 1:
			k.Cost = 1
		case costless:
			k.Cost = float64(s.Width) * float64(s.Height) / 1e6
		}
		if s.endless() {
			k.Count, k.H = 1, reach
		}
		m.in.Kinds = append(m.in.Kinds, k)
	}
	return m, nil
}

// mostOnBed is how many pieces may lie freely on one roll.
const mostOnBed = 400

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// addItems gives the search its items: one of ours each, or a strip of them.
func (m *model) addItems() (faults []string) {
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
		m.in.Items = append(m.in.Items, search.Item{W: whole(it.Width) + m.gap, H: whole(it.Height) + m.gap, Turn: it.Turn})
		m.members = append(m.members, []int{i})
	}
	for _, key := range keys {
		if fault := m.addStrips(key, strips[key]); fault != "" {
			faults = append(faults, fault)
		}
	}
	return faults
}
