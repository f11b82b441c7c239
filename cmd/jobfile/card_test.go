package jobfile_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/onepiece"
)

const cardJob = `construction = "card"
[[book]]
height = 203
width = 130
thickness = 22
[card]
kind = "Corrugated"
thickness = 1.6
bend = 0.4
grammage = "430"
name = "brown board"
[flaps]
relief = "0,8 mm"
[clearance]
height = 5
`

func TestCardJob(t *testing.T) {
	f, suspects, err := jobfile.Parse("case.toml", []byte(cardJob))
	require.NoError(t, err)
	assert.Empty(t, suspects)
	assert.Equal(t, "card", f.Kind.Construction)
	j := f.Job.(*onepiece.Job)
	assert.Equal(t, onepiece.Length(1.6), j.Card.Thickness)
	assert.Equal(t, 0.4, j.Card.Bend)
	assert.Equal(t, onepiece.Corrugated, j.Card.Kind)
	assert.Equal(t, 430.0, j.Card.Grammage)
	assert.Equal(t, "brown board", f.Names[geometry.Corrugated])
	assert.Equal(t, onepiece.Length(0.8), j.Flaps.Relief)
	assert.Equal(t, onepiece.Length(5), j.Clearance.Height)
	assert.Equal(t, job.Readings{203}, j.Book().Height)
}

// A job of boards is not held against what a case of card must have, and the
// other way round.
func TestEachConstructionHasItsOwnChecks(t *testing.T) {
	tight := "[[book]]\nheight = 203\nwidth = 130\nthickness = 22\n[clearance]\nthickness = 0.5\n"
	_, _, err := jobfile.Parse("case.toml", []byte(tight))
	assert.ErrorContains(t, err, "case.toml:6: clearance.thickness: ") // cloth and paper turned in
	_, _, err = jobfile.Parse("case.toml", []byte("construction = \"card\"\n"+tight))
	assert.NoError(t, err)
}

func TestCardRefused(t *testing.T) {
	book := "[[book]]\nheight = 203\nwidth = 130\nthickness = 22\n"
	for name, c := range map[string]struct{ job, want string }{
		"word":      {"construction = \"wood\"\n" + book, `case.toml:1: construction: "wood" is none of its words; give "boards" or "card"`},
		"bend":      {"construction = \"card\"\n" + book + "[card]\nbend = 1.5\n", "case.toml:7: card.bend: 1.5 is too large; give 0 to 1"},
		"bend text": {book + "[card]\nbend = \"half\"\n", `case.toml:6: card.bend: "half" is no number; give 0 to 1`},
		"thickness": {book + "[card]\nthickness = 9\n", "case.toml:6: card.thickness: 9 mm is too large; did you mean 0.9 mm? Or give 0 mm to 5 mm"},
		"thick":     {"construction = \"card\"\n" + book + "[card]\nthickness = 4.5\n", "case.toml:7: card.thickness: 4.5 mm is too thick for solid card to fold; at most 4 mm"},
		"kind":      {"construction = \"card\"\n" + book + "[card]\nkind = \"fluted\"\n", `case.toml:7: card.kind: "fluted" is none of its words; give "solid" or "corrugated" (what the case is folded from)`},
		"grammage":  {book + "[card]\ngrammage = 6000\n", "case.toml:6: card.grammage: 6000 is too large; give 0 to 5000 (g/m² as sold, 0 where it is not known)"},
		"two books": {"construction = \"card\"\n" + book + book, "case.toml:7: book[2].height: a case of card holds one book; keep one [[book]]"},
		"relief":    {"construction = \"card\"\n" + book + "[flaps]\nrelief = -1\n", "case.toml:7: flaps.relief: a length can't be negative"},
	} {
		t.Run(name, func(t *testing.T) {
			_, _, err := jobfile.Parse("case.toml", []byte(c.job))
			assert.ErrorContains(t, err, c.want)
		})
	}
}

// A title can't turn the text around it, nor be bytes that are no text.
func TestTitlesThatSteer(t *testing.T) {
	for _, title := range []string{"log\u202egol", "log\x1b[31m", "\xff\xfe"} {
		_, _, err := fromFlags([]jobfile.Flag{{Name: "--title", Key: "title", Value: title}})
		assert.ErrorContains(t, err, "--title: ")
	}
}

// What only another kind of case has is held against its limits, and told of
// where it is not what it would be anyway.
func TestKeysOfAnotherKind(t *testing.T) {
	book := "[[book]]\nheight = 203\nwidth = 130\nthickness = 22\n"
	for name, c := range map[string]struct{ job, want string }{
		"card in a case of boards": {book + "[card]\nthickness = 1.6\nbend = 0.5\n",
			"case.toml:6: card.thickness: 1.6 is for a case of card; a case of boards has none of it; leave it out, or give construction = \"card\""},
		"board in a case of card": {"construction = 'card'\n" + book + "[board]\nthickness = '1.9 mm'\n[cloth]\nstretch = 0\n",
			"case.toml:7: board.thickness: \"1.9 mm\" is for a case of boards; a case of card has none of it; leave it out, or give construction = \"boards\""},
		"a word": {"kind = 'slipcase'\nconstruction = 'card'\n" + book + "[thumb_hole]\nshape = 'triangle'\n",
			"case.toml:8: thumb_hole.shape: \"triangle\" is for a case of boards; a case of card has none of it; leave it out, or give construction = \"boards\""},
		"what all have": {"construction = 'card'\n" + book + "[uncertainty]\nsettings = 'each'\n[clearance]\nheight = 3\n", ""},
	} {
		t.Run(name, func(t *testing.T) {
			f, suspects, err := jobfile.Parse("case.toml", []byte(c.job))
			require.NoError(t, err)
			assert.Equal(t, c.want, suspects.Error())
			p, err := f.Case.Make()
			require.NoError(t, err)
			assert.NotEmpty(t, p.Pieces)
		})
	}
	_, _, err := jobfile.Parse("case.toml", []byte(book+"[card]\nthickness = 9\n"))
	assert.ErrorContains(t, err, "case.toml:6: card.thickness: 9 mm is too large; did you mean 0.9 mm? Or give 0 mm to 5 mm")
	_, _, err = jobfile.Parse("case.toml", []byte("kind = 'box'\n"+book))
	assert.ErrorContains(t, err, `case.toml:1: kind: "box" is none of its words; give "slipcase"`)
}
