package page_test

import (
	"testing"

	"github.com/chromedp/chromedp"

	"forel/cmd/page/browser"
)

// BenchmarkKeyInClass presses keys while the files of a class of twenty are made, to the
// answer of the slowest and of all on average, in milliseconds; and makes the class.
func BenchmarkKeyInClass(b *testing.B) {
	browser.Find(b)
	p := browser.Open(b, browser.Build(b))
	p.Wait(b, settled)
	dropRoster(b, p)
	p.Wait(b, `!document.getElementById('class-zip').disabled`)
	var slowest, sum, took float64
	keys := 0
	b.ResetTimer()
	for range b.N {
		p.Run(b, chromedp.Evaluate(`document.getElementById('based').click(); document.getElementById('look-at-class').click()`, nil)) // so that it is made again
		p.Wait(b, `document.getElementById('look-at-class').hidden === false && !document.getElementById('class-zip').disabled`)
		p.Run(b, chromedp.Evaluate(`globalThis.begun = performance.now(); document.getElementById('class-zip').click()`, nil))
		for browser.Value[bool](b, p, `document.getElementById('class-zip').hidden`) {
			p.Type(b, "#height", "22"+string(rune('0'+keys%10)))
			p.Wait(b, settled)
			keys++
			ms := browser.Value[float64](b, p, `performance.getEntriesByName('answered').at(-1).startTime - performance.getEntriesByName('changed').at(-1).startTime`)
			slowest, sum = max(slowest, ms), sum+ms
		}
		took += browser.Value[float64](b, p, `performance.now() - begun`)
	}
	b.ReportMetric(slowest, "ms-slowest-key")
	b.ReportMetric(sum/float64(max(1, keys)), "ms-key")
	b.ReportMetric(took/float64(b.N), "ms-class")
}
