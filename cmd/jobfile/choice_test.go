package jobfile_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry/slipcase"
)

var refusedChoices = []refusal{
	{"far word", "compartments = 'three'\n" + book, []string{`:1: compartments: "three" is none of its words; give "one" or "each" (how several volumes stand in the case)`}},
	{"near word", "covering = 'papper'\n" + book, []string{`:1: covering: "papper" is none of its words; give "cloth and paper", "cloth", "paper" or "sides" (what the case is covered with); did you mean "paper"`}},
	{"near words", "covering = 'cloth & paper'\n" + book, []string{`:1: covering: "cloth & paper" is none of its words; give "cloth and paper", "cloth", "paper" or "sides" (what the case is covered with); did you mean "cloth and paper"`}},
	{"joined words", "covering = 'Cloth-and-Paper'\n" + book, []string{`:1: covering: "Cloth-and-Paper" is none of its words; give "cloth and paper", "cloth", "paper" or "sides" (what the case is covered with); did you mean "cloth and paper"`}},
	{"near shape", book + "[thumb_hole]\nshape = 'semi-circle'\n", []string{`:6: thumb_hole.shape: "semi-circle" is none of its words; give "none", "semicircle" or "triangle" (the thumb hole in both sides); did you mean "semicircle"`}},
	{"near order", book + "[lining]\norder = 'befor'\n", []string{`:6: lining.order: "befor" is none of its words; give "before" or "after" (whether linings go in before or after the boards are joined); did you mean "before"`}},
	{"empty word", "covering = ''\n" + book, []string{`:1: covering: "" is none of its words; give "cloth and paper", "cloth", "paper" or "sides" (what the case is covered with)`}},
	{"long word", "covering = '" + strings.Repeat("é", 500) + "'\n" + book, []string{`:1: covering: "` + strings.Repeat("é", 40) + `…" is none of its words; give `}},
	{"line end in a word", "covering = \"pa\\nper\"\n" + book, []string{`:1: covering: "pa\nper" is none of its words; give "cloth and paper", "cloth", "paper" or "sides" (what the case is covered with); did you mean "paper"`}},
	{"number for a word", "compartments = 1\n" + book, []string{`:1: compartments: 1 is none of its words; give "one" or "each" `}},
	{"boolean for a word", book + "[thumb_hole]\nshape = true\n", []string{`:6: thumb_hole.shape: true is none of its words; give "none", "semicircle" or "triangle" `}},
	{"list for a word", "covering = ['paper']\n" + book, []string{`:1: covering: a list is none of its words; give "cloth and paper", `}},
	{"inline table for a word", book + "[lining]\norder = {}\n", []string{`:6: lining.order: a table is none of its words; give "before" or "after" `}},
	{"table for a word", book + "[covering]\nsides = 'paper'\n", []string{`:5: covering: a table is none of its words; give "cloth and paper", `}},
	{"word without quotes", book + "[thumb_hole]\nshape = triangle\n", []string{`:6: expected keyword "true"; a length with a unit, a fraction or a decimal comma stands in quotes, such as "9 1/4 in"; so does other text`}},
	{"word twice", "covering = 'paper'\ncovering = 'cloth'\n" + book, []string{":2: covering: set twice, first on line 1; keep one"}},
	{"word below the book", book + "covering = 'paper'\n", []string{":5: book.covering: unknown key; did you mean covering at the top of the file"}},
	{"word without its table", "shape = 'triangle'\n" + book, []string{":1: shape: unknown key; did you mean thumb_hole.shape"}},
	{"near key of a word", "coverings = 'paper'\n" + book, []string{":1: coverings: unknown key; did you mean covering"}},
	{"near table of a word", book + "[thumbhole]\nshape = 'triangle'\n", []string{":5: thumbhole: unknown key; did you mean [thumb_hole]"}},
}

