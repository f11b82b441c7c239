package packtest_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/paper/pack"
	"forel/paper/pack/packtest"
)

// A sheet of 100 by 60 with a trim of 5 all round and a gap of 2, laid out by
// hand: two pieces of 40 by 20 in a row, an offcut beside them and one below.
func byHand() (*pack.Layout, []pack.Item, []pack.Stock) {
	items := []pack.Item{{ID: "a", Width: 40, Height: 20, Strip: "s"}, {ID: "b", Width: 20, Height: 40, Turn: true, Strip: "s"}}
	stock := []pack.Stock{{Width: 100, Height: 60, Count: 1, Trim: pack.Trim{Left: 5, Right: 5, Top: 5, Bottom: 5}}}
	a, b := pack.Box{X: 5, Y: 5, Width: 40, Height: 20}, pack.Box{X: 47, Y: 5, Width: 40, Height: 20}
	side, below := pack.Box{X: 89, Y: 5, Width: 6, Height: 20}, pack.Box{X: 5, Y: 27, Width: 90, Height: 28}
	tree := &pack.Part{Box: pack.Box{X: 5, Y: 5, Width: 90, Height: 50}, Item: -1, Cut: pack.AlongX, Parts: []pack.Part{
		{Box: pack.Box{X: 5, Y: 5, Width: 90, Height: 20}, Item: -1, Cut: pack.AlongY, Parts: []pack.Part{
			{Box: a, Item: 0}, {Box: b, Item: 1}, {Box: side, Item: -1},
		}},
		{Box: below, Item: -1},
	}}
	return &pack.Layout{Gap: 2, Sheets: []pack.Sheet{{
		Width: 100, Height: 60, Places: []pack.Place{{Item: 0, Box: a}, {Item: 1, Box: b, Turned: true}},
		Cuts: tree,
	}}}, items, stock
}

func TestSound(t *testing.T) {
	l, items, stock := byHand()
	require.NoError(t, packtest.Verify(l, items, stock))
	l.Mode, l.Sheets[0].Cuts = pack.Free, nil
	require.NoError(t, packtest.Verify(l, items, stock))
}

// Each way to spoil the layout is found out.
func TestSpoiled(t *testing.T) {
	type parts = pack.Layout
	for name, c := range map[string]struct {
		spoil func(*parts, []pack.Item, []pack.Stock)
		says  string
	}{
		"missing":         {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Places = l.Sheets[0].Places[:1] }, "is missing"},
		"twice":           {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets = append(l.Sheets, l.Sheets[0]) }, "too often"},
		"stock":           {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets = append(l.Sheets, l.Sheets[0]) }, "2 sheets used of 1"},
		"no such stock":   {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Stock = 1 }, "no stock 1"},
		"sheet's size":    {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Width = 101 }, "not the size of its stock"},
		"piece's size":    {func(l *parts, it []pack.Item, _ []pack.Stock) { it[0].Width = 40.001 }, "item 0 is 40 x 20"},
		"turned":          {func(l *parts, it []pack.Item, _ []pack.Stock) { it[1].Turn = false }, "item 1 is turned"},
		"turn not told":   {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Places[1].Turned = false }, "item 1 is 40 x 20"},
		"trim":            {func(l *parts, _ []pack.Item, st []pack.Stock) { st[0].Trim.Top = 5.001 }, "not within the trim"},
		"gap":             {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Gap = 2.001 }, "nearer than the gap"},
		"overlap":         {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Places[1].X = 20 }, "overlap"},
		"no tree":         {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Cuts = nil }, "no tree of cuts"},
		"tree's root":     {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Cuts.Width = 80 }, "does not begin with the sheet"},
		"tree's piece":    {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Cuts.Parts[0].Parts[0].Item = -1 }, "do not yield item 0"},
		"tree's double":   {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Cuts.Parts[1].Item = 0 }, "yield item 0 twice"},
		"cut's end":       {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Cuts.Parts[0].Parts[1].Height = 19 }, "edge to edge"},
		"nobody's":        {func(l *parts, _ []pack.Item, _ []pack.Stock) { p := l.Sheets[0].Cuts; p.Parts = p.Parts[:1] }, "is nobody's"},
		"mode":            {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Mode = pack.Free }, "has a tree of cuts"},
		"no such item":    {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Places[0].Item = 7 }, "there is no item 7"},
		"uncut has parts": {func(l *parts, _ []pack.Item, _ []pack.Stock) { l.Sheets[0].Cuts.Parts[0].Cut = pack.None }, "not cut has parts"},
	} {
		l, items, stock := byHand()
		c.spoil(l, items, stock)
		err := packtest.Verify(l, items, stock)
		if assert.Error(t, err, name) {
			assert.Contains(t, err.Error(), c.says, name)
		}
	}
	assert.Error(t, packtest.Verify(nil, nil, nil))
}

