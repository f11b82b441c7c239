package plan

import (
	"cmp"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/wording"
)

// Joined returns the plan of two things of which one stands in the other, made one
// after the other: first and then name them, such as "chemise" and "slipcase". The
// names of their pieces and of their faces must differ; the chain is left for the
// caller, see Nested. What is borne is the outer one's.
func Joined(inner, outer Plan, first, then string) Plan {
	in, out := inner.of(first), outer.of(then)
	p := Plan{
		Title:     outer.Title,
		Kind:      inner.Kind + " and " + outer.Kind,
		Shows:     outer.Shows,
		Content:   inner.Content,
		Pieces:    slices.Concat(in.Pieces, out.Pieces),
		Faces:     slices.Concat(in.Faces, out.Faces),
		Materials: slices.Concat(in.Materials, out.Materials),
		Remarks:   slices.Concat(in.Remarks, out.Remarks),
		Runs:      in.Runs + "; " + out.Runs,
		Warnings:  slices.Concat(in.Warnings, out.Warnings),
		Mistaken:  slices.Concat(in.Mistaken, out.Mistaken),
		Equals:    slices.Concat(in.Equals, out.Equals),
		Batches:   slices.Concat(in.batches(first), out.batches(then)),
		InParts:   cmp.Or(in.InParts, out.InParts),
		Worksheet: slices.Concat(in.Worksheet, out.Worksheet),
		Steps:     slices.Concat(in.Steps, out.Steps),
		Finished:  Care{Good: slices.Concat(in.Finished.Good, out.Finished.Good), Bad: slices.Concat(in.Finished.Bad, out.Finished.Bad)},
		Proof:     in.Proof.beside(out.Proof, first, then),
		Gauges:    slices.Concat(in.Gauges, out.Gauges),
		Load:      outer.Load,
	}
	for _, t := range slices.Concat(in.Tools, out.Tools) {
		if !slices.Contains(p.Tools, t) {
			p.Tools = append(p.Tools, t)
		}
	}
	// What it is for is the inner one's, what it measures outside the outer one's.
	for _, f := range in.Facts {
		if f.Key != Contents {
			f.Key = keyed(first, f.Key)
		}
		p.Facts = append(p.Facts, f)
	}
	for _, f := range out.Facts {
		if f.Key == Contents {
			f.Key = keyed(then, f.Key)
		}
		p.Facts = append(p.Facts, f)
	}
	return p
}

// batches returns the batches of a plan: of one that is made at once, all of it by this name.
func (p Plan) batches(name string) []Batch {
	if len(p.Batches) > 0 {
		return p.Batches
	}
	b := Batch{Name: name}
	for _, q := range p.Pieces {
		b.Pieces = append(b.Pieces, q.Name)
	}
	return []Batch{b}
}

// keyed returns the key of a fact of one of two things, for programs.
func keyed(name, key string) string {
	return strings.NewReplacer(" ", "_", "-", "_").Replace(name) + "_" + key
}

// of returns the plan with the name of its part before all that is told of it.
func (p Plan) of(name string) Plan {
	before := name + ": "
	said := func(all []stage.Say) []stage.Say {
		return geometry.Each(all, func(s stage.Say) stage.Say {
			return stage.Say{Text: wording.Capital(before) + wording.Lower(s.Text), Lengths: s.Lengths}
		})
	}
	p.Remarks = geometry.Each(p.Remarks, func(s Remark) Remark { return Remark{Text: before + s.Text, Lengths: s.Lengths} })
	p.Warnings = geometry.Each(p.Warnings, func(s string) string { return before + s })
	p.Facts = geometry.Each(p.Facts, func(f Fact) Fact {
		if f.Key != Contents {
			f.Name = before + f.Name
		}
		return f
	})
	p.Runs = before + p.Runs
	p.Pieces = geometry.Each(p.Pieces, func(q geometry.Piece) geometry.Piece {
		q.Rule.Part = name
		return q
	})
	p.Worksheet = geometry.Each(p.Worksheet, func(g Group) Group {
		g.Head, g.Part = wording.Capital(before)+wording.Lower(g.Head), name
		return g
	})
	p.Gauges = geometry.Each(p.Gauges, func(g Gauge) Gauge {
		g.Name = wording.Capital(before) + wording.Lower(g.Name)
		return g
	})
	p.Steps = geometry.Each(p.Steps, func(s Step) Step {
		s.Title = wording.Capital(before) + wording.Lower(s.Title)
		s.Checks = geometry.Each(s.Checks, func(c Check) Check {
			c.Name = before + c.Name
			return c
		})
		return s
	})
	if len(p.Steps) > 0 && p.Steps[0].Short.Text == "" { // where its work begins in a list of all
		p.Steps[0].Short = stage.Words(strings.ReplaceAll(p.Steps[0].Title, "%", "%%") + ".")
	}
	p.Finished = Care{Good: said(p.Finished.Good), Bad: said(p.Finished.Bad)}
	return p
}

