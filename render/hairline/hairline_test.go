package hairline_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/render"
	"forel/render/hairline"
	"forel/render/record"
	"forel/render/typeset"
)

const (
	printable = " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~"
	names     = "ÀÁÂÃÄÅÇÈÉÊËÌÍÎÏÑÒÓÔÕÖØÙÚÛÜÝßàáâãäåçèéêëìíîïñòóôõöøùúûüýÿČčĐđĘęĞğİıŁłŃńŐőŘřŠšŞşȘșŤťŮůŰűŻżŽžẠạẢảẤấẦầẨẩẪẫẬậẮắẰằẲẳẴẵẶặẸẹẺẻẼẽẾếỀềỂểỄễỆệỈỉỊịỌọỎỏỐốỒồỔổỖỗỘộƠơỚớỜờỞởỠỡỢợỤụỦủƯưỨứỪừỬửỮữỰựỲỳỴỵỶỷỸỹ×–—°½→←↑↓↔÷"
)

func strokes(text string) string {
	return fmt.Sprint(hairline.Strokes(render.Text{String: text, Size: 10}))
}

// Every letter of a name is told from every other, and none is the box that stands for
// letters the alphabet lacks.
func TestLettersAreApart(t *testing.T) {
	seen := map[string]rune{strokes("\U0001F4D6"): '?'}
	for _, r := range printable[1:] + names {
		now := strokes("n" + string(r))
		was, twice := seen[now]
		assert.False(t, twice, "%c is drawn as %c", r, was)
		seen[now] = r
	}
	assert.Equal(t, strokes("日"), strokes("\U0001F4D6"))
	assert.Equal(t, strokes("é"), strokes("e\u0301"), "however it is encoded")
	assert.NotEqual(t, strokes("91/2"), strokes("9½"), "a fraction stands apart from its number")
}

// A letter is told to be lacking where a box is drawn for it, and nowhere else.
func TestLacks(t *testing.T) {
	for _, r := range printable + names + "e\u0301" {
		assert.Empty(t, hairline.Lacks(string(r)), "%c", r)
	}
	assert.Equal(t, []rune("日"), hairline.Lacks("a日b日 é"))
	assert.Equal(t, []rune("ש"), hairline.Lacks("ש"))
}

// Words are no longer than the typeface sets them and within its line, level or turned, at
// either end of their place; they have letters from one end to the other.
func TestWordsStayInTheirBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := render.Text{
			String: rapid.StringOfN(rapid.RuneFrom([]rune(printable+names)), 1, 60, -1).Draw(t, "text"),
			At:     geometry.Pt(30, 40), Size: rapid.SampledFrom([]render.Points{6.5, 9, 20}).Draw(t, "size"),
			Align: rapid.SampledFrom([]render.Align{render.Start, render.Middle, render.End}).Draw(t, "align"), Turned: rapid.Bool().Draw(t, "turned"),
		}
		box := typeset.Box(text).Grow(geometry.Length(text.Size) * geometry.PDFPoint * 0.45) // accents over capitals, and over accents, reach beyond
		for _, p := range hairline.Strokes(text) {
			require.True(t, box.Contains(p.Bounds()), "%v leaves %v", p.Bounds(), box)
		}
	})
}

// On the surface all is a line of one width: fills are outlined, white is left out, and
// dashes are solid.
func TestSurface(t *testing.T) {
	var on record.Surface
	s := hairline.Surface{Surface: &on, Width: 0.02}
	square := geometry.Rectangle(geometry.Bx(0, 0, 5, 5))
	s.Stroke(square, render.Stroke{Width: 0.5, Dash: []geometry.Length{3, 1}, Phase: 1, Color: render.Blue})
	s.Fill(square, render.Black)
	s.Fill(square, render.White)
	s.Text(render.Text{String: "L", Size: 9})
	assert.Empty(t, on.Fills)
	assert.Empty(t, on.Texts)
	require.Len(t, on.Strokes, 3)
	for _, l := range on.Strokes {
		assert.Equal(t, render.Stroke{Width: 0.02, Color: l.Stroke.Color}, l.Stroke)
	}
}
