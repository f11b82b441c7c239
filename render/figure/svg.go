package figure

import (
	"forel/geometry"
	"forel/render"
	"forel/render/svg"
)

// The size of a figure that stands by itself.
const (
	figureWide Length = 120
	figureTall Length = 84
)

// SVG returns a panel as a drawing of its own, with what it shows as its title.
func (p Panel) SVG(title string) []byte {
	c := svg.New(figureWide, figureTall, title, p.caption)
	c.Begin(render.Legend)
	p.Draw(c, geometry.Bx(0, 0, figureWide, figureTall).Grow(-2), AtBoth)
	c.End()
	return c.Bytes()
}
