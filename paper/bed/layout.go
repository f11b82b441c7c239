package bed

import (
	"context"

	"forel/geometry"
	"forel/paper/pack"
)

// Lay lays all pieces of all jobs out, as many of each as are cut, each
// kind of stock, and each pattern of it, on beds of its own: in the order that they
// are first met, fullest beds first. What can't be laid out
// is told as job.Problems, all of it.
func Lay(ctx context.Context, s Setup, jobs []Job, e pack.Effort) ([]Bed, error) {
	if faults := s.Faults(); len(faults) > 0 {
		return nil, faults
	}
	shapes, faults := s.shapes(jobs)
	if faults = append(faults, s.tooLarge(shapes)...); len(faults) > 0 {
		return nil, faults
	}
	var stocks []stockKey
	byStock := map[stockKey][]shape{}
	for _, sh := range shapes {
		if len(byStock[sh.stock]) == 0 {
			stocks = append(stocks, sh.stock)
		}
		byStock[sh.stock] = append(byStock[sh.stock], sh)
	}
	var beds []Bed
	number := map[geometry.Material]int{}
	for _, key := range stocks {
		var laid []Bed
		if key.faced {
			laid = s.layOnPattern(byStock[key])
		} else {
			laid = s.lay(ctx, byStock[key], e)
		}
		for i := range laid {
			number[key.material]++
			laid[i].Material, laid[i].Stock, laid[i].Number = key.material, key.stock, number[key.material]
		}
		beds = append(beds, laid...)
	}
	return beds, nil
}

// turns tells which ways a piece may lie: as drawn, turned by a quarter. Its
// grain must run as the stock's does.
func (s Setup) turns(p geometry.Piece) (upright, turned bool) {
	g := s.GrainOf(p.Material)
	free := g == NoGrain || p.Grain == "" || p.Grain == NoGrain
	if free && p.FaceOf != "" { // its pattern lies one way all the same
		return true, false
	}
	return free || p.Grain == g, free || p.Grain != g
}

// lay lays the shapes of one material out.
func (s Setup) lay(ctx context.Context, shapes []shape, e pack.Effort) []Bed {
	stock := pack.Stock{Width: s.Width - 2*s.Margin, Height: s.Height - 2*s.Margin}
	problem := pack.Problem{Stock: []pack.Stock{stock}, Gap: s.Gap, Mode: pack.Free}
	type item struct {
		shape int
		aside bool // given to the layout turned already
	}
	var items []item
	for i, sh := range shapes {
		upright, turned := s.turns(sh.piece)
		w, h := sh.box.Width(), sh.box.Height()
		if !upright {
			w, h = h, w
		}
		for range max(1, sh.piece.Count) {
			items = append(items, item{i, !upright})
			problem.Items = append(problem.Items, pack.Item{Width: w, Height: h, Turn: upright && turned})
		}
	}
	of := make([]int, len(shapes)) // counted as they lie
	var beds []Bed
	for _, sheet := range pack.Solve(ctx, problem, e).Sheets {
		b := Bed{Width: s.Width, Height: s.Height}
		for _, place := range sheet.Places {
			it := items[place.Item]
			part := shapes[it.shape].placed(geometry.Pt(place.X+s.Margin, place.Y+s.Margin), it.aside != place.Turned)
			of[it.shape]++
			part.Of = of[it.shape]
			b.Parts = append(b.Parts, part)
		}
		b.route(s)
		beds = append(beds, b)
	}
	return beds
}
