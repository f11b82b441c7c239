package job

import (
	"fmt"

	"forel/geometry"
)

// AsBuilt is a part of a case that stands on the bench, measured outside. A dimension
// without a reading is as planned.
type AsBuilt struct{ Height, Width, Thickness Readings }

// AsBuiltKeys are the keys of its dimensions.
var AsBuiltKeys = [3]string{"as_built.height", "as_built.width", "as_built.thickness"}

// builtBy is how far a part may measure otherwise than planned before it is told of
// (common practice, no source).
const builtBy Length = 1

// Settings returns the settings of what was measured: what each is, and the most that it
// is. A wall is added to the limits of a book, so that no case of a book that is allowed is
// refused.
func (a *AsBuilt) Settings(what [3]string, most Size) Settings {
	return Settings{
		ReadingsOf(AsBuiltKeys[0], what[0], 40, most.Height.MM(), &a.Height),
		ReadingsOf(AsBuiltKeys[1], what[1], 20, most.Width.MM(), &a.Width),
		ReadingsOf(AsBuiltKeys[2], what[2], 3, most.Thickness.MM(), &a.Thickness),
	}
}

// Each returns the readings of height, width and thickness.
func (a AsBuilt) Each() [3]Readings { return [3]Readings{a.Height, a.Width, a.Thickness} }

// Measured tells whether anything was.
func (a AsBuilt) Measured() bool { return len(a.Height)+len(a.Width)+len(a.Thickness) > 0 }

// Beyond returns what was measured beyond what was planned; 0 where nothing was.
func (a AsBuilt) Beyond(planned Size) (more Size) {
	for i, at := range []*Length{&more.Height, &more.Width, &more.Thickness} {
		if r := a.Each()[i]; len(r) > 0 {
			*at = r.Largest() - planned.Each()[i]
		}
	}
	return more
}

// Suspects tells where a part measures otherwise than planned. names are those of its
// dimensions; means tells what it means of one of them, by its number, that is off.
func (a AsBuilt) Suspects(part string, names [3]string, planned Size, unit geometry.Unit, means func(dimension int, off Length) string) (ps Problems) {
	for i, off := range a.Beyond(planned).Each() {
		if off.Abs() <= builtBy {
			continue
		}
		than := "more"
		if off < 0 {
			than = "less"
		}
		ps = append(ps, Problem{Key: AsBuiltKeys[i], Of: "the " + names[i] + " of the " + part + " as built", Value: Show(a.Each()[i].Largest(), unit, 0),
			Reason: fmt.Sprintf("is %s %s than planned", Show(off.Abs(), unit, 0), than), Fix: means(i, off)})
	}
	return ps
}
