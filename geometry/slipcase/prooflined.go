package slipcase

import (
	"cmp"
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
)

// linings sees to it that each board is lined. One pasted on before reaches
// the board's outline, ruled on it, on every side.
func (c Carcass) linings(pieces []geometry.Piece, j Job) []foldup.Fault {
	if j.Lining.Thickness == 0 {
		return nil
	}
	var out []foldup.Fault
	boards, lined := map[string]geometry.Piece{}, map[string]bool{}
	for _, p := range pieces {
		if p.Material == geometry.Board {
			boards[p.Name] = p
		}
	}
	for _, p := range pieces {
		if p.Material != geometry.Lining {
			continue
		}
		lined[p.Over] = true
		b, ok := boards[p.Over]
		switch {
		case !ok:
			out = append(out, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name, What: "lines no board"})
		case p.Over == "divider", !j.linedBefore(): // looked at where they lie
		default:
			out = append(out, covers(p, b)...)
		}
	}
	for name := range boards {
		if !lined[name] {
			out = append(out, foldup.Fault{Kind: foldup.Bare, Piece: liningNames[name], What: "missing"})
		}
	}
	slices.SortFunc(out, func(a, b foldup.Fault) int { return cmp.Compare(a.Piece, b.Piece) })
	return out
}

// covers holds a lining pasted on before against its board.
func covers(p, board geometry.Piece) []foldup.Fault {
	lies := p.Outline
	if len(p.Guides) > 0 {
		lies = p.Guides[0].Path
	}
	w, h := board.Size()
	box := lies.Bounds()
	if !box.Width().Near(w) || !box.Height().Near(h) {
		return []foldup.Fault{{Kind: foldup.Misfit, Piece: p.Name, What: "the board ruled on it is not the board it lines"}}
	}
	if foldup.Solid(foldup.Without(polygon.Of(lies.Flatten(0.01)), polygon.Of(p.Outline.Flatten(0.01))), foldup.Sliver) {
		return []foldup.Fault{{Kind: foldup.Bare, Piece: p.Name, What: "smaller than its board"}}
	}
	return nil
}
