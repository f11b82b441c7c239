package onepiece

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
	"forel/geometry/space"
)

// split parts a blank along its folds and slits, and tells which folds don't part
// what they should.
func split(p geometry.Piece) (fold.Sheet, []foldup.Fault) {
	if err := polygon.Of(p.Outline.Flatten(sliver)).Validate(); err != nil {
		return fold.Sheet{}, []foldup.Fault{{Kind: foldup.Misfit, Piece: p.Name, What: "its outline is not simple: " + err.Error()}}
	}
	// The part with the most folds is the spine.
	s, _ := fold.Hang(p, space.Frame{U: space.Vec{X: 1}, V: space.Vec{Y: 1}}, func(r fold.Part) float64 { return float64(len(r.Joins)) })
	var faults []foldup.Fault
	for _, path := range p.Folds {
		for _, f := range path.Segments() {
			if !parts(s, f) {
				faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name,
					What: fmt.Sprintf("the fold from %s to %s does not part what it should: it ends short, or a slit beside it is missing or too short", place(f.From), place(f.To))})
			}
		}
	}
	return s, faults
}

// parts tells whether there are parts that meet along a fold, and none that lies on
// both sides of it.
func parts(s fold.Sheet, f geometry.Segment) bool {
	on := func(j fold.Join) bool { return j.From.Add(j.At).Mul(0.5).ToLine(f.From, f.To) < sliver }
	found := false
	for _, l := range s.Leaves {
		if slices.ContainsFunc(l.Idle, on) {
			return false
		}
		found = found || slices.ContainsFunc(l.Joins, on)
	}
	return found
}

// named gives a part the name of the regions whose rooms lie in it, with the
// face each is for and without; where there is none, its place.
func named(p geometry.Piece, outline []geometry.Point) (name, short string) {
	var names, shorts []string
	for _, r := range p.Regions {
		if c := r.Room.Center(); c.In(outline) {
			names, shorts = append(names, r.Name+" ("+string(r.Face)+")"), append(shorts, r.Name)
		}
	}
	if len(names) == 0 {
		at := "part at " + place(geometry.Polygon(outline...).Bounds().Center())
		return at, at
	}
	return strings.Join(names, " with "), strings.Join(shorts, " with ")
}

func place(p geometry.Point) string { return fmt.Sprintf("%.1f, %.1f mm", p.X.MM(), p.Y.MM()) }
