// Package staging makes a scene of a stage: what a surface is made of becomes how it
// is drawn.
package staging

import (
	"forel/geometry"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/scene"
)

// Looks is how stuffs are drawn.
type Looks map[stage.Stuff]scene.Look

// lines is how lines on faces are drawn.
var lines = map[stage.LineKind]render.Stroke{
	stage.Fold: {Width: 0.25, Dash: []geometry.Length{1.4, 0.8}, Color: render.Black},
	stage.Slit: {Width: 0.35, Color: render.Black},
	stage.Thin: {Width: 0.2, Color: render.Color{R: 110, G: 110, B: 110}},
}

// Faces returns the faces of a stage with their looks.
func (l Looks) Faces(faces []stage.Face) []scene.Face {
	out := make([]scene.Face, len(faces))
	for i, f := range faces {
		out[i] = scene.Face{Object: f.Object, Name: f.Name, Points: f.Points, Grain: f.Grain, Front: l.look(f.Front, f.Plain), Layer: f.Layer}
		if f.Back != stage.None {
			back := l.look(f.Back, f.Plain)
			out[i].Back = &back
		}
		for _, line := range f.Lines {
			out[i].Lines = append(out[i].Lines, scene.Line{Points: line.Points, Stroke: lines[line.Kind]})
		}
	}
	return out
}

// look returns how a stuff is drawn; without hatching where it is not what a
// picture is about.
func (l Looks) look(s stage.Stuff, plain bool) scene.Look {
	look := l[s]
	if plain {
		look.Hatch = nil
	}
	return look
}

// View returns where a stage is seen from.
func View(v stage.View) scene.View {
	return scene.Turned(v.Toward, v.Up, v.Yaw, v.Pitch)
}
