package cutter

import (
	"forel/paper/bed"
	"forel/render/document"
)

// DrawMap draws the map.
func DrawMap(beds []bed.Bed, s bed.Setup, o Options, print document.Options) []*document.Page {
	return Map(beds, s, o, print).Pages()
}
