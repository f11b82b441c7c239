package pipeline

import (
	"slices"
	"strings"

	"forel/cmd/jobfile"
	"forel/geometry/wording"
)

// onlyOf is the setting of what alone is made.
func onlyOf(to *[]string, does string) Setting {
	return Setting{Name: "only", Usage: does + " only these `pieces`, materials or parts, such as cloth,paper, \"side paper\" or \"small tray\"", To: to, Commas: true}
}

// only leaves of each job the pieces that are asked for alone; no names leave all. It tells
// of names that none of the jobs has, where all jobs could be made.
func (j Job) only(names []string, all []worked) (bad jobfile.Issues) {
	if len(names) == 0 || len(all) == 0 {
		return nil
	}
	names = slices.Clone(names)
	for i, n := range names { // as in "board, Cloth"
		names[i] = strings.ToLower(wording.OneLine(n))
	}
	have := map[string]bool{}
	var give []string
	for i, w := range all {
		some, unknown := w.plan.Only(names)
		for _, n := range names {
			have[n] = have[n] || !slices.Contains(unknown, n)
		}
		for _, n := range w.plan.Onlys() {
			if !slices.Contains(give, n) {
				give = append(give, n)
			}
		}
		all[i].plan = some
	}
	if len(all) < len(j.Files) {
		return nil
	}
	whose := "of this case"
	if len(all) > 1 {
		whose = "of these cases"
	}
	for _, n := range names {
		if !have[n] {
			bad = refuse(bad, "--only: "+wording.Quote(n)+" is no material and no piece "+whose, "give some of "+strings.Join(give, ", "))
		}
	}
	return bad
}
