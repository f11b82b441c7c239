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

// JSON returns the list exact to a thousandth of a millimetre; with outlines,
// each piece carries its geometry. A fact is named by its key and the unit.
func JSON(c plan.Plan, outlines bool) ([]byte, error) {
	pieces := data.List(c.Pieces, func(p geometry.Piece) data.Object {
		w, h := p.Size()
		j := data.Object{{"name", p.Name}, {"material", p.Material}, {"count", p.Count}, {"width_mm", mm(w)}, {"height_mm", mm(h)}, {"grain", p.Grain}}
		if p.Extra != (geometry.Point{}) { // what a piece of patterned stock is first cut to
			rw, rh := p.Rough()
			j = append(j, [2]any{"rough_mm", data.Object{{"width", mm(rw)}, {"height", mm(rh)}}})
		}
		if outlines {
			j = append(j, outlinesJSON(p)...)
		}
		return j
	})
	list := map[string]any{"title": c.Title, "pieces": pieces}
	for _, f := range c.Facts {
		lengths := map[string]mm{}
		for _, p := range f.Parts {
			lengths[p.Key] = mm(p.Length)
		}
		list[f.Key+"_mm"] = lengths
	}
	if outlines {
		return data.Compact(list)
	}
	return data.JSON("cut list", list)
}

// outlinesJSON reports a piece's geometry, from the lower left of its bounding box; the last
// point of its outline joins the first.
func outlinesJSON(p geometry.Piece) data.Object {
	return data.Object{
		{"outline_mm", flat(p.Outline)},
		{"slits_mm", data.List(p.Slits, flat)},
		{"folds_mm", data.List(p.Folds, flat)},
		{"guides_mm", data.List(p.Guides, func(g geometry.Guide) []data.Point {
			l := flat(g.Path)
			if g.Path.Closed {
				l = append(l, l[0])
			}
			return l
		})},
	}
}

func flat(p geometry.Path) []data.Point { return data.Line(p.Flatten(chord)) }

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
