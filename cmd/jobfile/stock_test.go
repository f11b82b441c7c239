package jobfile_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/paper/stock"
)

// refusedStock are jobs whose stock is refused, with the beginning of each line
// of their error.
var refusedStock = []refusal{
	{"no material", book + "[[stock]]\nsize = 'A1'\n", []string{`:5: stock.material: missing; give "board", "lining", `}},
	{"unknown material", book + "[[stock]]\nmaterial = 'bord'\nsize = 'A1'\n", []string{`:6: stock.material: "bord" is none of its words; `}},
	{"no size", book + "[[stock]]\nmaterial = 'board'\n", []string{":5: stock.size: missing; give the size of a sheet"}},
	{"size and roll", book + "[[stock]]\nmaterial = 'cloth'\nsize = 'A1'\nroll = 1370\n", []string{":8: stock.roll: size and roll both; "}},
	{"length of a sheet", book + "[[stock]]\nmaterial = 'cloth'\nsize = 'A1'\nlength = 500\n", []string{":8: stock.length: a sheet has no length of its own; "}},
	{"unknown size", book + "[[stock]]\nmaterial = 'board'\nsize = 'crown'\n", []string{`:7: stock.size: "crown" is no size of a sheet; give both sides, such as "210 x 297 mm"`}},
	{"small sheet", book + "[[stock]]\nmaterial = 'board'\nsize = '26 x 38'\n", []string{`:7: stock.size: "26 x 38" is no size of a sheet; give 100 mm to 5000 mm (each side of it); if it was inches, write "26 x 38 in"`}},
	{"half a size", book + "[[stock]]\nmaterial = 'board'\nsize = '600 x'\n", []string{`:7: stock.size: "600 x" is no size of a sheet; `}},
	{"size as a number", book + "[[stock]]\nmaterial = 'board'\nsize = 600\n", []string{":7: stock.size: 600 is no size of a sheet; "}},
	{"no sheets", book + "[[stock]]\nmaterial = 'board'\nsize = 'A1'\ncount = 0\n", []string{":8: stock.count: 0 is too small; give 1 to 100000 (how many there are)"}},
	{"half a sheet", book + "[[stock]]\nmaterial = 'board'\nsize = 'A1'\ncount = 2.5\n", []string{":8: stock.count: 2.5 is no whole number; "}},
	{"price in words", book + "[[stock]]\nmaterial = 'board'\nsize = 'A1'\nprice = 'a lot'\n", []string{`:8: stock.price: "a lot" is no number; `}},
	{"price below nothing", book + "[[stock]]\nmaterial = 'board'\nsize = 'A1'\nprice = -1\n", []string{":8: stock.price: -1 is too small; "}},
	{"count of a roll", book + "[[stock]]\nmaterial = 'cloth'\nroll = 1370\ncount = 2\n", []string{":8: stock.count: a count of a roll without a length; "}},
	{"grain", book + "[[stock]]\nmaterial = 'board'\nsize = 'A1'\ngrain = 'long'\n", []string{`:8: stock.grain: "long" is none of its words; give "height", "width" or "none"`}},
	{"all trim", book + "[[stock]]\nmaterial = 'board'\nsize = '120 x 120'\ntrim = 50\n", []string{":8: stock.trim: a trim of 50 mm on each edge leaves nothing to cut from; at most 35 mm"}},
	{"density twice", book + "[[stock]]\nmaterial = 'board'\nsize = 'A1'\ndensity = 650\ngrammage = 1200\n", []string{":9: stock.grammage: density and grammage both; "}},
	{"one pair of brackets", book + "[stock]\nmaterial = 'board'\nsize = 'A1'\n", []string{":5: stock: stock has double brackets; write [[stock]]"}},
	{"unknown key", book + "[[stock]]\nmaterial = 'board'\nsize = 'A1'\ncolor = 'grey'\n", []string{":8: stock.color: unknown key; "}},
	{"key nearly right", book + "[[stock]]\nmaterial = 'board'\nsise = 'A1'\nsize = 'A1'\n", []string{":7: stock.sise: unknown key; did you mean stock.size"}},
	{"the second one", book + "[[stock]]\nmaterial = 'board'\nsize = 'A1'\n[[stock]]\nmaterial = 'cloth'\nroll = 0\nkerf = 11\n", []string{
		":10: stock[2].roll: zero is no measurement; ", ":11: stock[2].kerf: 11 mm is too large; give 0 mm to 10 mm "}},
	{"set twice", book + "[[stock]]\nmaterial = 'board'\nmaterial = 'cloth'\nsize = 'A1'\n", []string{":7: stock.material: set twice, first on line 6; keep one"}},
	{"too many", book + strings.Repeat("[[stock]]\nmaterial = 'board'\nsize = 'A1'\n", 41), []string{":125: stock[41]: more than 40 kinds of stock; "}},
	{"a name that is none", book + "[cloth]\nname = 7\n", []string{":6: cloth.name: 7 is no name; "}},
	{"all at once", "units = 'ft'\n" + book + "[[stock]]\nmaterial = 'wood'\nprice = 'x'\n", []string{
		`:1: units: "ft" is no unit`, ":6: stock.size: missing", `:7: stock.material: "wood"`, `:8: stock.price: "x"`}},
}

