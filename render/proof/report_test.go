package proof

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// decoded is the report as another program reads it.
type decoded struct {
	Title, Kind string
	Sound       bool
	Faults      []struct {
		Kind, Piece, Face, What string
		At                      *struct{ Min, Max [2]float64 } `json:"at_mm"`
	}
	Faces []struct {
		Name    string
		Board   string
		Inside  bool
		Ground  string
		Frame   struct{ Origin, X, Y [3]float64 } `json:"frame_mm"`
		Extent  struct{ Min, Max [2]float64 }     `json:"extent_mm"`
		Covered *float64                          `json:"covered_percent"`
		Pile    float64                           `json:"pile_mm"`
		Corners float64                           `json:"pile_corners_mm"`
		Most    int                               `json:"most_layers"`
		Layers  []struct {
			Piece   string
			Order   int
			Tucked  bool
			Outline [][2]float64 `json:"outline_mm"`
		}
	}
	Boards []struct {
		Name string
		Min  [3]float64 `json:"min_mm"`
		Max  [3]float64 `json:"max_mm"`
	}
	Clearance map[string]map[string]float64 `json:"clearance_mm"`
}

func decode(t *testing.T, s subject) (decoded, string) {
	t.Helper()
	data := JSON(s.Plan)
	var d decoded
	dec := json.NewDecoder(strings.NewReader(string(data)))
	dec.DisallowUnknownFields()
	require.NoError(t, dec.Decode(&d))
	return d, string(data)
}

// By the design's table, s = 2.15: a side is 148.5 + 1 + 2.15 by
// 221.5 + 2 + 4.3, the case 32 + 2 + 4.3 thick. Clearance at the mouth: one
// cloth at head and tail each, in the corners too, cloth and paper on each side.
func TestJSON(t *testing.T) {
	s := made(t, jobOf(221.5, 148.5, 32))
	d, text := decode(t, s)
	assert.Equal(t, "Invented", d.Title)
	assert.Equal(t, "slipcase", d.Kind)
	assert.True(t, d.Sound)
	assert.Empty(t, d.Faults)
	assert.Contains(t, text, `"faults": []`)

	require.Len(t, d.Faces, 14)
	extents := map[string][2]float64{}
	for _, f := range d.Faces {
		extents[f.Name] = [2]float64{f.Extent.Max[0] - f.Extent.Min[0], f.Extent.Max[1] - f.Extent.Min[1]}
		assert.Equal(t, strings.HasPrefix(f.Name, "inside"), f.Inside, f.Name)
		assert.Equal(t, f.Inside, f.Covered == nil, f.Name)
		for _, l := range f.Layers {
			assert.GreaterOrEqual(t, len(l.Outline), 3, f.Name)
			assert.NotEqual(t, l.Outline[0], l.Outline[len(l.Outline)-1], "the first point is not repeated")
		}
	}
	for name, want := range map[string][2]float64{
		"outside of the left side":    {151.65, 227.8},
		"outside of the spine wall":   {38.3, 227.8},
		"outside of the head wall":    {38.3, 151.65},
		"mouth edge of the left side": {2.15, 227.8},
		"inside of the tail wall":     {34, 149.5},
	} {
		assert.InDeltaSlice(t, want[:], slice(extents[name]), 1e-9, name)
	}
	left := d.Faces[0]
	require.Equal(t, "outside of the left side", left.Name)
	require.Equal(t, "spine cloth", left.Layers[0].Piece)
	var reach float64
	for _, p := range left.Layers[0].Outline {
		reach = max(reach, p[0])
	}
	assert.InDelta(t, 28, reach, 5e-4, "28 mm of spine cloth on the side")
	assert.Equal(t, 100.0, *left.Covered)

	assert.Equal(t, map[string]map[string]float64{
		"body":          {"height": 2, "depth": 1, "thickness": 2},
		"mouth":         {"height": 1.3, "thickness": 1},
		"mouth_corners": {"height": 1.3},
	}, d.Clearance)
	boards := map[string][2][3]float64{}
	for _, b := range d.Boards {
		boards[b.Name] = [2][3]float64{b.Min, b.Max}
	}
	assert.Equal(t, map[string][2][3]float64{
		"left side":  {{0, 0, 0}, {2.15, 227.8, 151.65}},
		"right side": {{36.15, 0, 0}, {38.3, 227.8, 151.65}},
		"spine wall": {{2.15, 0, 0}, {36.15, 227.8, 2.15}},
		"head wall":  {{2.15, 225.65, 2.15}, {36.15, 227.8, 151.65}},
		"tail wall":  {{2.15, 0, 2.15}, {36.15, 2.15, 151.65}},
	}, boards)

	assert.NotRegexp(t, regexp.MustCompile(`\d\.\d{4}`), text, "exact to a thousandth")
	assert.NotContains(t, text, "-0,")
	assert.NotContains(t, text, "-0]")
}

