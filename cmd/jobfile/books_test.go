package jobfile_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

var refusedBooks = []refusal{
	// A book that is missing.
	{"blank", "", []string{": book: no book; write [[book]] and below it height, width and thickness"}},
	{"only a comment", "# nothing yet\n", []string{": book: no book; write [[book]]"}},
	{"no book", "[board]\nthickness = 2\n", []string{": book: no book; write [[book]]"}},
	{"no books in a list", "book = []\n", []string{": book: no book; write [[book]]"}},
	{"nothing measured", "\n[[book]]\n", []string{
		":2: book.height: missing; measure the book from head to tail",
		":2: book.thickness: missing; measure the book's thickness",
		":2: book.width: missing; measure the book from spine to fore-edge",
	}},
	{"one dimension missing", "[[book]]\nheight = 221\nthickness = 32\n", []string{":1: book.width: missing; measure "}},
	{"missing in an inline book", "\n\nbook = [{height = 221, width = 148.5}]\n", []string{":3: book.thickness: missing; measure "}},
	{"only the fore-edge measured", "[[book]]\nthickness_at_fore_edge = 30\n", []string{":1: book.height: missing; ", ":1: book.thickness: missing; ", ":1: book.width: missing; "}},
	{"only a title", "[[book]]\ntitle = 'Harbour log'\n", []string{":1: book.height: missing; ", ":1: book.thickness: missing; ", ":1: book.width: missing; "}},

	// A later book that is missing, wholly or in part.
	{"second not measured", book + "[[book]]\n", []string{
		":5: book[2].height: missing; measure the book from head to tail",
		":5: book[2].thickness: missing; measure the book's thickness",
		":5: book[2].width: missing; measure the book from spine to fore-edge",
	}},
	{"second lacks its width", book + "[[book]]\nheight = 221\nthickness = 32\n", []string{":5: book[2].width: missing; measure "}},
	{"first lacks its width", "[[book]]\nheight = 221\nthickness = 32\n" + book, []string{":1: book.width: missing; measure "}},
	{"second of two inline", "book = [\n{height = 221, width = 148.5, thickness = 32},\n{}]\n", []string{
		":3: book[2].height: missing; ", ":3: book[2].thickness: missing; ", ":3: book[2].width: missing; ",
	}},
	{"two empty ones", "[[book]]\n[[book]]\n", []string{
		":1: book.height: missing; ", ":1: book.thickness: missing; ", ":1: book.width: missing; ",
		":2: book[2].height: missing; ", ":2: book[2].thickness: missing; ", ":2: book[2].width: missing; ",
	}},

	// What is wrong in a later book, at its line and by its number.
	{"each book read", book + "[[book]]\nheight = true\ncolour = 2\n[book.x]\n[[book]]\nheight = 9\nwidht = 3\nwidth = nan\nthickness = [32, '1/0 in']\ntitle = 4\n", []string{
		":5: book[2].thickness: missing; ",
		":5: book[2].width: missing; ",
		":6: book[2].height: true is not a length; give 40 mm to 700 mm ",
		":7: book[2].colour: unknown key; known in [[book]]: title, height, width, thickness, thickness_at_fore_edge",
		":8: book[2].x: unknown key; ",
		`:10: book[3].height: 9 mm is too small; give 40 mm to 700 mm (the book from head to tail); if it was inches, write "9 in"`,
		":11: book[3].widht: unknown key; did you mean book.width",
		":12: book[3].width: nan is not a length; ",
		`:13: book[3].thickness: "1/0 in" divides by zero; `,
		":14: book[3].title: 4 is no title; ",
	}},
	{"inline books read", "book = [{height = 221, width = 148.5, thickness = 32}, {\nheight = 800, width = 148.5,\nthickness = 32, thicknes = 3}]\n", []string{
		":2: book[2].height: 800 mm is too large; ",
		":3: book[2].thicknes: unknown key; did you mean book.thickness",
	}},
	{"fore-edge", book + "thickness_at_fore_edge = [30, 0]\n" + book + "thickness_at_fore_edge = []\n", []string{
		":5: book.thickness_at_fore_edge: zero is no measurement; give 1 mm to 300 mm (the book's thickness at the fore-edge)",
		":10: book[2].thickness_at_fore_edge: an empty list; give one reading or several",
	}},
	{"near fore-edge", book + "thickness_at_foreedge = 30\n", []string{":5: book.thickness_at_foreedge: unknown key; did you mean book.thickness_at_fore_edge"}},
	{"table for a height", book + "[[book]]\nwidth = 148.5\nthickness = 32\n[book.height]\nmm = 221\n", []string{":8: book[2].height: a table is not a length; "}},
	{"dotted below the second", book + book + "title.x = 3\n", []string{":9: book[2].title: a table is no title; "}},
	{"twice in the second", book + book + "height = 3\n", []string{":9: book[2].height: set twice, first on line 6; keep one"}},
	{"too many readings in the second", book + "[[book]]\nwidth = 148.5\nthickness = 32\nheight = [" + strings.Repeat("221,", 101) + "]\n", []string{":8: book[2].height: more than 100 readings; keep the largest"}},

	// What is no book.
	{"single brackets", "[book]\nheight = 221\nwidth = 148.5\nthickness = 32\n", []string{":1: book: a book has double brackets; write [[book]]"}},
	{"single brackets twice", "[book]\nheight = 221\nwidth = 148.5\nthickness = 32\n[book]\nheight = 221\nwidth = 148.5\nthickness = 32\n", []string{":1: book: a book has double brackets; write [[book]]", ":5: book[2]: a book has double brackets; write [[book]]"}},
	{"single brackets after double", book + "[book]\nheight = 221\nwidth = 148.5\nthickness = 32\n", []string{":5: book[2]: a book has double brackets; write [[book]]"}},
	{"one inline book", "book = {height = 221, width = 148.5, thickness = 32}\n", []string{":1: book: a book has double brackets; write [[book]]"}},
	{"dotted book", "book.height = 221\nbook.width = 148.5\nbook.thickness = 32\n", []string{":1: book: a book has double brackets; write [[book]]"}},
	{"book is a number", "book = 3\n", []string{":1: book: 3 is not a table; write [[book]] and its keys below it"}},
	{"list of numbers for books", "book = [[3]]\n", []string{":1: book: a list is not a table; write [[book]] "}},
	{"number for the second", "book = [{height = 221, width = 148.5, thickness = 32},\n3]\n", []string{":2: book[2]: 3 is not a table; write [[book]] "}},
	{"inline and headed", "book = [{height = 221, width = 148.5, thickness = 32}]\n" + book, []string{":2: key book already exists as a value, but should be an array table; write each key and each table once"}},
	{"like a later book", "'book[2]'.height = 3\n" + book, []string{`:1: "book[2]".height: unknown key; `}},

	// No more than twelve.
	{"thirteen", strings.Repeat(book, 13), []string{":49: book[13]: more than 12 books; make two cases"}},
	{"fifteen", strings.Repeat(book, 15), []string{":49: book[13]: more than 12 books; make two cases"}},
	{"the thirteenth is not read", strings.Repeat(book, 12) + "[[book]]\nheight = true\ncolour = 2\n[book.x]\n", []string{":49: book[13]: more than 12 books; make two cases"}},
	{"thirteen inline", "book = [" + strings.Repeat("\n{height = 221, width = 148.5, thickness = 32},", 13) + "]\n", []string{":14: book[13]: more than 12 books; make two cases"}},
	{"thirteenth in single brackets", strings.Repeat(book, 12) + "[book]\n", []string{":49: book[13]: more than 12 books; make two cases"}},
}

