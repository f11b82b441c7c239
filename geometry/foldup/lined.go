package foldup

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
)

// linings sees to it that each board is lined. One pasted on before reaches
// the board's outline, ruled on it, on every side; one put in afterwards fills
// its face, but for what the linings beside it take and what it stays back from
// the mouth.
func (c Carcass) linings(pieces []geometry.Piece, k Conditions) []Fault {
	if !k.Lined {
		return nil
	}
	var out []Fault
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
			out = append(out, Fault{Kind: Misfit, Piece: p.Name, What: "lines no board"})
		case k.Lining > 0 && p.Over != "divider":
			out = append(out, c.fills(p, k)...)
		default:
			out = append(out, covers(p, b)...)
		}
	}
	for name := range boards {
		if !lined[name] {
			out = append(out, Fault{Kind: Bare, Piece: strings.TrimSuffix(name, " wall") + " lining", What: "missing"})
		}
	}
	slices.SortFunc(out, func(a, b Fault) int { return cmp.Compare(a.Piece, b.Piece) })
	return out
}

// covers holds a lining pasted on before against its board.
func covers(p, board geometry.Piece) []Fault {
	lies := p.Outline
	if len(p.Guides) > 0 {
		lies = p.Guides[0].Path
	}
	w, h := board.Size()
	box := lies.Bounds()
	if !box.Width().Near(w) || !box.Height().Near(h) {
		return []Fault{{Kind: Misfit, Piece: p.Name, What: "the board ruled on it is not the board it lines"}}
	}
	if solid(without(shape(lies.Flatten(0.01)), shape(p.Outline.Flatten(0.01))), sliver) {
		return []Fault{{Kind: Bare, Piece: p.Name, What: "smaller than its board"}}
	}
	return nil
}

// fills holds a lining put in afterwards against the face it lies on.
func (c Carcass) fills(p geometry.Piece, k Conditions) []Fault {
	deep, high, thick := c.Depth-c.Lined, c.Height-2*c.Lined, c.Width-2*c.Lined
	face := map[string][2]Length{"side": {deep, high}, "spine wall": {thick, high}, "head wall": {deep, thick}, "tail wall": {deep, thick}}[p.Over]
	w, h := p.Size()
	short := 2*k.Lining + k.LinedShort
	var out []Fault
	for _, d := range []struct {
		what      string
		has, face Length
	}{{"wide", w, face[0]}, {"high", h, face[1]}} {
		switch {
		case d.has > d.face+1e-6:
			out = append(out, Fault{Kind: Collision, Piece: p.Name, What: fmt.Sprintf("%.2f mm too %s for its face", (d.has - d.face).MM(), d.what)})
		case d.has < d.face-short-1e-6:
			out = append(out, Fault{Kind: Bare, Piece: p.Name, What: fmt.Sprintf("%.2f mm less %s than its face", (d.face - d.has).MM(), d.what)})
		}
	}
	return out
}

// dividers holds the dividers against the space they stand in and their strips
// against them.
func (r Report) dividers(pieces []geometry.Piece, k Conditions) []Fault {
	if k.Compartments < 2 {
		return nil
	}
	c := r.Carcass
	deep, high := c.Depth-c.Lined-k.Lining, c.Height-2*c.Lined-2*k.Lining
	most := Length(0) // what lies on head and tail where they stand, at least a layer
	for _, f := range r.Faces {
		if f.Face == geometry.HeadInside || f.Face == geometry.TailInside {
			most += f.Stack
		}
	}
	var out []Fault
	fault := func(kind Kind, piece, what string, by Length) {
		out = append(out, Fault{Kind: kind, Piece: piece, What: fmt.Sprintf("%s by %.2f mm", what, by.MM())})
	}
	for _, p := range pieces {
		w, h := p.Size()
		switch p.Name {
		case "divider":
			if w > deep+1e-6 {
				fault(Collision, p.Name, "deeper than the case", w-deep)
			}
			if h > high-most+1e-6 {
				fault(Collision, p.Name, "too high to stand between head and tail", h-(high-most))
			}
			if p.Count != k.Compartments-1 {
				out = append(out, Fault{Kind: Misfit, Piece: p.Name, What: "not one between each two volumes"})
			}
		case "divider strip":
			if len(p.Folds) != 2 {
				out = append(out, Fault{Kind: Misfit, Piece: p.Name, What: "does not go round an edge"})
				continue
			}
			round := p.Folds[1].Vertices[0].X - p.Folds[0].Vertices[0].X
			switch off := round - k.Divider; {
			case off < -1e-6:
				fault(Bare, p.Name, "its folds are closer than the divider is thick", -off)
			case off > 1e-6:
				fault(Misfit, p.Name, "its folds are further apart than the divider is thick", off)
			}
			if w < k.Divider+2*leastGrip {
				fault(Bare, p.Name, "does not reach both faces of the divider", k.Divider+2*leastGrip-w)
			}
		}
	}
	return out
}

// leastGrip is what a strip must reach onto a face, in mm (common practice, no
// source).
const leastGrip Length = 2
