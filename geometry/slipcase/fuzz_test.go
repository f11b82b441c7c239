package slipcase_test

import (
	"encoding/binary"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// fuzzedJob makes a job of whatever numbers there are. Each volume takes three
// of the sizes, in hundredths of a millimetre; choices picks one word of each
// choice; each three bytes of the settings put one setting somewhere within its
// limits, or a percentage.
func fuzzedJob(inches bool, choices uint16, sizes, settings []byte) slipcase.Job {
	j := slipcase.DefaultJob(geometry.MM)
	if inches {
		j.Unit = geometry.IN
	}
	for _, c := range j.Settings().Words() {
		n := uint16(len(c.Words))
		*c.Word, choices = c.Words[choices%n], choices/n
	}
	for len(sizes) >= 6 && len(j.Books) <= job.MostBooks {
		var b job.Book
		for i, f := range bookFields() {
			*f.At(&b) = job.Readings{part(sizes[2*i:], f.Min, f.Max)}
		}
		sizes = sizes[6:]
		j.Books = append(j.Books, b)
	}
	lengths, shares := j.Settings().Lengths(), j.Settings().Numbers()
	for len(settings) >= 3 {
		n := int(settings[0])
		if fields := len(lengths); n < 4*fields {
			f := lengths[n%fields]
			*f.Length = part(settings[1:], slipcase.Length(f.Min), slipcase.Length(f.Max))
		} else {
			p := shares[n%len(shares)]
			*p.Number = part(settings[1:], slipcase.Length(p.Min), slipcase.Length(p.Max)).MM()
		}
		settings = settings[3:]
	}
	return j
}

// part gives a length from lo, by what two bytes say in hundredths, to hi.
func part(b []byte, lo, hi slipcase.Length) slipcase.Length {
	return min(hi, lo+slipcase.Length(binary.LittleEndian.Uint16(b))/100)
}

// size writes a volume as fuzzedJob reads it.
func size(height, width, thickness float64) []byte {
	var b []byte
	for i, l := range []float64{height, width, thickness} {
		b = binary.LittleEndian.AppendUint16(b, uint16(math.Round((l-bookFields()[i].Min.MM())*100)))
	}
	return b
}

// set writes a setting as fuzzedJob reads it.
func set(key string, l float64) []byte {
	for i, f := range new(slipcase.Job).Settings().Lengths() {
		if f.Key == key {
			return binary.LittleEndian.AppendUint16([]byte{byte(i)}, uint16(math.Round((l-f.Min)*100)))
		}
	}
	panic("no " + key)
}

// wild puts a number, taken as it is, where a job keeps one: it may be no length
// at all.
func wild(j *slipcase.Job, where uint8, value float64) {
	fields, shares := j.Settings().Lengths(), j.Settings().Numbers()
	switch n := int(where); {
	case n < len(fields):
		*fields[n].Length = slipcase.Length(value)
	case n < len(fields)+len(shares):
		*shares[n-len(fields)].Number = value
	case len(j.Books) > 0:
		f := job.Dimensions[n%len(job.Dimensions)]
		r := f.At(&j.Books[n%len(j.Books)])
		*r = append(*r, slipcase.Length(value))
	}
}

// Whatever numbers and words a job holds, it is refused in words that help, or
// it folds up without a fault. What a refusal says is done, and again.
func FuzzJobToProof(f *testing.F) {
	usual := size(220, 150, 30)
	nowhere := uint8(255)
	add := func(choices uint16, sizes, settings []byte) {
		f.Add(false, choices, sizes, settings, nowhere, 30.0, "")
	}
	for choices := range uint16(2 * 4 * 2 * 3) {
		add(choices, usual, nil)
	}
	add(0, size(40, 30, 3), nil)
	add(0, size(500, 400, 150), nil)
	add(1, append(append(size(220, 150, 30), size(200, 140, 12)...), size(180, 120, 3)...), set("divider.set_back", 20))
	add(0, usual, append(set("board.thickness", 5), set("cloth.overlap", 6.85)...))
	add(16, size(220, 30, 30), append(set("thumb_hole.radius", 32), set("board.thickness", 4)...))
	add(6, size(220, 30, 30), set("side_paper.inset", 33.15))
	add(16, usual, []byte{250, 200, 0, 251, 100, 0}) // stretch of 2 % and 1 %
	f.Add(true, uint16(0), usual, set("clearance.height", 0.746), nowhere, 0.0, "=leather\n")
	f.Add(false, uint16(0), usual, []byte(nil), uint8(0), math.NaN(), "")
	f.Add(false, uint16(0), usual, []byte(nil), uint8(14), math.Inf(1), "")
	f.Add(true, uint16(0), []byte(nil), []byte(nil), uint8(18), -1e300, "")

	f.Add(false, uint16(0), append(usual, usual...), []byte(nil), uint8(23), 20.0, "100 % %s\n")

	f.Fuzz(func(t *testing.T, inches bool, choices uint16, sizes, settings []byte, where uint8, value float64, word string) {
		j := fuzzedJob(inches, choices, sizes, settings)
		wild(&j, where, value)
		if choice, ok := strings.CutPrefix(word, "="); ok {
			j.Covering = choice
		}
		for i := range j.Books {
			j.Books[i].Title = word
		}
		for round := 0; ; round++ {
			c, err := slipcase.Make(j)
			if err == nil {
				requireMade(t, c)
				return
			}
			var refused job.Problems
			require.True(t, errors.As(err, &refused), "%T", err)
			requireUsable(t, refused, j)
			require.Less(t, round, mendRounds, "still %v: %+v", err, j)
			if !applied(&j, refused) {
				return // a number out of its own limits: the maker is told them
			}
		}
	})
}

// requireMade: an accepted job is proved, and its outlines are in order.
func requireMade(t *testing.T, c slipcase.Case) {
	require.True(t, c.Proof.Sound(), "%v: %+v", c.Proof.Faults, c.Job)
	require.NotEmpty(t, c.Pieces)
	for _, s := range c.Suspects() {
		require.NotContains(t, s.Error(), "\n", "%+v", c.Job)
	}
	for _, r := range c.Plan().Remarks {
		if said := r.In(func(slipcase.Length) string { return "<length>" }); strings.Contains(said, "thinner at one edge") && len(c.Job.Books) > 1 {
			require.Contains(t, said, c.Job.Books[0].Title, "the same for all")
		}
	}
	for _, p := range c.Pieces {
		require.True(t, p.Outline.Closed, p.Name)
		require.Positive(t, p.Count, p.Name)
		outline := judgedPolygon(p.Outline)
		require.NoError(t, outline.Validate(), "%s: %+v", p.Name, c.Job)
		require.True(t, outline.IsCCW(), "%s: %+v", p.Name, c.Job)
		require.Positive(t, outline.Area(), "%s: %+v", p.Name, c.Job)
		points := p.Outline.Flatten(0.001)
		for i, q := range points {
			require.Greater(t, q.Distance(points[(i+1)%len(points)]).MM(), eps, "%s repeats %v: %+v", p.Name, q, c.Job)
		}
	}
}

// requireUsable: a refusal names a key, what is wrong and what would be right,
// each in one line, and it is not the proof that had to refuse.
func requireUsable(t *testing.T, refused job.Problems, j slipcase.Job) {
	require.NotEmpty(t, refused)
	for _, p := range refused {
		require.NotContains(t, p.Error(), "\n", "%+v", j)
		require.NotEmpty(t, strings.TrimSpace(p.Key), "%+v", j)
		require.NotEmpty(t, strings.TrimSpace(p.Wrong()), "%+v", j)
		require.NotEmpty(t, strings.TrimSpace(p.Fix), "%+v", j)
		require.NotEqual(t, "proof", p.Key, "%v: %+v", p, j)
	}
}

// applied does what a refusal says, where it names a limit or no hole.
func applied(j *slipcase.Job, refused job.Problems) bool {
	for _, p := range refused {
		m, ok := parseMend(p)
		switch {
		case p.Key == "lining.order" && p.Fix == `give "before"`:
			j.Lining.Order = slipcase.LinedBefore
		case p.Key == "thumb_hole.shape" && p.Fix == `give "none"`:
			j.ThumbHole.Shape = slipcase.NoHole
		case !ok:
			return false
		case m.key == "thumb_hole.radius" && j.ThumbHole.Radius == 0: // auto
			j.ThumbHole.Radius = m.limit
		default:
			m.apply(j)
		}
	}
	return true
}
