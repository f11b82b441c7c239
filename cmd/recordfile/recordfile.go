// Package recordfile reads and writes the record of a case: what was measured of it, each
// time beside what was planned then, so that a job file that is changed later spoils
// nothing. It is TOML that is only ever added to; it opens no files.
package recordfile

import (
	"bytes"
	"math"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"forel/geometry"
	"forel/geometry/fit"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Version is that of the files that are written; all up to it are read.
const Version = 1

// Record is a record that was read.
type Record struct {
	Source string // its name
	Title  string
	Kind   string // what is made
	Taken  []Taken
}

// Taken is a quantity as it was measured once.
type Taken struct {
	fit.Quantity
	Low, High Length // what 19 of 20 cases were expected to keep between
	Mean, SD  Length // of what was expected
	Date      string // empty: not told
	Readings  []Length
	Line      int  // where it stands
	Changed   bool // something was done to the case before, such as paring
}

// Slip tells whether a reading is so far off that it is taken for a slip.
func (t Taken) Slip() bool {
	return slices.ContainsFunc(t.Readings, func(l Length) bool { return fit.Slip(t.Sort, t.Mean, t.SD, l) })
}

// Last returns what was taken of a quantity last.
func (r Record) Last(key string) (last Taken, ok bool) {
	for _, t := range r.Taken {
		if t.Key == key {
			last, ok = t, true
		}
	}
	return last, ok
}

// head is what a record begins with.
type head struct {
	Version int    `toml:"version"`
	Title   string `toml:"title"`
	Kind    string `toml:"kind"`
	Units   string `toml:"units"`
}

// block is one quantity as it was taken down.
type block struct {
	Key       string             `toml:"key"`
	What      string             `toml:"what"`
	Sort      string             `toml:"sort"`
	Date      string             `toml:"date,omitempty"`
	Readings  []any              `toml:"readings"`
	Planned   float64            `toml:"planned"`
	Within    []float64          `toml:"within"`
	Mean      float64            `toml:"mean"`
	SD        float64            `toml:"deviation"`
	Tight     *float64           `toml:"tight,omitempty"`
	Loose     *float64           `toml:"loose,omitempty"`
	Counts    map[string]float64 `toml:"counts,inline"`
	Layers    map[string]float64 `toml:"layers,inline"`
	Off       map[string]float64 `toml:"off,inline"`
	PlusMinus map[string]float64 `toml:"plus_minus,inline"`
}

// done is something that was done to the case after it was made.
type done struct {
	What string `toml:"what"`
	Date string `toml:"date,omitempty"`
}

// rounded writes a length to a ten-thousandth of a millimetre.
func rounded(l Length) float64 { return math.Round(l.MM()*1e4) / 1e4 }

// blockOf is what is written of a quantity.
func blockOf(q fit.Quantity, readings []Length, date string) block {
	low, high := q.Within()
	b := block{Key: q.Key, What: q.Name, Sort: string(q.Sort), Date: date, Planned: rounded(q.Planned), Within: []float64{rounded(low), rounded(high)},
		Mean: rounded(q.Expected.Expected()), SD: rounded(q.Expected.StandardDeviation()),
		Counts: map[string]float64{}, Layers: map[string]float64{}, Off: map[string]float64{}, PlusMinus: map[string]float64{}}
	for _, r := range readings {
		b.Readings = append(b.Readings, rounded(r))
	}
	for k, v := range q.Counts {
		b.Counts[k] = math.Round(v*1e4) / 1e4
	}
	for k, v := range q.Layers {
		b.Layers[k] = rounded(v)
	}
	for _, o := range q.Off {
		key := strings.TrimPrefix(o.Key, prefix)
		b.Off[key], b.PlusMinus[key] = rounded(o.SD), rounded(o.PlusMinus)
	}
	if q.Sort == fit.Play {
		tight, loose := rounded(q.Tight), rounded(q.Loose)
		b.Tight, b.Loose = &tight, &loose
	}
	return b
}

// prefix is left out of the keys of uncertainties.
const prefix = "uncertainty."

// Reading is a quantity with what was read of it.
type Reading struct {
	Of  fit.Quantity
	All []Length
}

// Added returns the text of a record with what was measured, and what was done before
// that, added at its end; old is what it was, nil where there is none yet.
func Added(old []byte, title, kind, date string, did []string, readings []Reading) ([]byte, error) {
	var b bytes.Buffer
	b.Write(old)
	if old == nil {
		b.WriteString(about)
		text, err := toml.Marshal(head{Version, title, kind, geometry.MM.String()})
		if err != nil {
			return nil, err
		}
		b.Write(text)
	} else if len(old) > 0 && old[len(old)-1] != '\n' {
		b.WriteByte('\n')
	}
	var more struct {
		Done     []done  `toml:"done,omitempty"`
		Measured []block `toml:"measured,omitempty"`
	}
	for _, d := range did {
		more.Done = append(more.Done, done{d, date})
	}
	for _, r := range readings {
		more.Measured = append(more.Measured, blockOf(r.Of, r.All, date))
	}
	text, err := toml.Marshal(more)
	b.WriteByte('\n')
	b.Write(text)
	return b.Bytes(), err
}

// about is what a record says of itself.
const about = `# What was measured of a case, each time beside what was planned then. forel record
# adds to it, forel lessons learns from it. A slip is put right in readings; of several
# of one key the last counts. Lengths are in millimetres; "9 1/4 in" is read too.
# within: what 19 of 20 cases were expected to keep between; mean, deviation: of the same.
# counts: how much it grows with each layer and each cut length; layers: the standard
# deviation of one layer; off: that of each uncertainty, beside its plus_minus.

`
