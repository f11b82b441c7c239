package pack

import (
	"fmt"
	"math"
	"strings"
)

// mostLength is the longest side, in millimetres: areas stay within 64 bits.
const mostLength = 100_000

// faults returns every fault of the input.
func (p *Problem) faults() (all []string) {
	bad := func(format string, a ...any) { all = append(all, fmt.Sprintf(format, a...)) }
	if p.Mode != Guillotine && p.Mode != Free {
		bad("mode %d: give Guillotine or Free", p.Mode)
	}
	if !(p.Gap >= 0 && p.Gap <= mostLength) { // NaN is at fault too
		bad("a gap of %.6g mm; give 0 or more", p.Gap.MM())
	}
	if len(p.Stock) == 0 {
		bad("no stock; give at least one kind of sheet")
	}
	sheets := make([]string, len(p.Stock))
	sound := true
	for i := range p.Stock {
		s := &p.Stock[i]
		sheets[i] = s.describe(i)
		for _, f := range s.faults() {
			bad("%s: %s", sheets[i], f)
			sound = false
		}
		if s.Roll && len(p.Stock) > 1 {
			bad("%s: a roll can't be mixed with other stock", sheets[i])
		}
	}
	for i, it := range p.Items {
		switch {
		case !(it.Width > 0 && it.Height > 0 && it.Width <= mostLength && it.Height <= mostLength):
			bad("%s: sides must be over 0 and no more than %d mm", p.name(i), mostLength)
		case whole(it.Width) == 0 || whole(it.Height) == 0:
			bad("%s: a side is too small to measure", p.name(i))
		case sound && len(p.Stock) > 0 && !p.fits(it):
			bad("%s fits none of the sheets within their trim: %s", p.name(i), strings.Join(sheets, ", "))
		}
	}
	return all
}

// fits tells whether a piece fits some stock.
func (p *Problem) fits(it Item) bool {
	iw, ih := whole(it.Width), whole(it.Height)
	for i := range p.Stock {
		w, h := p.Stock[i].room()
		if p.Stock[i].endless() {
			h = math.MaxInt
		}
		if iw <= w && ih <= h || it.Turn && ih <= w && iw <= h {
			return true
		}
	}
	return false
}

func (s *Stock) describe(i int) string {
	name := s.Name
	if name == "" {
		name = fmt.Sprintf("stock %d", i+1)
	}
	if s.endless() {
		return fmt.Sprintf("%s (a roll %.6g mm wide)", name, s.Width.MM())
	}
	return fmt.Sprintf("%s (%.6g x %.6g mm)", name, s.Width.MM(), s.Height.MM())
}

func (s *Stock) faults() (all []string) {
	t := s.Trim
	switch {
	case !(s.Width > 0 && s.Width <= mostLength) || !(s.Height > 0 && s.Height <= mostLength || s.endless()):
		all = append(all, fmt.Sprintf("sides must be over 0 and no more than %d mm", mostLength))
	case !(t.Left >= 0 && t.Right >= 0 && t.Top >= 0 && t.Bottom >= 0):
		all = append(all, "a trim is under 0")
	case !(t.Left+t.Right < s.Width) || !s.endless() && !(t.Top+t.Bottom < s.Height) || t.Top+t.Bottom > mostLength:
		all = append(all, "the trim leaves nothing")
	}
	if s.Count < 0 {
		all = append(all, "a count under 0")
	}
	if !(s.Cost >= 0) || math.IsInf(s.Cost, 1) {
		all = append(all, "a cost under 0, or none")
	}
	return all
}
