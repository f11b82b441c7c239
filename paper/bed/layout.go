package bed

import (
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"forel/geometry"
	"forel/paper/pack"
)

// Lay lays all pieces of all jobs out, as many of each as are cut, each
// kind of stock, and each pattern of it, on beds of its own: in the order that they
// are first met, fullest beds first. The error tells all that can't be laid out, a line each.
func Lay(ctx context.Context, s Setup, jobs []Job, e pack.Effort) ([]Bed, error) {
	if faults := s.Faults(); len(faults) > 0 {
		return nil, faults
	}
	var stocks []stockKey
	shapes := map[stockKey][]shape{}
	var faults []error
	for _, job := range jobs {
		for _, p := range job.Pieces {
			sh, err := s.shaped(p, job.Name)
			if err == nil {
				err = s.fits(sh)
			}
			if err != nil {
				if job.Name != "" {
					err = fmt.Errorf("%s: %w", job.Name, err)
				}
				faults = append(faults, err)
				continue
			}
			key := keyOf(job, p)
			if len(shapes[key]) == 0 {
				stocks = append(stocks, key)
			}
			shapes[key] = append(shapes[key], sh)
		}
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	var beds []Bed
	number := map[geometry.Material]int{}
	for _, key := range stocks {
		var laid []Bed
		if key.faced {
			laid = s.layOnPattern(shapes[key])
		} else {
			var err error
			if laid, err = s.lay(ctx, shapes[key], e); err != nil {
				return nil, err
			}
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

// fits tells why a piece can't lie on the bed, and what would do.
func (s Setup) fits(sh shape) error {
	upright, turned := s.turns(sh.piece)
	w, h := sh.box.Width(), sh.box.Height()
	inW, inH := s.Width-2*s.Margin, s.Height-2*s.Margin
	const slack = 1e-4 // the layout's own unit
	asDrawn, aside := w <= inW+slack && h <= inH+slack, h <= inW+slack && w <= inH+slack
	if upright && asDrawn || turned && aside {
		return nil
	}
	needW, needH := w, h
	if !upright {
		needW, needH = h, w
	}
	mm := geometry.ToTenthMM.PrettyNumber
	what := fmt.Sprintf("%s: %s x %s mm", sh.piece.Name, mm(w), mm(h))
	if s.Kerf > 0 {
		what += " with half a kerf on each side"
	}
	what += fmt.Sprintf(" is larger than the bed of %s", s)
	if s.Margin > 0 {
		what += fmt.Sprintf(" less its margin of %.4g mm", s.Margin.MM())
	}
	m := sh.piece.Material
	switch {
	case asDrawn || aside: // its grain is in the way
		other := geometry.GrainHeight
		if s.GrainOf(m) == geometry.GrainHeight {
			other = geometry.GrainWidth
		}
		return fmt.Errorf("%s as the %s of the %s lies; lay the %s with its %s along the bed's %s (--grain %s)", what, m.Direction(), m, m, m.Direction(), other, asFlag(m, other))
	case upright != turned:
		return fmt.Errorf("%s; it needs a bed of at least %.0f x %.0f mm as its %s lies", what, up(needW+2*s.Margin), up(needH+2*s.Margin), m.Direction())
	}
	return fmt.Errorf("%s; it needs a bed of at least %.0f x %.0f mm", what, up(w+2*s.Margin), up(h+2*s.Margin))
}

// asFlag writes the direction of a material as --grain takes it, in quotes where a
// shell would part it.
func asFlag(m geometry.Material, g geometry.Grain) string {
	text := fmt.Sprintf("%s=%s", m, g)
	if strings.Contains(text, " ") {
		return strconv.Quote(text)
	}
	return text
}

// up returns a length in whole millimetres, rounded up.
func up(l Length) float64 { return float64(int((l + 1 - 1e-6).MM())) }

// lay lays the shapes of one material out.
func (s Setup) lay(ctx context.Context, shapes []shape, e pack.Effort) ([]Bed, error) {
	stock := pack.Stock{Width: s.Width, Height: s.Height, Trim: pack.Trim{Left: s.Margin, Right: s.Margin, Top: s.Margin, Bottom: s.Margin}}
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
			problem.Items = append(problem.Items, pack.Item{ID: sh.piece.Name, Width: w, Height: h, Turn: upright && turned})
		}
	}
	layout, err := pack.Solve(ctx, problem, e)
	if err != nil {
		return nil, err
	}
	of := make([]int, len(shapes)) // counted as they lie
	var beds []Bed
	for _, sheet := range layout.Sheets {
		b := Bed{Width: s.Width, Height: s.Height}
		for _, place := range sheet.Places {
			it := items[place.Item]
			part := shapes[it.shape].placed(geometry.Pt(place.X, place.Y), it.aside != place.Turned)
			of[it.shape]++
			part.Of = of[it.shape]
			b.Parts = append(b.Parts, part)
		}
		b.route(s)
		beds = append(beds, b)
	}
	return beds, nil
}
