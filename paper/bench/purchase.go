package bench

// purchase works out what to buy and what it weighs and costs.
func (g *group) purchase(kerf Length) {
	for k, s := range g.Stock {
		s = s.OrWeighs(g.weighs)
		u := Use{Stock: k}
		for _, sh := range g.Sheets {
			if sh.Stock != k {
				continue
			}
			u.Area += float64(sh.Width) * float64(sh.Height)
			if sh.Roll {
				if u.Length > 0 {
					u.Length += kerf
				} else {
					u.Length = s.Trim // the end of the roll is cut square
				}
				u.Length += sh.Height
			} else {
				u.Sheets++
			}
		}
		if u.Area == 0 {
			continue
		}
		if s.Roll {
			u.Area = float64(s.Width) * float64(u.Length)
		}
		if s.Price != nil {
			cost := *s.Price * float64(u.Sheets)
			if s.Roll {
				cost = *s.Price * float64(u.Length/s.Per)
			}
			u.Cost = &cost
		}
		g.Used = append(g.Used, u)
		grams, source := s.Grams(u.Area, g.Thickness)
		g.Weight.Bought += grams
		g.Weight.Source = source
		for _, sh := range g.Sheets {
			for _, p := range sh.Pieces {
				if sh.Stock == k {
					grams, _ := s.Grams(p.Area, g.Thickness)
					g.Weight.Pieces += grams
				}
			}
		}
	}
}
