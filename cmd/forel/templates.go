package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
	"forel/paper"
	"forel/render"
	"forel/render/templates"
)

var aboutTemplates = `
usage: forel templates [JOB.toml] [flags]

Writes the patterns into a folder: templates.pdf with every piece at true size
on the paper your printer takes, and one SVG drawing a piece in millimetres.
Print the PDF at actual size (100 %) and measure the rulers on its pages; where
they are a little off, forel gauge has them corrected. The PDF has no date unless
SOURCE_DATE_EPOCH is set, to seconds since 1970.

` + careful(wording.Machine) + `

example:
  forel templates case.toml --out case/
  forel templates --height 221 --width 148.5 --thickness 32 --out case/
`

// paperUsage is the help of --paper.
const paperUsage = "`sheet` to print on: a4, another of a0 to a6 or b0 to b6, letter, legal, tabloid, or its size, such as \"210 x 297 mm\""

// bookletName is the file that is printed.
const bookletName = "templates.pdf"

func runTemplates(args []string, out io.Writer, say voice) error {
	f := flagSet("templates", aboutTemplates, out)
	job := addJobFlags(f)
	folder := f.String("out", "templates", "`folder` to write into; made if it is not there")
	job.addPrint()
	separate := f.Bool("separate", false, "no two pieces on one sheet")
	colours := f.StringArray("colour", nil, "`line=#rrggbb`: colour of a kind of line, such as creasing=#0072b2 (cutting, creasing, positions, legend)")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	if err := checkOut(f, *folder, "case/"); err != nil {
		return err
	}
	theme, err := themeOf(*colours)
	if err = errors.Join(append([]error{err}, once("--colour", *colours)...)...); err != nil {
		return err
	}
	l, err := job.load(say)
	if err != nil {
		return err
	}
	o := l.printed()
	o.Theme = theme
	files, layout, err := templateFiles(l.plan, paper.Options{Separate: *separate}, o)
	if err != nil {
		return failure{err, ""}
	}
	if err := writeInto(*folder, files); err != nil {
		return err
	}
	warnStale(say, *folder, l.plan)
	drawings := fmt.Sprintf("%d drawings", len(files)-1)
	if len(files) == 2 {
		drawings = "a drawing"
	}
	fmt.Fprint(out, wrote(*folder, drawings, bookletName))
	fmt.Fprintf(out, "the patterns take %s, after the overview and the key; their area alone would fill %d\n", sheetCount(len(layout.Pages)), layout.AtLeast)
	fmt.Fprintf(out, "print %s at actual size (100 %%) on %s, then measure its rulers\n", wording.Printable(filepath.Join(*folder, bookletName)), l.file.Print.Sheet)
	return nil
}

func sheetCount(n int) string {
	if n == 1 {
		return "a sheet"
	}
	return fmt.Sprintf("%d sheets", n)
}

// templateFiles lays a job out and makes every file of it, the drawings before
// the booklet.
func templateFiles(c plan.Plan, lay paper.Options, o templates.Options) (files []output, layout paper.Layout, err error) {
	drawn := c.Drawn()
	files = make([]output, len(drawn)+1)
	var together errgroup.Group
	together.Go(func() (err error) {
		layout = o.Setup.Lay(drawn, lay)
		files[len(drawn)] = output{name: bookletName}
		files[len(drawn)].data, err = templates.Booklet(c, layout, o)
		return err
	})
	for i, p := range drawn {
		files[i] = output{templates.FileName(p), templates.PieceSVG(c, p, o)}
	}
	return files, layout, together.Wait()
}

// themeOf gives the default lines with the colours asked for.
func themeOf(colours []string) (render.Theme, error) {
	theme := render.DefaultTheme()
	for _, kv := range colours {
		layer, hex, _ := strings.Cut(kv, "=")
		colour, err := render.ParseColor(hex)
		if err == nil {
			err = theme.SetColor(layer, colour)
		}
		if err != nil {
			return nil, fmt.Errorf("--colour %.40q: %w", kv, err)
		}
	}
	return theme, nil
}

// warnStale tells of drawings in the folder that an earlier job left there and
// this one does not have, such as the linings of a case that is now unlined.
func warnStale(say voice, folder string, c plan.Plan) {
	now := map[string]bool{}
	for _, p := range c.Drawn() {
		now[p.Name] = true
	}
	for _, name := range slices.Concat(slipcase.PieceNames, slipcase.FaceNames, []string{onepiece.PieceName}) {
		file := filepath.Join(folder, templates.FileName(geometry.Piece{Name: name}))
		if _, err := os.Stat(file); err == nil && !now[name] {
			fmt.Fprintf(say.w, "warning: %s is from an earlier job and not part of this one; take it away\n", wording.Printable(file))
		}
	}
}
