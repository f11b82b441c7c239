package pipeline

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/render/offcuts"
)

// takingOf returns what a plan takes from a shop and leaves there.
func takingOf(shop *jobfile.Shop, p bench.Plan, date string) jobfile.Taking {
	var titles []string
	for _, j := range p.Jobs {
		titles = append(titles, wording.OneLine(j.Title()))
	}
	t := jobfile.Taking{By: titles[0], Date: date}
	if len(titles) > 1 {
		t.By += fmt.Sprintf(" and %d more", len(titles)-1)
	}
	for _, g := range p.Groups {
		for _, u := range g.Used {
			if s := g.Stock[u.Stock]; s.Pile != "" {
				t.Sheets = append(t.Sheets, jobfile.Used{Pile: s.Pile, Sheets: u.Sheets, Length: u.Length})
			}
		}
		if !shop.Has(g.Name) {
			continue
		}
		for _, sh := range g.Sheets {
			grain := cmp.Or(g.Stock[sh.Stock].Grain, geometry.GrainHeight)
			for _, o := range sh.Offcuts {
				if o.Kept() {
					t.Kept = append(t.Kept, jobfile.Kept{Material: g.Name, Width: o.Clean.Width(), Height: o.Clean.Height(), Grain: grain, Runs: g.Material.Direction(), From: fmt.Sprintf("%s of the plan", o.Name)})
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
			fmt.Fprintf(&b, "  offcut %d: %s, %s × %s (%s)\n", k.Number, wording.OneLine(k.Material), r.PrettyNumber(k.Width), r.Pretty(k.Height), k.From)
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
		out = append(out, offcuts.Label{Number: fmt.Sprint(k.Number), Material: k.Material, Size: r.PrettyNumber(k.Width) + " × " + r.Pretty(k.Height),
			Runs: k.Runs, Grain: k.Grain, Wide: k.Width > k.Height, From: strings.Join(slices.DeleteFunc([]string{"from " + t.By, k.From, t.Date}, func(s string) bool { return s == "" }), ", ")})
	}
	return out
}
