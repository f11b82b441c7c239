package proof

import (
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/document"
	"forel/render/figure"
)

// legend sets what the hatchings mean at the foot of a room, and returns what it leaves
// of it.
func (d *doc) legend(box geometry.Box) geometry.Box {
	var samples []document.Sample
	add := func(text string, draw func(geometry.Box)) {
		samples = append(samples, document.Sample{Draw: draw, Text: text})
	}
	for _, name := range d.looks.order {
		l := d.looks.pieces[name]
		add(name, figure.Swatch(d, l.Look, l.line))
	}
	for _, l := range d.grounds() {
		add(l.name, figure.Swatch(d, l.Look, innerEdge))
	}
	if d.tucks() {
		add("edge of what is tucked into a corner", func(at geometry.Box) {
			d.Stroke(geometry.Line(geometry.Pt(at.Min.X, at.Center().Y), geometry.Pt(at.Max.X, at.Center().Y)), render.Stroke{Width: 0.4, Dash: tuckDash, Color: render.Blue})
		})
	}
	if !d.Proof.Sound() {
		add("fault, with its number", func(at geometry.Box) { d.Stroke(geometry.Rectangle(at.Grow(-0.5)), faultLine) })
	}
	key := func(box geometry.Box) Length { return document.Key(d, box, 10, 5, samples) }
	var tall Length
	d.Aside(func() { tall = key(box) - box.Min.Y })
	below := box
	box.Max.Y -= tall
	below.Min.Y = box.Max.Y
	key(below)
	box.Max.Y -= 2
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
