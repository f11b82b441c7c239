package page_test

import (
	"context"
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
	assert.Empty(t, ask(t, page.Request{Do: "make", Name: "lessons", Text: text, Shop: shop, Records: []string{*more.Record}}).Faults)
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

// A maker names a material of the shop, has it priced, and takes down what the case measures.
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
	typed(t, p, "#record-play-height", "0.4")
	press(t, p, "#begin-record", "")
	p.Wait(t, `document.querySelector('#output-record pre')?.textContent.includes('0.40')`)
	assert.Equal(t, "", browser.Value[string](t, p, `document.querySelector('#record-play-height').value`), "it is taken down once")
	assert.Equal(t, 1, browser.Value[int](t, p, `Object.keys(localStorage).filter((k) => k.startsWith('forel.record ')).length`))
}
