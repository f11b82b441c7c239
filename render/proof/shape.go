package proof

import (
	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/render"
	"forel/render/leader"
	"forel/render/shape"
)

// What the pictures are made of.
type (
	area   = shape.Area
	taken  = shape.Taken
	hatch  = shape.Hatch
	label  = leader.Label
	column = leader.Column
)

const (
	sliver   = shape.Sliver
	noteSize = render.NoteSize
)

func areasOf(g geom.Geometry) []area                { return shape.AreasOf(g) }
func meet(a, b geom.Geometry) geom.Geometry         { return shape.Meet(a, b) }
func without(a, b geom.Geometry) geom.Geometry      { return shape.Without(a, b) }
func union(gs []geom.Geometry) geom.Geometry        { return shape.Union(gs) }
func solid(g geom.Geometry) geom.Geometry           { return shape.Solid(g) }
func runs(g geom.Geometry) [][]geometry.Point       { return shape.Runs(g) }
func outline(g geom.Geometry) geom.Geometry         { return shape.Outline(g) }
func freeEdges(g, edge geom.Geometry) geom.Geometry { return shape.FreeEdges(g, edge) }

func moved(g geom.Geometry, to func(geometry.Point) geometry.Point) geom.Geometry {
	return shape.Moved(g, to)
}

// shade draws the hatching of a look over an area, kept off some boxes.
func (l look) shade(s render.Surface, a area, keep []geometry.Box) {
	for _, h := range l.hatch {
		for _, line := range h.Lines(a, keep) {
			s.Stroke(line.Path, line.Stroke)
		}
	}
}
