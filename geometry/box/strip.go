package box

import (
	"slices"

	"forel/geometry"
)

// strip is the cloth of a tray as it is drawn: one piece round three walls, its back
// up. P runs along it from the open end of the wall at the left, Z up from the bottom
// of the tray. It is alike on both sides of its middle.
type strip struct {
	job  Job
	tray tray

	t, k, a, o, c, u, n, v Length
	A, L, d, h             Length // a side wall, the tray from head to tail outside, floor to rim, bottom to rim
	round                  Length // along the three walls
}

// stripOf returns the strip of a tray.
//
// A cut keeps a off a corner of the board. Where head and tail wall are turned over the
// rim, the two edges of the notch lie on one line when they are folded: that of the
// fore-edge wall starts k short of the corner, since there is cloth on the walls beside
// it, and that of the head wall c = k(t - a)/(t - a + k) within it.
func (j Job) stripOf(w tray) strip {
	s := strip{job: j, tray: w, t: j.Board, k: j.Cloth, a: j.off(), o: j.lap(w), u: j.under(w), n: j.ontoFloor(w), v: j.endFlap(w)}
	s.A, s.L, s.d, s.h = w.b+s.t, w.l+2*s.t, w.d, w.d+s.t
	s.c = s.k * (s.t - s.a) / (s.t - s.a + s.k)
	s.round = 2*s.A + s.L
	return s
}

// at returns the point of the piece at p and z.
func (s strip) at(p, z Length) geometry.Point { return geometry.Pt(p+s.t+s.v, z+s.u) }

// mirror returns the point at the same place of the other half.
func (s strip) mirror(q geometry.Point) geometry.Point {
	return geometry.Pt(s.round+2*(s.t+s.v)-q.X, q.Y)
}

// outline returns the outline: from the middle of the upper edge down the left half, and
// back up the right.
func (s strip) outline() geometry.Path {
	rim, floor, end := s.h+s.t, s.h+s.t+s.d, s.h+s.t+s.d+s.n
	in := s.A - s.t // the inner corner at the fore-edge
	half := []geometry.Point{
		s.at(s.A+s.t+s.k+s.n, end), s.at(s.A+s.t+s.k, floor), s.at(s.A+s.t+s.k, rim), // fore-edge flap, k off the walls beside it
		s.at(s.A+s.a, s.h+s.a), s.at(s.A-s.a, s.h+s.a), s.at(in+s.c, rim), // notch at the rim
		s.at(in+s.o, rim+s.o-s.c), s.at(in+s.o, floor-s.o), s.at(in, floor), // lap
		s.at(in-s.n, end), s.at(0, end), s.at(0, rim), // floor of the wall, then its open edge
		s.at(-s.t, s.h), s.at(-s.t-s.v, s.h-s.a), s.at(-s.t-s.v, 0), // web, end flap
		s.at(-s.a, 0), s.at(0, -s.a), s.at(0, -s.u), // web, and under the base
		s.at(s.A-s.u, -s.u), s.at(s.A-s.a, -s.a), s.at(s.A+s.a, -s.a), s.at(s.A+s.u, -s.u), // mitre
	}
	all := slices.Clone(half)
	for _, q := range slices.Backward(half) {
		all = append(all, s.mirror(q))
	}
	return geometry.Polygon(all...)
}

// both returns a line and the same in the other half.
func (s strip) both(from, to geometry.Point) []geometry.Path {
	return []geometry.Path{geometry.Line(from, to), geometry.Line(s.mirror(from), s.mirror(to))}
}

// across returns a line along the whole strip, parted where the notches are.
func (s strip) across(z Length) []geometry.Path {
	out := s.both(s.at(0, z), s.at(s.A-s.t, z))
	from := s.at(s.A+s.t+s.k, z)
	return append(out, geometry.Line(from, s.mirror(from)))
}

