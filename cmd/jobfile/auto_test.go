package jobfile_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry/slipcase"
)

// holed refuses one value of thumb_hole.radius.
func holed(value, want string) refusal {
	return refusal{"radius " + value, book + "[thumb_hole]\nradius = " + value + "\n", []string{":6: thumb_hole.radius: " + want}}
}

const radiusLimits = `give 6 mm to 60 mm (the thumb hole's radius, or how deep a triangle goes); or write "auto"`

var refusedAuto = []refusal{
	holed("0", "zero is no measurement; "+radiusLimits),
	holed("0.0", "zero is no measurement; "+radiusLimits),
	holed("'0 mm'", "zero is no measurement; "+radiusLimits),
	holed("-0.0", "zero is no measurement; "+radiusLimits),
	holed("-6", "a length can't be negative; "+radiusLimits),
	holed("5.9", "5.9 mm is too small; "+radiusLimits),
	holed("60.1", "60.1 mm is too large; "+radiusLimits),
	holed("1", `1 mm is too small; give 6 mm to 60 mm (the thumb hole's radius, or how deep a triangle goes); if it was inches, write "1 in"; or write "auto"`),
	holed("nan", "nan is not a length; "+radiusLimits),
	holed("true", "true is not a length; "+radiusLimits),
	holed("['auto']", "a list is not a length; "+radiusLimits),
	holed("''", `"" holds no length; give a length such as 235 mm or 9 1/4 in; or write "auto"`),
	holed("'automatic'", `"automatic" doesn't begin with a number; give a length such as 235 mm or 9 1/4 in; or write "auto"`),
	{"auto without quotes", book + "[thumb_hole]\nradius = auto\n", []string{`:6: unexpected character "a" at start of value; a length with a unit, a fraction or a decimal comma stands in quotes, such as "9 1/4 in"; so does other text`}},
	{"auto elsewhere", book + "[divider]\nlap = 'auto'\n", []string{`:6: divider.lap: "auto" doesn't begin with a number; give a length such as 235 mm or 9 1/4 in`}},
	{"auto for a book", "[[book]]\nheight = 'auto'\nwidth = 148.5\nthickness = 32\n", []string{`:2: book.height: "auto" doesn't begin with a number; `}},
}

// A length that isn't auto doesn't say that it might be.
func TestAutoIsNotOffered(t *testing.T) {
	_, _, err := jobfile.Parse("case.toml", []byte(book+"[divider]\nlap = 'auto'\nset_back = 90\n"))
	require.Error(t, err)
	assert.NotContains(t, err.Error(), `or write "auto"`)
}

func TestParseAuto(t *testing.T) {
	some := 0
	for _, field := range new(slipcase.Job).Settings() {
		if !field.Auto {
			continue
		}
		some++
		for value, want := range map[string]slipcase.Length{
			"'auto'": 0, "'AUTO'": 0, "' Auto '": 0, "'" + plain(field.Min) + " mm'": slipcase.Length(field.Min), plain(field.Max): slipcase.Length(field.Max),
		} {
			f, _, err := jobfile.Parse("case.toml", []byte(assign(field.Key, value)))
			require.NoError(t, err, value)
			got, _ := f.Job.Settings().Find(field.Key)
			assert.InDelta(t, want.MM(), got.Length.MM(), 1e-9, value)
		}
	}
	assert.Positive(t, some)
}
