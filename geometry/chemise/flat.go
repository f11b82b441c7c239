package chemise

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
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

// The corners that the covering is laid by, on the outside.
const (
	tailLeft  geometry.Corner = "left end, tail"
	tailRight geometry.Corner = "right end, tail"
)

// flat is the boards as they lie side by side, inside up, a joint between each
// two. X runs from left to right, Y from tail to head, Z up from the outside.
type flat struct {
	boards              []panel
	from                []Length // where each begins
	joint               Length
	board               Length // thickness
	high, across        Length
	whole, over, ending geometry.Box // outside and inside; an edge at head or tail; one at an end
}

// lay lays the boards among the pieces side by side and tells what does not meet.
func lay(pieces []geometry.Piece, board, joint Length) (flat, []foldup.Fault) {
	f := flat{joint: joint, board: board}
	var faults []foldup.Fault
	for _, p := range pieces {
		if p.Material != geometry.ThinBoard {
			continue
		}
		w, h := p.Size()
		if len(f.boards) == 0 {
			f.high = h
		} else {
			f.across += joint
		}
		if !h.Near(f.high) {
			faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name, What: fmt.Sprintf("%.3f mm high where the others are %.3f mm", h.MM(), f.high.MM())})
		}
		if full := float64(w * h); math.Abs(p.Outline.SignedArea()-full) > 1e-6*full {
			faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name, What: "not a rectangle"})
		}
		f.boards, f.from = append(f.boards, panel{p.Name, w}), append(f.from, f.across)
		f.across += w
	}
	if len(f.boards) < 3 {
		faults = append(faults, foldup.Fault{Kind: foldup.Misfit, What: "a spine and two covers are not there"})
	}
	f.whole, f.over, f.ending = geometry.Bx(0, 0, f.across, f.high), geometry.Bx(0, 0, f.across, board), geometry.Bx(0, 0, f.high, board)
	return f, faults
}

// bareBoard is what a face shows where no covering lies.
var bareBoard = foldup.Ground{Name: "bare board", Stuff: stage.Board}

// body returns the faces that are to be covered. Joints are part of a face's
// plane, since the covering and what is turned in go on over them; there is no
// board in them to cover.
func (f flat) body() foldup.Body {
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	level := foldup.Beyond{Left: "left end", Right: "right end", Top: "head", Bottom: "tail"}
	from := foldup.Beyond{Left: "right end", Right: "left end", Top: "head", Bottom: "tail"} // seen from outside
	edge := func(left, right string) foldup.Beyond {
		return foldup.Beyond{Left: left, Right: right, Top: "inside", Bottom: "outside"}
	}
	face := func(name geometry.Face, board string, o, u, v, n space.Vec, box geometry.Box, beyond foldup.Beyond) foldup.Surface {
		return foldup.Surface{Face: name, Board: board, Frame: space.Frame{O: o, U: u, V: v}, Normal: n, Extent: box,
			Cover: polygon.Box(box), Beyond: beyond, Ground: bareBoard}
	}
	of := func(s foldup.Surface) foldup.Surface { // boards without joints
		var all []polygon.Shape
		for n, p := range f.boards {
			b := s.Extent
			b.Min.X, b.Max.X = f.from[n], f.from[n]+p.wide
			all = append(all, polygon.Box(b))
		}
		s.Cover = foldup.United(all)
		return s
	}
	b := foldup.Body{
		Surfaces: []foldup.Surface{
			face(Outside, "the boards", space.Vec{}, x, y, z.Mul(-1), f.whole, from),
			of(face(Inside, "the boards", space.Vec{Z: f.board}, x, y, z, f.whole, level)),
			of(face(HeadEdge, "the boards", space.Vec{Y: f.high}, x, z, y, f.over, edge("right end", "left end"))),
			of(face(TailEdge, "the boards", space.Vec{}, x, z, y.Mul(-1), f.over, edge("left end", "right end"))),
			face(LeftEdge, f.boards[0].name, space.Vec{}, y, z, x.Mul(-1), f.ending, edge("head", "tail")),
			face(RightEdge, f.boards[len(f.boards)-1].name, space.Vec{X: f.across}, y, z, x, f.ending, edge("tail", "head")),
		},
		Corners: map[geometry.Corner]space.Vec{tailLeft: {}, tailRight: {X: f.across}},
	}
	for i := range b.Surfaces {
		b.Surfaces[i].Plane, b.Surfaces[i].Edge = i, i > 1
	}
	return b
}

// lined returns where the lining lies on the boards, laid from the spine outward and
// rubbed down into each joint and up again, so that it stays back from both ends by
// as much, and what is wrong with it.
func (f flat) lined(p geometry.Piece, thick Length) ([]foldup.Patch, []foldup.Fault) {
	w, h := p.Size()
	joints := Length(len(f.boards) - 1)
	back, low := (f.across+joints*2*f.board-w)/2, (f.high-h)/2
	if least := min(back, low); least < -foldup.Sliver {
		return nil, []foldup.Fault{{Kind: foldup.Overhang, Piece: p.Name, Face: Inside, What: fmt.Sprintf("it reaches %.2f mm past the edge of the boards", (-least).MM())}}
	}
	var out []foldup.Patch
	for n, q := range f.boards {
		// The way along the lining is longer than that along the boards.
		down := Length(n) * 2 * f.board
		from, to := max(f.from[n], back-down), min(f.from[n]+q.wide, back+w-down)
		if to-from > foldup.Sliver {
			out = append(out, foldup.Patch{Piece: p.Name, Order: lastTurn, Thick: thick, Plane: 1, Shape: polygon.Box(geometry.Bx(from, low, to, f.high-low))})
		}
	}
	return out, nil
}

// lastTurn is after all that is folded.
const lastTurn = 3
