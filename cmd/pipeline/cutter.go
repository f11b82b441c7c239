package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bed"
	"forel/render"
	"forel/render/cutter"
	"forel/render/hairline"
)

// Cutter lays the pieces of one job or many on the bed of a laser or a drag knife. What is
// set of the machine takes the place of what the first job says of it, which holds for all; a
// bare number is in the unit of that job.
type Cutter struct {
	Job
	Bed      string   // its size, width x height
	Only     []string // pieces, materials or parts that are laid out; none: all
	Kerf     string   // what the beam takes away
	Spacing  string   // between neighbouring pieces
	Margin   string   // kept from the bed's edges
	Grain    []string // of the stock on the bed: height, width or none; or of one material, such as board=width
	Tabs     string   // how many hold each piece in its sheet
	TabWidth string
	Creases  string   // the materials whose folds are creased: names, "all" or "none"; "": all but cloth, paper and corrugated board
	Line     string   // the width of all lines; a bare number is in millimetres
	Labels   bool     // names and lines to rule too, which are not cut
	Colour   []string // of a kind of line, as line=#rrggbb
	Effort   string   // how long to search: steps or a time; "": bedSteps
}

// bedSteps is how long a layout is searched for where nothing is asked for.
const bedSteps = 2000

// machineCare is said whenever drawings for a machine are made.
var machineCare = "take care: " + wording.Careful(wording.Machine)

// Make makes a drawing for each bed.
func (c Cutter) Make(ctx context.Context) (r Result, err error) {
	effort, bad := effortOf(c.Effort, bedSteps)
	theme, worse := themeOf(c.Colour, render.MachineTheme())
	line, worst := lineOf(c.Line)
	c.ofFirst = flagsOf(c.Settings())
	all, err := c.readAll(&r, slices.Concat(bad, worse, worst))
	setup, more := c.setup(all, c.Bed != "" || slices.ContainsFunc(Problems(err), c.ofBed))
	err = slices.Concat(Problems(err), more, c.only(c.Only, all)).Err()
	if err != nil { // all that the bed does not take is told too
		jobs, _ := onBed(all)
		return r, append(Problems(err), Problems(setup.Refused(jobs))...)
	}
	if c.Labels && len(all) > 1 { // else no title is among them
		for _, w := range all {
			r.Warnings = append(r.Warnings, unwritten(w)...)
		}
	}
	jobs, title := onBed(all)
	beds, err := bed.Lay(ctx, setup, jobs, effort)
	if err != nil {
		return r, Problems(err)
	}
	o := cutter.Options{Title: title, Labels: c.Labels, Theme: theme, Line: cmp.Or(line, all[0].file.Machine.Line)}
	for i, w := range all {
		if said := w.plan.InParts; said != "" {
			r.Notes = append(r.Notes, wording.OneLine(cmp.Or(w.plan.Title, fmt.Sprintf("job %d", i+1)))+": "+said+"; --only lays one part out: "+wording.Or(w.plan.Parts()))
		}
	}
	c.draw(&r, beds, setup, o)
	if err := c.bench(&r, beds, setup, o, all[0]); err != nil {
		return r, err
	}
	r.Wrote = namesOf(r.Files)
	r.Set = "cutter"
	return r, nil
}

// ofBed tells whether an issue is of what tells the size of the bed: a shop file, a machine.
func (c Cutter) ofBed(i jobfile.Issue) bool {
	return i.Source != "" && i.Source == c.Shop.Name || strings.Contains(i.Key, "machine.") || strings.HasPrefix(i.Key, "cutter")
}

// unwritten tells of letters of a job's title that labels in single strokes lack.
func unwritten(w worked) (out jobfile.Issues) {
	for _, r := range hairline.Lacks(w.plan.Title) {
		i := issue("title", "has no single strokes for the machine to write it: labels show a box in its place", "write it in other letters, or leave --labels out")
		i.Source, i.Value = w.name, fmt.Sprintf("%q", string(r))
		out = append(out, i)
	}
	return out
}

// setup returns how the first job is cut, with what is wrong with that; a bed is asked for
// where there is none, unless that is told already.
func (c Cutter) setup(all []worked, told bool) (s bed.Setup, bad jobfile.Issues) {
	s = bed.Default()
	if len(all) > 0 {
		s = all[0].file.Machine.Setup
		s.Unit = all[0].unit
	}
	if s.Width == 0 {
		if !told {
			bad = refuse(bad, "no bed", "give its size, such as --bed 600x300")
		}
		s.Width, s.Height = bed.MostSide, bed.MostSide // to hear of the rest
	}
	grain, more := c.grains()
	s.Grain, bad = grain, append(bad, more...)
	s.Creased, more = c.creased()
	bad = append(bad, more...)
	for _, f := range s.Faults() {
		f.Key = "--" + f.Key
		bad = append(bad, jobfile.Issue{Problem: f})
	}
	return s, bad
}

