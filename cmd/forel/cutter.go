package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bed"
	"forel/render"
	"forel/render/cutter"
)

var aboutCutter = `
usage: forel cutter [JOB.toml ...] --bed WIDTHxHEIGHT [flags]

Lays every piece of the jobs out on the bed of a laser or a drag knife, each
material on beds of its own, and writes an SVG drawing a bed in real
millimetres: board-1.svg, cloth-1.svg and so on. Lines are in layers by what is
done, in the order it is done: Creasing (never cut through), CuttingInside
(slits and holes), Cutting (outlines). Pieces are turned by a quarter only where
their grain allows. For the bed and its distances a bare number is in millimetres.

A laser takes away a kerf: cut a square, measure it, and give the difference as
--kerf. Outlines then grow by half of it, and holes shrink, so that the pieces
come out as they should. A drag knife has none: leave it at 0; the offset of its
blade is for its driver.

` + careful(wording.Machine) + `

example:
  forel cutter case.toml --bed 600x300 --kerf 0.18 --out cut/
  forel cutter case.toml other.toml --bed 24x12in --grain board=width --tabs 4
`

// machineCare is said whenever drawings for a machine were written.
var machineCare = "take care: " + wording.Careful(wording.Machine)

// bedSteps is how long a layout is looked for where nothing is asked for: steps, not
// seconds, so that the same jobs give the same layout on every machine.
const bedSteps = 2000

func runCutter(args []string, out io.Writer, say voice) error {
	f := flagSet("cutter", aboutCutter, out)
	c := addCutterFlags(f)
	job := addJobFlags(f)
	if err := parseFlags(f, args); err != nil {
		return err
	}
	effort, badEffort := effortOf(c.effort)
	setup, err := c.setup(f)
	err = errors.Join(err, badEffort)
	if err != nil {
		return err
	}
	jobs, title, err := c.jobs(job, say)
	if err != nil {
		return err
	}
	beds, err := bed.Lay(context.Background(), setup, jobs, effort)
	if err != nil {
		return err
	}
	files, summary := c.draw(beds, setup, title)
	if err := writeInto(c.folder, files); err != nil {
		return err
	}
	c.warnStale(say, files)
	_, err = fmt.Fprint(out, summary)
	if err != nil {
		return failure{err, ""}
	}
	return nil
}

// cutterFlags are the flags of forel cutter beside those of a job.
type cutterFlags struct {
	bed, margin, gap, kerf, tabWidth string
	effort                           string
	grain                            []string
	tabs                             int
	labels                           bool
	colours                          []string
	theme                            render.Theme
	folder                           string
}

func addCutterFlags(f *pflag.FlagSet) *cutterFlags {
	c := &cutterFlags{}
	d := bed.Default()
	mm := func(l geometry.Length) string { return fmt.Sprintf("%.4g mm", l.MM()) }
	f.StringVar(&c.bed, "bed", "", "`size` of the bed, width x height, such as 600x300 or 24x12in")
	f.StringVar(&c.kerf, "kerf", "0 mm", "`width` that the beam takes away, measured on a test cut; 0 for a knife")
	f.StringVar(&c.gap, "spacing", mm(d.Gap), "`distance` between neighbouring pieces")
	f.StringVar(&c.margin, "margin", mm(d.Margin), "`distance` kept from the bed's edges")
	f.StringArrayVar(&c.grain, "grain", nil, "`direction` of the stock's grain on the bed: height, width or none (default height); or of one material, such as board=width")
	f.IntVar(&c.tabs, "tabs", 0, "`number` of light tabs that hold each piece in its sheet")
	f.StringVar(&c.tabWidth, "tab-width", mm(d.TabWidth), "`width` of a tab")
	f.BoolVar(&c.labels, "labels", false, "names and lines to rule too, in layers of their own (Positions, Legend) that are not cut")
	f.StringArrayVar(&c.colours, "colour", nil, "`line=#rrggbb`: colour of a kind of line, for software that goes by colour, such as cuttinginside=#0072b2")
	f.StringVar(&c.effort, "effort", strconv.Itoa(bedSteps), "how long to search for a layout: `steps`, or a time such as 20s; 0: the first good one")
	f.StringVar(&c.folder, "out", "cutter", "`folder` to write into; made if it is not there")
	return c
}

// setup reads the flags; all that is wrong with them is told.
func (c *cutterFlags) setup(f *pflag.FlagSet) (bed.Setup, error) {
	s := bed.Default()
	var wrong []error
	if c.folder == "" {
		wrong = append(wrong, refusal{"--out names no folder", "such as --out cut/"})
	}
	var err error
	if s.Width, s.Height, err = bed.ParseSize(c.bed); err != nil {
		if !f.Changed("bed") {
			err = refusal{"no bed", "give its size, such as --bed 600x300"}
			wrong = append(wrong, err)
		} else {
			wrong = append(wrong, fmt.Errorf("--bed: %w", err))
		}
		s.Width, s.Height = bed.MostSide, bed.MostSide // to hear of the rest
	}
	for _, l := range []struct {
		flag, text string
		to         *geometry.Length
	}{{"--margin", c.margin, &s.Margin}, {"--spacing", c.gap, &s.Gap}, {"--kerf", c.kerf, &s.Kerf}, {"--tab-width", c.tabWidth, &s.TabWidth}} {
		if v, err := geometry.ParseLength(l.text, geometry.MM); err != nil {
			wrong = append(wrong, fmt.Errorf("%s: %w", l.flag, err))
		} else {
			*l.to = v
		}
	}
	if c.theme, err = themeOf(c.colours); err != nil {
		wrong = append(wrong, err)
	}
	wrong = append(wrong, once("--colour", c.colours)...)
	s.Tabs = c.tabs
	if s.Grain, err = c.grains(); err != nil {
		wrong = append(wrong, err)
	}
	for _, fault := range s.Faults() {
		wrong = append(wrong, refusal{fmt.Sprintf("--%s: %s", fault.Of, fault.Wrong), fault.Right})
	}
	return s, errors.Join(wrong...)
}

