package page_test

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"

	"forel/cmd/page/browser"
)

// BenchmarkOpen opens the page, cold in a browser that was just started and warm in one
// that has run it before, to its first verdict and to its first picture, in milliseconds
// since the page was asked for; and what the program's start takes of it: its text
// unpacked, inflated and compiled, and its own start. FOREL_PAGE names a page that is made
// already.
func BenchmarkOpen(b *testing.B) {
	browser.Find(b)
	file := browser.Build(b)
	b.Run("cold", func(b *testing.B) { open(b, func() *browser.Page { return browser.Cold(b, file) }) })
	b.Run("warm", func(b *testing.B) { open(b, func() *browser.Page { return browser.Open(b, file) }) })
}

func open(b *testing.B, opens func() *browser.Page) {
	sum := map[string]float64{}
	b.ResetTimer()
	for range b.N {
		p := opens()
		p.Wait(b, settled)
		for name, value := range browser.Value[map[string]float64](b, p, `({
			'ms-verdict': performance.getEntriesByName('answered')[0].startTime,
			'ms-picture': performance.getEntriesByName('drawn')[0].startTime,
			'ms-parsed': performance.getEntriesByName('parsed')[0].startTime,
			'ms-unpacking': performance.getEntriesByName('program started')[0].detail.unpacked,
			'ms-compiling': performance.getEntriesByName('program started')[0].detail.compiled,
			'ms-starting': performance.getEntriesByName('program started')[0].detail.ready})`) {
			sum[name] += value
		}
		p.Close()
	}
	for name, value := range sum {
		b.ReportMetric(value/float64(b.N), name)
	}
}

// BenchmarkKey presses a key in a blank, to the answer and to the picture of it.
func BenchmarkKey(b *testing.B) {
	browser.Find(b)
	file := browser.Build(b)
	p := browser.Open(b, file)
	p.Wait(b, settled)
	p.Type(b, "#height", "220.5")
	p.Wait(b, settled)
	var answered, drawn float64
	b.ResetTimer()
	for n := range b.N {
		p.Run(b, chromedp.SendKeys("#height", string(rune('1'+n%9))))
		p.Wait(b, settled)
		took := browser.Value[[]float64](b, p, `(() => { const last = (n) => performance.getEntriesByName(n).at(-1).startTime; return [last('answered') - last('changed'), last('drawn') - last('changed')] })()`)
		answered, drawn = answered+took[0], drawn+took[1]
		p.Run(b, chromedp.SendKeys("#height", "\b"))
		p.Wait(b, settled)
	}
	b.ReportMetric(answered/float64(b.N), "ms-answer")
	b.ReportMetric(drawn/float64(b.N), "ms-picture")
}

// BenchmarkBeside looks at the steps and at the sheets, until all their pictures are drawn
// in the second worker, cold and after a change of the book.
func BenchmarkBeside(b *testing.B) {
	browser.Find(b)
	p := browser.Open(b, browser.Build(b))
	p.Wait(b, settled)
	for _, part := range []string{"#steps", "#output-templates .made"} {
		for _, when := range []string{"cold", "warm"} {
			b.Run(part+" "+when, func(b *testing.B) {
				for n := range b.N {
					if when == "warm" {
						p.Run(b, chromedp.Evaluate(fmt.Sprintf(`forel.set({key: 'book.width', value: '%d'})`, 140+n%9), nil))
						p.Wait(b, settled)
					}
					p.Run(b, chromedp.Evaluate(fmt.Sprintf("document.querySelector(%q).scrollIntoView()", part), nil))
					p.Wait(b, fmt.Sprintf("document.querySelector(%q).getAttribute('aria-busy') === 'false'", part))
				}
			})
		}
	}
}