func TestStock(t *testing.T) {
	f := parse(t, book+`[cloth]
name = "blue"
[[stock]]
material = "board"
name = "grey board"
thickness = 2
size = "26 x 38 in"
grain = "width"
count = 6
price = 4.80
trim = "1/4 in"
kerf = 3
grammage = 1250
[[stock]]
material = "Cloth"
roll = "54 in"
length = "3000 mm"
price = "12,50"
density = 650
[[stock]]
material = "paper"
size = "b1"
grain = "none"
`)
	require.Len(t, f.Stock, 3)
	price, metre := exact(t, "4.80"), exact(t, "12.50")
	inches(t, stock.Stock{Name: "grey board", Material: geometry.Board, Thickness: 2, Width: 660.4, Height: 965.2, Grain: geometry.GrainWidth,
		Count: 6, Price: &price, Per: 1000, Trim: 6.35, Kerf: 3, Grammage: 1250}, f.Stock[0])
	inches(t, stock.Stock{Material: geometry.Cloth, Roll: true, Width: 1371.6, Height: 3000, Grain: geometry.GrainHeight,
		Price: &metre, Per: 1000, Trim: 5, Density: 650}, f.Stock[1])
	inches(t, stock.Stock{Material: geometry.Paper, Width: 707, Height: 1000, Grain: stock.NoGrain, Per: 1000, Trim: 5}, f.Stock[2])
	assert.Equal(t, map[geometry.Material]string{geometry.Cloth: "blue"}, f.Names)
}

// inches compares stock, lengths to a hundredth of a micrometre.
func inches(t *testing.T, want, got stock.Stock) {
	t.Helper()
	assert.InDelta(t, want.Width.MM(), got.Width.MM(), 1e-5)
	assert.InDelta(t, want.Height.MM(), got.Height.MM(), 1e-5)
	assert.InDelta(t, want.Trim.MM(), got.Trim.MM(), 1e-5)
	assert.Equal(t, "case.toml", got.At.Source)
	got.Width, got.Height, got.Trim, got.At = want.Width, want.Height, want.Trim, want.At
	assert.Equal(t, want, got)
}

// Where a maker works in inches, cloth is priced by the yard of 914.4 mm, and a
// bare size is in inches.
func TestStockInInches(t *testing.T) {
	f := parse(t, "units = 'in'\n[[book]]\nheight = 9\nwidth = 6\nthickness = 1\n[[stock]]\nmaterial = 'cloth'\nroll = 54\nprice = 10\n[[stock]]\nmaterial = 'board'\nsize = '26 x 38'\n")
	assert.InDelta(t, 914.4, f.Stock[0].Per.MM(), 1e-9)
	assert.InDelta(t, 1371.6, f.Stock[0].Width.MM(), 1e-9)
	assert.InDelta(t, 6.35, f.Stock[1].Trim.MM(), 1e-9) // 1/4 in
	assert.InDelta(t, 660.4, f.Stock[1].Width.MM(), 1e-9)
	assert.InDelta(t, 965.2, f.Stock[1].Height.MM(), 1e-9)
}

func TestStockFromFlags(t *testing.T) {
	f, _, err := fromFlags(measured("221", "148.5", "32", set("stock.material", "board"), set("stock.size", "A1"), set("stock.count", "3")))
	require.NoError(t, err)
	require.Len(t, f.Stock, 1)
	assert.Equal(t, 3, f.Stock[0].Count)
	assert.InDelta(t, 841, f.Stock[0].Height.MM(), 1e-9)

	_, _, err = fromFlags(measured("221", "148.5", "32", set("stock[2].size", "A1")))
	require.Error(t, err)
	assert.Contains(t, err.Error(), "--set stock[2].size: a flag sets the first stock only; write stock.size")
}
