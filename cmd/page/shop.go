package page

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry/wording"
)

// Offer is what the shop has for one thing that a job is made from.
type Offer = jobfile.Offer

// job returns the job file of a request.
func (q Request) job() pipeline.File {
	return pipeline.File{Name: q.Source, Data: []byte(q.Text)}
}

// shop returns the shop file of a request; without a name there is none.
func (q Request) shop() (f pipeline.File) {
	if q.Shop != "" {
		f = pipeline.File{Name: jobfile.ShopName, Data: []byte(q.Shop)}
	}
	return f
}

// readShop reads the shop file of a request; nil: there is none. Beside an error it has what
// is sound.
func (q Request) readShop() (*jobfile.Shop, error) {
	if q.Shop == "" {
		return nil, nil
	}
	return jobfile.ReadShop(jobfile.ShopName, []byte(q.Shop))
}

// shopOf tells of the shop file: what it has, what it offers for each material, and what is
// wrong with it.
func (a *Response) shopOf(q Request) error {
	shop, err := q.readShop()
	a.Offers = shop.Offers()
	if shop != nil {
		a.Report = string(shop.List())
	}
	return err
}

// addToShop adds a material of the job to the shop file; Name is the key of its thickness.
func (a *Response) addToShop(q Request) error {
	shop, err := q.readShop()
	if err != nil {
		return err
	}
	data, err := shop.Added(q.Source, []byte(q.Text), q.Name)
	if err == nil {
		a.Shop = new(string(data))
	}
	return err
}

// adopt sets habits in the shop file, and tells what each was before and where this job says
// otherwise.
func (a *Response) adopt(q Request) error {
	shop, err := q.readShop()
	if err != nil {
		return err
	}
	data, err := shop.Adopted(q.Changes)
	if err != nil {
		return err
	}
	a.Shop = new(string(data))
	own := map[string]string{}
	if state, err := jobfile.Read(q.Source, []byte(q.Text)); err == nil {
		own = state.Values
	}
	for _, c := range q.Changes {
		was := shop.Habit(c.Key)
		said := c.Key + " is " + c.Value + " in your shop now; "
		switch {
		case was == "":
			said += "it had none before"
		case was == c.Value:
			said += "so it was before"
		default:
			said += "it was " + was
		}
		if typed := own[c.Key]; typed != "" && typed != c.Value {
			said += ". This case says " + typed + " itself, which goes before"
		}
		a.Notes = append(a.Notes, wording.Capital(onPage(wording.Printable(said)))+".")
	}
	return nil
}

// advise tells what was advised.
func (a *Response) advise(all []pipeline.Advised) {
	for _, one := range all {
		a.Advised = append(a.Advised, Mend{Label: wording.Capital(one.What), Sets: one.Sets, Habit: one.Habit})
	}
}

// untake takes the last taking of the shop file back.
func (a *Response) untake(ctx context.Context, q Request) error {
	r, err := pipeline.Stock{Job: pipeline.Job{Source: pipeline.Source{Shop: q.shop()}}, Ledger: pipeline.Ledger{Undo: true}}.Make(ctx)
	a.keeps(r)
	return err
}

// keeps tells what is to be kept beside the case from now on.
func (a *Response) keeps(r pipeline.Result) {
	if r.Shop != nil {
		a.Shop = new(string(r.Shop.Data))
	}
}

// beside gives a command the record that stands beside the job, or the records of all cases.
func (q Request) beside(c pipeline.Command) {
	var old *pipeline.File
	if q.Record != "" {
		old = &pipeline.File{Name: pipeline.RecordName(q.Source), Data: []byte(q.Record)}
	}
	switch c := c.(type) {
	case *pipeline.Record:
		c.Old = old
	case *pipeline.Rescue:
		c.Old = old
	case *pipeline.Lessons:
		c.Files = filesOf(q.Records, "")
		if q.Text != "" {
			c.For = new(q.job())
		}
	}
}

// filesOf returns files of cases as messages call them: no two alike, and none like one that
// is taken.
func filesOf(all []Text, taken string) (out []pipeline.File) {
	for i, t := range all {
		name := cmp.Or(wording.OneLine(t.Name), fmt.Sprintf("case %d", i+1)) + ".toml"
		alike := func(f pipeline.File) bool { return f.Name == name }
		for n := 2; name == taken || name == jobfile.ShopName || slices.ContainsFunc(out, alike); n++ {
			name = fmt.Sprintf("%s (%d).toml", strings.TrimSuffix(name, ".toml"), n)
		}
		out = append(out, pipeline.File{Name: name, Data: []byte(t.Text)})
	}
	return out
}

// ofOther makes what is wrong with another case no fault of a blank of this one.
func (f *Fault) ofOther(others []pipeline.File) {
	if !slices.ContainsFunc(others, func(o pipeline.File) bool { return o.Name == f.source }) {
		return
	}
	if f.Key != "" {
		f.Says = onPage(f.Key) + ": " + f.Says
	}
	f.Says = "of " + "“" + strings.TrimSuffix(f.source, ".toml") + "”: " + f.Says
	f.Key, f.Line, f.Mend = "", 0, nil
}

// ofShop makes what is wrong in the shop file no fault of a blank of the job.
func (f *Fault) ofShop(source string) {
	if source != jobfile.ShopName {
		return
	}
	if f.Key != "" {
		f.Says = f.Key + ": " + f.Says
	}
	at := "in your shop"
	if f.Line > 0 {
		at += fmt.Sprintf(", line %d", f.Line)
	}
	f.Says = at + ": " + f.Says
	f.Key, f.Shop = "", true
}
