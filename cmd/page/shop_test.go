package page_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/page"
	"forel/cmd/page/browser"
	"forel/cmd/pipeline"
)

// What a job takes from the shop, what is made of it, and what is kept beside it is what the
// command line makes of the same files.
func TestShopAndRecord(t *testing.T) {
	shop := string(jobfile.ShopStarter())
	a := ask(t, page.Request{Do: "set", Text: start(t), Shop: shop, Changes: []page.Change{{Key: "board.material", Value: "grey board 2 mm"}, {Key: "board.thickness", Gone: true}, {Key: "board.name", Gone: true}}})
	require.Empty(t, a.Faults)
	text := *a.Text
	source := pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: []byte(text)}}, Shop: pipeline.File{Name: jobfile.ShopName, Data: []byte(shop)}}

	for name, c := range map[string]pipeline.Command{
		"quote": &pipeline.Quote{Cases: pipeline.Cases{Job: pipeline.Job{Source: source}}, Draw: true},
		"order": &pipeline.Order{Cases: pipeline.Cases{Job: pipeline.Job{Source: source}}, Draw: true},
	} {
		got := ask(t, page.Request{Do: "make", Name: name, Text: text, Shop: shop})
		want, err := c.Make(context.Background())
		require.NoError(t, err, name)
		require.Empty(t, got.Faults, name)
		assert.Equal(t, want.Report, got.Files[0].Data, name)
		for i, f := range want.Files {
			assert.Equal(t, f.Data, got.Files[i+1].Data, f.Name)
		}
	}

	taken := ask(t, page.Request{Do: "make", Name: "stock", Text: text, Shop: shop, Flags: map[string]string{"take": "true", "on": "2026-11-28"}})
	require.NotNil(t, taken.Shop, "%v", taken.Faults)
	want, err := pipeline.Stock{Job: pipeline.Job{Source: source}, Ledger: pipeline.Ledger{Take: true, On: "2026-11-28"}}.Make(context.Background())
	require.NoError(t, err)
	assert.Equal(t, string(want.Shop.Data), *taken.Shop)
	assert.Equal(t, shop, *ask(t, page.Request{Do: "untake", Shop: *taken.Shop}).Shop)

	recorded := ask(t, page.Request{Do: "make", Name: "record", Text: text, Shop: shop, Flags: map[string]string{"play-height": "0.4"}})
	require.NotNil(t, recorded.Record, "%v", recorded.Faults)
	more := ask(t, page.Request{Do: "make", Name: "record", Text: text, Shop: shop, Record: *recorded.Record, Flags: map[string]string{"play-depth": "1"}})
	assert.Contains(t, *more.Record, *recorded.Record, "a record only grows")
	ways := ask(t, page.Request{Do: "make", Name: "rescue", Text: text, Shop: shop, Record: *recorded.Record})
	assert.Empty(t, ways.Faults, "it knows the play from the record")
	assert.Empty(t, ask(t, page.Request{Do: "make", Name: "lessons", Text: text, Shop: shop, Records: []page.Text{{Name: "first", Text: *more.Record}}}).Faults)
}

