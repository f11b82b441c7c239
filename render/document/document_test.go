package document_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/pagetest"
	"forel/render/record"
	"forel/render/typeset"
)

const text = "Brush paste on the back of a lining, from the middle outward, and lay the board into its middle."

func made() *document.Document {
	return &document.Document{Options: document.Options{Setup: paper.DefaultSetup()}, Title: "An invented case", Running: "Invented", Foot: "Not at true size."}
}

// What is set lies within its box, its lines clear of each other, and ends where it
// is said to.
func TestParagraphAndItem(t *testing.T) {
	box := geometry.Bx(20, 30, 70, 250)
	for name, set := range map[string]func(render.Surface) geometry.Length{
		"paragraph": func(s render.Surface) geometry.Length {
			return document.Paragraph(s, box, box.Min.Y, text, render.BodySize, false)
		},
		"item": func(s render.Surface) geometry.Length {
			return document.Item(s, box, document.Number, 11, text, render.BodySize)
		},
	} {
		on := &record.Surface{}
		box := box
		box.Max.Y = set(on)
		assert.NotEmpty(t, on.Texts, name)
		assert.Empty(t, pagetest.Faults(on, box), name)
	}
}

// The foot of every page has its number and how many there are, in the drawing and
// in the file.
func TestPagesAreNumbered(t *testing.T) {
	d := made()
	for range 3 {
		d.NewPage(false, "")
	}
	for i, p := range d.Pages() {
		var said []string
		for _, w := range p.Texts {
			said = append(said, w.String)
		}
		assert.Equal(t, []string{"Not at true size.", fmt.Sprintf("page %d of 3 – Invented", i+1)}, said)
	}
	data, err := d.PDF()
	require.NoError(t, err)
	n, err := api.PageCount(bytes.NewReader(data), nil)
	require.NoError(t, err)
	assert.Equal(t, 3, n)
	again, err := d.PDF()
	require.NoError(t, err)
	assert.Equal(t, data, again, "the same document has the same bytes")
	var drawing struct {
		Width string   `xml:"width,attr"`
		Words []string `xml:"g>text"`
	}
	require.NoError(t, xml.Unmarshal(d.SVG(), &drawing))
	assert.Equal(t, "210.0000mm", drawing.Width)
	assert.Len(t, drawing.Words, 6)
}

// Blocks of any height stand in their order, within the room and apart; what stays
// together is on one page where it is no taller than that, and what is drawn aside
// leaves nothing behind.
func TestFlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := made()
		room := d.Room(false)
		heights := rapid.SliceOfN(rapid.Float64Range(1, 120), 1, 40).Draw(t, "heights")
		stays := rapid.SliceOfN(rapid.Bool(), len(heights), len(heights)).Draw(t, "stays")
		fresh := rapid.IntRange(0, len(heights)-1).Draw(t, "fresh")
		var blocks []document.Block
		for i, h := range heights {
			blocks = append(blocks, document.Block{
				Above: geometry.Length(rapid.Float64Range(0, 6).Draw(t, "above")), Stays: stays[i], Fresh: i == fresh,
				Draw: func(box geometry.Box) geometry.Length {
					box.Max.Y = box.Min.Y + geometry.Length(h)
					d.Fill(geometry.Rectangle(box), render.Color{R: uint8(i)})
					return box.Max.Y
				},
			})
		}
		on := d.Flow(nil, blocks...)
		require.Equal(t, len(on), d.Count())
		n := 0
		for page, p := range d.Pages() {
			require.NotZero(t, on[page])
			require.Len(t, p.Fills, on[page])
			last := room.Min.Y
			for _, f := range p.Fills {
				b := f.Path.Bounds()
				require.Equal(t, uint8(n), f.Stroke.Color.R, "blocks keep their order")
				require.GreaterOrEqual(t, b.Min.Y, last-1e-6)
				require.LessOrEqual(t, b.Max.Y, room.Max.Y+1e-6)
				require.InDelta(t, heights[n], b.Height().MM(), 1e-6)
				last = b.Max.Y
				n++
			}
			if n <= fresh && n < len(heights) && !stays[n-1] {
				continue
			}
			// A page ends early only where what comes next has no room.
			if n < len(heights) && n != fresh && !stays[n] && !stays[n-1] {
				require.Greater(t, float64(last)+heights[n]+6, float64(room.Max.Y), "page %d ends at %v", page, last)
			}
		}
		require.Equal(t, len(heights), n)
		first := 0
		for _, k := range on[:len(on)-1] { // what stays together is parted only where it is taller than a page
			first += k
			if !stays[first-1] || first == fresh {
				continue
			}
			from, to := first-1, first
			for from > 0 && stays[from-1] && from != fresh {
				from--
			}
			for to < len(heights)-1 && stays[to] && to+1 != fresh {
				to++
			}
			tall := 0.
			for i, h := range heights[from : to+1] {
				if tall += h; i > 0 {
					tall += blocks[from+i].Above.MM()
				}
			}
			require.Greater(t, tall, room.Height().MM()-1e-6)
		}
	})
}

