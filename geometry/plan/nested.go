package plan

import (
	"slices"
	"strings"

	"forel/geometry/job"
	"forel/geometry/tolerance"
)

// Nested returns the chain of a case within another, such as a chemise and the
// slipcase it stands in, both cut from one job: the book of the outer case is the
// inner one, as it comes out. What can be off of the inner case so moves the room
// in both.
//
// The inner chain must tell what the case measures outside. The outer chain must
// have one book, its links height, depth and thickness in that order, and be of
// a job that leaves nothing of that book unsure: it is not measured. innerName
// and outerName name the cases, such as "the chemise"; with returns the chain of
// the job with settings changed.
func Nested(inner, outer Chain, innerName, outerName string, with func([]job.Change) Chain) Chain {
	in, out := inner.named(innerName), outer.named(outerName)
	books := out.books()
	c := Chain{
		Unit:       in.Unit,
		Dimensions: append(in.Dimensions, out.Dimensions...),
		Gaps:       append(in.Gaps, out.Gaps...),
		Links:      in.Links,
		With:       with,
		Limits:     bothLimits(in.Limits, out.Limits, innerName, outerName),
	}
	for _, l := range out.Links {
		if !l.Book {
			c.Links = append(c.Links, l)
		}
	}
	c.Remedies, c.Early, c.Open = slices.Concat(in.Remedies, out.Remedies), in.Early+"; "+out.Early, out.Open
	inLinks, inGaps := len(in.Links), len(in.Gaps)
	c.Made = append(out.Made, in.Made...)
	c.Left = func(v []Length) []Length {
		left := in.Left(v[:inLinks])
		all := slices.Clone(v[inLinks:])
		for k, at := range books {
			all = slices.Insert(all, at, left[inGaps+k])
		}
		return slices.Concat(left[:inGaps], out.Left(all), left[inGaps:])
	}
	slopes := out.Sensitivities()
	for _, d := range in.Off {
		effects := d.Effects[:inGaps:inGaps]
		for g := range slopes {
			var sum tolerance.Effect
			for k, at := range books {
				sum = sum.Plus(d.Effects[inGaps+k].Times(slopes[g][at]))
			}
			effects = append(effects, sum)
		}
		d.Effects = append(effects, d.Effects[inGaps:]...)
		c.Off = append(c.Off, d)
	}
	for _, d := range out.Off {
		d.Effects = slices.Concat(make([]tolerance.Effect, inGaps), d.Effects, make([]tolerance.Effect, len(in.Made)))
		c.Off = append(c.Off, d)
	}
	for _, m := range slices.Concat(in.Mends, out.Mends) {
		if !slices.ContainsFunc(c.Mends, func(have Mend) bool { return slices.Equal(have.Sets, m.Sets) }) {
			c.Mends = append(c.Mends, m)
		}
	}
	return c
}

// bothLimits says what is called too tight and too loose of each of two cases.
func bothLimits(in, out Remark, innerName, outerName string) Remark {
	return Remark{Text: innerName + ": " + in.Text + "; " + outerName + ": " + out.Text, Lengths: slices.Concat(in.Lengths, out.Lengths)}
}

// books returns the indexes of the links that are of a book.
func (c Chain) books() []int {
	var out []int
	for i, l := range c.Links {
		if l.Book {
			out = append(out, i)
		}
	}
	return out
}

// named returns the chain with the name of its case beside all that another
// case's chain may have too.
func (c Chain) named(name string) Chain {
	of, beside := " of "+name, " ("+name+")"
	c.Dimensions, c.Gaps, c.Links, c.Off, c.Made = slices.Clone(c.Dimensions), slices.Clone(c.Gaps), slices.Clone(c.Links), slices.Clone(c.Off), slices.Clone(c.Made)
	for i := range c.Dimensions {
		c.Dimensions[i].Name += of
	}
	for i := range c.Gaps {
		c.Gaps[i].Dimension += of
	}
	for i, l := range c.Links {
		if !l.Book {
			c.Links[i].Name += of
		}
		if l.Varies != nil {
			v := *l.Varies
			v.Name += beside
			c.Links[i].Varies = &v
		}
	}
	c.Early = name + ": " + c.Early
	c.Remedies = slices.Clone(c.Remedies)
	for i, r := range c.Remedies {
		gives := map[string]float64{}
		for d, n := range r.Gives {
			gives[d+of] = n
		}
		c.Remedies[i].Gives, c.Remedies[i].Name, c.Remedies[i].Frees, c.Remedies[i].Without = gives, r.Name+of, slices.Clone(r.Frees), slices.Clone(r.Without)
		for _, names := range [][]string{c.Remedies[i].Frees, c.Remedies[i].Without} {
			for k := range names {
				names[k] += of
			}
		}
	}
	for i := range c.Made {
		c.Made[i].Key += "-" + strings.ReplaceAll(name, " ", "-")
	}
	for i := range c.Off {
		c.Off[i].Name += beside
	}
	return c
}