// Several cases of the list are made together as the command line makes several job files;
// what is wrong with one of them is told of that one, at no blank of this case.
func TestCasesMadeTogether(t *testing.T) {
	text := start(t)
	other := *ask(t, page.Request{Do: "set", Text: text, Changes: []page.Change{{Key: "title", Value: "Light list"}, {Key: "book.height", Value: "190"}}}).Text
	wrong := *ask(t, page.Request{Do: "set", Text: text, Changes: []page.Change{{Key: "board.thickness", Value: "90"}}}).Text
	others := []page.Text{{Name: "Light list", Text: other}, {Name: "Light list", Text: other}}
	job := pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: []byte(text)}, {Name: "Light list.toml", Data: []byte(other)}, {Name: "Light list (2).toml", Data: []byte(other)}}}}
	for name, c := range map[string]pipeline.Command{
		"quote":     &pipeline.Quote{Cases: pipeline.Cases{Job: job}, Draw: true},
		"order":     &pipeline.Order{Cases: pipeline.Cases{Job: job}, Draw: true},
		"timetable": &pipeline.Timetable{Cases: pipeline.Cases{Job: job}, Draw: true},
		"stock":     &pipeline.Stock{Job: job, Draw: true},
	} {
		flags := map[string]string{}
		if name != "timetable" {
			flags["effort"] = "0"
			pipeline.Setting{Name: "effort", To: effortOf(c)}.Set("0")
		}
		want, err := c.Make(ctx)
		require.NoError(t, err, name)
		got := ask(t, page.Request{Do: "make", Name: name, Text: text, Others: others, Flags: flags})
		require.Empty(t, got.Faults, name)
		assert.Equal(t, string(want.Report), string(got.Files[0].Data), name)
		for i, f := range want.Files {
			assert.Equal(t, f, pipeline.File{Name: got.Files[i+1].Name, Data: got.Files[i+1].Data}, name)
		}
		faults := ask(t, page.Request{Do: "make", Name: name, Text: text, Others: []page.Text{{Name: "Light list", Text: wrong}}}).Faults
		require.NotEmpty(t, faults, name)
		assert.Contains(t, faults[0].Says, `of “Light list”: “board”: 90 `, name)
		assert.Empty(t, faults[0].Key, name)
		assert.Nil(t, faults[0].Mend, name)
	}
}

// effortOf is the setting of how long a command searches.
func effortOf(c pipeline.Command) *string {
	switch c := c.(type) {
	case *pipeline.Quote:
		return &c.Effort
	case *pipeline.Order:
		return &c.Effort
	}
	return &c.(*pipeline.Stock).Effort
}

// The blanks of a record are what can be measured of this very case: all that the command
// line lists of it, and nothing else. The ways back ask for its play alone.
func TestRecordOfThisCase(t *testing.T) {
	for _, changes := range [][]page.Change{
		nil, {{Key: "construction", Value: "card"}}, {{Key: "kind", Value: "chemise and slipcase"}}, {{Key: "kind", Value: "drop-spine box"}},
	} {
		text := *ask(t, page.Request{Do: "set", Text: *ask(t, page.Request{Do: "new", Example: true}).Text, Changes: changes}).Text
		shown, err := pipeline.Record{Job: pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: []byte(text)}}}}, Show: true}.Make(ctx)
		require.NoError(t, err)
		var listed, plays []string
		for _, m := range regexp.MustCompile(`(?m)^([a-z-]+)  +\d.*`).FindAllStringSubmatch(string(shown.Report), -1) {
			if listed = append(listed, m[1]); strings.HasPrefix(m[1], "play-") {
				plays = append(plays, m[1])
			}
		}
		for name, want := range map[string][]string{"record": listed, "rescue": plays} {
			var asked []string
			for _, s := range ask(t, page.Request{Do: "settings", Name: name, Text: text}).Outputs[0].Settings {
				if strings.Contains(s.Says, " as planned") {
					asked = append(asked, s.Name)
				}
			}
			require.NotEmpty(t, want)
			assert.Equal(t, want, asked, "%s of %v", name, changes)
		}
		last := listed[len(listed)-1]
		taken := ask(t, page.Request{Do: "make", Name: "record", Text: text, Flags: map[string]string{last: "0.3"}})
		require.NotNil(t, taken.Record, "%v: %v %s", changes, taken.Faults, taken.Error)
		assert.Contains(t, *taken.Record, last)
		sheet := ask(t, page.Request{Do: "make", Name: "record", Text: text, Flags: map[string]string{"show": "true"}})
		assert.Nil(t, sheet.Record)
		assert.Equal(t, "record.pdf", sheet.Files[1].Name)
	}
}

