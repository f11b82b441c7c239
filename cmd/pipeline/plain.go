package pipeline

import (
	"context"

	"forel/cmd/jobfile"
)

// Plain makes of a job and what it takes from its shop one job file, as the report.
type Plain struct{ Job }

// Make makes the text.
func (p Plain) Make(context.Context) (r Result, err error) {
	if _, err = p.read(&r, nil); err != nil {
		return r, err
	}
	shop, _ := p.shop(new(jobfile.Issues)) // what is wrong with it is told
	f := File{}
	if len(p.Files) > 0 {
		f = p.Files[0]
	}
	if p.Example {
		return r, refuse(nil, "--example has nothing of a shop", "forel new FILE --full --example writes it")
	}
	r.Report, err = shop.Plain(f.Name, f.Data, p.Flags...)
	return r, err
}