func volumes() slipcase.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Title = "Harbour log in three parts"
	j.Covering, j.Compartments = "cloth", "each"
	j.Books = []job.Book{
		{Title: "Part one", Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{31}},
		{Title: "Part two", Height: job.Readings{220, 220.5}, Width: job.Readings{148}, Thickness: job.Readings{27}},
		{Title: "Part three", Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{22}, ForeEdge: job.Readings{24, 24.5}},
	}
	j.Lining.Order = "before"
	j.Cloth.Stretch, j.SidePaper.Stretch = 1.5, 1
	j.ThumbHole = slipcase.ThumbHole{Shape: "semicircle"}
	j.Divider = slipcase.Divider{SetBack: 6.35, Lap: 15} // a quarter inch
	return j
}

func TestParseVolumes(t *testing.T) {
	for _, name := range []string{"volumes.toml", "volumes-inline.toml"} {
		t.Run(name, func(t *testing.T) {
			f, _, err := jobfile.Parse(name, read(t, name))
			require.NoError(t, err)
			near(t, volumes(), boards(f))
		})
	}
}

func TestParseTwelveBooks(t *testing.T) {
	thin := "[[book]]\nheight = 221\nwidth = 148.5\nthickness = 8\n"
	f, _, err := jobfile.Parse("case.toml", []byte(strings.Repeat(thin, 12)))
	require.NoError(t, err)
	assert.Len(t, f.Job.Shared().Books, 12)
}

// Flags for a book set the first one, in a file of several too.
func TestFlagsSetTheFirstBook(t *testing.T) {
	f, _, err := jobfile.Parse("volumes.toml", read(t, "volumes.toml"), []jobfile.Flag{
		{Name: "--height", Key: "book.height", Value: "222;222.5"},
		set("book.title", "Part one, rebound"),
		set("book.thickness_at_fore_edge", "32"),
	}...)
	require.NoError(t, err)
	want := volumes()
	want.Books[0].Title = "Part one, rebound"
	want.Books[0].Height = job.Readings{222, 222.5}
	want.Books[0].ForeEdge = job.Readings{32}
	near(t, want, boards(f))
}

// What is wrong with a book is told where it was set.
func TestProblemsOfLaterBooks(t *testing.T) {
	wide := "[[book]]\nheight = 148.5\nwidth = 210\nthickness = 32\n"
	_, suspects, err := jobfile.Parse("case.toml", []byte(wide+wide), set("book.width", "210"))
	require.NoError(t, err)
	begins(t, "", []string{
		"--set book.width: greater than the height; ",
		"case.toml:7: book[2].width: greater than the height; ",
	}, suspects.Error())
}