// A material that was measured for a job is the same when another job takes it from the
// shop; what is wrong in a shop is told of the shop, not at a blank of the job.
func TestAddToShop(t *testing.T) {
	text := start(t)
	assert.Equal(t, "board.name", ask(t, page.Request{Do: "add", Name: "board.thickness", Text: text}).Faults[0].Key, "it has no name yet")
	named := *ask(t, page.Request{Do: "set", Text: text, Changes: []page.Change{{Key: "board.name", Value: `my "grey" board`}, {Key: "board.thickness", Value: "4 layers 8.1"}}}).Text
	shop := ask(t, page.Request{Do: "add", Name: "board.thickness", Text: named}).Shop
	require.NotNil(t, shop)
	assert.Equal(t, "board.name", ask(t, page.Request{Do: "add", Name: "board.thickness", Text: named, Shop: *shop}).Faults[0].Key, "it is there already")
	got := ask(t, page.Request{Do: "shop", Shop: *shop})
	assert.Empty(t, got.Faults)
	assert.Equal(t, []string{`my "grey" board`}, got.Offers[0].Names)
	taken := ask(t, page.Request{Do: "set", Text: text, Shop: *shop, Changes: []page.Change{{Key: "board.material", Value: `my "grey" board`}, {Key: "board.thickness", Gone: true}, {Key: "board.name", Gone: true}}})
	assert.Empty(t, taken.Faults)
	assert.Equal(t, ask(t, page.Request{Do: "open", Text: named}).Answer.Numbers, taken.Answer.Numbers)

	wrong := ask(t, page.Request{Do: "open", Text: text, Shop: "version = 1\n[[material]]\nname = 3\n"}).Faults
	require.NotEmpty(t, wrong)
	for _, f := range wrong {
		assert.True(t, f.Shop)
		assert.Empty(t, f.Key)
		assert.Contains(t, f.Says, "in your shop, line ")
	}
}

// What was learnt becomes a habit of the shop that jobs then have, and nothing else of the
// shop changes; what was there before is told.
func TestHabitsAreAdopted(t *testing.T) {
	changes := []page.Change{{Key: "uncertainty.cutting", Value: "0.3 mm"}, {Key: "uncertainty.placing", Value: "0.12 mm"}}
	text := *ask(t, page.Request{Do: "new", Example: true}).Text // which leaves all that is usual to the shop
	got := ask(t, page.Request{Do: "adopt", Text: text, Shop: string(jobfile.ShopStarter()), Changes: changes})
	require.NotNil(t, got.Shop, "%v %s", got.Faults, got.Error)
	assert.Equal(t, string(jobfile.ShopStarter()), strings.Replace(*got.Shop, "[uncertainty]\ncutting = \"0.3 mm\"\nplacing = \"0.12 mm\"\n", "# [uncertainty]\n# cutting = \"0.2 mm\"\n", 1))
	assert.Contains(t, got.Notes[0], "is 0.3 mm in your shop now; it had none before.")
	own := *ask(t, page.Request{Do: "set", Text: text, Changes: changes}).Text
	assert.Equal(t, ask(t, page.Request{Do: "open", Text: own, Shop: string(jobfile.ShopStarter())}).Answer, ask(t, page.Request{Do: "open", Text: text, Shop: *got.Shop}).Answer)

	again := ask(t, page.Request{Do: "adopt", Text: own, Shop: *got.Shop, Changes: []page.Change{{Key: "uncertainty.cutting", Value: "0.2 mm"}}})
	assert.Contains(t, again.Notes[0], "it was 0.3 mm. This case says 0.3 mm itself, which goes before.")
	assert.NotNil(t, ask(t, page.Request{Do: "adopt", Changes: changes}).Shop, "a shop to begin with")
	assert.Contains(t, ask(t, page.Request{Do: "adopt", Changes: []page.Change{{Key: "book.height", Value: "3"}}}).Faults[0].Says, "no habit")
}

// What is advised can be filled in, all at once or piece by piece: the case is then the one
// that was advised.
func TestAdviceIsFilledIn(t *testing.T) {
	text := *ask(t, page.Request{Do: "set", Text: start(t), Changes: []page.Change{{Key: "thumb_hole.shape", Value: "semicircle"}}}).Text
	for _, flags := range []map[string]string{{}, {"condition": "fragile"}, {"condition": "loose"}} {
		got := ask(t, page.Request{Do: "make", Name: "choose", Text: text, Flags: flags})
		require.NotEmpty(t, got.Advised, "%v", got.Faults)
		flags["format"] = "toml"
		want := string(ask(t, page.Request{Do: "make", Name: "choose", Text: text, Flags: flags}).Files[0].Data)
		state := ask(t, page.Request{Do: "open", Text: want}).State
		pieces := text
		for _, one := range got.Advised[1:] {
			pieces = *ask(t, page.Request{Do: "set", Text: pieces, Changes: one.Sets}).Text
		}
		for _, text := range []string{*ask(t, page.Request{Do: "set", Text: text, Changes: got.Advised[0].Sets}).Text, pieces} {
			filled := ask(t, page.Request{Do: "open", Text: text})
			assert.Empty(t, filled.Faults)
			assert.Equal(t, state.Values, filled.State.Values)
			if len(flags) == 1 { // with the format
				assert.Equal(t, "none", filled.State.Values["thumb_hole.shape"], "a simple slipcase is not notched")
			}
		}
	}
}