// piece returns the strip as it is cut.
func (s strip) piece() geometry.Piece {
	rim, floor := s.h+s.t, s.h+s.t+s.d
	names := facesOf(s.tray.name)
	p := geometry.Piece{
		Name: ofTray(s.tray.name, clothOf), Material: geometry.Cloth, Count: 1,
		Outline: s.outline(), Slits: s.both(s.at(-s.t, s.t), s.at(-s.t-s.v, s.t)),
		Grain: geometry.GrainWidth, FaceUp: "back up (the face that is glued)", Spine: -1,
		Rule: s.job.rules(s.tray).strip,
		Seats: []geometry.Seat{{Face: names.fore, At: [2]geometry.Anchor{
			{At: s.at(s.A, 0), On: names.corner(true)}, {At: s.at(s.A+s.L, 0), On: names.corner(false)},
		}}},
	}
	p.Folds = slices.Concat(
		s.both(s.at(0, 0), s.at(0, s.h)), s.both(s.at(s.A, 0), s.at(s.A, s.h)), s.both(s.at(-s.t, s.t), s.at(-s.t, s.h)),
		[]geometry.Path{geometry.Line(s.at(0, 0), s.at(s.round, 0)), geometry.Line(s.at(0, s.h), s.at(s.round, s.h))},
		s.across(rim),
	)
	crease := func(kind geometry.CreaseKind, paths ...geometry.Path) {
		for _, path := range paths {
			p.Creases = append(p.Creases, geometry.Crease{Path: path, Kind: kind})
		}
	}
	crease(geometry.Away, s.across(floor)...)
	crease(geometry.Bend, s.both(s.at(s.A-s.t, rim), s.at(s.A-s.t, floor))...)
	for _, give := range [][2]geometry.Point{
		{s.at(s.A, s.h), s.at(s.A, s.h+s.a)}, {s.at(s.A, 0), s.at(s.A, -s.a)},
		{s.at(-s.t, s.h), s.at(0, s.h)}, {s.at(0, s.h), s.at(0, rim)},
		{s.at(-s.a, 0), s.at(0, 0)}, {s.at(0, 0), s.at(0, -s.a)},
		{s.at(s.A-s.t, rim), s.at(s.A-s.t+s.c, rim)},
	} {
		crease(geometry.Give, s.both(give[0], give[1])...)
	}
	for _, path := range s.across(floor) {
		p.Guides = append(p.Guides, geometry.Guide{Name: "floor", Path: path})
	}
	p.Regions = s.regions(names)
	p.Margins = []geometry.Margin{
		{Name: "turned under the base", Length: s.u},
		{Name: "turned onto the floor", Length: s.n},
		{Name: "end flap past the thickness of the wall", Length: s.v},
		{Name: "lap in a corner at the fore-edge", Length: s.o},
		{Name: "every cut stays off the corners of the boards by", Length: s.a},
	}
	return p
}

// regions returns what each part between folds is for. Turns: under the base first,
// then end flaps, head and tail wall over the rim, the fore-edge wall last.
func (s strip) regions(f faces) []geometry.Region {
	rim, floor := s.h+s.t, s.h+s.t+s.d
	box := func(p0, z0, p1, z1 Length) geometry.Box {
		a, b := s.at(p0, z0), s.at(p1, z1)
		return geometry.Bx(a.X, a.Y, b.X, b.Y)
	}
	out := []geometry.Region{
		{Name: foreWord + " wall", Face: f.fore, Room: box(s.A, 0, s.A+s.L, s.h)},
		{Name: foreWord + ", under the base", Fold: "first", Face: f.under, Turn: 1, Room: box(s.A+s.u, -s.u, s.A+s.L-s.u, 0)},
		{Name: foreWord + ", over the rim", Face: f.foreRim, Turn: 4, Room: box(s.A+s.t+s.k, s.h, s.A+s.L-s.t-s.k, rim)},
		{Name: foreWord + ", inside", Fold: "last", Face: f.foreIn, Turn: 4, Room: box(s.A+s.t+s.k, rim, s.A+s.L-s.t-s.k, floor)},
		{Name: foreWord + ", onto the floor", Face: f.floor, Turn: 4, Room: box(s.A+s.t+s.k+s.n, floor, s.A+s.L-s.t-s.k-s.n, floor+s.n)},
	}
	for i, w := range f.ends {
		add := func(name, fold string, face geometry.Face, turn int, p0, z0, p1, z1 Length) {
			b := box(p0, z0, p1, z1)
			if i == 1 {
				b.Min.X, b.Max.X = s.mirror(b.Max).X, s.mirror(b.Min).X
			}
			out = append(out, geometry.Region{Name: w.word + name, Fold: fold, Face: face, Turn: turn, Room: b})
		}
		add(" wall", "", w.out, 0, 0, 0, s.A, s.h)
		add(", under the base", "first", f.under, 1, 0, -s.u, s.A-s.u, 0)
		add(", end flap", "second", w.in, 2, -s.t-s.v, s.t, -s.t, s.h-s.a)
		add(", end of the wall", "", w.end, 2, -s.t, s.t, 0, s.h)
		add(", on the base's edge", "", f.edge, 2, -s.t-s.v, 0, -s.t, s.t)
		add(", over the rim", "", w.rim, 3, 0, s.h, s.A-s.t, rim)
		add(", inside", "third", w.in, 3, 0, rim, s.A-s.t, floor)
		add(", onto the floor", "", f.floor, 3, 0, floor, s.A-s.t-s.n, floor+s.n)
		add(", lap", "", f.foreIn, 3, s.A-s.t, rim+s.o-s.c, s.A-s.t+s.o, floor-s.o)
	}
	return out
}
