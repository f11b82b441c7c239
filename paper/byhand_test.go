package paper_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/paper"
)

// By hand. A4 with margins of 10 mm and a foot of 14 mm takes 190 x 263 mm
// upright, 277 x 176 mm lying. Two plates of 89 x 250 mm are 93 x 254 mm with
// the white about them; with 4 mm between them, both take 190 x 254 mm.
func TestLayTwoOnASheet(t *testing.T) {
	var pieces []geometry.Piece
	for _, name := range []string{"one", "two"} {
		pieces = append(pieces, plate(name, 89, 250))
	}
	l := paper.DefaultSetup().Lay(pieces, paper.Options{})
	assert.Len(t, l.Pages, 1)
	assert.Equal(t, 1, l.AtLeast) // 44500 of 49970 mm²
	assert.Len(t, paper.DefaultSetup().Lay(pieces, paper.Options{Set: paper.Separate}).Pages, 2)
}

// By hand. A strip of 300 x 100 mm is longer than any A4 prints; in two parts of
// at most 157 x 104 mm, 10 mm of each over the other, it goes on one sheet.
func TestLayAStripInTwoOnOneSheet(t *testing.T) {
	l := paper.DefaultSetup().Lay([]geometry.Piece{plate("strip", 300, 100)}, paper.Options{})
	assert.Len(t, l.Pages, 1)
	require.Len(t, l.Tilings[0].Tiles, 2)
	require.Len(t, l.Tilings[0].Marks, 2)
	assert.Equal(t, "A1", l.Tilings[0].Marks[0].Name)
	assert.Equal(t, "A2", l.Tilings[0].Marks[1].Name)
}

// By hand. A plate of 600 x 600 mm is 604 mm with its white: four sheets of
// 190 mm that overlap by 10 mm one way, three of 263 mm the other. The two in
// the middle would show nothing. The ten round them have 17 joins less the 7
// that the two would have had.
func TestLayABigPlate(t *testing.T) {
	l := paper.DefaultSetup().Lay([]geometry.Piece{plate("plate", 600, 600)}, paper.Options{})
	p := l.Tilings[0]
	assert.ElementsMatch(t, []int{3, 4}, []int{p.Rows, p.Cols})
	assert.Equal(t, 2, l.Blank)
	assert.Len(t, p.Tiles, 10)
	assert.LessOrEqual(t, len(l.Pages), 10)
	assert.Len(t, p.Marks, 2*(17-7))
}
