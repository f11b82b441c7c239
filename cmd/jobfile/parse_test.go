package jobfile_test

import (
	"embed"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
	"forel/paper"
)

// Lengths expected here are worked out by hand from 1 in = 25.4 mm exactly:
// 1/4 in is 6.35 mm, 1 1/8 in 28.575 mm, 1 1/4 in 31.75 mm.

//go:embed testdata/*.toml
var testdata embed.FS

func read(t testing.TB, name string) []byte {
	t.Helper()
	data, err := testdata.ReadFile("testdata/" + name)
	require.NoError(t, err)
	return data
}

func parse(t *testing.T, data string) jobfile.File {
	t.Helper()
	f, suspects, err := jobfile.Parse("case.toml", []byte(data))
	require.NoError(t, err)
	require.Empty(t, suspects)
	return f
}

// boards gives the job of a case of boards.
func boards(f jobfile.File) slipcase.Job { return *f.Job.(*slipcase.Job) }

// near compares jobs length by length, as one length may be reached by two
// ways of calculating.
func near(t *testing.T, want, got slipcase.Job) {
	t.Helper()
	gotten := got.Settings()
	for i, s := range want.Settings() {
		switch g := gotten[i]; {
		case s.Length != nil:
			assert.InDelta(t, s.Length.MM(), g.Length.MM(), 1e-9, s.Key)
		case s.Readings != nil:
			assert.Equal(t, *s.Readings, *g.Readings, s.Key)
		case s.Word != nil:
			assert.Equal(t, *s.Word, *g.Word, s.Key)
		default:
			assert.InDelta(t, *s.Number, *g.Number, 1e-12, s.Key)
		}
	}
	require.Len(t, got.Books, len(want.Books))
	for i := range want.Books {
		for _, f := range job.Dimensions {
			w, g := *f.At(&want.Books[i]), *f.At(&got.Books[i])
			require.Len(t, g, len(w), f.Key)
			for n := range w {
				assert.InDelta(t, w[n].MM(), g[n].MM(), 1e-9, f.Key)
			}
		}
		assert.Equal(t, want.Books[i].Title, got.Books[i].Title)
	}
	assert.Equal(t, want.Title, got.Title)
	assert.Equal(t, want.Unit, got.Unit)
}

func harbour() slipcase.Job {
	return slipcase.Job{
		Common: job.Common{
			Title: "Harbour log",
			Unit:  geometry.MM,
			Books: []job.Book{{
				Title:     "Harbour log",
				Height:    job.Readings{221, 221.5},
				Width:     job.Readings{148.5},
				Thickness: job.Readings{31, 31.75},
			}},
			Clearance: job.Clearance{Height: 2, Width: 1, Thickness: 2},
			Uncertainty: job.Uncertainty{Measuring: 0.3, ReadingStep: 0.5, Settings: "one", Cutting: 0.3, Repeat: 0.1, Placing: 0.2,
				Squareness: 0.3, Lining: 0.02, Cloth: 0.05, SidePaper: 0.02, Warp: 0.3},
			Limits: job.FitLimits{Tight: 0.25, LooseHeight: 3, LooseThickness: 2},
		},
		Compartments: "one", Covering: "cloth and paper",
		Board:         slipcase.Board{Thickness: 2, Known: "as sold"},
		Lining:        slipcase.Lining{Thickness: 0.15, Trim: 12, Order: "before"},
		Cloth:         slipcase.Cloth{Thickness: 0.35, Overlap: 28.575, TurnIn: 28.575, MouthTurnIn: 20, SpineGap: 5, CornerDistance: 6.35, Corners: slipcase.CornersCut},
		SidePaper:     slipcase.SidePaper{Thickness: 0.15, Inset: 6.35, TurnIn: 12.7},
		Pattern:       slipcase.Pattern{Direction: "any", Match: "none"},
		LiningPattern: slipcase.Pattern{Direction: "any", Match: "none"},
		ThumbHole:     slipcase.ThumbHole{Shape: "none"},
		Divider:       slipcase.Divider{Lap: 12},
	}
}

