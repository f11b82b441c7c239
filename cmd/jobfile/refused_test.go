package jobfile_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
)

// book takes lines 1 to 4; what follows it begins on line 5.
const book = "[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n"

// refusal is a job that is refused.
type refusal struct {
	name, data string
	want       []string
}

// allRefused are the jobs of every table of refusals.
func allRefused() []refusal {
	return slices.Concat(refused, refusedBooks, refusedChoices, refusedPercents, refusedAuto, refusedStock, refusedAmounts)
}

// refused are jobs with the beginning of each line of their error, after the
// file's name. The words behind it are those of the packages that measure.
var refused = []refusal{
	// Lengths that can't be.
	{"zero", book + "[board]\nthickness = 0\n", []string{":6: board.thickness: zero is no measurement; give 0.5 mm to 6 mm (the board's thickness)"}},
	{"zero text", book + "[board]\nthickness = '0 in'\n", []string{":6: board.thickness: zero is no measurement; give 0.02 in to 0.236 in "}},
	{"negative", book + "[clearance]\nwidth = -1\n", []string{":6: clearance.width: a length can't be negative; give 0 mm to 25 mm "}},
	{"negative text", book + "[clearance]\nwidth = '-1 mm'\n", []string{`:6: clearance.width: "-1 mm" is negative; `}},
	{"not a number", book + "[lining]\nthickness = nan\n", []string{":6: lining.thickness: nan is not a length; give 0 mm to 1 mm "}},
	{"signed nan", book + "[lining]\nthickness = -nan\n", []string{":6: lining.thickness: -nan is not a length; give 0 mm to 1 mm "}},
	{"nan text", book + "[lining]\nthickness = 'nan'\n", []string{`:6: lining.thickness: "nan" isn't a number; `}},
	{"infinite", book + "[lining]\ntrim = inf\n", []string{":6: lining.trim: inf is not a length; give 0 mm to 50 mm "}},
	{"minus infinite", book + "[lining]\ntrim = -inf\n", []string{":6: lining.trim: -inf is not a length; give 0 mm to 50 mm "}},
	{"infinite text", book + "[lining]\ntrim = 'infinity mm'\n", []string{`:6: lining.trim: "infinity mm" is infinite; `}},
	{"beyond any number", book + "[lining]\ntrim = 1e400\n", []string{":6: lining.trim: 1e400 is not a length; give 0 mm to 50 mm "}},
	{"beyond 64 bits", book + "[lining]\ntrim = 99999999999999999999\n", []string{":6: lining.trim: 99999999999999999999 mm is too large; give 0 mm to 50 mm "}},
	{"absurd board", book + "[board]\nthickness = 30\n", []string{":6: board.thickness: 30 mm is too large; did you mean 3 mm? Or give 0.5 mm to 6 mm (the board's thickness)"}},
	{"absurd board in text", book + "[board]\nthickness = '30 mm'\n", []string{`:6: board.thickness: "30 mm" is too large; did you mean 3 mm? Or give 0.5 mm to 6 mm (the board's thickness)`}},
	{"low book", "[[book]]\nwidth = 35\nthickness = 5\nheight = 39.9\n", []string{":4: book.height: 39.9 mm is too small; give 40 mm to 700 mm "}},
	{"high book", "[[book]]\nwidth = 500\nthickness = 50\nheight = 700.1\n", []string{":4: book.height: 700.1 mm is too large; give 40 mm to 700 mm "}},
	{"book in inches", "[[book]]\nheight = 9\nwidth = 148.5\nthickness = 32\n", []string{`:2: book.height: 9 mm is too small; give 40 mm to 700 mm (the book from head to tail); if it was inches, write "9 in"`}},
	{"book in millimetres", "units = 'in'\n[[book]]\nheight = 9\nwidth = 6\nthickness = 32\n", []string{":5: book.thickness: 32 in is too large; give "}},
	{"margin", book + "[print]\nmargin = 41\noverlap = 4\n", []string{":6: print.margin: 41 mm is too large; give 0 mm to 40 mm ", ":7: print.overlap: 4 mm is too small; give 5 mm to 40 mm "}},

	// Lengths that can't be read.
	{"divided by zero", book + "[cloth]\noverlap = '9 1/0 in'\n", []string{`:6: cloth.overlap: "9 1/0 in" divides by zero; `}},
	{"thousands point and comma", "[[book]]\nheight = '1.221,5 mm'\nwidth = 148.5\nthickness = 32\n", []string{`:2: book.height: "1.221,5 mm" `}},
	{"thousands comma", "[[book]]\nheight = '1,221.5 mm'\nwidth = 148.5\nthickness = 32\n", []string{`:2: book.height: "1,221.5 mm" `}},
	{"thousands space", "[[book]]\nheight = '1 221 mm'\nwidth = 148.5\nthickness = 32\n", []string{`:2: book.height: "1 221 mm" has a thousands separator; `}},
	{"thousands apostrophe", "[[book]]\nheight = \"1'221 mm\"\nwidth = 148.5\nthickness = 32\n", []string{`:2: book.height: "1'221 mm" has a thousands separator; `}},
	{"unknown unit", book + "[cloth]\nspine_gap = '5 furlongs'\n", []string{`:6: cloth.spine_gap: "5 furlongs" has an unknown unit; `}},
	{"empty text", book + "[cloth]\nspine_gap = ''\n", []string{`:6: cloth.spine_gap: "" holds no length; `}},
	{"words", book + "[cloth]\nspine_gap = 'a little'\n", []string{`:6: cloth.spine_gap: "a little" doesn't begin with a number; `}},
	{"line end in text", book + "[cloth]\nspine_gap = \"5\\nmn\\u001b[31m\"\n", []string{`:6: cloth.spine_gap: "5\nmn\x1b[31m" `}},
	{"long text", book + "[cloth]\nspine_gap = '" + strings.Repeat("z", 5000) + "'\n", []string{`:6: cloth.spine_gap: "` + strings.Repeat("z", 40) + `…" `}},
	{"a reading's own line", "[[book]]\nheight = [221,\n  'x',\n  800]\nwidth = 148.5\nthickness = 32\n", []string{
		`:3: book.height: "x" doesn't begin with a number; `,
		":4: book.height: 800 mm is too large; give 40 mm to 700 mm ",
	}},
	{"no readings", "[[book]]\nheight = []\nwidth = 148.5\nthickness = 32\n", []string{":2: book.height: an empty list; give one reading or several"}},

	// What is no length at all.
	{"boolean", book + "[board]\nthickness = true\n", []string{":6: board.thickness: true is not a length; give 0.5 mm to 6 mm "}},
	{"date", book + "[board]\nthickness = 1979-05-27\n", []string{":6: board.thickness: 1979-05-27 is not a length; give 0.5 mm to 6 mm "}},
	{"time", book + "[board]\nthickness = 07:32:00\n", []string{":6: board.thickness: 07:32:00 is not a length; give 0.5 mm to 6 mm "}},
	{"list", book + "[board]\nthickness = [2]\n", []string{":6: board.thickness: a list is not a length; give 0.5 mm to 6 mm "}},
	{"inline table", book + "[board]\nthickness = {mm = 2}\n", []string{":6: board.thickness: a table is not a length; give 0.5 mm to 6 mm "}},
	{"table", book + "[board.thickness]\nmm = 2\n", []string{":5: board.thickness: a table is not a length; give 0.5 mm to 6 mm "}},
	{"dotted table", book + "[board]\nthickness.mm = 2\nthickness.in = 0.1\n", []string{":6: board.thickness: a table is not a length; give 0.5 mm to 6 mm "}},
	{"boolean reading", "[[book]]\nheight = [221, false]\nwidth = 148.5\nthickness = 32\n", []string{":2: book.height: false is not a length; give 40 mm to 700 mm "}},
	{"list of readings", "[[book]]\nheight = [[221], 221]\nwidth = 148.5\nthickness = 32\n", []string{":2: book.height: a list is not a length; give 40 mm to 700 mm "}},
	{"number for a table", "board = 2\n" + book, []string{":1: board: 2 is not a table; write [board] and its keys below it"}},
	{"list of tables", book + "[[board]]\nthickness = 2\n", []string{":5: board: [[board]] is a list of tables; write [board]"}},

	// Text.
	{"unit", "units = 'cm'\n" + book, []string{`:1: units: "cm" is no unit of a job; give "mm" or "in"`}},
	{"unit in capitals", "units = 'MM'\n" + book, []string{`:1: units: "MM" is no unit of a job; give "mm" or "in"`}},
	{"unit spelt out", "units = 'inches'\n[[book]]\nheight = 9\nwidth = 6\nthickness = 1.25\n", []string{`:1: units: "inches" is no unit of a job; give "mm" or "in"`}},
	{"unit is a number", "units = 1\n" + book, []string{`:1: units: 1 is no unit of a job; give "mm" or "in"`}},
	{"title is a number", "title = 1\n" + book, []string{":1: title: 1 is no title; give text in quotes"}},
	{"title is a table", book + "[title]\n", []string{":5: title: a table is no title; give text in quotes"}},
	{"title on two lines", "title = '''a\nb'''\n" + book, []string{`:1: title: "a\nb" is not one line of text: it has U+00`}},
	{"long title", "title = '" + strings.Repeat("é", 201) + "'\n" + book, []string{":1: title: the title is too long; write no more than 200 characters"}},
	{"book's title", book + "title = [1]\n", []string{":5: book.title: a list is no title; "}},
	{"sheet", book + "[print]\npaper = 'foolscap'\n", []string{`:6: print.paper: "foolscap" is no size of a sheet; give both sides, such as "210 x 297 mm", or a name: A4, `}},
	{"sheet is a number", book + "[print]\npaper = 4\n", []string{`:6: print.paper: 4 is no size of a sheet; give both sides, such as "210 x 297 mm", or a name: A4, `}},
	{"small sheet", book + "[print]\npaper = '50 x 80 mm'\n", []string{`:6: print.paper: "50 x 80 mm" is no size of a sheet; give 100 mm to 2000 mm (each side of it)`}},
	{"sheet all margin", book + "[print]\nmargin = 40\npaper = 'b5'\n", []string{":6: print.margin: B5 with margins of 40 mm leaves 96 x 170 mm to print on, of which "}}, // 176 and 250 less 80
	{"sheet with the usual margin", book + "[print]\npaper = '130 x 200 mm'\n", []string{":6: print.paper: 130 x 200 mm with margins of 10 mm leaves 110 x 180 mm to print on, of which "}},

	// Unknown keys.
	{"near key", book + "[cloth]\noverlp = 3\n", []string{":6: cloth.overlp: unknown key; did you mean cloth.overlap"}},
	{"swapped letters", "[[book]]\nheigth = 221\nheight = 221\nwidth = 148.5\nthickness = 32\n", []string{":2: book.heigth: unknown key; did you mean book.height"}},
	{"hyphen", book + "[cloth]\nspine-gap = 3\n", []string{":6: cloth.spine-gap: unknown key; did you mean cloth.spine_gap"}},
	{"capital", book + "[cloth]\nOverlap = 3\n", []string{":6: cloth.Overlap: unknown key; did you mean cloth.overlap"}},
	{"near table", book + "[bord]\nthickness = 2\n", []string{":5: bord: unknown key; did you mean [board]"}},
	{"far key", book + "[cloth]\ncolour = 3\n", []string{":6: cloth.colour: unknown key; known in [cloth]: thickness, overlap, turn_in, mouth_turn_in, spine_gap, corner_distance, corners, stretch"}},
	{"far table", book + "[knife]\nangle = 3\n", []string{":5: knife: unknown key; known: title, units, kind, construction, compartments, covering, [[book]], [board], [lining], [cloth], [side_paper], [pattern], [lining_pattern], [thumb_hole], [divider], [as_built], [clearance], [uncertainty], [fit], [card], [flaps], [chemise], [box], [print]"}},
	{"key of another table", book + "[cloth]\ninset = 3\n", []string{":6: cloth.inset: unknown key; did you mean side_paper.inset"}},
	{"key without its table", "overlap = 3\n" + book, []string{":1: overlap: unknown key; did you mean cloth.overlap or print.overlap"}},
	{"top key below a table", book + "units = 'mm'\n", []string{":5: book.units: unknown key; did you mean units at the top of the file"}},
	{"dot inside quotes", "'board.thickness' = 2\n" + book, []string{`:1: "board.thickness": unknown key; did you mean board.thickness`}},
	{"dotted key", "cloth.overlp = 2\n" + book, []string{":1: cloth.overlp: unknown key; did you mean cloth.overlap"}},
	{"one limit of too loose", book + "[fit]\nloose = 4\n", []string{":6: fit.loose: unknown key; write fit.loose_height and fit.loose_thickness: each has a limit of its own"}},
	{"inside an inline table", "board = {thickness = 2,\n thicknes = 2}\n" + book, []string{":2: board.thicknes: unknown key; did you mean board.thickness"}},
	{"line end in a key", book + "\"a\\nb\" = 2\n", []string{`:5: book."a\nb": unknown key; known in [[book]]: title, height, width, thickness`}},
	{"long key", strings.Repeat("k", 100) + " = 1\n" + book, []string{":1: " + strings.Repeat("k", 40) + "…: unknown key; known: title, "}},
	{"deep key", "cloth.a.b.c.d.e.f = 1\n" + book, []string{":1: cloth.a.b.c.…: unknown key; known in [cloth]: thickness, "}},
	{"table below the book", book + "[book.board]\nthickness = 2\n", []string{":5: book.board: unknown key; "}},

	// Twice.
	{"key twice", book + "[board]\nthickness = 2\nthickness = 2\n", []string{":7: board.thickness: set twice, first on line 6; keep one"}},
	{"dotted and in its table", "board.thickness = 2\n" + book + "[board]\nthickness = 2\n", []string{":6: table board already exists as defined by a dotted key; write each key and each table once", ":7: board.thickness: set twice, first on line 1; keep one"}},
	{"table twice", book + "[board]\n[board]\n", []string{":6: table board already exists; write each key and each table once"}},
	{"unknown key twice", "foo = 1\nfoo = 2\n" + book, []string{":1: foo: unknown key; ", ":2: foo: unknown key; "}},

	// Slips in the TOML come alone.
	{"unit without quotes", book + "[board]\nthickness = 2 mm\ntrim = 2\n", []string{`:6: expected newline but got "m"; a length with a unit, a fraction or a decimal comma stands in quotes, such as "9 1/4 in"`, ":7: board.trim: unknown key; "}},
	{"unit close by", book + "[board]\nthickness = 2mm\n", []string{":6: strings must be quoted; a length with a unit, "}},
	{"fraction without quotes", "[[book]]\nheight = 9 1/4\nwidth = 148\nthickness = 30\n", []string{`:2: expected newline but got "1"; a length with a unit, `}},
	{"fraction in a list", "[[book]]\nheight = [9, 9 1/4]\nwidth = 148\nthickness = 30\n", []string{":2: expected ',' or ']' after array value; a length with a unit, "}},
	{"comma without quotes", "[[book]]\nheight = 23,5\nwidth = 148\nthickness = 30\n", []string{`:2: book.height: 23,5 has a decimal comma outside quotes; write 23.5, or "23,5 mm" in quotes`}},
	{"quarter without quotes", "[[book]]\nheight = 9¼\nwidth = 148\nthickness = 30\n", []string{`:2: expected newline but got "¼"; a length with a unit, `}},
	{"curly quotes", "[[book]]\nheight = “9 in”\nwidth = 148\nthickness = 30\n", []string{`:2: unexpected character "“" at start of value; a length with a unit, `}},
	{"open quotes", "title = \"Harbour log\n" + book, []string{":1: "}},
	{"open bracket", "[[book]\nheight = 221\n", []string{":1: expected ']]' to close array table name; look at the quotes, brackets "}},
	{"no equals sign", "\n\nheight 221\n", []string{":3: expected '=' after key; look at "}},
	{"after a duplicate", "foo = 1\nfoo = 2\nbar\n", []string{":3: expected '=' after key; look at "}},
	{"control character", "title = 'a\x1b[31m'\n" + book, []string{":1: "}},

	// What isn't text.
	{"not UTF-8", "title = 'caf\u00e9'\nunits = 'caf\xe9'\n", []string{":2: not UTF-8 text; save the file as UTF-8"}},
	{"UTF-16", "\xff\xfet\x00i\x00", []string{":1: not UTF-8 text; save the file as UTF-8"}},

	// What fits together, at the key or at the table of its default.
	{"runs into the spine wall", "[[book]]\nheight = 221\nwidth = 60\nthickness = 32\n[cloth]\nmouth_turn_in = 64\n", []string{":6: cloth.mouth_turn_in: 64 mm runs into the spine wall inside; at most 63.15 mm"}}, // 60 + 1 + 2.15
	{"turn-in too short", book + "[side_paper]\nturn_in = 4.1\n", []string{":6: side_paper.turn_in: 4.1 mm does not reach inside round the edge of the board; at least 4.15 mm"}},
	{"no clearance", book + "[clearance]\nheight = 0.7\n", []string{":6: clearance.height: 0.7 mm leaves no room at the mouth"}},
	{"default at its table", "[[book]]\nheight = 221\nwidth = 22\nthickness = 20\n[cloth]\nturn_in = 20\n", []string{":5: cloth.overlap (default): 28 mm is wider than the side it lands on, or the cavity it is turned into; at most 25.15 mm"}},
	{"default without a table", "[[book]]\nheight = 221\nwidth = 22\nthickness = 20\n", []string{
		": cloth.overlap (default): 28 mm is wider than the side it lands on, or the cavity it is turned into; at most 25.15 mm",
		": cloth.turn_in (default): 28 mm is longer than the head wall it lands on; at most 25.15 mm",
	}},
}

