package render

import "forel/geometry"

// Discard is a surface, with pages, that keeps nothing: to find out what fits.
type Discard struct{}

// Begin opens a layer.
func (Discard) Begin(Layer) {}

// End closes the layer.
func (Discard) End() {}

// Stroke draws nothing.
func (Discard) Stroke(geometry.Path, Stroke) {}

// Fill fills nothing.
func (Discard) Fill(geometry.Path, Color) {}

// Text sets nothing.
func (Discard) Text(Text) {}

// AddPage starts no page.
func (Discard) AddPage(width, height Length) {}

// Page gives itself.
func (d Discard) Page() Surface { return d }

// Bookmark names nothing.
func (Discard) Bookmark(string) {}

// Under names nothing.
func (Discard) Under(string, string) {}

// Label labels nothing.
func (Discard) Label(Numerals, int) {}
