package page_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/page"
	"forel/geometry/wording"
)

// pagesOf finds the pages in a PDF (ISO 32000-1, 7.7.3.3), whose objects stand as they are.
func pagesOf(file []byte) [][]byte { return regexp.MustCompile(`/Type /Page\b`).FindAll(file, -1) }

// The pages to look at are as many as the documents have that are made, and are named by
// their numbers.
func TestPagesAreThoseOfTheDocument(t *testing.T) {
	text := start(t)
	for name, flags := range map[string]map[string]string{
		"templates": {"separate": "true"}, "handout": {"short": "true"}, "gauge": nil, "timetable": {"start": "2026-12-01"}, "measure": {"volumes": "2"}, "fit": nil, "prove": nil,
		"stock": {"effort": "0"}, "order": {"effort": "0"}, "quote": {"effort": "0"}, "cutter": {"bed": "600x300", "effort": "0"},
	} {
		a := ask(t, page.Request{Do: "make", Name: name, Text: text, Flags: flags, Pages: true})
		require.Empty(t, a.Error, name)
		require.Empty(t, a.Faults, name)
		pages := 0
		for _, f := range a.Files {
			if strings.HasSuffix(f.Name, ".pdf") {
				pages += len(pagesOf(f.Data))
			}
		}
		assert.Len(t, a.Pages, pages, name)
		names := map[string]bool{}
		for _, p := range a.Pages {
			names[p.Name] = true
		}
		assert.Len(t, names, pages, "%s: no two are called alike", name)
		assert.Contains(t, a.Pages[0].Name, "page 1 of ", name)
	}
}

// What is wrong with a setting is told at it, and calls it what the page does.
func TestFaultsOfSettings(t *testing.T) {
	text := start(t)
	for _, test := range []struct{ of, setting, typed string }{
		{"cutter", "bed", ""}, {"cutter", "bed", "wide"}, {"cutter", "kerf", "x"}, {"cutter", "tabs", "many"}, {"cutter", "tabs", "-3"},
		{"cutter", "grain", "sideways"}, {"cutter", "colour", "cutting=red"}, {"cutter", "effort", "much"}, {"cutter", "creases", "tin"},
		{"templates", "only", "tin"}, {"templates", "line", "9"}, {"templates", "round", "7"}, {"cutlist", "outlines", "true"}, {"stock", "effort", "-"},
		{"gauge", "check", "true"}, {"timetable", "start", "soon"}, {"templates", "separate", "perhaps"},
	} {
		flags := map[string]string{test.setting: test.typed}
		if test.of == "cutter" && test.setting != "bed" {
			flags["bed"] = "600x300"
		}
		a := ask(t, page.Request{Do: "make", Name: test.of, Text: text, Flags: flags})
		require.Len(t, a.Faults, 1, "%v: %s", test, a.Error)
		assert.Equal(t, "--"+test.setting, a.Faults[0].Key, test)
		assert.NotContains(t, a.Faults[0].Says+a.Faults[0].Fix, "--", test)
		assert.Empty(t, a.Files, test)
	}
}

// Every setting says what it does and can be set to what it is at.
func TestSettings(t *testing.T) {
	outputs := ask(t, page.Request{Do: "outputs"}).Outputs
	assert.NotEmpty(t, outputs)
	for _, o := range outputs {
		assert.NotEmpty(t, o.Settings, o.Name)
		flags := map[string]string{}
		for _, s := range o.Settings {
			assert.NotEmpty(t, s.Says, s.Name)
			if s.Default != "" {
				flags[s.Name] = s.Default
			}
		}
		if o.Name != "stock" && o.Name != "cutter" && !o.Once { // which take long, or need a measure
			assert.Empty(t, ask(t, page.Request{Do: "make", Name: o.Name, Text: start(t), Flags: flags}).Faults, "%s %v", o.Name, flags)
		}
	}
}

// Steps are told with the cautions of their work, and cautions that no step needs are not.
func TestSteps(t *testing.T) {
	for name, text := range fewWorked(t) {
		assert.Contains(t, ask(t, page.Request{Do: "figures", Text: text, Step: 99}).Error, "no step")
		steps := ask(t, page.Request{Do: "steps", Text: text}).Steps
		assert.Greater(t, len(steps), 3, name)
		count := map[string]int{}
		for _, s := range steps {
			assert.NotEmpty(t, s.Title, name)
			assert.NotEmpty(t, s.Text, s.Title)
			for _, c := range s.Care {
				count[c]++
			}
		}
		assert.Positive(t, count[wording.Knife], name)
		assert.LessOrEqual(t, len(count), 2, name)
	}
	text := start(t)
	for i, s := range ask(t, page.Request{Do: "steps", Text: text}).Steps {
		assert.Len(t, ask(t, page.Request{Do: "figures", Text: text, Step: i}).Figures, s.Figures, s.Title)
	}
	cut, glue := wording.CareFor("Cut the boards."), wording.CareFor("Brush paste on it.")
	assert.Equal(t, []string{wording.Knife}, cut)
	assert.Equal(t, []string{wording.Adhesive}, glue)
	assert.Empty(t, wording.CareFor("Measure the book."))
}
