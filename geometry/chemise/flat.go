package chemise

import (
	"fmt"
	"forel/geometry/laidflat"
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
)

// The faces of the boards as they lie flat, inside up, head away.
const (
	Outside   geometry.Face = "outside"
	Inside    geometry.Face = "inside"
	HeadEdge  geometry.Face = "edges at the head"
	TailEdge  geometry.Face = "edges at the tail"
	LeftEdge  geometry.Face = "edge at the left end"
	RightEdge geometry.Face = "edge at the right end"
)

// names are those of the boards and their faces.
var names = laidflat.Names{
	Whole: "the boards", LeftEnd: "left end", RightEnd: "right end",
	Outside: Outside, Inside: Inside, Head: HeadEdge, Tail: TailEdge, Left: LeftEdge, Right: RightEdge,
	TailLeft: "left end, tail", TailRight: "right end, tail",
}

// flat is the boards as they lie side by side.
type flat struct{ laidflat.Boards }

// lay lays the boards among the pieces side by side and tells what does not meet.
func lay(pieces []geometry.Piece, board, joint Length) (flat, []foldup.Fault) {
	b, faults := names.Lay(joint, board, slices.DeleteFunc(slices.Clone(pieces), func(p geometry.Piece) bool { return p.Material != geometry.ThinBoard })...)
	if len(b.All) < 3 {
		faults = append(faults, foldup.Fault{Kind: foldup.Misfit, What: "a spine and two covers are not there"})
	}
	return flat{b}, faults
}

// body returns the faces that are to be covered, the outside first.
func (f flat) body() foldup.Body {
	b := f.Body()
	b.Surfaces[0], b.Surfaces[1] = b.Surfaces[1], b.Surfaces[0]
	return b
}

// lined returns where the lining lies on the boards, laid from the spine outward and
// rubbed down into each joint and up again, so that it stays back from both ends by
// as much, and what is wrong with it.
func (f flat) lined(p geometry.Piece, thick Length) ([]foldup.Patch, []foldup.Fault) {
	w, h := p.Size()
	joints := Length(len(f.All) - 1)
	back, low := (f.Across+joints*2*f.Thick-w)/2, (f.High-h)/2
	if least := min(back, low); least < -foldup.Sliver {
		return nil, []foldup.Fault{{Kind: foldup.Overhang, Piece: p.Name, Face: Inside, What: fmt.Sprintf("it reaches %.2f mm past the edge of the boards", (-least).MM())}}
	}
	var out []foldup.Patch
	for n, q := range f.All {
		// The way along the lining is longer than that along the boards.
		down := Length(n) * 2 * f.Thick
		from, to := max(f.From[n], back-down), min(f.From[n]+q.Wide, back+w-down)
		if to-from > foldup.Sliver {
			out = append(out, foldup.Patch{Piece: p.Name, Order: lastTurn, Thick: thick, Plane: f.Plane, Shape: polygon.Box(geometry.Bx(from, low, to, f.High-low))})
		}
	}
	return out, nil
}

// lastTurn is after all that is folded.
const lastTurn = 3