// A maker names a material of the shop, has it priced, takes down what the case measures, and
// makes a habit of what cases teach.
func TestAShopInThePage(t *testing.T) {
	t.Parallel()
	p := opened(t)
	p.Run(t, chromedp.Evaluate(`document.querySelectorAll('#materials details').forEach((d) => { d.open = true })`, nil))
	typed(t, p, blank("board.name"), "kitchen board")
	press(t, p, "#shop button", "board")
	p.Wait(t, `document.querySelector('#blank-board-material').options.length === 2`)
	choose(t, p, "board.material", "kitchen board")
	p.Wait(t, settled)
	text := browser.Value[string](t, p, `forel.text()`)
	assert.Contains(t, text, `material = "kitchen board"`)
	assert.Equal(t, "", browser.Value[string](t, p, `document.querySelector('#blank-board-thickness').value`))

	p.Run(t, chromedp.Evaluate(`document.querySelector('#paper-quote').open = true; document.querySelector('#paper-record').open = true`, nil))
	press(t, p, "#begin-quote", "")
	p.Wait(t, `document.querySelectorAll('#output-quote .files button').length === 3`)
	assert.Contains(t, told(t, p, "#output-quote .thumbs"), "Costing, page 1 of")
	p.Run(t, chromedp.Evaluate(`document.querySelectorAll("#output-quote details").forEach((d) => { d.open = true })`, nil))
	press(t, p, "#output-quote button", "a line of your own")
	typed(t, p, blank("extra.amount"), "12.50")
	assert.Contains(t, browser.Value[string](t, p, `forel.text()`), "[[extra]]\ntext = \"something more\"\namount = 12.50\n")
	typed(t, p, "#record-play-height", "0.4")
	press(t, p, "#begin-record", "")
	p.Wait(t, `document.querySelector('#output-record pre')?.textContent.includes('0.40')`)
	assert.Equal(t, "", browser.Value[string](t, p, `document.querySelector('#record-play-height').value`), "it is taken down once")
	assert.Equal(t, 1, browser.Value[int](t, p, `Object.keys(localStorage).filter((k) => k.startsWith('forel.record ')).length`))

	press(t, p, "#cases button", "copy")
	p.Wait(t, `document.querySelectorAll('#cases li').length === 2`)
	p.Run(t, chromedp.Evaluate(`document.querySelector('#cases input').click()`, nil))
	press(t, p, "#begin-quote", "")
	p.Wait(t, `document.querySelector('#output-quote pre').textContent.startsWith('Costing: 2 cases')`)
	press(t, p, "#output-quote button", "this case alone")
	assert.False(t, browser.Value[bool](t, p, `document.querySelector('#cases input').checked`))

	records, err := filepath.Glob("../../testdata/lessons/*.record.toml")
	require.NoError(t, err)
	for i, file := range records {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		p.Run(t, chromedp.Evaluate(fmt.Sprintf(`localStorage['forel.record r%[1]d'] = JSON.stringify(%[2]q); localStorage['forel.case r%[1]d'] = JSON.stringify({ id: 'r%[1]d', text: '', untaken: [] })`, i, data), nil))
	}
	p.Run(t, chromedp.Evaluate(`document.querySelector('#paper-lessons').open = true`, nil))
	press(t, p, "#begin-lessons", "")
	p.Wait(t, `document.querySelector('#output-lessons .advised')`)
	press(t, p, "#output-lessons .advised button", "habit")
	p.Wait(t, `document.querySelector('#output-lessons > .faults').textContent.includes('in your shop now')`)
	assert.Contains(t, browser.Value[string](t, p, `document.querySelector('#shop-text').value`), "[uncertainty]\n")
	assert.NotContains(t, browser.Value[string](t, p, `forel.text()`), "[uncertainty]\n")
}
