package geometry_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry"
)

func TestPlain(t *testing.T) {
	board := func(change func(*geometry.Piece)) geometry.Piece {
		p := geometry.Piece{Outline: geometry.Rectangle(geometry.Bx(0, 0, 100, 200))}
		change(&p)
		return p
	}
	line := func(x1, y1, x2, y2 geometry.Length) geometry.Path {
		return geometry.Line(geometry.Pt(x1, y1), geometry.Pt(x2, y2))
	}
	assert.True(t, board(func(*geometry.Piece) {}).Plain())
	assert.True(t, board(func(p *geometry.Piece) { p.Guides = []geometry.Guide{{Path: line(0, 20, 100, 20)}} }).Plain())
	for name, change := range map[string]func(*geometry.Piece){
		"slit":           func(p *geometry.Piece) { p.Slits = []geometry.Path{line(0, 20, 50, 20)} },
		"fold":           func(p *geometry.Piece) { p.Folds = []geometry.Path{line(0, 20, 100, 20)} },
		"slanting guide": func(p *geometry.Piece) { p.Guides = []geometry.Guide{{Path: line(0, 20, 100, 30)}} },
		"pattern":        func(p *geometry.Piece) { p.Pattern.Along = 20 },
		"face":           func(p *geometry.Piece) { p.FaceOf = "side paper" },
		"wedge":          func(p *geometry.Piece) { p.Outline.Vertices[2].X -= 5 },
		"hole":           func(p *geometry.Piece) { p.Outline.Vertices[1].Bulge = -1 },
	} {
		assert.False(t, board(change).Plain(), name)
	}
}

// By hand: a line 20 from the lower edge, one 30 from the right, one on an edge.
func TestOffsets(t *testing.T) {
	p := geometry.Piece{Outline: geometry.Rectangle(geometry.Bx(0, 0, 100, 200))}
	p.Edges = []geometry.Edge{{Name: "tail edge", From: geometry.Pt(0, 0), To: geometry.Pt(100, 0)}}
	p.Guides = []geometry.Guide{
		{Name: "wall", Path: geometry.Line(geometry.Pt(0, 20), geometry.Pt(100, 20))},
		{Name: "divider", Path: geometry.Line(geometry.Pt(70, 0), geometry.Pt(70, 200))},
		{Name: "edge", Path: geometry.Line(geometry.Pt(0, 0), geometry.Pt(0, 200))},
	}
	assert.Equal(t, []geometry.Offset{
		{Name: "wall", Edge: "tail edge", Off: 20},
		{Name: "divider", Edge: "the other edge along the height", Off: 30},
	}, p.Offsets())
}
