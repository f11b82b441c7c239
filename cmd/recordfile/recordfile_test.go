package recordfile_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/cmd/recordfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/tolerance"
)

// anyQuantity draws a quantity that can be measured.
func anyQuantity(t *rapid.T) fit.Quantity {
	mm := func(lo, hi float64, name string) geometry.Length {
		return geometry.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	return fit.Quantity{
		Key: rapid.StringMatching(`[a-z]{1,8}(-[a-z]{1,8})?`).Draw(t, "key"), Name: rapid.StringMatching(`[ -~äé]{1,20}`).Draw(t, "name"),
		Sort: rapid.SampledFrom([]fit.Sort{fit.Layer, fit.Size, fit.Play}).Draw(t, "sort"), Planned: mm(-3, 400, "planned"),
		Expected: tolerance.Distribution{Mean: mm(-3, 400, "mean"), SD: mm(0, 2, "sd"), Low: -mm(0, 1, "low"), High: mm(0, 1, "high")},
		Counts:   map[string]float64{"board": rapid.Float64Range(-4, 4).Draw(t, "counts")},
		Layers:   map[string]geometry.Length{"board": mm(0, 1, "layer")},
		Off:      []fit.Off{{Key: "uncertainty.cutting", PlusMinus: mm(0, 1, "plus minus"), SD: mm(0, 1, "off")}},
		Tight:    mm(0, 1, "tight"), Loose: mm(1, 3, "loose"),
	}
}

// What was taken down is read again as it was, and what was there before stays, to the
// byte.
func TestTakenDownAndReadAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var text []byte
		var all []recordfile.Reading
		for range rapid.IntRange(1, 4).Draw(t, "times") {
			var now []recordfile.Reading
			for range rapid.IntRange(1, 3).Draw(t, "quantities") {
				r := recordfile.Reading{Of: anyQuantity(t)}
				for range rapid.IntRange(1, 3).Draw(t, "places") {
					r.All = append(r.All, geometry.Length(rapid.IntRange(-100, 4000).Draw(t, "reading"))/10)
				}
				now = append(now, r)
			}
			next, err := recordfile.Added(text, "Tide 'tables' \"1\"", "slipcase", "2026-05-02", nil, now)
			require.NoError(t, err)
			assert.True(t, strings.HasPrefix(string(next), string(text)))
			text, all = next, append(all, now...)
		}
		r, err := recordfile.Parse("case.record.toml", text)
		require.NoError(t, err)
		require.Len(t, r.Taken, len(all))
		assert.Equal(t, "Tide 'tables' \"1\"", r.Title)
		for i, is := range r.Taken {
			was := all[i].Of
			low, high := was.Within()
			assert.Equal(t, was.Key, is.Key)
			assert.Equal(t, was.Sort, is.Sort)
			assert.False(t, is.Changed)
			for _, pair := range [][2]geometry.Length{{was.Planned, is.Planned}, {low, is.Low}, {high, is.High}, {was.Expected.Expected(), is.Mean}, {was.Expected.StandardDeviation(), is.SD},
				{was.Layers["board"], is.Layers["board"]}, {was.Off[0].SD, is.Off[0].SD}, {was.Off[0].PlusMinus, is.Off[0].PlusMinus}} {
				assert.InDelta(t, pair[0].MM(), pair[1].MM(), 1e-4)
			}
			assert.Equal(t, was.Off[0].Key, is.Off[0].Key)
			assert.InDelta(t, was.Counts["board"], is.Counts["board"], 1e-4)
			require.Len(t, is.Readings, len(all[i].All))
			for k, l := range all[i].All {
				assert.InDelta(t, l.MM(), is.Readings[k].MM(), 1e-4)
			}
		}
	})
}

// What was measured after something was done to the case is told apart.
func TestAfterSomethingWasDone(t *testing.T) {
	q := fit.Quantity{Key: "play-height", Name: "play", Sort: fit.Play}
	text, err := recordfile.Added(nil, "", "slipcase", "", nil, []recordfile.Reading{{Of: q, All: []geometry.Length{0.1}}})
	require.NoError(t, err)
	text, err = recordfile.Added(text, "", "slipcase", "", []string{"pared"}, []recordfile.Reading{{Of: q, All: []geometry.Length{0.9}}})
	require.NoError(t, err)
	r, err := recordfile.Parse("r", text)
	require.NoError(t, err)
	require.Len(t, r.Taken, 2)
	assert.False(t, r.Taken[0].Changed)
	assert.True(t, r.Taken[1].Changed)
	last, ok := r.Last("play-height")
	assert.True(t, ok)
	assert.Equal(t, []geometry.Length{0.9}, last.Readings)
}

