package bench_test

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/paper/bench"
	"forel/paper/stock"
)

func board(width, height geometry.Length, change ...func(*stock.Stock)) stock.Stock {
	s := stock.Stock{Material: geometry.Board, Width: width, Height: height, Grain: geometry.GrainHeight}
	for _, c := range change {
		c(&s)
	}
	return s
}

func refused(t *testing.T, jobs ...bench.Job) []string {
	t.Helper()
	p, err := bench.Lay(context.Background(), jobs, bench.Options{})
	require.Error(t, err)
	assert.Zero(t, p)
	return strings.Split(err.Error(), "\n")
}

// A side of this book is 151.65 x 227.8, its spine wall 33.75 x 227.8, a head
// wall 149.5 x 33.75 with the grain along its length: a sheet 150 wide takes no
// side; one of 230 high all.
func TestLargerThanTheSheet(t *testing.T) {
	j := caseJob(t, "Harbour log", 221.5, 148.5, 31.75)
	j.Stock = []stock.Stock{board(150, 400), board(400, 200)}
	said := refused(t, j)
	require.Len(t, said, 1, "the walls fit on the first")
	assert.Equal(t, "side of Harbour log, 151.7 × 227.8 mm with the grain along its height, is larger than every sheet of board of 2 mm: "+
		"150 × 400 mm (grain along 400 mm), 400 × 200 mm (grain along 200 mm); add a [[stock]] with material = \"board\" and size = \"164.4 x 240.5 mm\", which takes all pieces of it", said[0])
}

// What is said would do, does.
func TestWhatWouldDoDoes(t *testing.T) {
	j := caseJob(t, "Harbour log", 221.5, 148.5, 31.75)
	j.Stock = []stock.Stock{board(150, 400), board(164.4, 240.5, func(s *stock.Stock) { s.Trim = stock.DefaultTrim(geometry.IN) })}
	p, err := bench.Lay(context.Background(), []bench.Job{j}, bench.Options{})
	require.NoError(t, err)
	sound(t, p)
}

func TestStockRunsOut(t *testing.T) {
	j := caseJob(t, "Harbour log", 221.5, 148.5, 31.75)
	one := func(s *stock.Stock) { s.Count = 1 }
	j.Stock = []stock.Stock{board(200, 240, one)} // takes one side, or a part of the walls
	said := refused(t, j)
	require.Len(t, said, 1)
	m := regexp.MustCompile(`^board of 2 mm runs out with \d pieces left: .*; (\d) sheets more of 200 × 240 mm would do: count = \d$`).FindStringSubmatch(said[0])
	require.NotNil(t, m, said[0])
	more := int(m[1][0] - '0')
	j.Stock[0].Count = 1 + more
	p, err := bench.Lay(context.Background(), []bench.Job{j}, bench.Options{})
	require.NoError(t, err, "with as many more as it said")
	sound(t, p)
}

func TestRollRunsOut(t *testing.T) {
	j := caseJob(t, "Harbour log", 221.5, 148.5, 31.75)
	j.Stock = []stock.Stock{{Material: geometry.Cloth, Roll: true, Width: 200, Height: 300, Grain: geometry.GrainHeight}}
	said := refused(t, j)
	require.Len(t, said, 1)
	assert.Regexp(t, `^cloth of 0\.35 mm runs out with .* left: .*; another \d+\.\d mm of roll 200 mm wide would do: length = "\d+\.\d mm"$`, said[0])
}

// A piece longer than the shorter of the lengths that a roll is cut into is cut from it
// all the same.
func TestLongPieceOffARoll(t *testing.T) {
	j := caseJob(t, "Harbour log", 221.5, 148.5, 31.75)
	sizes := [][2]geometry.Length{{80, 1345}, {600, 900}, {500, 700}}
	for i := range j.Plan.Pieces {
		if p := &j.Plan.Pieces[i]; p.Material == geometry.Cloth && len(sizes) > 0 {
			p.Outline = geometry.Rectangle(geometry.Bx(0, 0, sizes[0][0], sizes[0][1]))
			p.Count, sizes = 5, sizes[1:]
		}
	}
	p, err := bench.Lay(context.Background(), []bench.Job{j}, bench.Options{})
	require.NoError(t, err)
	sound(t, p)
}

