package bed

import (
	"context"

	"forel/geometry"
	"forel/paper/pack"
	"forel/paper/stock"
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
		shapes := byStock[key]
		tiles := s.tiles(shapes)
		var full []filling
		if key.faced {
			full = s.layOnPattern(tiles)
		} else {
			full = s.layFreely(ctx, tiles, e)
		}
		of := make([]int, len(shapes)) // counted as they lie
		for _, f := range full {
			number[key.material]++
			b := Bed{Material: key.material, Stock: key.stock, Number: number[key.material], Width: s.Width, Height: s.Height, Register: f.register}
			for _, l := range f.laid {
				of[l.shape]++
				part := shapes[l.shape].placed(l.box.Min, l.turned)
				part.Of = of[l.shape]
				b.Parts = append(b.Parts, part)
			}
			b.route(s)
			beds = append(beds, b)
		}
	}
	return beds, nil
}

// turns tells which ways a piece may lie: as drawn, turned by a quarter. Its
// grain must run as the stock's does.
func (s Setup) turns(p geometry.Piece) (upright, turned bool) {
	turned, either := stock.Stock{Grain: s.GrainOf(p.Material)}.Turned(p.Grain)
	if either { // its pattern lies one way all the same
		return true, p.FaceOf == ""
	}
	return !turned, turned
}

// tile is one piece to be laid: its box as it lies, and of patterned stock where from the
// box's upper left corner lines of the pattern fall.
type tile struct {
	shape  int // index
	turned bool
	either bool // it may be turned by a quarter more
	w, h   Length
	at     geometry.Point
	steps  geometry.Point // 0 where it does not matter
	top    string
}

// tiles returns as many of each shape as are cut.
func (s Setup) tiles(shapes []shape) (out []tile) {
	for i, sh := range shapes {
		for range max(1, sh.piece.Count) {
			out = append(out, s.tileOf(sh, i))
		}
	}
	return out
}

// laid is a tile where it lies.
type laid struct {
	tile
	box geometry.Box
}

// filling is what lies on one bed.
type filling struct {
	register Register
	laid     []laid
}

// layFreely lays tiles as close as it finds.
func (s Setup) layFreely(ctx context.Context, tiles []tile, e pack.Effort) (out []filling) {
	room := pack.Stock{Width: s.Width - 2*s.Margin, Height: s.Height - 2*s.Margin}
	problem := pack.Problem{Stock: []pack.Stock{room}, Gap: s.Gap, Free: true}
	for _, t := range tiles {
		problem.Items = append(problem.Items, pack.Item{Width: t.w, Height: t.h, Turn: t.either})
	}
	for _, sheet := range pack.Solve(ctx, problem, e).Sheets {
		var f filling
		for _, place := range sheet.Places {
			t := tiles[place.Item]
			t.turned = t.turned != place.Turned
			at := geometry.Pt(place.X+s.Margin, place.Y+s.Margin)
			f.laid = append(f.laid, laid{t, geometry.Box{Min: at, Max: at.Add(geometry.Pt(place.Width, place.Height))}})
		}
		out = append(out, f)
	}
	return out
}