func TestRefused(t *testing.T) {
	for _, c := range allRefused() {
		t.Run(c.name, func(t *testing.T) {
			f, _, err := jobfile.Parse("case.toml", []byte(c.data))
			require.Error(t, err)
			assert.Equal(t, f.Case == nil, f.Job == nil) // a job as it would be, or none
			assert.IsType(t, jobfile.Issues{}, err)
			begins(t, "case.toml", c.want, err.Error())
		})
	}
}

// begins checks that each line of an error begins as wanted.
func begins(t *testing.T, source string, want []string, got string) {
	t.Helper()
	lines := strings.Split(got, "\n")
	if !assert.Len(t, lines, len(want), got) {
		return
	}
	for i := range want {
		assert.True(t, strings.HasPrefix(lines[i], source+want[i]), "want %s%s\ngot  %s", source, want[i], lines[i])
	}
}

func TestAllSlipsAtOnce(t *testing.T) {
	_, _, err := jobfile.Parse("slips.toml", read(t, "slips.toml"))
	require.Error(t, err)
	begins(t, "slips.toml", []string{
		":3: titel: unknown key; did you mean title",
		":5: book.thickness: missing; measure the book's thickness",
		`:6: book.height: "1.221,5 mm" has more than one point or comma; `,
		":7: book.height: a length can't be negative; give 40 mm to 700 mm ",
		":8: book.width: 1485 mm is too large; did you mean 148.5 mm? Or give 20 mm to 700 mm ",
		":10: bord: unknown key; did you mean [board]",
		":14: lining.thickness: true is not a length; give 0 mm to 1 mm ",
		":15: lining.trim: 1979-05-27 is not a length; give 0 mm to 50 mm ",
		`:18: cloth.overlap: "9 1/0 in" divides by zero; `,
		":19: cloth.spine-gap: unknown key; did you mean cloth.spine_gap",
		":20: cloth.turn_in: nan is not a length; give 5 mm to 100 mm ",
		`:21: cloth.mouth_turn_in: "20 mn" has an unknown unit; `,
		":25: clearance.heigth: unknown key; did you mean clearance.height",
		`:28: print.paper: "foolscap" is no size of a sheet; give both sides, such as "210 x 297 mm", or a name: A4, `,
	}, err.Error())
}

