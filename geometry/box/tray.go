package box

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/laidflat"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
)

// standing is a tray put together from its boards as they are cut. X runs from the open
// edge to the fore-edge, Y from the wall that is near to the one that is away, Z up from
// the bench.
type standing struct {
	name             string
	f                faces
	t                Length // board
	b, l, d          Length // inside
	wide, long, high Length // outside, boards
	on               bool   // the walls stand on the base
	at               space.Vec
	plane            int // the number of its first plane
}

// planes is how many planes the faces of a tray lie in.
const planes = 10

// stand puts a tray together from its boards and tells what does not meet.
func stand(pieces []geometry.Piece, name string, board Length, walls string) (standing, []foldup.Fault) {
	s := standing{name: name, f: facesOf(name), t: board, on: walls == On}
	var faults []foldup.Fault
	size := func(of string, count int) (w, h Length) {
		p, ok := geometry.Find(pieces, ofTray(name, of))
		if !ok || p.Count != count {
			faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: ofTray(name, of), What: fmt.Sprintf("%d are needed, there are %d", count, p.Count)})
			return 0, 0
		}
		w, h = p.Size()
		if full := float64(w * h); math.Abs(p.Outline.SignedArea()-full) > 1e-6*full {
			faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: ofTray(name, of), What: "not a rectangle"})
		}
		return w, h
	}
	baseW, baseH := size(baseOf, 1)
	foreW, foreH := size(foreWallOf, 1)
	sideW, sideH := size(sideWallOf, 2)
	meets := func(of, what string, is, want Length) {
		if (is - want).Abs() > foldup.Sliver {
			faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: ofTray(name, of), What: fmt.Sprintf("%s: %.3f mm where %.3f mm would meet the others", what, is.MM(), want.MM())})
		}
	}
	s.b, s.l, s.d = baseW, baseH, sideH-board
	if s.on {
		s.b, s.l, s.d = baseW-board, baseH-2*board, sideH
	}
	meets(foreWallOf, "length", foreW, s.l)
	meets(foreWallOf, "height", foreH, sideH)
	meets(sideWallOf, "length", sideW, s.b+board)
	s.wide, s.long, s.high = s.b+board, s.l+2*board, s.d+board
	return s, faults
}

// leastBorder is how much of the underside is covered at least: the rest is glued to the
// case (common practice, no source).
const leastBorder Length = leastUnder

