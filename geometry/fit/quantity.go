package fit

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// Sort says what a quantity is a length of.
type Sort string

// The sorts of quantities.
const (
	Layer Sort = "layer" // one layer of a material
	Size  Sort = "size"  // what was cut or put together
	Play  Sort = "play"  // room that is left in the finished case
)

// Quantity is a length that can be measured at the bench, what the plan says it should
// be, and what makes it come out otherwise.
type Quantity struct {
	Key      string // "play-height"
	Name     string // "play in height at the mouth"
	When     string // it can be measured; empty: any time
	Sort     Sort
	Set      string // the setting of a job file that takes its readings; empty: none
	Planned  Length // as drawn, or as the job tells of a material
	Expected tolerance.Distribution
	Tight    Length             // of play: less is too tight
	Loose    Length             // of play: more is too loose; 0 where it is not judged
	Counts   map[string]float64 // how much it grows with each layer and each cut length, by their keys
	Layers   map[string]Length  // the standard deviation of one layer of each material in Counts
	Off      []Off              // what else makes it come out otherwise
}

// Off is what an uncertainty of a job file does to a quantity.
type Off struct {
	Key       string // "uncertainty.cutting"
	PlusMinus Length // that it is set to
	SD        Length // the standard deviation that it gives
}

// Within returns what 19 of 20 cases keep between.
func (q Quantity) Within() (low, high Length) {
	return q.Expected.Under(0.025), q.Expected.Under(0.975)
}

// keyed writes a name as a key: lower case letters and digits with hyphens between words.
func keyed(name string) string {
	words := strings.FieldsFunc(strings.ReplaceAll(strings.ToLower(name), "'", ""), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	return strings.Join(words, "-")
}

// PlayKey returns the key of the room left in a gap.
func PlayKey(g plan.Gap) string {
	return keyed(strings.TrimSpace("play " + g.Dimension + " " + g.Volume))
}

// board is the uncertainty of a board, whether it was measured or not.
const board = "uncertainty.board"

// Quantities returns what can be measured of a case: the layers of its materials, what
// is cut and put together in the order it is made, and the room that is left where it
// decides whether the book fits.
func Quantities(c plan.Chain) (out []Quantity) {
	slopes, drawn, layers := c.Sensitivities(), c.Left(c.Drawn()), map[string]Length{}
	for _, l := range c.Links {
		if v := l.Varies; v != nil && l.Length > 0 {
			q := Quantity{Key: keyed(l.Name), Name: "one layer of " + l.Name, When: "before it is cut, several layers together", Sort: Layer, Planned: l.Length,
				Counts: map[string]float64{keyed(l.Name): 1}}
			effect := v.Effect()
			q.Expected, _, _ = tolerance.Sum(l.Length, []tolerance.Effect{effect})
			layers[keyed(l.Name)] = effect.SD
			q.Off = []Off{{v.Key, (v.High - v.Low) / 2, effect.SD}}
			if v.ByName {
				q.Off[0].Key = board
			}
			out = append(out, q)
		}
	}
	errors := errorsOf(c, slopes)
	length := func(q Quantity, at int) Quantity {
		q.Planned = fine(drawn[at])
		q.Expected, _, _ = sum(q.Planned, errors, at)
		q.Counts, q.Layers = map[string]float64{}, map[string]Length{}
		for i, l := range c.Links {
			if slope := slopes[at][i]; slope != 0 && !l.Book && l.Length > 0 {
				q.Counts[keyed(l.Name)] = slope
				if sd, ok := layers[keyed(l.Name)]; ok {
					q.Layers[keyed(l.Name)] = sd
				}
			}
		}
		for _, d := range c.Off {
			sd := d.Effects[at].SD
			if same := slices.IndexFunc(q.Off, func(o Off) bool { return o.Key == d.Key }); sd > 0 && same >= 0 {
				q.Off[same].SD = Length(math.Hypot(q.Off[same].SD.MM(), sd.MM())) // of a case in another
			} else if sd > 0 {
				q.Off = append(q.Off, Off{d.Key, d.PlusMinus, sd})
			}
		}
		return q
	}
	for i, m := range c.Made {
		out = append(out, length(Quantity{Key: m.Key, Name: m.Name, When: m.When, Sort: Size, Set: m.Set}, len(c.Gaps)+i))
	}
	for i, g := range c.Gaps {
		if !g.Decides {
			continue
		}
		q := Quantity{Key: PlayKey(g), Name: strings.TrimSpace("play in " + g.Dimension + " " + g.Where), When: "when all is dry, with the book in it",
			Sort: Play, Tight: g.Tight, Loose: g.Loose}
		if g.Volume != "" {
			q.Name += " of " + g.Volume
		}
		out = append(out, length(q, i))
	}
	return slices.Clip(out)
}

// Counting returns what counts of several readings: of play the smallest, since that is
// where a book sticks; of all else their mean. There must be one.
func Counting(of Sort, readings []Length) Length {
	if of == Play {
		return slices.Min(readings)
	}
	var sum Length
	for _, r := range readings {
		sum += r
	}
	return sum / Length(len(readings))
}

// Slip tells whether a reading of the quantity is taken for a slip.
func (q Quantity) Slip(is Length) bool {
	return Slip(q.Sort, q.Expected.Expected(), q.Expected.StandardDeviation(), is)
}

// Slip tells whether a length is so far from what was expected, a mean and a standard
// deviation, that it is taken for a slip of reading or writing: many times what a careless
// hand is off (common practice, no source).
func Slip(of Sort, mean, sd, is Length) bool {
	least := Length(3)
	if of == Layer {
		least = max(0.2, mean/3)
	}
	return (is - mean).Abs() > max(least, 8*sd)
}
