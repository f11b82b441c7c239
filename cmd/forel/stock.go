package main

import (
	"fmt"
	"strconv"

	"forel/cmd/pipeline"
)

var aboutStock = fmt.Sprintf(`
usage: forel stock [JOB.toml ...] [flags]

Lays the pieces of all jobs out on the sheets and rolls that [[stock]] in the job
files tells of, for a knife and straightedge or a board shear: every cut runs
edge to edge. Prints what to buy, and with --out writes stock.pdf (the shopping
list, a drawing of each sheet, the order of the cuts with the fence setting of
each) and a drawing of each sheet as SVG. A material without [[stock]] is laid
out on a usual size.

Fewest sheets count first, then fewest settings of the fence, then large
offcuts. --effort takes a number of steps (%d where it is left out), which gives
the same plan every time, or a time such as 20s, which may not. An interrupt ends
the search with the best plan until then.

Knives and board shears cut people: keep guard and clamp in place, hands clear
of the blade, and follow the maker's manual and local rules.

example:
  forel stock case.toml --out bench/
  forel stock class/*.toml --effort 20s --out bench/
`, pipeline.StockSteps)

func flagsStock(f *flags) action {
	var s pipeline.Stock
	f.job(&s.Job)
	f.several = true
	f.StringVar(&s.Format, "format", "text", "`format` of the list: text, markdown, json (everything) or csv (the cuts)")
	f.BoolVar(&s.Cuts, "cuts", false, "with text and markdown: the order of the cuts too")
	f.out("", "bench/", "`folder` to write stock.pdf and a drawing of each sheet into; made if it is not there", &s.Draw)
	f.prints()
	f.BoolVar(&s.LooseWalls, "loose-walls", false, "let the walls of one case come off different strips, where that saves a sheet")
	f.StringVar(&s.Effort, "effort", strconv.Itoa(pipeline.StockSteps), "how long to search: `steps`, or a time such as 20s; 0: the first good plan")
	f.long("laying out", &s.Progress)
	return f.makes(&s)
}
