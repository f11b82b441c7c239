package bench_test

import (
	"context"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper/bench"
	"forel/paper/stock"
)

// Lots that are cut one after the other use of counted sheets, of offcuts and of a roll
// of a length no more than there is, all together; where that does not do, what the refusal
// says does.
func TestLotsShareWhatThereIs(t *testing.T) {
	pool := class(12)
	change := regexp.MustCompile(`leave out the (count|length|count and length) of (roll|\d+)`)
	rapid.Check(t, func(t *rapid.T) {
		board := stock.Stock{Material: geometry.Board, Thickness: 2, Width: 700, Height: 500, Grain: geometry.GrainHeight, Per: stock.Metre}
		counted, offcut := board, board
		counted.Width, counted.Count = 690, rapid.IntRange(1, 6).Draw(t, "sheets there")
		offcut.Width, offcut.Height, offcut.Offcut, offcut.Count = 400, 400, 3, 1
		roll := stock.Stock{Material: geometry.Cloth, Roll: true, Width: 1000, Grain: geometry.GrainHeight, Per: stock.Metre,
			Height: geometry.Length(rapid.IntRange(600, 3000).Draw(t, "length there"))}
		roll.Count = rapid.IntRange(0, 3).Draw(t, "rolls there")
		have := []stock.Stock{counted, offcut, roll}
		if rapid.Bool().Draw(t, "more is bought") {
			have = append(have, board)
		}
		lots := rapid.IntRange(2, 4).Draw(t, "lots")
		plan := func() (plans []bench.Plan, err error) {
			for n := range lots {
				lot := make([]bench.Job, 3)
				for i := range lot {
					lot[i] = pool[n*3+i]
					lot[i].Stock = have
				}
				p, err := bench.Lay(context.Background(), lot, bench.Options{Lot: true, Before: plans})
				if err != nil {
					return nil, err
				}
				plans = append(plans, p.Slim())
			}
			return plans, nil
		}
		plans, err := plan()
		for range 2 { // board, cloth
			if err == nil {
				break
			}
			m := change.FindAllStringSubmatch(err.Error(), -1)
			require.NotEmpty(t, m, err.Error())
			for _, one := range m {
				i := 0
				if one[2] == "roll" {
					i = 2
					have[i].Height = 0
				} else if one[2] != strconv.Itoa(int(counted.Width)) {
					t.Fatal("no stock with a count: ", one[0])
				}
				have[i].Count = 0
			}
			plans, err = plan()
		}
		require.NoError(t, err, "as it was said")
		sheets, long := map[int]int{}, geometry.Length(0)
		for _, g := range bench.Total(plans).Groups {
			for _, u := range g.Used {
				switch s := g.Stock[u.Stock]; {
				case s.Offcut > 0:
					sheets[2] += u.Sheets
				case s.Material == geometry.Board && s.Count > 0:
					sheets[1] += u.Sheets
				case s.Roll && s.Height > 0:
					long += u.Length
				}
			}
		}
		require.LessOrEqual(t, sheets[1], counted.Count, "sheets that are there")
		require.LessOrEqual(t, sheets[2], 1, "the offcut is there once")
		require.LessOrEqual(t, float64(long), float64(roll.Height)*float64(max(1, roll.Count))+1e-3, "the roll")
	})
}
