package pipeline_test

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry"
	shared "forel/geometry/job"
	"forel/geometry/kinds"
	"forel/paper"
)

// wish is what a maker asks for: a job file, and the settings of a bed.
type wish struct {
	keys   map[string]string   // of the job file, as they are written in it
	stocks []map[string]string // each [[stock]]
	cutter pipeline.Cutter
	leaves bool // what is too large for the bed out, where that is offered
}

func (w wish) clone() wish {
	w.keys = maps.Clone(w.keys)
	stocks := make([]map[string]string, len(w.stocks))
	for i, s := range w.stocks {
		stocks[i] = maps.Clone(s)
	}
	w.stocks = stocks
	w.cutter.Grain = slices.Clone(w.cutter.Grain)
	return w
}

// file returns the job file.
func (w wish) file() string {
	var top string
	tables := map[string]string{}
	for _, key := range slices.Sorted(maps.Keys(w.keys)) {
		table, word, dotted := strings.Cut(key, ".")
		if !dotted {
			top += key + " = " + w.keys[key] + "\n"
			continue
		}
		tables[table] += word + " = " + w.keys[key] + "\n"
	}
	for _, table := range slices.Sorted(maps.Keys(tables)) {
		name := "[" + table + "]"
		if table == "book" {
			name = "[[book]]"
		}
		top += name + "\n" + tables[table]
	}
	for _, s := range w.stocks {
		top += "[[stock]]\n"
		for _, word := range slices.Sorted(maps.Keys(s)) {
			top += word + " = " + s[word] + "\n"
		}
	}
	return top
}

func (w wish) job() pipeline.Job {
	return pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "case.toml", Data: []byte(w.file())}}}}
}

// anyWish draws a job, with settings far out now and then.
func anyWish(t *rapid.T) wish {
	one := func(n int, name string) bool { return rapid.IntRange(1, n).Draw(t, name) == 1 }
	mm := func(lo, hi float64, name string) string {
		return fmt.Sprintf(`"%.2f mm"`, float64(rapid.IntRange(int(math.Ceil(lo*100)), int(hi*100)).Draw(t, name))/100)
	}
	k := rapid.SampledFrom(kinds.All).Draw(t, "kind")
	unit := rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
	w := wish{keys: map[string]string{"kind": strconv.Quote(k.Name), "units": strconv.Quote(unit.String())}}
	if k.Construction != "" {
		w.keys["construction"] = strconv.Quote(k.Construction)
	}
	if one(4, "any book") {
		for _, d := range shared.Dimensions[:3] {
			w.keys["book."+d.Key] = mm(d.Min.MM(), d.Max.MM(), d.Key)
		}
	} else {
		w.keys["book.height"], w.keys["book.width"], w.keys["book.thickness"] = mm(90, 330, "height"), mm(60, 240, "width"), mm(4, 70, "thickness")
	}
	settings := k.New(unit).Settings()
	for _, s := range settings.Words() {
		if rapid.Bool().Draw(t, s.Key+" is set") {
			w.keys[s.Key] = strconv.Quote(rapid.SampledFrom(s.Words).Draw(t, s.Key))
		}
	}
	for _, s := range settings.Lengths() {
		usual := max(s.Length.MM(), s.Min)
		switch rapid.IntRange(0, 40).Draw(t, s.Key+" is set") {
		case 0:
			w.keys[s.Key] = mm(s.Min, s.Max, s.Key)
		case 1:
			w.keys[s.Key] = mm(max(s.Min, usual/2), min(s.Max, 2*usual+0.1), s.Key)
		}
	}
	if _, ok := settings.Find("chemise.book_cover"); ok {
		w.keys["chemise.book_cover"] = `"2.5 mm"`
	}
	return w
}

