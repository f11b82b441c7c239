package jobfile_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/paper"
)

// noShop reads jobs that name nothing of a shop.
var noShop *jobfile.Shop

// fromFlags reads a job from flags alone.
func fromFlags(flags []jobfile.Flag) (jobfile.File, jobfile.Issues, error) {
	return jobfile.Parse("", nil, flags...)
}

func measured(height, width, thickness string, more ...jobfile.Flag) []jobfile.Flag {
	return append(more,
		jobfile.Flag{Name: "--height", Key: "book.height", Value: height},
		jobfile.Flag{Name: "--width", Key: "book.width", Value: width},
		jobfile.Flag{Name: "--thickness", Key: "book.thickness", Value: thickness},
	)
}

func set(key, value string) jobfile.Flag {
	return jobfile.Flag{Name: "--set " + key, Key: key, Value: value}
}

func TestFromFlags(t *testing.T) {
	f, suspects, err := fromFlags(measured("221; 221.5", "148,5", `31;1 1/4 in`,
		set("title", "Harbour log; invented"),
		set("book.title", "Harbour log"),
		set("board.thickness", "2.2"),
		set("lining.thickness", "0"),
		set("cloth.overlap", "1 in"),
		set("print.paper", "letter"),
		set("print.margin", "1/2 in"),
	))
	require.NoError(t, err)
	assert.Empty(t, suspects)
	want := slipcase.DefaultJob(geometry.MM)
	want.Title = "Harbour log; invented"
	want.Books = harbour().Books
	want.Board.Thickness = 2.2
	want.Lining.Thickness = 0
	want.Cloth.Overlap = 25.4
	near(t, want, boards(f))
	assert.InDelta(t, 12.7, f.Print.Margins.Left.MM(), 1e-9)
	assert.Equal(t, "Letter", f.Print.Sheet.Name)
}

// The unit of bare numbers holds wherever it stands among the flags.
func TestFromFlagsInInches(t *testing.T) {
	units := jobfile.Flag{Name: "--units", Key: "units", Value: "in"}
	first := measured("9", "6 1/4", "1.25", units)
	last := append(measured("9", "6 1/4", "1.25"), units)
	for _, flags := range [][]jobfile.Flag{first, last} {
		f, _, err := fromFlags(flags)
		require.NoError(t, err)
		assert.Equal(t, geometry.IN, f.Job.Shared().Unit)
		assert.InDelta(t, 228.6, f.Job.Shared().Book().Height.Largest().MM(), 1e-9)
		assert.InDelta(t, 158.75, f.Job.Shared().Book().Width.Largest().MM(), 1e-9)
		assert.InDelta(t, 31.75, f.Job.Shared().Book().Thickness.Largest().MM(), 1e-9)
	}
}

func TestFromFlagsRefused(t *testing.T) {
	for _, c := range []struct {
		name  string
		flags []jobfile.Flag
		want  []string
	}{
		{"none", nil, []string{
			"--height: missing; measure the book from head to tail",
			"--thickness: missing; measure the book's thickness",
			"--width: missing; measure the book from spine to fore-edge",
		}},
		{"width missing", measured("221", "", "32")[:1], []string{"--thickness: missing; ", "--width: missing; "}},
		{"empty", measured("221", "", "32"), []string{`--width: "" holds no length; `}},
		{"several", measured("12", "0", "-3"), []string{
			`--height: "12" is too small; give 40 mm to 700 mm (the book from head to tail); if it was inches, write "12 in"`,
			`--thickness: "-3" is negative; `,
			"--width: zero is no measurement; give 20 mm to 700 mm ",
		}},
		{"reading missing", measured("221;;222", "148.5", "32"), []string{`--height: "" holds no length; `}},
		{"too many readings", measured(strings.Repeat("221;", 100)+"221", "148.5", "32"), []string{"--height: more than 100 readings; "}},
		{"readings of a board", measured("221", "148.5", "32", set("board.thickness", "2;3")), []string{`--set board.thickness: "2;3" `}},
		{"board", measured("221", "148.5", "32", set("board.thickness", "30 mm")), []string{`--set board.thickness: "30 mm" is too large; did you mean 3 mm? Or give 0.5 mm to 6 mm (the board's thickness)`}},
		{"unknown key", measured("221", "148.5", "32", set("cloth.overlp", "3")), []string{`--set cloth.overlp: unknown key "cloth.overlp"; did you mean cloth.overlap`}},
		{"table", measured("221", "148.5", "32", set("lining", "3")), []string{`--set lining: "3" is no name of a material; give one of the shop file, or set lining.thickness`}},
		{"unit", measured("221", "148.5", "32", set("units", "cm")), []string{`--set units: "cm" is no unit of a job; give "mm" or "in"`}},
		{"sheet", measured("221", "148.5", "32", set("print.paper", "b9")), []string{`--set print.paper: "b9" is no size of a sheet; give both sides, such as "210 x 297 mm", or a name: A4, `}},
		{"control character", measured("221", "148.5", "32", set("title", "a\x1b[31m")), []string{`--set title: "a\x1b[31m" is not one line of text: it has U+00`}},
		{"control character in the name", measured("221", "148.5", "32", set("a\nb", "3")), []string{`--set a\nb: unknown key "a\nb"; `}},
		{"default", measured("221", "22", "20", set("cloth.turn_in", "20")), []string{"cloth.overlap (default): 28 mm is wider than the side it lands on, or the cavity it is turned into; at most 25.15 mm"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, _, err := fromFlags(c.flags)
			require.Error(t, err)
			begins(t, "", c.want, err.Error())
		})
	}
}

