package pipeline_test

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"os"
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
	c := pipeline.DefaultCutter()
	c.Effort = "0"
	c.Bed = fmt.Sprintf("%dx%d", rapid.IntRange(50, 800).Draw(t, "across"), rapid.IntRange(50, 800).Draw(t, "along"))
	if one(3, "margin") {
		c.Margin = strconv.Itoa(rapid.IntRange(0, 100).Draw(t, "margin"))
	}
	if one(3, "kerf") {
		c.Kerf = fmt.Sprintf("%.2f", rapid.Float64Range(0, 2).Draw(t, "kerf"))
	}
	if one(4, "spacing 0") {
		c.Spacing = "0"
	}
	if one(4, "tabs") {
		c.Tabs, c.TabWidth = rapid.IntRange(0, 40).Draw(t, "tabs"), fmt.Sprintf("%.1f", rapid.Float64Range(0.1, 10).Draw(t, "tab width"))
	}
	if one(3, "grain") {
		c.Grain = []string{rapid.SampledFrom([]string{"height", "width", "none"}).Draw(t, "grain")}
	}
	return c
}

// The words of a fix that name a change.
var (
	limit     = regexp.MustCompile(`^(at least|at most) ([^;(]+)`)
	span      = regexp.MustCompile(`^give ([0-9][^;(]*?) to ([0-9][^;(]*?)( \(|;|$)`)
	aWord     = regexp.MustCompile(`^give ("[^"]+"|[0-9][^;("]*)`)
	aSheet    = regexp.MustCompile(`a sheet of (.+) × (.+?) would do`)
	aRoll     = regexp.MustCompile(`a roll (.+) wide would do`)
	moreOf    = regexp.MustCompile(`^(\d+) sheets? more of .* would do`)
	moreRoll  = regexp.MustCompile(`^another (.+) of .* would do`)
	largerBed = regexp.MustCompile(`it needs a bed of at least (\d+) x (\d+) mm`)
	otherWay  = regexp.MustCompile(`\(--grain ([a-z ]+=[a-z]+)\)`)
)

// mended takes every change that the issues name; ok is false where one names none.
func (w wish) mended(issues jobfile.Issues) (wish, error) {
	w = w.clone()
	for _, i := range issues {
		key := strings.TrimSuffix(strings.TrimPrefix(i.Key, "--set "), " (default)")
		set := func(value string) { w.keys[key] = value }
		quoted := func(v string) string { return strconv.Quote(strings.TrimSpace(v)) }
		switch {
		case span.MatchString(i.Fix):
			m := span.FindStringSubmatch(i.Fix)
			if strings.Contains(i.Reason, "large") {
				set(quoted(m[2]))
			} else {
				set(quoted(m[1]))
			}
		case limit.MatchString(i.Fix):
			set(quoted(limit.FindStringSubmatch(i.Fix)[2]))
		case aWord.MatchString(i.Fix):
			v := aWord.FindStringSubmatch(i.Fix)[1]
			set(quoted(strings.Trim(v, `"`)))
		case i.Fix == "leave it out":
			delete(w.keys, key)
		default:
			return w, fmt.Errorf("no change in %q", i.String())
		}
	}
	return w, nil
}

func TestMendsZZ(t *testing.T) {
	n, _ := strconv.Atoi(os.Getenv("ZZ"))
	counts := map[string]int{}
	for seed := range n {
		w := rapid.Custom(anyWish).Example(seed)
		_, err := pipeline.Cutlist{Job: w.job()}.Make(t.Context())
		counts["drawn"]++
		var bad jobfile.Issues
		if err == nil {
			continue
		}
		if !errors.As(err, &bad) {
			t.Errorf("%v\n%s", err, w.file())
			continue
		}
		counts["refused"]++
		next, wrong := w.mended(bad)
		if wrong != nil {
			counts["no change named"]++
			fmt.Println("NONE", seed, wrong)
			continue
		}
		if _, again := (pipeline.Cutlist{Job: next.job()}).Make(t.Context()); again != nil {
			counts["refused again"]++
			fmt.Printf("AGAIN %d\n  %s\n  --\n  %s\n", seed, strings.ReplaceAll(err.Error(), "\n", "\n  "), strings.ReplaceAll(again.Error(), "\n", "\n  "))
		}
	}
	fmt.Println(counts)
	_ = paper.Sheets
}
