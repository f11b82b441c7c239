package fit_test

import (
	"strings"
	"testing"

	"forel/render/typeset"
)

// No page is mostly empty: what stands on it reaches over half of what is written
// on, foot and rulers left out. Of twelve volumes one page may be.
func TestPagesAreFull(t *testing.T) {
	for _, s := range subjects() {
		for n, p := range s.pages() {
			room := s.Setup.Printable(p.Width > p.Height)
			foot := Length(12)
			if p.Width > p.Height {
				foot += 20
			}
			last := room.Min.Y
			for _, w := range p.Texts {
				if b := typeset.Box(w.Text); b.Max.Y < room.Max.Y-foot {
					last = max(last, b.Max.Y)
				}
			}
			for _, l := range p.Strokes {
				if b := l.Path.Bounds(); b.Max.Y < room.Max.Y-foot {
					last = max(last, b.Max.Y)
				}
			}
			full := float64((last - room.Min.Y) / (room.Height() - foot))
			if full <= 0.5 && !strings.HasPrefix(s.name, "twelve") {
				t.Errorf("%s, page %d: %.2f of it is used", s.name, n+1, full)
			}
		}
	}
}