// grains reads the grain of all materials, and of some, which goes before it.
func (c Cutter) grains() (out map[geometry.Material]geometry.Grain, bad jobfile.Issues) {
	out = map[geometry.Material]geometry.Grain{}
	var flags []jobfile.Flag
	some := slices.Clone(c.Grain)
	slices.SortStableFunc(some, func(a, b string) int { return strings.Count(a, "=") - strings.Count(b, "=") })
	for _, text := range some {
		flag := fmt.Sprintf("--grain %.40q", text)
		name, direction, ofOne := strings.Cut(text, "=")
		if !ofOne {
			flag, name, direction = "--grain", "", text
		}
		key := strings.ToLower(strings.TrimSpace(name))
		flags = append(flags, jobfile.Flag{Name: strings.TrimSpace("--grain " + key), Key: key, Value: strings.ToLower(direction)})
		g, err := bed.ParseGrain(direction)
		if err != nil {
			bad = append(bad, issue(flag, err.Error(), ""))
		}
		known := false
		for _, m := range geometry.Materials {
			if !ofOne || key == string(m) {
				out[m], known = g, true
			}
		}
		if !known {
			bad = append(bad, issue("--grain", fmt.Sprintf("unknown material %.20q", name), "give "+wording.Or(geometry.Materials)))
		}
	}
	return out, append(bad, Contradictions(flags)...)
}

// creased reads the materials that are creased.
func (c Cutter) creased() (map[geometry.Material]bool, jobfile.Issues) {
	if c.Creases == "" {
		return bed.Default().Creased, nil
	}
	out := map[geometry.Material]bool{}
	for _, name := range strings.Split(strings.ToLower(c.Creases), ",") {
		name = strings.TrimSpace(name)
		known := name == "none"
		for _, m := range geometry.Materials {
			if name == "all" || geometry.Material(name) == m || geometry.Material(name) == m.Like() {
				out[m], known = true, true
			}
		}
		if !known {
			return nil, refuse(nil, fmt.Sprintf("--creases: unknown material %.20q", name), "give all, none, or some of "+wording.And(geometry.Materials)+" with commas between")
		}
	}
	return out, nil
}

// The files beside the drawings of the beds.
const (
	mapName  = "map.pdf"
	testName = "kerf-test.svg"
)

// bench makes what the maker needs beside the machine: the map of the beds and the test
// square.
func (c Cutter) bench(r *Result, beds []bed.Bed, s bed.Setup, o cutter.Options, first worked) error {
	test, err := bed.Test(s)
	if err != nil {
		return Problems(err)
	}
	err = r.add(mapName, cutter.Map(beds, s, o, first.printed()))
	r.Files = append(r.Files, File{testName, cutter.TestSVG(test, s, o)})
	return err
}

// onBed returns the jobs to lay out; they have names only where there are several.
func onBed(all []worked) (jobs []bed.Job, title string) {
	var titles []string
	for i, w := range all {
		j := bed.Job{Pieces: w.plan.Machined(), Stock: w.stocked()}
		if len(all) > 1 {
			j.Name = cmp.Or(w.plan.Title, fmt.Sprintf("job %d", i+1))
		}
		jobs = append(jobs, j)
		if w.plan.Title != "" {
			titles = append(titles, w.plan.Title)
		}
	}
	return jobs, strings.Join(titles, ", ")
}

// stocked names what each material is: "board 2 mm".
func (w worked) stocked() map[geometry.Material]string {
	out := map[geometry.Material]string{}
	for _, m := range geometry.Materials {
		name := cmp.Or(w.file.Names[m], string(m))
		if t := w.plan.Thickness(m); t > 0 {
			name = wording.OfThickness(name, fmt.Sprintf("%.4g mm", t.MM()))
		}
		out[m] = name
	}
	return out
}

// draw makes the drawings and tells what is on them.
func (c Cutter) draw(r *Result, beds []bed.Bed, s bed.Setup, o cutter.Options) {
	note := func(form string, a ...any) { r.Notes = append(r.Notes, fmt.Sprintf(form, a...)) }
	count := map[geometry.Material]int{}
	var shared geometry.Length
	for _, b := range beds {
		count[b.Material]++
		shared += b.Shared
	}
	for _, b := range beds {
		o.Beds = count[b.Material]
		r.Files = append(r.Files, File{cutter.FileName(b), cutter.SVG(b, s, o)})
		note("%s: %s of %s on %s, %.0f %% of the bed, travel %.2f m (%.2f m before it was put in order)",
			cutter.FileName(b), counted(len(b.Parts), "1 piece", "pieces"), b.Stock, s, 100*b.Used(), b.Travel.After.MM()/1000, b.Travel.Before.MM()/1000)
		if b.Register.Any() {
			note("  %s", cutter.Register(b.Register))
		}
	}
	for _, g := range []geometry.Grain{geometry.GrainHeight, geometry.GrainWidth} {
		names := map[string][]string{}
		for _, m := range geometry.Materials {
			if count[m] > 0 && s.GrainOf(m) == g {
				names[m.Direction()] = append(names[m.Direction()], string(m))
			}
		}
		for _, runs := range slices.Sorted(maps.Keys(names)) {
			note("lay %s with the %s along the %s of the bed", strings.Join(names[runs], ", "), runs, g)
		}
	}
	if s.Kerf == 0 {
		note("kerf 0: right for a knife; for a laser cut %s, measure it and give --kerf", testName)
	} else {
		note("%s tells whether the kerf is right: cut and measure it first", testName)
	}
	crushed := slices.IndexFunc(beds, func(b bed.Bed) bool { return b.Material.Crushed() })
	if crushed >= 0 {
		note("%s", cutter.Crushing(beds[crushed]))
	}
	if cutter.Creases(slices.DeleteFunc(slices.Clone(beds), func(b bed.Bed) bool { return b.Material.Crushed() })) {
		note("the layer Creasing is never cut through: score or crease it, or leave it out with --creases none and fold by hand")
	}
	if shared > 0 {
		note("edges that two pieces share are cut once: %.2f m less to cut", shared.MM()/1000)
	}
	note("%s", machineCare)
}