func slice(a [2]float64) []float64 { return a[:] }

func TestJSONOfAnUnsoundCase(t *testing.T) {
	d, _ := decode(t, broken()["paper short of the mouth"])
	assert.False(t, d.Sound)
	bare := map[string]bool{}
	for _, f := range d.Faults {
		if f.Kind == "bare" {
			require.NotNil(t, f.At, f.Face)
			bare[f.Face] = true
			// Between the cloth turned over at head and tail.
			assert.InDelta(t, 28, f.At.Min[1], 5e-4)
			assert.InDelta(t, 227.8-28, f.At.Max[1], 5e-4)
		}
	}
	// 40 mm short with 13 mm of turn-in: the sides are bare before the mouth too.
	assert.Equal(t, map[string]bool{
		"mouth edge of the left side": true, "mouth edge of the right side": true,
		"outside of the left side": true, "outside of the right side": true,
	}, bare)

	d, _ = decode(t, broken()["boards that do not meet"])
	assert.Empty(t, d.Faces)
	assert.NotEmpty(t, d.Faults)
}

// Thin lengths are finer than sizes: to 0.01 mm, or to 0.001 in
// (2 mm = 0.0787 in, 1.3 mm = 0.0512 in).
func TestText(t *testing.T) {
	s := made(t, jobOf(221.5, 148.5, 32))
	text := string(Text(s.Plan, geometry.ToTenthMM))
	assert.Contains(t, text, "Invented\n")
	assert.Contains(t, text, "sound: ")
	for _, want := range []string{
		`(?m)^outside of the left side +151\.7 x 227\.8 +100\.0 % +4 +3 +spine cloth, head cloth, tail cloth, side paper$`,
		`(?m)^inside of the left side +149\.5 x 223\.5 +lined +3 +2 +0\.50 +head cloth, tail cloth, side paper$`,
		`(?m)^in the body +2\.00 +1\.00 +2\.00$`,
		`(?m)^at the mouth +1\.30 +- +1\.00$`,
		`(?m)^in its corners +1\.30 +- +-$`,
		`piles and clearances are shown to 0\.01 mm`,
	} {
		assert.Regexp(t, want, text)
	}
	inches := string(Text(s.Plan, geometry.To64th))
	assert.Regexp(t, `(?m)^in the body +0\.079 +0\.039 +0\.079$`, inches)
	assert.Regexp(t, `(?m)^at the mouth +0\.051 +- +0\.039$`, inches)
	assert.Regexp(t, `(?m)^in its corners +0\.051 +- +-$`, inches)
	assert.Contains(t, inches, "piles and clearances are shown to 0.001 in")
	for _, line := range strings.Split(text+inches, "\n") {
		assert.Equal(t, strings.TrimRight(line, " "), line)
	}
}

// What the table leaves out, and where care is needed, is said.
func TestRemarks(t *testing.T) {
	remarks := func(change func(*slipcase.Job)) string {
		return strings.Join(made(t, changed(jobOf(221.5, 148.5, 32), change)).Proof.Remarks, "\n")
	}
	assert.Empty(t, remarks(func(*slipcase.Job) {}))
	assert.Contains(t, remarks(func(j *slipcase.Job) { j.Lining.Order = slipcase.LinedAfter }), "before its linings are pasted in")
	assert.Contains(t, remarks(func(j *slipcase.Job) {
		j.Compartments = slipcase.EachItsOwn
		j.Books = append(j.Books, j.Books[0])
	}), "the dividers are alike")
}

func TestUnsoundTextListsEachFault(t *testing.T) {
	for name, s := range broken() {
		text := string(Text(s.Plan, geometry.ToTenthMM))
		assert.Contains(t, text, "not sound: ", name)
		for _, f := range s.Proof.Faults {
			assert.Contains(t, text, f.What, name)
		}
	}
}