// Figures take what a page has to spare, evenly.
func TestFiguresShareThePage(t *testing.T) {
	d := made()
	var boxes []geometry.Box
	figure := func(box geometry.Box) { boxes = append(boxes, box) }
	d.Flow(nil, document.Block{Draw: func(box geometry.Box) geometry.Length { return box.Min.Y + 30 }, Figures: []func(geometry.Box){figure, figure, figure}})
	require.Len(t, boxes, 3)
	for _, b := range boxes {
		assert.InDelta(t, boxes[0].Height().MM(), b.Height().MM(), 1e-9)
	}
	assert.InDelta(t, d.Room(false).Max.Y.MM(), boxes[2].Max.Y.MM(), 1e-6)
}

// A table of any words has every cell once, apart from all others, and its heads on
// every page.
func TestTable(t *testing.T) {
	cell := rapid.StringMatching(`[a-z]{1,9}( [a-z]{1,9}){0,2}`)
	rapid.Check(t, func(t *rapid.T) {
		table := document.Table{Size: rapid.SampledFrom([]render.Points{render.BodySize, render.NoteSize}).Draw(t, "size"),
			Ticks: rapid.SampledFrom([][]string{nil, {""}, {"CUT", "CHECKED"}}).Draw(t, "ticks"), Whole: rapid.Bool().Draw(t, "whole"), Full: rapid.Bool().Draw(t, "full"), Wider: 1.1}
		columns := rapid.IntRange(1, 5).Draw(t, "columns")
		for i := range columns {
			table.Columns = append(table.Columns, document.Column{Head: fmt.Sprintf("HEAD %d", i), Right: rapid.Bool().Draw(t, "right"), Broken: rapid.Bool().Draw(t, "broken")})
		}
		words := map[string]int{}
		for range rapid.IntRange(1, 90).Draw(t, "rows") {
			row := rapid.SliceOfN(cell, columns, columns).Draw(t, "row")
			table.Rows = append(table.Rows, row)
			for _, c := range row {
				for _, w := range strings.Fields(c) {
					words[w]++
				}
			}
		}
		d := made()
		d.Flow(nil, d.Table("A list", table)...)
		for _, p := range d.Pages() {
			require.Empty(t, pagetest.Faults(&p.Surface, d.Setup.Reach(false)))
			heads := 0
			for _, w := range p.Texts {
				if strings.HasPrefix(w.String, "HEAD") {
					heads++
				}
				for _, part := range strings.Fields(w.String) {
					words[part]--
				}
			}
			require.Equal(t, columns, heads)
		}
		for w, left := range words {
			if strings.ToLower(w) == w && strings.Trim(w, "abcdefghijklmnopqrstuvwxyz") == "" && !strings.Contains("page of ot at true size list continued", w) {
				require.Zero(t, left, w)
			}
		}
	})
}

// Rulers are as long as they say.
func TestRulers(t *testing.T) {
	on := &record.Surface{}
	document.Rulers(on, geometry.Pt(10, 10))
	var long []float64
	for _, s := range on.Strokes {
		if b := s.Path.Bounds(); b.Width() > 50 {
			long = append(long, b.Width().MM())
		}
	}
	assert.InDeltaSlice(t, []float64{100, 101.6}, long, 1e-9)
	for _, w := range on.Texts {
		assert.LessOrEqual(t, typeset.Box(w.Text).Max.Y, 10+document.RulersTall)
	}
}

// What is played elsewhere is what was drawn, in its order, moved.
func TestPlay(t *testing.T) {
	var from, to record.Surface
	from.Begin(render.Cutting)
	from.Stroke(geometry.Line(geometry.Pt(0, 0), geometry.Pt(1, 0)), render.Stroke{Width: 1})
	from.End()
	from.Text(render.Text{String: "word", At: geometry.Pt(2, 2)})
	from.Fill(geometry.Rectangle(geometry.Bx(0, 0, 1, 1)), render.Black)
	from.Play(&to, geometry.Pt(10, 20))
	require.Len(t, to.Strokes, 1)
	assert.Equal(t, render.Cutting, to.Strokes[0].Layer)
	assert.Equal(t, geometry.Pt(10, 20), to.Strokes[0].Path.Vertices[0].Point)
	assert.Equal(t, geometry.Pt(12, 22), to.Texts[0].At)
	assert.Empty(t, to.Texts[0].Layer)
	assert.True(t, to.Strokes[0].Nth < to.Texts[0].Nth && to.Texts[0].Nth < to.Fills[0].Nth)
}