// body returns the faces of a tray and what of them is to be covered.
func (s standing) body() foldup.Body {
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	nx, ny := x.Mul(-1), y.Mul(-1)
	away, near := s.f.ends[0], s.f.ends[1]
	at := func(px, py, pz Length) space.Vec { return s.at.Add(space.Vec{X: px, Y: py, Z: pz}) }
	bx := geometry.Bx
	const open, fore, rim, floor, bench = "open end", "fore-edge", "rim", "floor", "base"
	sides := func(left, right, top, bottom string) foldup.Beyond {
		return foldup.Beyond{Left: left, Right: right, Top: top, Bottom: bottom}
	}
	face := func(name geometry.Face, board string, plane int, o, u, v space.Vec, extent geometry.Box, beyond foldup.Beyond) foldup.Surface {
		return foldup.Surface{Face: name, Board: s.name + ", " + board, Frame: space.Frame{O: o, U: u, V: v}, Normal: u.Cross(v), Extent: extent,
			Cover: polygon.Box(extent), Plane: s.plane + plane, Beyond: beyond, Ground: laidflat.Bare}
	}
	inside := func(f foldup.Surface) foldup.Surface { f.Inside = true; return f }
	edge := func(f foldup.Surface, together string) foldup.Surface {
		f.Edge, f.Together = true, together
		return f
	}
	wall := func(w string) string { return w + " wall" }
	rims, ends := "the rim of the "+s.name, "the open end of the "+s.name
	under := face(s.f.under, "base", 3, at(s.wide, 0, 0), nx, y, bx(0, 0, s.wide, s.long), sides(fore, open, away.word, near.word))
	under.Cover = foldup.Without(under.Cover, polygon.Box(bx(leastBorder, leastBorder, s.wide, s.long-leastBorder)))
	body := foldup.Body{Surfaces: []foldup.Surface{
		face(s.f.fore, wall(fore), 0, at(s.wide, 0, 0), y, z, bx(0, 0, s.long, s.high), sides(near.word, away.word, rim, bench)),
		face(away.out, wall(away.word), 1, at(s.wide, s.long, 0), nx, z, bx(0, 0, s.wide, s.high), sides(fore, open, rim, bench)),
		face(near.out, wall(near.word), 2, at(0, 0, 0), x, z, bx(0, 0, s.wide, s.high), sides(open, fore, rim, bench)),
		under,
		inside(face(s.f.floor, "base", 4, at(0, s.t, s.t), x, y, bx(0, 0, s.b, s.l), sides(open, fore, away.word, near.word))),
		inside(face(s.f.foreIn, wall(fore), 5, at(s.b, s.long-s.t, s.t), ny, z, bx(0, 0, s.l, s.d), sides(away.word, near.word, rim, floor))),
		inside(face(away.in, wall(away.word), 6, at(0, s.long-s.t, s.t), x, z, bx(0, 0, s.b, s.d), sides(open, fore, rim, floor))),
		inside(face(near.in, wall(near.word), 7, at(s.b, s.t, s.t), nx, z, bx(0, 0, s.b, s.d), sides(fore, open, rim, floor))),
		edge(face(away.rim, wall(away.word), 8, at(0, 0, s.high), x, y, bx(0, s.long-s.t, s.wide, s.long), sides(open, fore, "outside", "inside")), rims),
		edge(face(near.rim, wall(near.word), 8, at(0, 0, s.high), x, y, bx(0, 0, s.wide, s.t), sides(open, fore, "inside", "outside")), rims),
		edge(face(s.f.foreRim, wall(fore), 8, at(0, 0, s.high), x, y, bx(s.b, s.t, s.wide, s.long-s.t), sides("inside", "outside", away.word, near.word)), rims),
		edge(face(away.end, wall(away.word), 9, at(0, s.long, 0), ny, z, bx(0, 0, s.t, s.high), sides("outside", "inside", rim, bench)), ends),
		edge(face(near.end, wall(near.word), 9, at(0, s.long, 0), ny, z, bx(s.long-s.t, 0, s.long, s.high), sides("inside", "outside", rim, bench)), ends),
		edge(face(s.f.edge, "base", 9, at(0, s.long, 0), ny, z, bx(s.t, 0, s.long-s.t, s.t), sides(away.word, near.word, floor, "underside")), ends),
	}}
	for _, w := range []geometry.Face{away.in, near.in} {
		body.Inner = append(body.Inner, foldup.Inner{Face: s.f.floor, Wall: w, Over: true}, foldup.Inner{Face: s.f.foreIn, Wall: w, Over: true})
	}
	body.Inner = append(body.Inner, foldup.Inner{Face: s.f.floor, Wall: s.f.foreIn, Over: true})
	body.Corners = map[geometry.Corner]space.Vec{
		s.f.corner(true): at(s.wide, s.long, 0), s.f.corner(false): at(s.wide, 0, 0),
		s.f.floorCorner(true): at(0, s.long-s.t, s.t), s.f.floorCorner(false): at(0, s.t, s.t),
	}
	return body
}

// solids returns the boards of the tray as they stand.
func (s standing) solids() []plan.Solid {
	box := func(name string, x0, y0, z0, x1, y1, z1 Length) plan.Solid {
		return plan.Box(s.name+", "+name, stage.Board, s.at.Add(space.Vec{X: x0, Y: y0, Z: z0}), s.at.Add(space.Vec{X: x1, Y: y1, Z: z1}))
	}
	low, in := Length(0), s.t // of the walls, of the base
	if s.on {
		low, in = s.t, 0
	}
	t := s.t
	return []plan.Solid{
		box("base", 0, in, 0, s.wide-in, s.long-in, t),
		box("fore-edge wall", s.b, t, low, s.wide, s.long-t, s.high),
		box(s.f.ends[0].word+" wall", 0, s.long-t, low, s.wide, s.long, s.high),
		box(s.f.ends[1].word+" wall", 0, 0, low, s.wide, t, s.high),
	}
}

// hinged returns what of the hinge lies in a tray: on its floor from the open edge, and
// on the edge of its base, in the middle from head to tail.
func (s standing) hinged(wide, high, thick Length) []foldup.Patch {
	low := (s.l - high) / 2
	patch := func(plane int, box geometry.Box) foldup.Patch {
		return foldup.Patch{Piece: hingeName, Order: hingeTurn, Thick: thick, Plane: s.plane + plane, Shape: polygon.Box(box)}
	}
	return []foldup.Patch{patch(4, geometry.Bx(0, low, wide, low+high)), patch(9, geometry.Bx(s.t+low, 0, s.t+low+high, s.t))}
}

// What comes after all that is folded on a tray: the hinge, then the linings.
const (
	hingeTurn  = 5
	liningTurn = 6
)