// Slips in the writing are told together, with all else that is wrong, and each alone of
// its line.
func TestSlipsOfWritingAtOnce(t *testing.T) {
	_, _, err := jobfile.Parse("case.toml", []byte("title = Harbour log\n[[book]]\nheight = 221,5\nwidth = 148,5\nthickness = 31,75\n[board]\nthickness = 30\n[cloth]\noverlap = 9 1/4 in\nspine_gap = 'x'\n"))
	require.Error(t, err)
	begins(t, "case.toml", []string{
		`:1: unexpected character "H"`,
		":3: book.height: 221,5 has a decimal comma outside quotes; ",
		":4: book.width: 148,5 has a decimal comma outside quotes; ",
		":5: book.thickness: 31,75 has a decimal comma outside quotes; ",
		":7: board.thickness: 30 mm is too large; did you mean 3 mm? Or give 0.5 mm to 6 mm ",
		`:9: expected newline but got "1"; `,
		`:10: cloth.spine_gap: "x" doesn't begin with a number; `,
	}, err.Error())
	// What began on another line is told alone.
	_, _, err = jobfile.Parse("case.toml", []byte("[[book]]\nheight = [221, 222\nwidth = 148\nthickness = 3,5\n"))
	require.Error(t, err)
	assert.NotContains(t, err.Error(), "\n")
}

