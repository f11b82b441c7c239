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
	p   *Problem
	gap int
	in  search.Problem
}

func (s *Stock) endless() bool { return s.Roll && s.Height == 0 }

func newModel(p *Problem) *model {
	m := &model{p: p, gap: whole(p.Gap)}
	m.in.Free = p.Free
	reach := 0 // of all items end to end
	for _, item := range p.Items {
		it := search.Item{W: whole(item.Width) + m.gap, H: whole(item.Height) + m.gap, Turn: item.Turn}
		m.in.Items = append(m.in.Items, it)
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
