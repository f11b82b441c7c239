package bench

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/render/data"
)

type mm = data.MM

func round3(v float64) float64 { return data.Round(v, 3) }

type jsonPlan struct {
	Jobs   []string    `json:"jobs"`
	Groups []jsonGroup `json:"materials"`
}

type jsonGroup struct {
	Material  string      `json:"material"`
	Name      string      `json:"name,omitempty"`
	Thickness mm          `json:"thickness_mm"`
	Assumed   bool        `json:"usual_size_assumed"`
	Buy       []jsonBuy   `json:"buy"`
	InPieces  float64     `json:"in_pieces_percent"`
	Kept      float64     `json:"worth_keeping_percent"`
	Waste     float64     `json:"waste_percent"`
	Weight    float64     `json:"weight_bought_g"`
	OfPieces  float64     `json:"weight_of_pieces_g"`
	Source    string      `json:"weight_source"`
	Settings  int         `json:"fence_settings"`
	Sheets    []jsonSheet `json:"sheets"`
	Cuts      []jsonCut   `json:"cuts"`
	Remarks   []string    `json:"remarks"`
}

type jsonBuy struct {
	Roll   bool        `json:"roll"`
	Width  mm          `json:"width_mm"`
	Height mm          `json:"height_mm"`
	Grain  string      `json:"grain"`
	Sheets int         `json:"sheets,omitempty"`
	Length mm          `json:"length_mm,omitempty"`
	Cost   json.Number `json:"cost,omitempty"`
	Source string      `json:"size_source,omitempty"`
}

type jsonSheet struct {
	Number  int          `json:"sheet"`
	Roll    bool         `json:"off_roll"`
	Width   mm           `json:"width_mm"`
	Height  mm           `json:"height_mm"`
	Pieces  []jsonPlaced `json:"pieces"`
	Offcuts []jsonOffcut `json:"worth_keeping"`
}

type jsonPlaced struct {
	Number int    `json:"number"`
	Job    string `json:"job"`
	Name   string `json:"piece"`
	Copy   int    `json:"copy"`
	Of     int    `json:"of"`
	X      mm     `json:"x_mm"`
	Y      mm     `json:"y_mm"`
	Width  mm     `json:"width_mm"`
	Height mm     `json:"height_mm"`
	Turned bool   `json:"turned"`
}

type jsonOffcut struct {
	Name   string `json:"name"`
	X      mm     `json:"x_mm"`
	Y      mm     `json:"y_mm"`
	Width  mm     `json:"width_mm"`
	Height mm     `json:"height_mm"`
}

type jsonCut struct {
	Number  int         `json:"cut"`
	Setting int         `json:"setting,omitempty"`
	Kind    string      `json:"kind"`
	Sheet   int         `json:"sheet"`
	Part    string      `json:"part"`
	Fence   mm          `json:"fence_mm"`
	Along   string      `json:"runs_along"`
	From    data.Point  `json:"from_mm"`
	To      data.Point  `json:"to_mm"`
	Gives   *jsonResult `json:"gives,omitempty"`  // between fence and blade; nothing for a trim
	Leaves  *jsonResult `json:"leaves,omitempty"` // beyond the blade
	Words   string      `json:"words"`
}

// jsonResult is what a cut gives: a part that is cut on, a piece by its number on
// the sheet, or what is left over, with its name if it is worth keeping.
type jsonResult struct {
	Part   string `json:"part,omitempty"`
	Piece  int    `json:"piece,omitempty"`
	Offcut string `json:"offcut,omitempty"`
	Waste  bool   `json:"waste,omitempty"`
}

// JSON returns the whole plan, exact to a thousandth of a millimetre. Places are
// from the upper left corner of a sheet, Y downward.
func JSON(p bench.Plan, r geometry.Rounding) ([]byte, error) {
	out := jsonPlan{Jobs: []string{}, Groups: []jsonGroup{}}
	for _, j := range p.Jobs {
		out.Jobs = append(out.Jobs, j.Title())
	}
	for _, g := range p.Groups {
		out.Groups = append(out.Groups, groupJSON(p, g, r))
	}
	written, err := data.JSON(out)
	if err != nil {
		return nil, fmt.Errorf("bench plan: %w", err)
	}
	return written, nil
}

func groupJSON(p bench.Plan, g bench.Group, r geometry.Rounding) jsonGroup {
	in, kept, waste := shares(g)
	out := jsonGroup{Material: string(g.Material), Name: g.Name, Thickness: mm(g.Thickness), Assumed: g.Assumed, Settings: g.Settings,
		InPieces: round3(in), Kept: round3(kept), Waste: round3(waste), Weight: math.Round(g.Weight.Bought), OfPieces: math.Round(g.Weight.Pieces), Source: g.Weight.Source,
		Remarks: []string{}}
	for _, u := range g.Used {
		s := g.Stock[u.Stock]
		buy := jsonBuy{s.Roll, mm(s.Width), mm(s.Height), string(s.Grain), u.Sheets, mm(u.Length), "", s.Source}
		if c, known := g.Cost(u); known {
			buy.Cost = json.Number(c.String())
		}
		out.Buy = append(out.Buy, buy)
	}
	for _, s := range g.Sheets {
		js := jsonSheet{Number: s.Number, Roll: s.Roll, Width: mm(s.Width), Height: mm(s.Height), Offcuts: []jsonOffcut{}}
		for _, q := range s.Pieces {
			js.Pieces = append(js.Pieces, jsonPlaced{q.Number, p.Jobs[q.Job].Title(), q.Name, q.Copy, q.Of,
				mm(q.Box.Min.X), mm(q.Box.Min.Y), mm(q.Box.Width()), mm(q.Box.Height()), q.Turned})
		}
		for _, o := range s.Offcuts {
			if o.Kept() {
				js.Offcuts = append(js.Offcuts, jsonOffcut{o.Name, mm(o.Clean.Min.X), mm(o.Clean.Min.Y), mm(o.Clean.Width()), mm(o.Clean.Height())})
			}
		}
		out.Sheets = append(out.Sheets, js)
	}
	for _, c := range g.Cuts {
		along := "width"
		if c.AlongY {
			along = "height"
		}
		out.Cuts = append(out.Cuts, jsonCut{c.Number, c.Setting, string(c.Kind), g.Sheets[c.Sheet].Number, c.Part, mm(c.Fence), along,
			data.At(c.From), data.At(c.To), resultJSON(g, c, c.Takes), resultJSON(g, c, c.Leaves), words(p, g, c)})
	}
	for _, m := range g.Remarks {
		out.Remarks = append(out.Remarks, m.In(r.Format))
	}
	return out
}

func resultJSON(g bench.Group, c bench.Cut, r bench.Result) *jsonResult {
	sheet := g.Sheets[c.Sheet]
	switch r.Kind {
	case bench.APart:
		return &jsonResult{Part: r.Part}
	case bench.APiece:
		return &jsonResult{Piece: sheet.Pieces[r.Piece].Number}
	case bench.AnOffcut:
		return &jsonResult{Offcut: sheet.Offcuts[r.Off].Name}
	case bench.SomeWaste:
		return &jsonResult{Waste: true}
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