func TestParse(t *testing.T) {
	plain := string(read(t, "harbour.toml"))
	for name, data := range map[string]string{
		"plain":            plain,
		"other spellings":  string(read(t, "spellings.toml")),
		"byte order mark":  "\ufeff" + plain,
		"CRLF":             strings.ReplaceAll(plain, "\n", "\r\n"),
		"no last line end": strings.TrimSuffix(plain, "\n"),
	} {
		t.Run(name, func(t *testing.T) {
			f := parse(t, data)
			near(t, harbour(), boards(f))
			assert.Equal(t, paper.DefaultSetup(), f.Print)
		})
	}
}

func TestParseKeepsDefaults(t *testing.T) {
	f := parse(t, book+"[side_paper]\n[print]\n")
	want := slipcase.DefaultJob(geometry.MM)
	want.Books = []job.Book{{Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{32}}}
	assert.Equal(t, want, boards(f))
	assert.Equal(t, paper.DefaultSetup(), f.Print)
}

// Every length of a job file goes where it belongs and nowhere else.
func TestParseEachField(t *testing.T) {
	for _, field := range new(slipcase.Job).Settings().Lengths() {
		want := boards(parse(t, book))
		set, _ := want.Settings().Find(field.Key)
		l := *set.Length + 0.125 // every default leaves that much room
		if field.Auto {
			l = slipcase.Length(field.Min) + 0.125
		}
		*set.Length = l
		table, key, _ := strings.Cut(field.Key, ".")
		got := parse(t, book+"["+table+"]\n"+key+` = "`+trim(l)+` mm"`)
		near(t, want, boards(got))
	}
}

func TestParseInches(t *testing.T) {
	f, suspects, err := jobfile.Parse("charts.toml", read(t, "chartbook.toml"))
	require.NoError(t, err)
	want := slipcase.DefaultJob(geometry.IN)
	want.Unit = geometry.IN
	want.Books = []job.Book{{
		Title:     "Charts of a small harbour",
		Height:    job.Readings{215.9, 216.69375}, // 8.5 x 25.4; 1/32 in is 0.79375
		Width:     job.Readings{298.45},           // 279.4 + 19.05
		Thickness: job.Readings{26.9875, 26, 25.4},
	}}
	want.Board.Thickness = 2.38125
	want.Lining.Thickness = 0
	want.Clearance.Height = 2.5
	near(t, want, boards(f))
	assert.InDelta(t, 215.9, f.Print.Sheet.Width.MM(), 1e-9)
	assert.InDelta(t, 330.2, f.Print.Sheet.Height.MM(), 1e-9)
	assert.InDelta(t, 12.7, f.Print.Margins.Left.MM(), 1e-9)
	assert.InDelta(t, 10, f.Print.Overlap.MM(), 1e-9)

	// What is possible but looks like a slip, at the lines of its keys.
	lines := strings.Split(suspects.Error(), "\n")
	require.Len(t, lines, 1)
	assert.Contains(t, lines[0], "charts.toml:7: book.width: greater than the height; ")
}

func TestParseReadings(t *testing.T) {
	with := func(n int) string {
		return "[[book]]\nheight = 221\nwidth = 148.5\nthickness = [" + strings.Repeat("32,", n) + "]\n"
	}
	assert.Len(t, boards(parse(t, with(1))).Books[0].Thickness, 1)
	assert.Len(t, boards(parse(t, with(100))).Books[0].Thickness, 100)
	_, _, err := jobfile.Parse("case.toml", []byte(with(101)))
	assert.EqualError(t, err, "case.toml:4: book.thickness: more than 100 readings; keep the largest")
}

func TestParseLimitsOfSize(t *testing.T) {
	fits := "[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n#"
	fits += strings.Repeat("-", 1<<20-len(fits))
	parse(t, fits)
	_, _, err := jobfile.Parse("case.toml", []byte(fits+"-"))
	assert.EqualError(t, err, "case.toml: larger than 1 MiB; give a job file")

	_, _, err = jobfile.Parse("case.toml", []byte("numbers = ["+strings.Repeat("1,", 20_000)+"]"))
	assert.EqualError(t, err, "case.toml: too many keys and values; give a job file")
}
