package page_test

import (
	"context"
	"testing"

	"forel/cmd/page"
)

// BenchmarkRequests is what the page asks most, on the invented book, of this machine
// rather than of a browser.
func BenchmarkRequests(b *testing.B) {
	var desk page.Desk
	ctx := context.Background()
	text := *desk.Answer(ctx, page.Request{Do: "new", Example: true}, nil).Text
	for _, do := range []string{"open", "pictures", "steps", "make"} {
		b.Run(do, func(b *testing.B) {
			for range b.N {
				if do == "open" {
					desk = page.Desk{}
				}
				if a := desk.Answer(ctx, page.Request{Do: do, Text: text, Name: "templates", Pages: true}, nil); a.Error != "" {
					b.Fatal(a.Error)
				}
			}
		})
	}
}
