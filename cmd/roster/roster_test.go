package roster_test

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/roster"
	"forel/geometry/slipcase"
)

func read(t *testing.T, text string) []roster.Row {
	t.Helper()
	rows, err := roster.Reader{}.Read("roster.csv", []byte(text))
	require.NoError(t, err)
	return rows
}

// A row says what flags say: a bare number in the row's units, readings with a
// semicolon between them, any key of a job file.
func TestRowIsAJob(t *testing.T) {
	rows := read(t, "name,height,width,thickness,units,board.thickness\nA student,220; 221,150,30,mm,2.4\nAnother,9,6,1 1/4,in,\n")
	require.Len(t, rows, 2)
	for _, r := range rows {
		require.Empty(t, r.Refused)
	}
	assert.InDelta(t, 221, rows[0].File.Job.Shared().Books[0].Height.Largest().MM(), 1e-9)
	assert.InDelta(t, 2.4, rows[0].File.Job.(*slipcase.Job).Board.Thickness.MM(), 1e-9)
	assert.InDelta(t, 9*25.4, rows[1].File.Job.Shared().Books[0].Height.Largest().MM(), 1e-9)
	assert.Equal(t, []string{"01-a-student", "02-another"}, []string{rows[0].Folder, rows[1].Folder})
}

// Spreadsheets write semicolons or tabs where the comma is for decimals, a byte
// order mark, and lines that end in two characters.
func TestOtherSpreadsheets(t *testing.T) {
	for _, text := range []string{
		"\ufeffname;height;width;thickness\r\nA student;220,5;150;30\r\n",
		"name\theight\twidth\tthickness\nA student\t220,5\t150\t30\n",
		"Name, Height, Width, Thickness\n\nA student,\"220,5\",150,30\n,,,\n",
	} {
		rows := read(t, text)
		require.Len(t, rows, 1)
		require.Empty(t, rows[0].Refused)
		assert.InDelta(t, 220.5, rows[0].File.Job.Shared().Books[0].Height.Largest().MM(), 1e-9)
	}
}

// An inch mark is no slip.
func TestInchMarks(t *testing.T) {
	rows := read(t, "name,height,width,thickness\nA,9 1/4\",6\",\"1 1/8\"\"\"\n")
	require.Len(t, rows, 1)
	require.Empty(t, rows[0].Refused)
	assert.InDelta(t, 9.25*25.4, rows[0].File.Job.Shared().Books[0].Height.Largest().MM(), 1e-9)
}

// A bad row names its line and column, all that is wrong with it, and the
// others go on.
func TestBadRows(t *testing.T) {
	rows := read(t, "name,height,width,thickness\nA,220,150,30\nB,abc,-3,30\n,220,150,30\nD,220,5,150,30\nE,220,150,30\n")
	var said []string
	for i, r := range rows {
		assert.Equal(t, i+2, r.Line)
		for _, issue := range r.Refused {
			said = append(said, issue.String())
		}
	}
	require.Len(t, said, 4)
	assert.Regexp(t, `^roster\.csv:3: height: `, said[0])
	assert.Regexp(t, `^roster\.csv:3: width: `, said[1])
	assert.Regexp(t, `^roster\.csv:4: name: no name`, said[2])
	assert.Regexp(t, `^roster\.csv:5: 5 fields under 4 columns`, said[3])
	assert.Empty(t, rows[0].Refused)
	assert.Empty(t, rows[4].Refused)
}

// What is wrong with the table is told at once, before any row is read.
func TestBadTables(t *testing.T) {
	for _, test := range []struct{ text, says string }{
		{"", `^roster\.csv: nothing in it`},
		{"name,height\n", `no students`},
		{"height,width,thickness\n1,2,3\n", `roster\.csv:1: name: no such column`},
		{"name,hight,heigth\nA,1,2\n", `(?s)roster\.csv:1: hight: unknown column.*roster\.csv:1: heigth: unknown column`},
		{"name,height,height\nA,1,2\n", `there twice`},
		{"name,height\nA,\"220\nB,210\n", `^roster\.csv:2: a quote opens a field and is not closed`},
		{"name\xff", `UTF-8`},
		{"name,height,width,thickness,quote.hour\nA,220,150,30,34\n", `roster\.csv:1: quote\.hour: what is ordered and what it costs are the class's`},
		{"name,height,width,thickness,stock.material\nA,220,150,30,board\n", `roster\.csv:1: stock\.material: sheets and rolls are the class's`},
		{strings.Repeat("a,", 1000) + "name\nA\n", `more than 250 columns`},
		{"name,height,width,thickness\nA,1,150,30\n\"B,210\n", `(?s)roster\.csv:3: a quote opens.*roster\.csv:2: height: `},
	} {
		_, err := roster.Reader{}.Read("roster.csv", []byte(test.text))
		var issues jobfile.Issues
		require.ErrorAs(t, err, &issues, "%q", test.text)
		assert.Regexp(t, test.says, err.Error(), "%q", test.text)
	}
}