// anyStock draws what pieces are cut from.
func anyStock(t *rapid.T) map[string]string {
	one := func(n int, name string) bool { return rapid.IntRange(1, n).Draw(t, name) == 1 }
	mm := func(lo, hi float64, name string) string {
		return fmt.Sprintf("%.2f mm", float64(rapid.IntRange(int(math.Ceil(lo*100)), int(hi*100)).Draw(t, name))/100)
	}
	s := map[string]string{"material": strconv.Quote(string(rapid.SampledFrom(geometry.Materials).Draw(t, "material")))}
	if one(3, "roll") {
		s["roll"] = strconv.Quote(mm(100, 800, "roll"))
		if one(2, "length") {
			s["length"] = strconv.Quote(mm(100, 1500, "length"))
		}
	} else {
		s["size"] = strconv.Quote(mm(100, 700, "across") + " x " + mm(100, 700, "along"))
	}
	if one(2, "grain") {
		s["grain"] = rapid.SampledFrom([]string{`"height"`, `"width"`, `"none"`}).Draw(t, "grain")
	}
	if one(3, "count") && (s["roll"] == "" || s["length"] != "") {
		s["count"] = strconv.Itoa(rapid.IntRange(1, 3).Draw(t, "count"))
	}
	if one(3, "trim") {
		s["trim"] = strconv.Quote(mm(0, 60, "trim"))
	}
	if one(3, "kerf") {
		s["kerf"] = strconv.Quote(mm(0, 5, "kerf"))
	}
	return s
}

// anyBed draws the settings of a machine.
func anyBed(t *rapid.T) pipeline.Cutter {
	one := func(n int, name string) bool { return rapid.IntRange(1, n).Draw(t, name) == 1 }
	c := pipeline.Cutter{}
	c.Effort = "0"
	c.Bed = fmt.Sprintf("%dx%d mm", rapid.IntRange(50, 800).Draw(t, "across"), rapid.IntRange(50, 800).Draw(t, "along"))
	if one(3, "margin") {
		c.Margin = fmt.Sprintf("%d mm", rapid.IntRange(0, 100).Draw(t, "margin"))
	}
	if one(3, "kerf") {
		c.Kerf = fmt.Sprintf("%.2f mm", rapid.Float64Range(0, 2).Draw(t, "kerf"))
	}
	if one(4, "spacing 0") {
		c.Spacing = "0"
	}
	if one(4, "tabs") {
		c.Tabs, c.TabWidth = fmt.Sprint(rapid.IntRange(0, 40).Draw(t, "tabs")), fmt.Sprintf("%.1f mm", rapid.Float64Range(0.1, 10).Draw(t, "tab width"))
	}
	if one(3, "grain") {
		c.Grain = []string{rapid.SampledFrom([]string{"height", "width", "none"}).Draw(t, "grain")}
	}
	return c
}

// The words of a fix that name a change.
var (
	limit   = regexp.MustCompile(`^(?:at least|at most) ([^;(]+)`)
	span    = regexp.MustCompile(`^give ([0-9][^;(]*?) to ([0-9][^;(]*?)( \(|;|,|$)`)
	leftOut = regexp.MustCompile(`left out it is|or write "auto"`)
	aWord   = regexp.MustCompile(`^give ("[^"]+")`)
	less    = regexp.MustCompile(`or leave no margin over ([0-9.]+) mm`)
	larger  = regexp.MustCompile(`larger sheet: (?:--paper )?([A-Za-z0-9]+)`)
	add     = regexp.MustCompile(`^add a \[\[stock\]\] with material = ("[^"]+") and (size|roll) = ("[^"]+")`)
	newly   = regexp.MustCompile(`would do: (count|length) = (\S+(?: [0-9/]+)?(?: mm"| in"|))`)
	flagged = regexp.MustCompile(`: --(bed|grain|tabs|spacing|margin) ("[^"]+"|[^\s;]+)($|; or lay out)`)
	alone   = regexp.MustCompile(`or lay out the others alone: --only ("[^"]+"|\S+)$`)
)

