package plan

import (
	"forel/geometry"
	"forel/geometry/job"
)

// Limits says what is called too tight and too loose of a case for books so thick
// together, for all outputs alike: without capital and full stop. Where says of the
// place where the book is held, such as "at the mouth".
func Limits(c job.Common, thick Length, where string) Remark {
	f := c.Limits
	return AsSet(Say("too tight: under %s in height or thickness "+where+", or a spine that stands out at the mouth; too loose: over %s in height or %s in thickness "+where,
		f.Tight, f.LooseHeight, f.LooseBeside(thick)), c.Unit)
}

// AsSet returns words with each length written as a maker would set it, in all
// outputs.
func AsSet(r Remark, u geometry.Unit) Remark {
	return Say(r.In(func(l Length) string { return geometry.Settable(l, u) }))
}