// What does not fit together is told beside a value out of its limits.
func TestFitBesideRanges(t *testing.T) {
	_, _, err := jobfile.Parse("case.toml", []byte(book+"[board]\nthickness = 30\n[cloth]\nmouth_turn_in = 200\n[chemise]\nfore_edge = 'x'\n[side_paper]\ninset = 2\n"))
	require.Error(t, err)
	assert.Regexp(t, `board.thickness: 30 mm is too large`, err.Error())
	assert.Regexp(t, `side_paper.inset: 2 mm runs the turn-in into`, err.Error())
}

// A number that a program reckoned is shown as a maker would write it.
func TestReckonedNumbers(t *testing.T) {
	for _, value := range []string{"2224.60000000000002", "'2224.60000000000002 mm'", "['2224.59999999999991']"} {
		_, _, err := jobfile.Parse("case.toml", []byte("[[book]]\nwidth = 100\nthickness = 20\nheight = "+value+"\n"))
		require.Error(t, err)
		assert.Contains(t, err.Error(), "2224.6")
		assert.NotRegexp(t, `\d\.\d{7}`, err.Error())
	}
	text, err := jobfile.New{Flags: []jobfile.Flag{{Name: "--height", Key: "book.height", Value: "224.60000000000002"}}}.Text()
	require.NoError(t, err)
	assert.Contains(t, string(text), "height = 224.6 ")
}