// mended returns the wish with every change that the issues name. It is an error where one
// names none.
func (w wish) mended(issues jobfile.Issues) (wish, error) {
	w = w.clone()
	for _, i := range issues {
		key := strings.TrimSuffix(i.Key, " (default)")
		switch {
		case less.MatchString(i.Fix) && strings.HasPrefix(key, "print.margin"):
			for k := range w.keys {
				if strings.HasPrefix(k, "print.margin") {
					delete(w.keys, k)
				}
			}
			w.keys["print.margin"] = strconv.Quote(less.FindStringSubmatch(i.Fix)[1] + " mm")
		case larger.MatchString(i.Fix):
			w.keys["print.paper"] = strconv.Quote(larger.FindStringSubmatch(i.Fix)[1])
		case add.MatchString(i.Fix):
			m := add.FindStringSubmatch(i.Fix)
			if s := map[string]string{"material": m[1], m[2]: m[3]}; !slices.ContainsFunc(w.stocks, func(have map[string]string) bool { return maps.Equal(have, s) }) {
				w.stocks = append(w.stocks, s)
			}
		case newly.MatchString(i.Fix):
			m := newly.FindStringSubmatch(i.Fix)
			for _, s := range w.stocks {
				if s[m[1]] != "" && sameSize(i.Fix, s) {
					s[m[1]] = m[2]
				}
			}
		case strings.HasPrefix(key, "stock"):
			n := 1
			fmt.Sscanf(key, "stock[%d]", &n)
			w.stocks[n-1][key[strings.Index(key, ".")+1:]] = strconv.Quote(limit.FindStringSubmatch(i.Fix)[1])
		case w.leaves && alone.MatchString(i.Fix):
			w.cutter.Only = strings.Split(strings.Trim(alone.FindStringSubmatch(i.Fix)[1], `"`), ",")
		case flagged.MatchString(i.Fix):
			m := flagged.FindStringSubmatch(i.Fix)
			w.machine(m[1], strings.Trim(m[2], `"`))
		case strings.Contains(i.Fix, "--kerf 0"):
			w.cutter.Kerf = "0"
		case leftOut.MatchString(i.Fix):
			delete(w.keys, key)
		case span.MatchString(i.Fix):
			m := span.FindStringSubmatch(i.Fix)
			w.keys[key] = strconv.Quote(m[1])
			if strings.Contains(i.Reason, "large") {
				w.keys[key] = strconv.Quote(m[2])
			}
		case limit.MatchString(i.Fix):
			w.keys[key] = strconv.Quote(strings.TrimSpace(limit.FindStringSubmatch(i.Fix)[1]))
		case aWord.MatchString(i.Fix):
			w.keys[key] = aWord.FindStringSubmatch(i.Fix)[1]
		default:
			return w, fmt.Errorf("no change is named by %q", i.String())
		}
	}
	return w, nil
}

// sameSize tells whether a fix speaks of stock: both have its first side, to a tenth.
func sameSize(fix string, s map[string]string) bool {
	var side float64
	_, err := fmt.Sscanf(strings.Trim(s["size"]+s["roll"], `"`), "%f mm", &side)
	return err == nil && strings.Contains(strings.ReplaceAll(fix, ".0 ", " "), strings.TrimSuffix(fmt.Sprintf("%.1f", side), ".0")+" ")
}

// machine sets a flag of the cutter.
func (w *wish) machine(flag, value string) {
	switch flag {
	case "bed":
		w.cutter.Bed = value
	case "grain":
		if !slices.Contains(w.cutter.Grain, value) {
			w.cutter.Grain = append(w.cutter.Grain, value)
		}
	case "tabs":
		w.cutter.Tabs = value
	case "spacing":
		w.cutter.Spacing = value
	case "margin":
		w.cutter.Margin = value
	}
}

