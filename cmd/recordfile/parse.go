package recordfile

import (
	"cmp"
	"slices"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/wording"
)

// keys are all that a record has.
var keys = []string{
	"title", "kind", "units",
	"measured.key", "measured.what", "measured.sort", "measured.date", "measured.readings", "measured.planned", "measured.within", "measured.mean",
	"measured.deviation", "measured.tight", "measured.loose", "measured.counts", "measured.layers", "measured.off", "measured.plus_minus",
	"done.what", "done.date",
}

// Parse reads a record; source is its name. An error is of type jobfile.Issues: all that
// is wrong. Beside it the Record holds no more than its name.
func Parse(source string, data []byte) (Record, error) {
	none := Record{Source: source}
	all, err := jobfile.ReadTables(source, "record", Version, keys, data)
	if err != nil {
		return none, err
	}
	top := all.Top()
	if !top.Has("version") {
		top.Refuse("version", "missing", "write version = 1 at the top")
	}
	top.Choice("units", "lengths of a record are millimetres, those in another unit have it with them", geometry.MM.String())
	r := Record{Source: source, Title: top.Text("title"), Kind: top.Text("kind")}
	mended := 0 // the line at which something was first done to the case
	for _, d := range all.Each("done") {
		mended = cmp.Or(mended, d.Line)
		d.Text("what")
		d.Date("date")
	}
	for _, m := range all.Each("measured") {
		t := taken(m)
		t.Changed = mended > 0 && m.Line > mended
		r.Taken = append(r.Taken, t)
	}
	if err := all.Err(); err != nil {
		return none, err
	}
	return r, nil
}

// taken reads a length that was taken down.
func taken(m jobfile.Table) Taken {
	length := func(key, what string) Length {
		return Length(m.Number(key, what+", in millimetres", -mostLength.MM(), mostLength.MM()))
	}
	lengths := func(key, what string) []Length { return m.Lengths(key, what, -mostLength, mostLength) }
	numbers := func(key, what string) map[string]float64 { return m.Numbers(key, what, -mostNumber, mostNumber) }
	t := Taken{Line: m.Line, Date: m.Date("date"), Mean: length("mean", "the mean that was expected"),
		SD: Length(m.Number("deviation", "the standard deviation that was expected, in millimetres", 0, mostLength.MM())), Readings: lengths("readings", "what was measured")}
	t.Quantity = fit.Quantity{Key: m.Text("key"), Name: wording.OneLine(m.Text("what")), Sort: fit.Sort(m.Choice("sort", "what was measured", string(fit.Layer), string(fit.Size), string(fit.Play))),
		Planned: length("planned", "what it should be"), Tight: length("tight", "less is too tight"), Loose: length("loose", "more is too loose"),
		Counts: numbers("counts", "how much it grows with each"), Layers: map[string]Length{}}
	if t.Key == "" {
		m.Refuse("key", "missing", `say what was measured, such as "play-height"`)
	}
	needed := []string{"sort", "planned", "mean", "deviation", "within", "readings"}
	if t.Sort == fit.Play {
		needed = append(needed, "tight", "loose")
	}
	for _, key := range needed {
		if !m.Has(key) {
			m.Refuse(key, "missing", "put back what forel record wrote, or take the whole [[measured]] out")
		}
	}
	within := lengths("within", "what was expected")
	if len(within) == 2 && within[0] <= within[1] {
		t.Low, t.High = within[0], within[1]
	} else if m.Has("within") {
		m.Refuse("within", "not two lengths", "give the smallest and the largest that were expected, such as [1.2, 2.4]")
	}
	for name, v := range numbers("layers", "the standard deviation of a layer, in millimetres") {
		t.Layers[name] = Length(v)
	}
	plusMinus := numbers("plus_minus", "its plus or minus, in millimetres")
	for name, v := range numbers("off", "its standard deviation, in millimetres") {
		t.Off = append(t.Off, fit.Off{Key: prefix + name, SD: Length(v), PlusMinus: Length(plusMinus[name])})
	}
	slices.SortFunc(t.Off, func(a, b fit.Off) int { return cmp.Compare(a.Key, b.Key) })
	return t
}

// mostNumber is more than any count, and than any error in millimetres.
const mostNumber = 1e3
