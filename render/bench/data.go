package bench

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/render/data"
)

type mm = data.MM

func round3(v float64) float64 { return data.Round(v, 3) }

// JSON returns the whole plan, exact to a thousandth of a millimetre. Places are
// from the upper left corner of a sheet, Y downward.
func JSON(p bench.Plan, r geometry.Rounding) ([]byte, error) {
	return data.JSON("bench plan", data.Object{
		{"jobs", data.List(p.Jobs, bench.Job.Title)},
		{"materials", data.List(p.Groups, func(g bench.Group) data.Object { return groupJSON(p, g, r) })},
	})
}

func groupJSON(p bench.Plan, g bench.Group, r geometry.Rounding) data.Object {
	in, kept, waste := shares(g)
	return data.Object{
		{"material", g.Material},
		{"name", data.Given(g.Name)},
		{"thickness_mm", mm(g.Thickness)},
		{"usual_size_assumed", g.Assumed},
		{"buy", data.List(g.Used, func(u bench.Use) data.Object {
			s, cost := g.Stock[u.Stock], any(nil)
			if c, known := g.Cost(u); known {
				cost = json.Number(c.String())
			}
			return data.Object{{"roll", s.Roll}, {"width_mm", mm(s.Width)}, {"height_mm", mm(s.Height)}, {"grain", s.Grain}, {"sheets", data.Given(u.Sheets)},
				{"length_mm", data.Given(mm(u.Length))}, {"cost", cost}, {"size_source", data.Given(s.Source)}}
		})},
		{"in_pieces_percent", round3(in)},
		{"worth_keeping_percent", round3(kept)},
		{"waste_percent", round3(waste)},
		{"weight_bought_g", math.Round(g.Weight.Bought)},
		{"weight_of_pieces_g", math.Round(g.Weight.Pieces)},
		{"weight_source", g.Weight.Source},
		{"fence_settings", g.Settings},
		{"sheets", data.List(g.Sheets, func(s bench.Sheet) data.Object {
			offcuts := []data.Object{}
			for _, o := range s.Offcuts {
				if o.Kept() {
					offcuts = append(offcuts, append(data.Object{{"name", o.Name}}, boxJSON(o.Clean)...))
				}
			}
			return data.Object{{"sheet", s.Number}, {"off_roll", s.Roll}, {"width_mm", mm(s.Width)}, {"height_mm", mm(s.Height)},
				{"pieces", data.List(s.Pieces, func(q bench.Placed) data.Object {
					j := data.Object{{"number", q.Number}, {"job", p.Jobs[q.Job].Title()}, {"piece", q.Name}, {"copy", q.Copy}, {"of", q.Of}}
					return append(append(j, boxJSON(q.Box)...), [2]any{"turned", q.Turned})
				})},
				{"worth_keeping", offcuts}}
		})},
		{"cuts", data.List(g.Cuts, func(c bench.Cut) data.Object {
			along := "width"
			if c.AlongY {
				along = "height"
			}
			return data.Object{{"cut", c.Number}, {"setting", data.Given(c.Setting)}, {"kind", c.Kind}, {"sheet", g.Sheets[c.Sheet].Number}, {"part", c.Part},
				{"fence_mm", mm(c.Fence)}, {"runs_along", along}, {"from_mm", data.At(c.From)}, {"to_mm", data.At(c.To)},
				{"gives", resultJSON(g, c, c.Takes)},   // between fence and blade; nothing for a trim
				{"leaves", resultJSON(g, c, c.Leaves)}, // beyond the blade
				{"words", words(p, g, c)}}
		})},
		{"remarks", data.List(g.Remarks, func(m plan.Remark) string { return m.In(r.Format) })},
	}
}

func boxJSON(b geometry.Box) data.Object {
	return data.Object{{"x_mm", mm(b.Min.X)}, {"y_mm", mm(b.Min.Y)}, {"width_mm", mm(b.Width())}, {"height_mm", mm(b.Height())}}
}

// resultJSON reports what a cut gives: a part that is cut on, a piece by its number on
// the sheet, or what is left over, with its name if it is worth keeping; nil for nothing.
func resultJSON(g bench.Group, c bench.Cut, r bench.Result) any {
	sheet := g.Sheets[c.Sheet]
	switch r.Kind {
	case bench.APart:
		return data.Object{{"part", data.Given(r.Part)}}
	case bench.APiece:
		return data.Object{{"piece", sheet.Pieces[r.Piece].Number}}
	case bench.AnOffcut:
		return data.Object{{"offcut", data.Given(sheet.Offcuts[r.Off].Name)}}
	case bench.SomeWaste:
		return data.Object{{"waste", true}}
	}
	return nil
}

// words says what a cut gives and leaves.
func words(p bench.Plan, g bench.Group, c bench.Cut) string {
	text := gives(p, g, c)
	if l := leaves(p, g, c); l != "" {
		text += "; leaves " + l
	}
	return text
}

// CSV returns the order of the cuts for a spreadsheet (RFC 4180): the fence in
// exact millimetres, then as the maker reads it.
func CSV(p bench.Plan, r geometry.Rounding) ([]byte, error) {
	lines := [][]string{{"material", "thickness_mm", "cut", "setting", "kind", "sheet", "part", "fence_mm", "fence_rounded_" + r.Unit.String(), "gives", "leaves"}}
	for _, g := range p.Groups {
		for _, c := range g.Cuts {
			lines = append(lines, []string{g.Label(), plain(g.Thickness), strconv.Itoa(c.Number), strconv.Itoa(c.Setting), string(c.Kind),
				strconv.Itoa(g.Sheets[c.Sheet].Number), c.Part, plain(c.Fence), r.Number(c.Fence), gives(p, g, c), leaves(p, g, c)})
		}
	}
	written, err := data.CSV(lines)
	if err != nil {
		return nil, fmt.Errorf("bench plan: %w", err)
	}
	return written, nil
}

func plain(l Length) string { return wording.Decimal(round3(l.MM()), 3) }