// Readings are read as a maker types them; what can be read in two ways is refused.
func TestTyped(t *testing.T) {
	size := fit.Quantity{Sort: fit.Size, Planned: 227.3, Expected: tolerance.Distribution{Mean: 227.3, SD: 0.2}}
	play := fit.Quantity{Sort: fit.Play, Planned: 1.3, Expected: tolerance.Distribution{Mean: 1.2, SD: 0.5}}
	for text, want := range map[string][]geometry.Length{
		"227.8,227.5": {227.8, 227.5}, "227,8": {227.8}, "227.8; 227,5": {227.8, 227.5}, "227,228": {227, 228}, "8 15/16 in": {8.9375 * 25.4}, " 227 mm": {227},
	} {
		got, err := recordfile.Typed(size, text, geometry.MM)
		require.NoError(t, err, text)
		assert.InDeltaSlice(t, numbers(want), numbers(got), 1e-9, text)
	}
	for text, want := range map[string][]geometry.Length{"-0.8": {-0.8}, "−0.8": {-0.8}, "1.4": {1.4}, "1.4; -0.2 mm": {1.4, -0.2}} {
		got, err := recordfile.Typed(play, text, geometry.MM)
		require.NoError(t, err, text)
		assert.InDeltaSlice(t, numbers(want), numbers(got), 1e-9, text)
	}
	_, err := recordfile.Typed(play, "1,4", geometry.MM)
	assert.EqualError(t, err, `"1,4" can be one length or several; write 1.4 for one, or 1; 4`)
	_, err = recordfile.Typed(play, "-0.2; 99999", geometry.MM) // which no record would be read with
	assert.EqualError(t, err, `" 99999" is longer than anything that is measured; give less than 10000 mm`)
	for _, text := range []string{"1,4", "abc", "", ";", "1;;2", "--3"} { // 1,4: 1.4 mm, or 1 mm and 4 mm
		_, err := recordfile.Typed(play, text, geometry.MM)
		assert.Error(t, err, text)
	}
}

func numbers(all []geometry.Length) []float64 {
	out := make([]float64, len(all))
	for i, l := range all {
		out[i] = l.MM()
	}
	return out
}

// What a text editor spoils is all told, each with the line of its key, and nothing is left
// of the record to reckon with.
func TestSpoiltByHand(t *testing.T) {
	q := fit.Quantity{Key: "play-height", Name: "play", Sort: fit.Play}
	text, err := recordfile.Added(nil, "x", "slipcase", "2026-05-02", nil, []recordfile.Reading{{Of: q, All: []geometry.Length{0.1}}, {Of: q, All: []geometry.Length{0.2}}})
	require.NoError(t, err)
	lines := strings.Split(string(text), "\n")
	var want []string
	spoil := func(key string, nth int, to, says string) {
		for n, line := range lines {
			if strings.HasPrefix(line, key+" = ") {
				if nth--; nth == 0 {
					lines[n] = to
					want = append(want, fmt.Sprintf("case.record.toml:%d: %s", n+1, says))
				}
			}
		}
	}
	spoil("units", 1, "units = 'in'", `units: "in" is none of its words; `)
	spoil("date", 1, "date = 'May'", `measured.date: "May" is no date; `)
	spoil("readings", 1, "readings = 'x'", `measured.readings: "x" doesn't begin with a number; `)
	spoil("planned", 1, "planned = 'much'", `measured.planned: "much" is no number; `)
	spoil("within", 1, "within = [1.2]", "measured.within: not two lengths; ")
	spoil("counts", 1, "counts = 3", "measured.counts: 3 does not stand in braces; ")
	spoil("what", 2, "whatever = 'play'", "measured[2].whatever: unknown key; ")
	spoil("readings", 2, "readings = [nan]", "measured[2].readings: nan is not a length; ")
	r, err := recordfile.Parse("case.record.toml", []byte(strings.Join(lines, "\n")))
	var bad jobfile.Issues
	require.ErrorAs(t, err, &bad)
	assert.Empty(t, r.Taken)
	var said []string
	for _, b := range bad {
		assert.NotEmpty(t, b.Fix)
		reason, _, _ := strings.Cut(b.String(), "; ")
		said = append(said, reason+"; ")
	}
	assert.Equal(t, want, said)
}

// Whatever stands in a record, it is read or refused in lines that name the file.
func FuzzParse(f *testing.F) {
	q := fit.Quantity{Key: "play-height", Name: "play", Sort: fit.Play}
	text, err := recordfile.Added(nil, "x", "slipcase", "2026-05-02", []string{"pared"}, []recordfile.Reading{{Of: q, All: []geometry.Length{0.1}}})
	require.NoError(f, err)
	f.Add(string(text))
	for _, s := range []string{"", "version = 1", "version = 9", "version = \"x\"", "version = 1\n[[measured]]\nreadings = [nan, inf, \"x\", {}, [1]]\nwithin = [3, 1]\nplanned = inf",
		"\xff", "[[measured", "version = 1\n[measured]\nkey = 3", "version = 1\nmeasured = 3\n", "version=1\nmeasured=[{key=\"a\"}]\n[[done]]\nwhat=\"x\""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		_, err := recordfile.Parse("case.record.toml", []byte(s))
		var bad jobfile.Issues
		if err == nil {
			return
		}
		if !errors.As(err, &bad) || len(bad) == 0 {
			t.Fatalf("%v", err)
		}
		for _, b := range bad {
			if b.Source != "case.record.toml" || b.Fix == "" || strings.Contains(b.String(), "\n") {
				t.Errorf("%q", b.String())
			}
		}
	})
}