// Pieces that no one sheet takes are all told, with one sheet that takes them.
func TestOneSheetForAll(t *testing.T) {
	j := caseJob(t, "Harbour log", 221.5, 148.5, 31.75)
	j.Stock = []stock.Stock{board(100, 100)}
	said := refused(t, j)
	require.Greater(t, len(said), 1)
	m := regexp.MustCompile(`size = "([\d.]+) x ([\d.]+) mm"`).FindStringSubmatch(said[0])
	require.NotNil(t, m, said[0])
	for _, s := range said {
		assert.Contains(t, s, m[0])
	}
	size, err := stock.ParseSize(m[1]+" x "+m[2], geometry.MM)
	require.NoError(t, err)
	j.Stock = append(j.Stock, board(size.Width, size.Height, func(s *stock.Stock) { s.Trim = stock.DefaultTrim(geometry.MM) }))
	p, err := bench.Lay(context.Background(), []bench.Job{j}, bench.Options{})
	require.NoError(t, err)
	sound(t, p)
}

func TestStockOfSeveralJobs(t *testing.T) {
	a, b := caseJob(t, "One", 221.5, 148.5, 31.75), caseJob(t, "Two", 200, 130, 20)
	a.Stock, b.Stock = []stock.Stock{board(600, 900)}, []stock.Stock{board(600, 900, func(s *stock.Stock) { s.Count = 2 })}
	said := refused(t, a, b)
	require.Len(t, said, 1)
	assert.Equal(t, "Two: stock 600 × 900 mm is not the same in every job; leave it out there, since the stock of one job serves all, or give it a name of its own", said[0])

	// The same said twice is one pile.
	b.Stock = a.Stock
	p, err := bench.Lay(context.Background(), []bench.Job{a, b}, bench.Options{})
	require.NoError(t, err)
	sound(t, p)
	assert.Len(t, p.Groups[0].Stock, 1)

	// A pile that is counted can't be shared by two materials unawares.
	a.Names, b.Names = map[geometry.Material]string{geometry.Board: "grey"}, map[geometry.Material]string{geometry.Board: "black"}
	a.Stock = []stock.Stock{board(600, 900, func(s *stock.Stock) { s.Count = 2 })}
	b.Stock = a.Stock
	said = refused(t, a, b)
	require.Len(t, said, 1)
	assert.Contains(t, said[0], "600 × 900 mm: a counted stock serves both black of 2 mm and grey of 2 mm; ")
}

// What has no name is not cut from a pile of the maker's that has one.
func TestAPileIsOfWhatItIsCalled(t *testing.T) {
	a, b := caseJob(t, "One", 221.5, 148.5, 31.75), caseJob(t, "Two", 200, 130, 20)
	a.Names = map[geometry.Material]string{geometry.Board: "grey"}
	a.Stock = []stock.Stock{board(600, 900, func(s *stock.Stock) { s.Name, s.Count, s.Pile = "grey", 2, "material[1].sheet[1]" })}
	p, err := bench.Lay(context.Background(), []bench.Job{a, b}, bench.Options{})
	require.NoError(t, err)
	sound(t, p)
	for _, g := range p.Groups {
		if g.Material == geometry.Board {
			assert.Equal(t, g.Name != "grey", g.Assumed, g.Label())
		}
	}
}

// What has different names is not cut from one sheet.
func TestNamesKeepMaterialsApart(t *testing.T) {
	a, b := caseJob(t, "One", 200, 130, 20), caseJob(t, "Two", 200, 130, 20)
	a.Names, b.Names = map[geometry.Material]string{geometry.Cloth: "blue cloth"}, map[geometry.Material]string{geometry.Cloth: "red cloth"}
	p, err := bench.Lay(context.Background(), []bench.Job{a, b}, bench.Options{})
	require.NoError(t, err)
	sound(t, p)
	names := map[string]int{}
	for _, g := range p.Groups {
		names[g.Label()]++
	}
	assert.Equal(t, map[string]int{"board": 1, "lining": 1, "blue cloth": 1, "red cloth": 1, "paper": 1}, names)
}
