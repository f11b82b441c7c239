// Package recordfile reads and writes the record of a case: what was measured of it, each
// time beside what was planned then, so that a job file that is changed later spoils
// nothing. It is TOML that is only ever added to; it opens no files.
package recordfile

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/wording"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Version is that of the files that are written; all up to it are read.
const Version = 1

// MostBytes is the size of the largest record that is read.
const MostBytes = 1 << 20

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

// file is all of a record.
type file struct {
	head
	Measured []block `toml:"measured"`
	Done     []done  `toml:"done"`
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
	add := func(v any) error {
		text, err := toml.Marshal(v)
		b.WriteByte('\n')
		b.Write(text)
		return err
	}
	for _, d := range did {
		if err := add(map[string]any{"done": []done{{d, date}}}); err != nil {
			return nil, err
		}
	}
	for _, r := range readings {
		if err := add(map[string]any{"measured": []block{blockOf(r.Of, r.All, date)}}); err != nil {
			return nil, err
		}
	}
	return b.Bytes(), nil
}

// about is what a record says of itself.
const about = `# What was measured of a case, each time beside what was planned then. forel record
# adds to it, forel lessons learns from it. A slip is put right in readings; of several
# of one key the last counts. Lengths are in millimetres; "9 1/4 in" is read too.
# within: what 19 of 20 cases were expected to keep between; mean, deviation: of the same.
# counts: how much it grows with each layer and each cut length; layers: the standard
# deviation of one layer; off: that of each uncertainty, beside its plus_minus.

`

var table = regexp.MustCompile(`^\s*\[\[\s*([a-z]+)\s*\]\]`)

// Parse reads a record; source is its name. An error is of type jobfile.Issues: all that
// is wrong.
func Parse(source string, data []byte) (Record, error) {
	r := Record{Source: source}
	wrong := func(line int, key, reason, fix string) jobfile.Issue {
		return jobfile.Issue{Source: source, Line: line, Problem: job.Problem{Key: key, Reason: reason, Fix: fix}}
	}
	if len(data) > MostBytes {
		return r, jobfile.Issues{wrong(0, "", "larger than 1 MiB", "give a record that forel record wrote")}
	}
	var v struct {
		Version int `toml:"version"`
	}
	if err := toml.Unmarshal(data, &v); err == nil && v.Version > Version {
		return r, jobfile.Issues{wrong(0, "version", fmt.Sprintf("%d is newer than this forel, which reads up to %d", v.Version, Version), "use a newer forel")}
	}
	var f file
	dec := toml.NewDecoder(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff")))).DisallowUnknownFields()
	if err := dec.Decode(&f); err != nil {
		var bad jobfile.Issues
		var strict *toml.StrictMissingError
		var at *toml.DecodeError
		switch {
		case errors.As(err, &strict):
			for i := range strict.Errors {
				line, _ := strict.Errors[i].Position()
				bad = append(bad, wrong(line, strings.Join(strict.Errors[i].Key(), "."), "unknown key", "leave it out"))
			}
		case errors.As(err, &at):
			line, _ := at.Position()
			bad = append(bad, wrong(line, strings.Join(at.Key(), "."), strings.TrimPrefix(at.Error(), "toml: "), "write it as forel record does"))
		default:
			bad = append(bad, wrong(0, "", wording.OneLine(strings.TrimPrefix(err.Error(), "toml: ")), "write it as forel record does"))
		}
		return r, bad
	}
	r.Title, r.Kind = f.Title, f.Kind
	var bad jobfile.Issues
	if f.Version < 1 {
		bad = append(bad, wrong(0, "version", "missing", "write version = 1 at the top"))
	}
	lines := map[string][]int{}
	changed := 0 // how many tables of what was measured stand before something was done
	for n, line := range strings.Split(string(data), "\n") {
		if m := table.FindStringSubmatch(line); m != nil {
			if m[1] == "done" && len(lines["done"]) == 0 {
				changed = len(lines["measured"])
			}
			lines[m[1]] = append(lines[m[1]], n+1)
		}
	}
	if len(f.Done) == 0 {
		changed = len(f.Measured)
	}
	for i, b := range f.Measured {
		line := 0
		if i < len(lines["measured"]) {
			line = lines["measured"][i]
		}
		tell := func(key, reason, fix string) {
			bad = append(bad, wrong(line, fmt.Sprintf("measured[%d].%s", i+1, key), reason, fix))
		}
		t := Taken{Line: line, Changed: i >= changed, Date: b.Date, Mean: Length(b.Mean), SD: Length(b.SD)}
		t.Quantity = fit.Quantity{Key: b.Key, Name: wording.OneLine(b.What), Sort: fit.Sort(b.Sort), Planned: Length(b.Planned), Counts: b.Counts, Layers: map[string]Length{}}
		if b.Key == "" {
			tell("key", "missing", "say what was measured, such as \"play-height\"")
		}
		if t.Sort != fit.Layer && t.Sort != fit.Size && t.Sort != fit.Play {
			tell("sort", wording.Quote(b.Sort)+" is not known", "give layer, size or play")
		}
		if len(b.Within) != 2 || !(b.Within[0] <= b.Within[1]) {
			tell("within", "not two lengths", "give the smallest and the largest that were expected, such as [1.2, 2.4]")
		} else {
			t.Low, t.High = Length(b.Within[0]), Length(b.Within[1])
		}
		if !(b.SD >= 0 && b.SD < 1e3) {
			tell("deviation", "not a standard deviation", "give one in millimetres, zero or more")
		}
		if !(math.Abs(b.Planned) < 1e4) || !(math.Abs(b.Mean) < 1e4) {
			tell("planned", "out of range", "give what was planned, in millimetres")
		}
		for _, all := range []map[string]float64{b.Counts, b.Layers, b.Off, b.PlusMinus} {
			for k, v := range all {
				if !(math.Abs(v) < 1e3) {
					tell("counts", "out of range at "+wording.Quote(k), "leave what forel record wrote")
				}
			}
		}
		for k, v := range b.Layers {
			t.Layers[k] = Length(v)
		}
		for k, v := range b.Off {
			t.Off = append(t.Off, fit.Off{Key: prefix + k, SD: Length(v), PlusMinus: Length(b.PlusMinus[k])})
		}
		sortOff(t.Off)
		if b.Tight != nil {
			t.Tight = Length(*b.Tight)
		}
		if b.Loose != nil {
			t.Loose = Length(*b.Loose)
		}
		if len(b.Readings) == 0 {
			tell("readings", "missing", "give what was measured, such as [227.8, 227.5]")
		}
		for _, v := range b.Readings {
			l, err := lengthOf(v)
			if err != nil {
				tell("readings", err.Error(), "give lengths in millimetres, or with a unit in quotes")
				continue
			}
			t.Readings = append(t.Readings, l)
		}
		r.Taken = append(r.Taken, t)
	}
	if bad != nil {
		return r, bad
	}
	return r, nil
}
