package pipeline

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/render/offcuts"
)

// Ledger is what a plan does to the ledger of the shop file.
type Ledger struct {
	Take bool   // take off the shop file what the plan uses, and put there what it leaves
	Undo bool   // take the last taking back instead of planning
	On   string // the day of the taking, as in 2026-11-28; "": that of the documents, if they have one
}

const offcutsName = "offcuts.pdf"

// wrong tells what is wrong with its settings.
func (l Ledger) wrong(s Source) (bad jobfile.Issues) {
	if l.Take && s.Shop.Name == "" {
		bad = refuse(bad, "--take without a shop file", "put "+jobfile.ShopName+" beside the job, or name it with --shop")
	}
	if l.On == "" {
		return bad
	}
	if _, err := time.Parse(time.DateOnly, l.On); err != nil {
		bad = append(bad, issue("--on", fmt.Sprintf("%.40q is no date", l.On), "write it as in 2026-11-28"))
	}
	return bad
}

// undo takes the last taking back. out tells whether files are asked for.
func (l Ledger) undo(s Source, out bool) (r Result, err error) {
	var bad jobfile.Issues
	switch {
	case l.Take:
		bad = refuse(bad, "both --take and --undo", "give one of them")
	case out:
		bad = refuse(bad, "--undo with --out", "leave --out out: nothing is laid out")
	case s.Shop.Name == "":
		bad = refuse(bad, "--undo without a shop file", "name it with --shop")
	}
	shop, _ := s.shop(&bad)
	if bad != nil {
		return r, bad
	}
	data, err := shop.Undo()
	if err != nil {
		return r, err
	}
	r.Shop = &File{s.Shop.Name, data}
	r.Report = fmt.Appendf(nil, "took the last taking back in %s: throw its labels away\n", s.Shop.Name)
	return r, nil
}

// lot is a plan that sheets are taken for.
type lot struct {
	plan   bench.Plan
	called string // in "1.1 of the plan"
}

// take takes from the shop what is planned. It returns the shop file as it is to be, what to
// say of it, and the labels of what is kept.
func (l Ledger) take(s Source, by string, lots []lot, r geometry.Rounding) (*File, []byte, []offcuts.Label, error) {
	shop, _ := s.shop(new(jobfile.Issues)) // what is wrong with it is told
	date := l.On
	if date == "" && !s.Date.IsZero() {
		date = s.Date.UTC().Format(time.DateOnly)
	}
	t := takingOf(shop, by, lots, date)
	data, err := shop.Take(t)
	if err != nil {
		return nil, nil, nil, err
	}
	return &File{s.Shop.Name, data}, tookText(s.Shop.Name, t, r), labelsOf(t, r), nil
}

// titlesOf names jobs: "Salt roads and 2 more".
func titlesOf(jobs []bench.Job) string {
	title := wording.OneLine(jobs[0].Title())
	if n := len(jobs) - 1; n > 0 {
		title += fmt.Sprintf(" and %d more", n)
	}
	return title
}

// takingOf returns what plans take from a shop and leave there.
func takingOf(shop *jobfile.Shop, by string, lots []lot, date string) jobfile.Taking {
	t := jobfile.Taking{By: by, Date: date}
	for _, l := range lots {
		for _, g := range l.plan.Groups {
			for _, u := range g.Used {
				if s := g.Stock[u.Stock]; s.Pile != "" {
					t.Uses(s.Pile, u.Sheets, u.Length)
				}
			}
			if !shop.Has(g.Name) {
				continue
			}
			for _, sh := range g.Sheets {
				grain := cmp.Or(g.Stock[sh.Stock].Grain, geometry.GrainHeight)
				for _, o := range sh.Offcuts {
					if o.Kept() {
						t.Kept = append(t.Kept, jobfile.Kept{Material: g.Name, Width: o.Clean.Width(), Height: o.Clean.Height(), Grain: grain, Runs: g.Material.Direction(), From: o.Name + " of " + l.called})
					}
				}
			}
		}
	}
	t.Kept = shop.Numbered(t.Kept)
	return t
}

// tookText tells what a taking does.
func tookText(shop string, t jobfile.Taking, r geometry.Rounding) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "\nTaken off %s: what the plan uses", shop)
	if len(t.Kept) > 0 {
		fmt.Fprintf(&b, "; kept there, each with its number on a label:\n")
		for _, k := range t.Kept {
			fmt.Fprintf(&b, "  offcut %d: %s, %s (%s)\n", k.Number, wording.OneLine(k.Material), r.PrettySize(k.Width, k.Height), k.From)
		}
	} else {
		b.WriteString("; it leaves nothing worth keeping\n")
	}
	b.WriteString("forel stock --undo takes it back, as long as none of it was used since\n")
	return []byte(b.String())
}

// labelsOf returns the labels of what is kept.
func labelsOf(t jobfile.Taking, r geometry.Rounding) (out []offcuts.Label) {
	for _, k := range t.Kept {
		out = append(out, offcuts.Label{Number: fmt.Sprint(k.Number), Material: k.Material, Size: r.PrettySize(k.Width, k.Height),
			Runs: k.Runs, Grain: k.Grain, Wide: k.Width > k.Height, From: strings.Join(slices.DeleteFunc([]string{"from " + t.By, k.From, t.Date}, func(s string) bool { return s == "" }), ", ")})
	}
	return out
}
