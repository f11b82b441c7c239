package handout

import (
	"forel/geometry/stage"
	"forel/render"
	"forel/render/scene"
)

// lineLooks is how lines on faces are drawn.
var lineLooks = map[stage.LineKind]render.Stroke{
	stage.Fold: {Width: 0.25, Dash: []Length{1.4, 0.8}, Color: render.Black},
	stage.Slit: {Width: 0.35, Color: render.Black},
	stage.Thin: {Width: 0.2, Color: grey(110)},
}

// face returns a face of a stage with the looks of what it is made of.
func (b *book) face(f stage.Face) scene.Face {
	out := scene.Face{Object: f.Object, Name: f.Name, Points: placesOf(f.Points), Grain: placeOf(f.Grain), Front: b.look(f.Front, f.Plain), Layer: f.Layer}
	if f.Back != stage.None {
		back := b.look(f.Back, f.Plain)
		out.Back = &back
	}
	for _, l := range f.Lines {
		out.Lines = append(out.Lines, scene.Line{Points: placesOf(l.Points), Stroke: lineLooks[l.Kind]})
	}
	return out
}

func viewOf(v stage.View) scene.View {
	return scene.Turned(placeOf(v.Toward), placeOf(v.Up), v.Yaw, v.Pitch)
}

func placeOf(v stage.Vec) scene.Vec { return scene.Vec{X: v.X.MM(), Y: v.Y.MM(), Z: v.Z.MM()} }

func placesOf(vs []stage.Vec) []scene.Vec {
	if vs == nil {
		return nil
	}
	out := make([]scene.Vec, len(vs))
	for i, v := range vs {
		out[i] = placeOf(v)
	}
	return out
}
