package cutlist

import (
	"fmt"
	"strconv"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render/data"
)

// chord is how far the chords that stand for an arc may leave it.
const chord geometry.Length = 0.01

type mm = data.MM

type jsonPiece struct {
	Name     string `json:"name"`
	Material string `json:"material"`
	Count    int    `json:"count"`
	Width    mm     `json:"width_mm"`
	Height   mm     `json:"height_mm"`
	Grain    string `json:"grain"`
	// Rough is what a piece of patterned stock is first cut to.
	Rough *jsonRough `json:"rough_mm,omitempty"`
	*jsonOutlines
}

type jsonRough struct {
	Width  mm `json:"width"`
	Height mm `json:"height"`
}

// jsonOutlines is a piece's geometry, from the lower left of its bounding box.
type jsonOutlines struct {
	Outline line   `json:"outline_mm"` // the last point joins the first
	Slits   []line `json:"slits_mm"`
	Folds   []line `json:"folds_mm"`
	Guides  []line `json:"guides_mm"`
}

type line []data.Point

// JSON returns the list exact to a thousandth of a millimetre; with outlines,
// each piece carries its geometry. A fact is named by its key and the unit.
func JSON(c plan.Plan, outlines bool) ([]byte, error) {
	pieces := []jsonPiece{}
	for _, p := range c.Pieces {
		w, h := p.Size()
		j := jsonPiece{Name: p.Name, Material: string(p.Material), Count: p.Count, Width: mm(w), Height: mm(h), Grain: string(p.Grain)}
		if p.Extra != (geometry.Point{}) {
			rw, rh := p.Rough()
			j.Rough = &jsonRough{mm(rw), mm(rh)}
		}
		if outlines {
			j.jsonOutlines = outlinesJSON(p)
		}
		pieces = append(pieces, j)
	}
	list := map[string]any{"title": c.Title, "pieces": pieces}
	for _, f := range c.Facts {
		lengths := map[string]mm{}
		for _, p := range f.Parts {
			lengths[p.Key] = mm(p.Length)
		}
		list[f.Key+"_mm"] = lengths
	}
	write := data.JSON
	if outlines {
		write = data.Compact
	}
	written, err := write(list)
	if err != nil {
		return nil, fmt.Errorf("cut list: %w", err)
	}
	return written, nil
}

func outlinesJSON(p geometry.Piece) *jsonOutlines {
	o := &jsonOutlines{Outline: flat(p.Outline), Slits: []line{}, Folds: []line{}, Guides: []line{}}
	for _, s := range p.Slits {
		o.Slits = append(o.Slits, flat(s))
	}
	for _, f := range p.Folds {
		o.Folds = append(o.Folds, flat(f))
	}
	for _, g := range p.Guides {
		l := flat(g.Path)
		if g.Path.Closed {
			l = append(l, l[0])
		}
		o.Guides = append(o.Guides, l)
	}
	return o
}

func flat(p geometry.Path) line { return data.Line(p.Flatten(chord)) }

// CSV returns the list for a spreadsheet (RFC 4180): exact millimetres, then
// width and height as the maker reads them.
func CSV(c plan.Plan, r geometry.Rounding) ([]byte, error) {
	unit := r.Unit.String()
	lines := [][]string{{"name", "material", "count", "width_mm", "height_mm", "width_rounded_" + unit, "height_rounded_" + unit, "grain"}}
	for _, p := range c.Pieces {
		wide, high := p.Size()
		lines = append(lines, []string{
			p.Name, string(p.Material), strconv.Itoa(p.Count),
			wording.Decimal(mm(wide).Value(), 3), wording.Decimal(mm(high).Value(), 3),
			r.Number(wide), r.Number(high), string(p.Grain),
		})
	}
	written, err := data.CSV(lines)
	if err != nil {
		return nil, fmt.Errorf("cut list: %w", err)
	}
	return written, nil
}
