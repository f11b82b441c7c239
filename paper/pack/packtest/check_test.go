package packtest_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/paper/pack"
	"forel/paper/pack/packtest"
)

// A sheet of 90 by 50 with a gap of 2, laid out by hand: two pieces of 40 by 20 in a row,
// an offcut beside them and one below.
func byHand() (*pack.Layout, *pack.Problem) {
	p := &pack.Problem{
		Items: []pack.Item{{Width: 40, Height: 20}, {Width: 20, Height: 40, Turn: true}},
		Stock: []pack.Stock{{Width: 90, Height: 50, Count: 1}},
		Gap:   2,
	}
	a, b := pack.Box{Width: 40, Height: 20}, pack.Box{X: 42, Width: 40, Height: 20}
	side, below := pack.Box{X: 84, Width: 6, Height: 20}, pack.Box{Y: 22, Width: 90, Height: 28}
	tree := &pack.Part{Box: pack.Box{Width: 90, Height: 50}, Item: -1, Cut: pack.AlongX, Parts: []pack.Part{
		{Box: pack.Box{Width: 90, Height: 20}, Item: -1, Cut: pack.AlongY, Parts: []pack.Part{
			{Box: a, Item: 0}, {Box: b, Item: 1}, {Box: side, Item: -1},
		}},
		{Box: below, Item: -1},
	}}
	return &pack.Layout{Sheets: []pack.Sheet{{
		Places: []pack.Place{{Item: 0, Box: a}, {Item: 1, Box: b, Turned: true}},
		Cuts:   tree,
	}}}, p
}

func TestSound(t *testing.T) {
	l, p := byHand()
	require.NoError(t, packtest.Verify(l, *p))
	p.Free, l.Sheets[0].Cuts = true, nil
	require.NoError(t, packtest.Verify(l, *p))
}

// Each way to spoil the layout is found out.
func TestSpoiled(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(*pack.Layout, *pack.Problem)
		says  string
	}{
		"missing":         {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Places = l.Sheets[0].Places[:1] }, "is missing"},
		"twice":           {func(l *pack.Layout, _ *pack.Problem) { l.Sheets = append(l.Sheets, l.Sheets[0]) }, "too often"},
		"stock":           {func(l *pack.Layout, _ *pack.Problem) { l.Sheets = append(l.Sheets, l.Sheets[0]) }, "2 sheets used of 1"},
		"no such stock":   {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Stock = 1 }, "no stock 1"},
		"piece's size":    {func(_ *pack.Layout, p *pack.Problem) { p.Items[0].Width = 40.001 }, "item 0 is 40 x 20"},
		"turned":          {func(_ *pack.Layout, p *pack.Problem) { p.Items[1].Turn = false }, "item 1 is turned"},
		"turn not told":   {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Places[1].Turned = false }, "item 1 is 40 x 20"},
		"left":            {func(l *pack.Layout, _ *pack.Problem) { l.Left = []int{0} }, "too often"},
		"sheet":           {func(_ *pack.Layout, p *pack.Problem) { p.Stock[0].Height = 19.999 }, "not within the sheet"},
		"roll":            {func(_ *pack.Layout, p *pack.Problem) { p.Stock[0].Roll, p.Stock[0].Height = true, 49.999 }, "50 mm are used of a roll"},
		"gap":             {func(_ *pack.Layout, p *pack.Problem) { p.Gap = 2.001 }, "nearer than the gap"},
		"overlap":         {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Places[1].X = 20 }, "overlap"},
		"no tree":         {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Cuts = nil }, "no tree of cuts"},
		"tree's root":     {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Cuts.Width = 80 }, "does not begin with the sheet"},
		"tree's piece":    {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Cuts.Parts[0].Parts[0].Item = -1 }, "do not yield item 0"},
		"tree's double":   {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Cuts.Parts[1].Item = 0 }, "yield item 0 twice"},
		"cut's end":       {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Cuts.Parts[0].Parts[1].Height = 19 }, "edge to edge"},
		"nobody's":        {func(l *pack.Layout, _ *pack.Problem) { p := l.Sheets[0].Cuts; p.Parts = p.Parts[:1] }, "is nobody's"},
		"mode":            {func(_ *pack.Layout, p *pack.Problem) { p.Free = true }, "has a tree of cuts"},
		"no such item":    {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Places[0].Item = 7 }, "there is no item 7"},
		"uncut has parts": {func(l *pack.Layout, _ *pack.Problem) { l.Sheets[0].Cuts.Parts[0].Cut = pack.None }, "not cut has parts"},
	} {
		l, p := byHand()
		c.spoil(l, p)
		err := packtest.Verify(l, *p)
		if assert.Error(t, err, name) {
			assert.Contains(t, err.Error(), c.says, name)
		}
	}
	assert.Error(t, packtest.Verify(nil, pack.Problem{}))
}

// Four pieces round an empty middle lock into each other: no cut from edge to
// edge parts them. Lying freely they are sound.
func TestPinwheel(t *testing.T) {
	box := []pack.Box{{X: 0, Y: 0, Width: 20, Height: 10}, {X: 20, Y: 0, Width: 10, Height: 20}, {X: 10, Y: 20, Width: 20, Height: 10}, {X: 0, Y: 10, Width: 10, Height: 20}}
	p := pack.Problem{Free: true, Stock: []pack.Stock{{Width: 30, Height: 30}}}
	l := &pack.Layout{Sheets: []pack.Sheet{{}}}
	for i, b := range box {
		p.Items = append(p.Items, pack.Item{Width: b.Width, Height: b.Height})
		l.Sheets[0].Places = append(l.Sheets[0].Places, pack.Place{Item: i, Box: b})
	}
	require.NoError(t, packtest.Verify(l, p))
	p.Free = false
	cuts := &pack.Part{Box: pack.Box{Width: 30, Height: 30}, Item: -1, Cut: pack.AlongX}
	for i, b := range box {
		cuts.Parts = append(cuts.Parts, pack.Part{Box: b, Item: i})
	}
	l.Sheets[0].Cuts = cuts
	assert.ErrorContains(t, packtest.Verify(l, p), "edge to edge")
}
