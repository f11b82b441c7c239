package jobfile_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry/slipcase"
)

const shareLimits = "give 0 % to 5 % (how much the cloth grows across the grain when glued)"

// stretched refuses one value of cloth.stretch.
func stretched(value, want string) refusal {
	return refusal{"stretch " + value, book + "[cloth]\nstretch = " + value + "\n", []string{":6: cloth.stretch: " + want}}
}

var refusedPercents = []refusal{
	stretched("5.001", "5.001 % is too large; "+shareLimits),
	stretched("6", "6 % is too large; "+shareLimits),
	stretched("'5,1 %'", `"5,1 %" is too large; `+shareLimits),
	stretched("-0.001", "-0.001 % is negative; "+shareLimits),
	stretched("'-1 %'", `"-1 %" is negative; `+shareLimits),
	stretched("99999999999999999999", "99999999999999999999 % is too large; "+shareLimits),
	stretched("'"+strings.Repeat("9", 400)+"'", `"`+strings.Repeat("9", 40)+`…" is too large; `+shareLimits),
	stretched("nan", "nan is not a share in percent; "+shareLimits),
	stretched("-nan", "-nan is not a share in percent; "+shareLimits),
	stretched("inf", "inf is not a share in percent; "+shareLimits),
	stretched("-inf", "-inf is not a share in percent; "+shareLimits),
	stretched("1e400", "1e400 is not a share in percent; "+shareLimits),
	stretched("'nan'", `"nan" is not a share in percent; `+shareLimits),
	stretched("'inf %'", `"inf %" is not a share in percent; `+shareLimits),
	stretched("''", `"" is not a share in percent; `+shareLimits),
	stretched("'%'", `"%" is not a share in percent; `+shareLimits),
	stretched("'1.5 %%'", `"1.5 %%" is not a share in percent; `+shareLimits),
	stretched("'% 1.5'", `"% 1.5" is not a share in percent; `+shareLimits),
	stretched("'1.'", `"1." is not a share in percent; `+shareLimits),
	stretched("'1 5 %'", `"1 5 %" is not a share in percent; `+shareLimits),
	stretched("'1.5 mm'", `"1.5 mm" is not a share in percent; `+shareLimits),
	stretched("'1/2 %'", `"1/2 %" is not a share in percent; `+shareLimits),
	stretched("'1²'", `"1²" is not a share in percent; `+shareLimits), // no 12
	stretched("'1e0'", `"1e0" is not a share in percent; `+shareLimits),
	stretched("'1.0.0'", `"1.0.0" is not a share in percent; `+shareLimits),
	stretched("'auto'", `"auto" is not a share in percent; `+shareLimits),
	stretched(`"1\n%x"`, `"1\n%x" is not a share in percent; `+shareLimits),
	stretched("'1,234 %'", `"1,234 %" can be read in two ways; write 1.234 or 1234`),
	stretched("true", "true is not a share in percent; "+shareLimits),
	stretched("1979-05-27", "1979-05-27 is not a share in percent; "+shareLimits),
	stretched("[1]", "a list is not a share in percent; "+shareLimits),
	stretched("{}", "a table is not a share in percent; "+shareLimits),
	{"stretch a table", book + "[cloth.stretch]\nlong = 1\n", []string{":5: cloth.stretch: a table is not a share in percent; "}},
	{"stretch without quotes", book + "[cloth]\nstretch = 1.5 %\n", []string{":6: "}},
	{"stretch without a table", "stretch = 1\n" + book, []string{":1: stretch: unknown key; did you mean cloth.stretch or side_paper.stretch"}},
	{"near stretch", book + "[side_paper]\nstrech = 1\n", []string{":6: side_paper.strech: unknown key; did you mean side_paper.stretch"}},
}

func TestParsePercent(t *testing.T) {
	for value, want := range map[string]float64{
		"0": 0, "5": 5, "1.5": 1.5, "15e-1": 1.5, "+2": 2, "0x3": 3, "1_0e-1": 1, "5.0": 5,
		"'0'": 0, "'5 %'": 5, "'5%'": 5, "'5'": 5, "'1.5 %'": 1.5, "'1,5 %'": 1.5, "'1.5'": 1.5, "'1,5'": 1.5,
		"',5 %'": 0.5, "'.5'": 0.5, "' 1.5 '": 1.5, "'1.234 %'": 1.234, "'0,125 %'": 0.125, "'1,2345'": 1.2345,
		"'1,5\u00a0%'": 1.5, "'1,5\u202f%'": 1.5, `"1.5\t%"`: 1.5,
	} {
		f, _, err := jobfile.Parse("case.toml", []byte(book+"[cloth]\nstretch = "+value+"\n"))
		require.NoError(t, err, value)
		assert.InDelta(t, want, boards(f).Cloth.Stretch, 1e-12, value)
	}
}

// Both limits of every share are allowed, and set that share alone.
func TestEachPercent(t *testing.T) {
	for _, p := range new(slipcase.Job).Settings().Numbers() {
		for _, n := range []float64{p.Min, (p.Min + p.Max) / 2, p.Max} {
			want := boards(parse(t, book))
			set, _ := want.Settings().Find(p.Key)
			*set.Number = n
			for _, spelt := range []string{fmt.Sprint(n), fmt.Sprintf(`"%v %%"`, n)} {
				f, _, err := jobfile.Parse("case.toml", []byte(assign(p.Key, spelt)))
				require.NoError(t, err)
				near(t, want, boards(f))
			}
		}
	}
}
