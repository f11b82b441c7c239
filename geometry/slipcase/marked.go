package slipcase

import (
	"slices"

	"forel/geometry"
)

// How the corners of cloths and wraps are cut: wedges, slits and tabs.
const (
	CornersCut    = "cut"    // by the template, before the covering is glued
	CornersMarked = "marked" // on the case, along lines ruled by the template
)

// cutOnCase is the name of a line that is cut when the covering lies on the case.
const cutOnCase = "cut on the case"

// cornered are the pieces whose corners may be cut on the case.
var cornered = []string{"spine cloth", "head cloth", "tail cloth", "wrap", "head panel", "tail panel"}

// marked returns a piece as it is cut where its corners are cut on the case: the
// rectangle round it, and on it, to be ruled, all that its template cuts otherwise.
func marked(p geometry.Piece) geometry.Piece {
	if !slices.Contains(cornered, p.Name) {
		return p
	}
	box := p.Outline.Bounds()
	var lines []geometry.Path
	for _, s := range p.Outline.Segments() {
		if s.Bulge != 0 || !along(s.From, s.To, box) {
			lines = append(lines, geometry.Path{Vertices: []geometry.Vertex{{Point: s.From, Bulge: s.Bulge}, {Point: s.To}}})
		}
	}
	lines = append(lines, p.Slits...)
	if len(lines) == 0 {
		return p
	}
	p.Outline, p.Slits = geometry.Rectangle(box), nil
	p.Guides = slices.Clone(p.Guides)
	for _, l := range lines {
		p.Guides = append(p.Guides, geometry.Guide{Name: cutOnCase, Path: l})
	}
	p.Hand = also(p.Hand, "corners: rule the lines, cut them on the case")
	return p
}