// A row that can be read in two ways is refused with both: a decimal comma where the
// comma parts the columns, two readings where the semicolon does. In quotes it has one.
func TestTwoWaysToRead(t *testing.T) {
	const head = "name,height,width,thickness,title\n"
	for _, text := range []string{
		head + "Ana,221,148,5,32\n",
		head + "Ana,221,148,5 mm,32\n",
		head + "Ben,210,148,12\nAna,221,148,5,32\n",
		head + "Ben,210,148,12,Tide tables\nAna,221,148,5,32\n",
		"name,height,width,thickness,board.thickness\nBen,210,148,12\nAna,221,148,30,2\n",
		"name;height;width;thickness;title\nAna;221;222;148;32\n",
	} {
		rows := read(t, text)
		ana := rows[len(rows)-1]
		require.Len(t, ana.Refused, 1, text)
		assert.Regexp(t, `can be read in two ways: as height 221, width \d+, thickness \d+.*; or, with .*, as height 221.*width 148`, ana.Refused[0].String(), text)
		lines := strings.Split(strings.TrimSpace(text), "\n") // the mend that is named
		lines[len(lines)-1] = regexp.MustCompile(`[^,;]+`).ReplaceAllString(lines[len(lines)-1], `"$0"`)
		rows = read(t, strings.Join(lines, "\n"))
		assert.Empty(t, rows[len(rows)-1].Refused, text)
	}
	for _, text := range []string{
		head + "Ana,221,148,32,Harbour log\n",
		head + "Ana,221,148,32,\n",
		head + "Ana,221,148,32\n",
		head + "Ana,221,\"148,5\",32\n",
		"name,height,width,thickness,board.thickness\nAna,221,148,30,2\nBen,210,148,12,2.4\n",
		"name\theight\twidth\tthickness\ttitle\nAna\t221\t148,5\t30\t2\n",
	} {
		for _, r := range read(t, text) {
			assert.Empty(t, r.Refused, text)
		}
	}
}

// What else spreadsheets write: a line that says what parts the columns, and columns
// without a name or a value at the end.
func TestSpreadsheetLeftovers(t *testing.T) {
	for _, text := range []string{
		"sep=;\r\nname;height;width;thickness\r\nAna;220,5;150;30\r\n",
		"\ufeff\"sep=\t\"\nname\theight\twidth\tthickness\nAna\t220,5\t150\t30\n",
		"name;height;width;thickness;;\nAna;220,5;150;30;;\n;;;;;\n",
		"name;height;width;thickness\nAna;220,5;150;30;;\n",
		"\nname, height, width, thickness,,\nAna,\"220,5\",150,30,,\n",
	} {
		rows := read(t, text)
		require.Len(t, rows, 1, text)
		require.Empty(t, rows[0].Refused, text)
		assert.InDelta(t, 220.5, rows[0].File.Job.Shared().Books[0].Height.Largest().MM(), 1e-9, text)
	}
	rows := read(t, "name,height,width,thickness,\nAna,220,150,30,what\n")
	assert.Regexp(t, `5 fields under 4 columns`, rows[0].Refused[0].String())
}

// Names are composed, short and one line; letters that can't be shown are told.
func TestNames(t *testing.T) {
	const head = "name,height,width,thickness\n"
	rows := read(t, head+"Re\u0301pertoire,220,150,30\n書 A,220,150,30\nطالب,220,150,30\n")
	assert.Equal(t, "Répertoire", rows[0].Name)
	assert.Empty(t, rows[0].Suspects)
	require.Len(t, rows[1].Suspects, 1)
	assert.Regexp(t, `^roster.csv:3: name: "書" is in none of the typefaces`, rows[1].Suspects[0].String())
	require.Len(t, rows[2].Suspects, 1)
	assert.Regexp(t, `^roster.csv:4: name: "ط" and its neighbours stand apart`, rows[2].Suspects[0].String())
	for _, name := range []string{strings.Repeat("a", 16_000), "A\u202eB", "A\tB", "A\u200bB", "A\u2028B"} {
		rows := read(t, head+`"`+name+"\",220,150,30\n")
		require.Len(t, rows[0].Refused, 1, "%.20q", name)
		assert.Regexp(t, `^roster.csv:2: name: .*(too long|not one line)`, rows[0].Refused[0].String())
	}
}

// A base gives what the roster leaves out.
func TestBase(t *testing.T) {
	base := roster.Base{Source: "base.toml", Data: []byte("[board]\nthickness = 3\n")}
	rows, err := roster.Reader{Base: base}.Read("roster.csv", []byte("name,height,width,thickness,board.thickness\nA,220,150,30,\nB,220,150,30,1.5\n"))
	require.NoError(t, err)
	require.Empty(t, rows[0].Refused)
	assert.InDelta(t, 3, rows[0].File.Job.(*slipcase.Job).Board.Thickness.MM(), 1e-9)
	assert.InDelta(t, 1.5, rows[1].File.Job.(*slipcase.Job).Board.Thickness.MM(), 1e-9)
}

// The roster of twenty that comes with the program can be made, every row.
func TestTheTwenty(t *testing.T) {
	data, err := os.ReadFile("../../testdata/class/roster.csv")
	require.NoError(t, err)
	rows := read(t, string(data))
	require.Len(t, rows, 20)
	for _, r := range rows {
		assert.Empty(t, r.Refused, "line %d", r.Line)
	}
}