// apartBy is how far from each other two things stand in the picture of both, in
// parts of the height.
const apartBy = 0.2

// beside returns the proof of two things, the first one's standing below the other,
// so that lines to their names do not cross.
func (p Proof) beside(o Proof, first, then string) Proof {
	low, high := o.bounds()
	mine, top := p.bounds()
	planes := 0
	for _, f := range o.Faces {
		planes = max(planes, f.Plane+1)
	}
	p = p.moved(space.Vec{X: low.X - mine.X, Y: low.Y - (high.Y-low.Y)*apartBy - top.Y, Z: low.Z - mine.Z}, planes)
	facts := func(all []Fact, name string) []Fact {
		return geometry.Each(all, func(f Fact) Fact {
			f.Key, f.Name = keyed(name, f.Key), name+": "+f.Name
			return f
		})
	}
	spreads := func(all []Spread, name string) []Spread {
		return geometry.Each(all, func(s Spread) Spread {
			s.Bookmark = wording.Capital(name) + ": " + wording.Lower(s.Bookmark)
			s.Head = wording.Capital(name) + ": " + wording.Lower(s.Head)
			return s
		})
	}
	both := func(a, b, between string) string {
		if a == "" || b == "" {
			return cmp.Or(a, b)
		}
		return a + between + b
	}
	remarks := func(all []string, name string) []string {
		return geometry.Each(all, func(s string) string { return name + ": " + s })
	}
	return Proof{
		Faults:     slices.Concat(p.Faults, o.Faults),
		Shows:      first + ": " + p.Shows + "; " + then + ": " + o.Shows,
		Means:      both(p.Means, o.Means, "; or "),
		Stuff:      o.Stuff,
		From:       o.From,
		Layers:     both(p.Layers, o.Layers, " "),
		Remarks:    slices.Concat(remarks(p.Remarks, first), remarks(o.Remarks, then)),
		Sheets:     slices.Concat(p.Sheets, o.Sheets),
		Faces:      slices.Concat(p.Faces, o.Faces),
		Solids:     slices.Concat(p.Solids, o.Solids),
		Clearances: slices.Concat(facts(p.Clearances, first), facts(o.Clearances, then)),
		Tightest:   both(p.Tightest, o.Tightest, " "),
		Folded:     slices.Concat(facts(p.Folded, first), facts(o.Folded, then)),
		Spreads:    slices.Concat(spreads(p.Spreads, first), spreads(o.Spreads, then)),
		View:       o.View,
		Notes:      slices.Concat(p.Notes, o.Notes),
		Closeup:    o.Closeup,
	}
}

// bounds returns the corners of the box about the boards.
func (p Proof) bounds() (low, high space.Vec) {
	for i, s := range p.Solids {
		for k, v := range s.Corners() {
			if i == 0 && k == 0 {
				low, high = v, v
			}
			low = space.Vec{X: min(low.X, v.X), Y: min(low.Y, v.Y), Z: min(low.Z, v.Z)}
			high = space.Vec{X: max(high.X, v.X), Y: max(high.Y, v.Y), Z: max(high.Z, v.Z)}
		}
	}
	return low, high
}

// moved returns the proof moved by a step, the numbers of its planes raised.
func (p Proof) moved(by space.Vec, planes int) Proof {
	p.Faces, p.Solids, p.Notes = slices.Clone(p.Faces), slices.Clone(p.Solids), slices.Clone(p.Notes)
	for i := range p.Faces {
		p.Faces[i].Frame.O = p.Faces[i].Frame.O.Add(by)
		p.Faces[i].Plane += planes
	}
	for i := range p.Solids {
		p.Solids[i].Frame.O = p.Solids[i].Frame.O.Add(by)
	}
	for i := range p.Notes {
		p.Notes[i].At = p.Notes[i].At.Add(by)
	}
	return p
}