// commands are those whose refusals are mended, each with what it is asked beside a job.
var commands = map[string]struct {
	asks func(*rapid.T, *wish)
	make func(wish) pipeline.Command
}{
	"cutlist": {func(*rapid.T, *wish) {}, func(w wish) pipeline.Command { return pipeline.Cutlist{Job: w.job()} }},
	"stock": {
		func(t *rapid.T, w *wish) { w.stocks = rapid.SliceOfN(rapid.Custom(anyStock), 1, 3).Draw(t, "stock") },
		func(w wish) pipeline.Command { return pipeline.Stock{Job: w.job(), Effort: "0"} },
	},
	"cutter": {
		func(t *rapid.T, w *wish) { w.cutter, w.leaves = anyBed(t), rapid.Bool().Draw(t, "leaves") },
		func(w wish) pipeline.Command {
			c := w.cutter
			c.Job = w.job()
			return c
		},
	},
	"paper": {anyPaper, func(w wish) pipeline.Command { return pipeline.Cutlist{Job: w.job()} }},
	"class": {
		func(t *rapid.T, w *wish) { w.stocks = rapid.SliceOfN(rapid.Custom(anyStock), 0, 2).Draw(t, "stock") },
		func(w wish) pipeline.Command { return oneStudent{w} },
	},
}

// anyPaper draws what patterns are printed on.
func anyPaper(t *rapid.T, w *wish) {
	mm := func(lo, hi int, name string) string {
		return fmt.Sprintf("%.1f mm", float64(rapid.IntRange(10*lo, 10*hi).Draw(t, name))/10)
	}
	w.keys["print.paper"] = strconv.Quote(mm(100, 500, "across") + " x " + mm(100, 700, "along"))
	if rapid.Bool().Draw(t, "known") {
		w.keys["print.paper"] = strconv.Quote(rapid.SampledFrom(paper.Sheets).Draw(t, "sheet").Name)
	}
	for _, m := range []string{"margin", "margin_left", "margin_right", "margin_top", "margin_bottom"} {
		if rapid.IntRange(0, 2).Draw(t, m+" is set") == 0 {
			w.keys["print."+m] = strconv.Quote(mm(0, 40, m))
		}
	}
}

// oneStudent is a class of one, whose job is the base of the roster.
type oneStudent struct{ wish }

func (s oneStudent) Make(ctx context.Context) (pipeline.Result, error) {
	const table = "name\nAna\n"
	c := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: "roster.csv", Data: []byte(table)}}},
		Base: &pipeline.File{Name: "case.toml", Data: []byte(s.file())}, Workers: 1, Effort: "0"}
	roll, err := c.Read()
	if err != nil {
		return pipeline.Result{}, err
	}
	roll.Make(ctx, noShelf{}, nil)
	if refused := roll.Students[0].Refused; refused != nil {
		return pipeline.Result{}, append(refused, roll.Foreseen()...)
	}
	_, unplanned, err := roll.Finish(ctx, noShelf{}, nil)
	return pipeline.Result{}, cmp.Or(err, unplanned)
}

// noShelf has all files already.
type noShelf struct{}

func (noShelf) Has(string, string) bool                   { return true }
func (noShelf) Put(string, string, []pipeline.File) error { return nil }

// mend makes what a command is asked for; where it is refused, it makes it with all changes
// that the refusal names.
func mend(ctx context.Context, name string, w wish) (refused error, again error) {
	c := commands[name]
	_, err := c.make(w).Make(ctx)
	if err == nil {
		return nil, nil
	}
	var bad jobfile.Issues
	if !errors.As(err, &bad) {
		return err, err
	}
	next, none := w.mended(bad)
	if none != nil {
		return err, none
	}
	_, again = c.make(next).Make(ctx)
	return err, again
}

// Whatever is refused, by whichever command, is accepted with the changes that are named,
// all of them at once.
func TestMendsAreAccepted(t *testing.T) {
	for name, c := range commands {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				w := anyWish(t)
				c.asks(t, &w)
				if refused, again := mend(t.Context(), name, w); again != nil {
					t.Fatalf("%s\nrefused: %v\nmended, it is refused again: %v", w.file(), refused, again)
				}
			})
		})
	}
}