// A line is the same however lines end and whatever stands before the text.
func TestLinesWithCRLF(t *testing.T) {
	data := "\ufeff" + strings.ReplaceAll(string(read(t, "slips.toml")), "\n", "\r\n")
	_, _, want := jobfile.Parse("slips.toml", read(t, "slips.toml"))
	_, _, got := jobfile.Parse("slips.toml", []byte(data))
	require.Error(t, want)
	assert.EqualError(t, got, want.Error())
}

func TestSuspects(t *testing.T) {
	for _, c := range []struct {
		name, data string
		want       []string
	}{
		{"none", book, nil},
		{"wide", "[[book]]\nheight = 148.5\nwidth = 221\nthickness = 32\n", []string{":3: book.width: greater than the height; "}},
		{"an inch and a quarter", "[[book]]\nheight = 221\nwidth = 148.5\nthickness = 1.25\n", []string{`:4: book.thickness: thinner than 2 mm; right for a few leaves; if it was inches, write "1.25 in"`}},
		{"a few leaves", "[[book]]\nheight = 221\nwidth = 148.5\nthickness = '1.25 mm'\n", nil},
		{"thick", "[[book]]\nheight = 100\nwidth = 60\nthickness = 70\n", []string{":4: book.thickness: greater than the width; "}},
		{"readings apart", "[[book]]\nthickness = 32\nwidth = 148.5\nheight = [\n221, 235]\n", []string{":4: book.height: the readings run from 221 mm to 235 mm, likely a slip; measure again; 235 mm, the largest, is used"}},
		{"digits swapped", "[[book]]\nthickness = 32\nwidth = 148.5\nheight = [221, 212, 220.5]\n", []string{":4: book.height: the readings run from 212 mm to 221 mm, likely two digits swapped; measure again; 221 mm, the largest, is used"}},
		{"3/32 in apart", "units = 'in'\n[[book]]\nthickness = [1, '1 3/32']\nwidth = 6\nheight = 9\n", nil},
		{"7/64 in apart", "units = 'in'\n[[book]]\nthickness = [1, '1 7/64']\nwidth = 6\nheight = 9\n", []string{":3: book.thickness: the readings run from 1 in to 1.109 in, likely a slip; "}},
		{"board of a size of the trade", book + "[board]\n\nthickness = '1/16 in'\n", nil},
		{"corners that would be tight, but for tabs that give way", book + "[clearance]\nheight = 1.4\n[cloth]\n", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, suspects, err := jobfile.Parse("case.toml", []byte(c.data))
			require.NoError(t, err)
			if c.want == nil {
				assert.Empty(t, suspects)
				return
			}
			begins(t, "case.toml", c.want, suspects.Error())
		})
	}
}