// Every word of every choice is read, in upper and lower case, from the file
// and from a flag, and sets that choice alone. Whether such a case can be made
// is for another package.
func TestEachWord(t *testing.T) {
	for _, c := range new(slipcase.Job).Settings().Words() {
		// A pattern that is to match must come again.
		repeats, base := "", book
		if table, ok := strings.CutSuffix(c.Key, "pattern.match"); ok {
			repeats = "repeat_across = 20\nrepeat_along = 30\n"
			base += "[" + table + "pattern]\n" + repeats
		}
		for _, word := range c.Words {
			for _, spelt := range []string{word, strings.ToUpper(word), strings.ToUpper(word[:1]) + word[1:], " " + word + "\t"} {
				want := boards(parse(t, base))
				at, _ := want.Settings().Find(c.Key)
				*at.Word = word
				f, _, err := jobfile.Parse("case.toml", []byte(assign(c.Key, `"`+spelt+`"`)+repeats))
				require.NoError(t, err)
				near(t, want, boards(f))
				f, _, err = jobfile.Parse("case.toml", []byte(base), set(c.Key, spelt))
				require.NoError(t, err)
				near(t, want, boards(f))
			}
		}
	}
}

// assign gives a job with the book and one key more.
func assign(key, value string) string {
	table, word, dotted := strings.Cut(key, ".")
	if !dotted {
		return key + " = " + value + "\n" + book
	}
	return book + "[" + table + "]\n" + word + " = " + value + "\n"
}

func TestFlagsOfOtherKinds(t *testing.T) {
	for _, c := range []struct {
		flag jobfile.Flag
		want string
	}{
		{set("covering", "papper"), `--set covering: "papper" is none of its words; give "cloth and paper", "cloth", "paper" or "sides" (what the case is covered with); did you mean "paper"`},
		{set("covering", ""), `--set covering: "" is none of its words; `},
		{set("lining.order", "before;after"), `--set lining.order: "before;after" is none of its words; `},
		{set("cloth.stretch", "6"), `--set cloth.stretch: "6" is too large; give 0 % to 5 % (how much the cloth grows across the grain when glued)`},
		{set("cloth.stretch", "-1 %"), `--set cloth.stretch: "-1 %" is negative; give 0 % to 5 % `},
		{set("cloth.stretch", "1;2"), `--set cloth.stretch: "1;2" is not a share in percent; `},
		{set("thumb_hole.radius", "0"), `--set thumb_hole.radius: zero is no measurement; give 6 mm to 60 mm (the thumb hole's radius, or how deep a triangle goes); or write "auto"`},
		{set("thumb_hole.radius", "automatic"), `--set thumb_hole.radius: "automatic" doesn't begin with a number; give a length such as 235 mm or 9 1/4 in; or write "auto"`},
		{set("thumb_hole.form", "triangle"), `--set thumb_hole.form: unknown key "thumb_hole.form"; known in [thumb_hole]: radius, shape`},
		{set("book[2].height", "221"), "--set book[2].height: a flag sets the first book only; write book.height, or change the job file"},
		{set("book[1].title", "Part one"), "--set book[1].title: a flag sets the first book only; write book.title, or change the job file"},
		{set("book[2].heigth", "221"), `--set book[2].heigth: unknown key "book[2].heigth"; `},
		{set("book[2]", "221"), `--set book[2]: unknown key "book[2]"; `},
		{set("book.thickness_at_fore_edge", "30;x"), `--set book.thickness_at_fore_edge: "x" doesn't begin with a number; `},
	} {
		_, _, err := jobfile.Parse("case.toml", []byte(book), c.flag)
		require.Error(t, err, c.want)
		begins(t, "", []string{c.want}, err.Error())
	}
}

func TestFlagsOfOtherKindsAreRead(t *testing.T) {
	data := "covering = 'cloth'\n" + book + "[cloth]\nstretch = 3\n[thumb_hole]\nshape = 'triangle'\nradius = 12\n"
	f, _, err := jobfile.Parse("case.toml", []byte(data), []jobfile.Flag{
		set("covering", "sides"), set("cloth.stretch", "1,5"), set("side_paper.stretch", "0.5 %"),
		set("thumb_hole.shape", "Semicircle"), set("thumb_hole.radius", "AUTO"),
	}...)
	require.NoError(t, err)
	assert.Equal(t, "sides", boards(f).Covering)
	assert.InDelta(t, 1.5, boards(f).Cloth.Stretch, 0)
	assert.InDelta(t, 0.5, boards(f).SidePaper.Stretch, 0)
	assert.Equal(t, slipcase.ThumbHole{Shape: "semicircle"}, boards(f).ThumbHole)
}