// Four pieces round an empty middle lock into each other: no cut from edge to
// edge parts them. Lying freely they are sound.
func TestPinwheel(t *testing.T) {
	box := []pack.Box{{X: 0, Y: 0, Width: 20, Height: 10}, {X: 20, Y: 0, Width: 10, Height: 20}, {X: 10, Y: 20, Width: 20, Height: 10}, {X: 0, Y: 10, Width: 10, Height: 20}}
	var items []pack.Item
	l := &pack.Layout{Mode: pack.Free, Sheets: []pack.Sheet{{Width: 30, Height: 30}}}
	for i, b := range box {
		items = append(items, pack.Item{Width: b.Width, Height: b.Height})
		l.Sheets[0].Places = append(l.Sheets[0].Places, pack.Place{Item: i, Box: b})
	}
	stock := []pack.Stock{{Width: 30, Height: 30}}
	require.NoError(t, packtest.Verify(l, items, stock))
	l.Mode = pack.Guillotine
	assert.ErrorContains(t, packtest.Verify(l, items, stock), "can't be parted")
	l.Sheets[0].Places = l.Sheets[0].Places[:3]
	assert.NotContains(t, packtest.VerifySome(l, items, stock, []int{0, 1, 2}).Error(), "can't be parted")
}

// Pieces of one strip that lie on strips of different breadth are found out.
func TestStripsOfDifferentBreadth(t *testing.T) {
	items := []pack.Item{
		{Width: 20, Height: 10, Strip: "s"}, {Width: 30, Height: 10, Strip: "s"},
		{Width: 20, Height: 15, Strip: "s"}, {Width: 30, Height: 15, Strip: "s"},
	}
	row := func(y, h pack.Length, first int) pack.Part {
		a, b := pack.Box{X: 0, Y: y, Width: 20, Height: h}, pack.Box{X: 20, Y: y, Width: 30, Height: h}
		return pack.Part{Box: pack.Box{X: 0, Y: y, Width: 50, Height: h}, Item: -1, Cut: pack.AlongY, Parts: []pack.Part{{Box: a, Item: first}, {Box: b, Item: first + 1}}}
	}
	rows := []pack.Part{row(0, 10, 0), row(10, 15, 2)}
	s := pack.Sheet{Width: 50, Height: 25, Cuts: &pack.Part{Box: pack.Box{Width: 50, Height: 25}, Item: -1, Cut: pack.AlongX, Parts: rows}}
	for _, r := range rows {
		for _, p := range r.Parts {
			s.Places = append(s.Places, pack.Place{Item: p.Item, Box: p.Box})
		}
	}
	l, stock := &pack.Layout{Sheets: []pack.Sheet{s}}, []pack.Stock{{Width: 50, Height: 25}}
	assert.ErrorContains(t, packtest.Verify(l, items, stock), "different breadths")
	items[2].Strip, items[3].Strip = "t", "t"
	assert.NoError(t, packtest.Verify(l, items, stock))
}
