package proof

import (
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/typeset"
)

// legend sets what the hatchings mean at the foot of a room, and returns what it leaves
// of it.
func (d *doc) legend(box geometry.Box) geometry.Box {
	type entry struct {
		draw func(swatch geometry.Box)
		text string
	}
	swatch := func(l look) func(geometry.Box) {
		return func(at geometry.Box) {
			path := geometry.Rectangle(at)
			d.Fill(path, l.tint)
			a := area{Rings: [][]geometry.Point{path.Flatten(1)}}
			l.shade(d, a, nil)
			border := l.line
			if border.Width == 0 {
				border = innerEdge
			}
			d.Stroke(path, border)
		}
	}
	var entries []entry
	for _, name := range d.looks.order {
		entries = append(entries, entry{swatch(d.looks.pieces[name]), name})
	}
	for _, l := range d.grounds() {
		entries = append(entries, entry{swatch(l), l.name})
	}
	if d.tucks() {
		entries = append(entries, entry{func(at geometry.Box) {
			d.Stroke(geometry.Line(geometry.Pt(at.Min.X, at.Center().Y), geometry.Pt(at.Max.X, at.Center().Y)), render.Stroke{Width: 0.4, Dash: tuckDash, Color: render.Blue})
		}, "edge of what is tucked into a corner"})
	}
	if !d.Proof.Sound() {
		entries = append(entries, entry{func(at geometry.Box) { d.Stroke(geometry.Rectangle(at.Grow(-0.5)), faultLine) }, "fault, with its number"})
	}

	const wide, tall, gap Length = 10, 5, 2
	row := tall + 2
	type set struct{ x, row Length }
	places := make([]set, len(entries))
	x, n := box.Min.X, Length(0)
	for i, e := range entries {
		w := wide + gap + typeset.Width(e.text, noteSize, false) + 6
		if x > box.Min.X && x+w-6 > box.Max.X {
			x, n = box.Min.X, n+1
		}
		places[i] = set{x, n}
		x += w
	}
	top := box.Max.Y - (n+1)*row
	for i, e := range entries {
		at := geometry.Bx(places[i].x, top+places[i].row*row+1, places[i].x+wide, top+places[i].row*row+1+tall)
		e.draw(at)
		d.Text(render.Text{At: geometry.Pt(at.Max.X+gap, at.Center().Y+typeset.Ascent(noteSize)/2), String: e.text, Size: noteSize, Color: render.Black})
	}
	box.Max.Y = top - 2
	return box
}

// grounds returns the looks of what is seen where no layer lies, each stuff once;
// of several names for one the stuff's own is taken.
func (d *doc) grounds() []look {
	var stuffs []stage.Stuff
	name := map[stage.Stuff]string{}
	for _, f := range d.faces {
		g := f.Ground
		shows := func(a area) bool { return a.Size() > leastPart && a.Breadth() > leastBreadth }
		if !slices.ContainsFunc(f.bare(), shows) {
			continue
		}
		switch had, ok := name[g.Stuff]; {
		case !ok:
			stuffs = append(stuffs, g.Stuff)
			name[g.Stuff] = g.Name
		case had != g.Name:
			name[g.Stuff] = string(g.Stuff)
		}
	}
	var out []look
	for _, s := range stuffs {
		out = append(out, d.looks.ground(foldup.Ground{Name: name[s], Stuff: s}))
	}
	return out
}

// tucks tells whether anything is tucked into a corner.
func (d *doc) tucks() bool {
	return slices.ContainsFunc(d.Proof.Faces, func(f foldup.FaceReport) bool {
		return slices.ContainsFunc(f.Layers, func(l foldup.Patch) bool { return l.Tucked })
	})
}
