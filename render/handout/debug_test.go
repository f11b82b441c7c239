package handout

import (
	"os"
	"testing"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/pdf"
)

func TestDebug(t *testing.T) {
	j := slipcase.DefaultJob()
	h, w, th := 221.5, 148.5, 32.0
	if os.Getenv("T") == "thin" {
		th = 3
	}
	if os.Getenv("T") == "thick" {
		h, w, th = 400, 300, 150
	}
	j.Books = []slipcase.Book{{Height: slipcase.Readings{slipcase.Length(h)}, Width: slipcase.Readings{slipcase.Length(w)}, Thickness: slipcase.Readings{slipcase.Length(th)}}}
	c, err := slipcase.Make(j)
	if err != nil {
		t.Fatal(err)
	}
	doc := pdf.New("x")
	b := &book{Options: Options{Setup: paper.DefaultSetup(), Round: geometry.ToTenthMM}, Subject: Of(c), pages: doc, palette: paletteOf(false)}
	m := modelOf(c, b.palette)
	s, wl, cl := m.joining()
	sl, sf := m.spineFigures()
	hl, ht := m.endFigures()
	rows := [][]panel{s, wl, cl, sl, sf, hl, ht, m.paperFigures(spineCloth, headCloth, tailCloth)}
	for i, r := range rows {
		if i%4 == 0 {
			doc.AddPage(210, 297)
		}
		y := geometry.Length(10 + 70*(i%4))
		b.drawPanel(r[0], geometry.Bx(10, y, 82, y+66), atLeft)
		b.drawPanel(r[1], geometry.Bx(82, y, 154, y+66), atRight)
	}
	data, err := doc.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	os.WriteFile("/tmp/wt-handout/debug.pdf", data, 0o644)
}