// grains reads --grain, for all materials and for some.
func (c *cutterFlags) grains() (map[geometry.Material]geometry.Grain, error) {
	out := map[geometry.Material]geometry.Grain{}
	var names []string
	for _, m := range bed.Materials {
		names = append(names, string(m))
	}
	var one []string
	all := ""
	for _, text := range c.grain {
		if strings.Contains(text, "=") {
			one = append(one, text) // goes before what is said of all, wherever it stands
			continue
		}
		if all != "" && !strings.EqualFold(all, text) {
			return nil, contradiction("--grain", all, "--grain", text)
		}
		all = text
		g, err := bed.ParseGrain(text)
		if err != nil {
			return nil, fmt.Errorf("--grain: %w", err)
		}
		for _, m := range bed.Materials {
			out[m] = g
		}
	}
	if twice := once("--grain", one); twice != nil {
		return nil, errors.Join(twice...)
	}
	for _, text := range one {
		name, direction, _ := strings.Cut(text, "=")
		g, err := bed.ParseGrain(direction)
		if err != nil {
			return nil, fmt.Errorf("--grain %.40q: %w", text, err)
		}
		known := false
		for _, m := range bed.Materials {
			if strings.EqualFold(strings.TrimSpace(name), string(m)) {
				out[m], known = g, true
			}
		}
		if !known {
			return nil, refusal{fmt.Sprintf("--grain: unknown material %.20q", name), "give " + wording.Or(names)}
		}
	}
	return out, nil
}

// jobs reads the jobs; they have names only where there are several.
func (c *cutterFlags) jobs(flags *jobFlags, say voice) ([]bed.Job, string, error) {
	all, err := flags.loadAll(say)
	if err != nil {
		return nil, "", err
	}
	var jobs []bed.Job
	var titles []string
	for i, l := range all {
		j := bed.Job{Pieces: l.plan.Machined(), Stock: stocks(l)}
		if len(all) > 1 {
			j.Name = l.plan.Title
			if j.Name == "" {
				j.Name = fmt.Sprintf("job %d", i+1)
			}
		}
		jobs = append(jobs, j)
		if l.plan.Title != "" {
			titles = append(titles, l.plan.Title)
		}
	}
	return jobs, strings.Join(titles, ", "), nil
}

// stocks gives what each material of a job is: its name, and how thick.
func stocks(l loaded) map[geometry.Material]string {
	out := map[geometry.Material]string{}
	for _, m := range bed.Materials {
		name := l.file.Names[m]
		if name == "" {
			name = string(m)
		}
		if t := l.plan.Thickness(m); t > 0 {
			name += fmt.Sprintf(" %.4g mm", t.MM())
		}
		out[m] = name
	}
	return out
}

// draw makes the files and tells what is in them.
func (c *cutterFlags) draw(beds []bed.Bed, s bed.Setup, title string) ([]output, string) {
	count := map[geometry.Material]int{}
	for _, b := range beds {
		count[b.Material]++
	}
	var files []output
	var said strings.Builder
	for _, b := range beds {
		name := cutter.FileName(b)
		files = append(files, output{name, cutter.SVG(b, s, cutter.Options{Title: title, Beds: count[b.Material], Labels: c.labels, Theme: c.theme})})
		pieces := fmt.Sprintf("%d pieces", len(b.Parts))
		if len(b.Parts) == 1 {
			pieces = "1 piece"
		}
		fmt.Fprintf(&said, "%s: %s of %s on %s, %.0f %% of the bed, travel %.2f m (%.2f m before it was put in order)\n",
			wording.Printable(name), pieces, wording.Printable(b.Stock), s, 100*b.Used(), b.Travel.After.MM()/1000, b.Travel.Before.MM()/1000)
		if b.Register.Any() {
			fmt.Fprintf(&said, "  %s\n", cutter.Register(b.Register))
		}
	}
	for _, g := range []geometry.Grain{geometry.GrainHeight, geometry.GrainWidth} {
		var names []string
		for _, m := range bed.Materials {
			if count[m] > 0 && s.GrainOf(m) == g {
				names = append(names, string(m))
			}
		}
		if len(names) > 0 {
			fmt.Fprintf(&said, "lay %s with the grain along the %s of the bed\n", strings.Join(names, ", "), g)
		}
	}
	if s.Kerf == 0 {
		said.WriteString("kerf 0: right for a knife; for a laser measure a test cut and give --kerf\n")
	}
	said.WriteString("the layer Creasing is never cut through: score or crease it, or switch it off and fold by hand\n")
	said.WriteString(machineCare + "\n")
	return files, wrote(c.folder, namesOf(files)...) + said.String()
}

// warnStale tells of drawings of beds that an earlier run left in the folder.
func (c *cutterFlags) warnStale(say voice, files []output) {
	now := map[string]bool{}
	for _, f := range files {
		now[filepath.Join(c.folder, f.name)] = true
	}
	for _, m := range bed.Materials {
		old, _ := filepath.Glob(filepath.Join(c.folder, string(m)+"-[0-9]*.svg"))
		for _, name := range old {
			if !now[name] {
				fmt.Fprintf(say.w, "warning: %s is from an earlier layout and not part of this one; take it away\n", wording.Printable(name))
			}
		}
	}
}