func TestFromFlagsSuspects(t *testing.T) {
	_, suspects, err := fromFlags(measured("148.5", "221", "32"))
	require.NoError(t, err)
	begins(t, "", []string{"--width: greater than the height; "}, suspects.Error())
}

func TestParseWithFlags(t *testing.T) {
	t.Run("a flag goes before the file", func(t *testing.T) {
		f, _, err := jobfile.Parse("case.toml", []byte(book+"[board]\nthickness = 30\n[print]\npaper = 'a3'\n"), []jobfile.Flag{
			set("board.thickness", "1.5"), set("board.thickness", "2.5"), // the last holds
			set("book.height", "230"), set("print.paper", "a4"),
		}...)
		require.NoError(t, err)
		assert.InDelta(t, 2.5, boards(f).Board.Thickness.MM(), 1e-9)
		assert.InDelta(t, 230, f.Job.Shared().Book().Height.Largest().MM(), 1e-9)
		assert.InDelta(t, 148.5, f.Job.Shared().Book().Width.Largest().MM(), 1e-9)
		assert.Equal(t, paper.Sheets[0], f.Print.Sheet)
	})
	t.Run("the book from flags", func(t *testing.T) {
		f, _, err := jobfile.Parse("case.toml", []byte("[board]\nthickness = 2.5\n"), measured("221", "148.5", "32")...)
		require.NoError(t, err)
		assert.InDelta(t, 221, f.Job.Shared().Book().Height.Largest().MM(), 1e-9)
		assert.InDelta(t, 2.5, boards(f).Board.Thickness.MM(), 1e-9)
	})
	t.Run("errors of both", func(t *testing.T) {
		_, _, err := jobfile.Parse("case.toml", []byte("[board]\nthickness = 30\n"), set("book.height", "9"), set("book.width", "148.5"))
		require.Error(t, err)
		begins(t, "", []string{
			`--set book.height: "9" is too small; `,
			"case.toml: book.thickness: missing; ",
			"case.toml:2: board.thickness: 30 mm is too large; ",
		}, err.Error())
	})
	t.Run("a bare number in the file keeps its unit", func(t *testing.T) {
		f, _, err := jobfile.Parse("case.toml", []byte(book), set("units", "in"), set("clearance.width", "1/16"))
		require.NoError(t, err)
		assert.Equal(t, geometry.IN, f.Job.Shared().Unit)
		assert.InDelta(t, 148.5, f.Job.Shared().Book().Width.Largest().MM(), 1e-9)
		assert.InDelta(t, 1.5875, f.Job.Shared().Clearance.Width.MM(), 1e-9)
	})
	t.Run("a bare number in a flag has the file's unit", func(t *testing.T) {
		f, _, err := jobfile.Parse("case.toml", []byte("units = 'in'\n"), measured("9", "6", "1")...)
		require.NoError(t, err)
		assert.InDelta(t, 228.6, f.Job.Shared().Book().Height.Largest().MM(), 1e-9)
	})
}
