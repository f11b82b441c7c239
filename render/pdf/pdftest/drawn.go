package pdftest

import (
	"bytes"
	"fmt"
	"math"
	"testing"
	"unicode"

	"github.com/klippa-app/go-pdfium/requests"
	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"
	"github.com/stretchr/testify/require"
)

// AsDrawn returns a file with every page that lies seen as it was drawn: wider than
// high, turned a quarter clockwise. In the file it is an upright sheet on which no
// word is level.
func AsDrawn(t testing.TB, file []byte) []byte {
	t.Helper()
	var ctx *model.Context // read where a page lies
	for n, d := 1, open(t, file); n <= d.Pages; n++ {
		if !d.lies(n) {
			continue
		}
		if ctx == nil {
			var err error
			ctx, err = api.ReadAndValidate(bytes.NewReader(file), model.NewDefaultConfiguration())
			require.NoError(t, err)
		}
		page, _, inherited, err := ctx.PageDict(n, false)
		require.NoError(t, err)
		w, h := inherited.MediaBox.Width(), inherited.MediaBox.Height()
		page["MediaBox"] = types.NewNumberArray(0, 0, h, w)
		// (x, y) of the sheet, upward, comes to (y, w-x).
		turn, err := ctx.NewStreamDictForBuf(fmt.Appendf(nil, "0 -1 1 0 0 %.4f cm\n", w))
		require.NoError(t, err)
		require.NoError(t, turn.Encode())
		ref, err := ctx.IndRefForNewObject(*turn)
		require.NoError(t, err)
		page["Contents"] = types.Array{*ref, page["Contents"]}
	}
	if ctx == nil {
		return file
	}
	var out bytes.Buffer
	require.NoError(t, api.WriteContext(ctx, &out))
	return out.Bytes()
}

// lies tells whether a page has words and none of them is level.
func (d *Doc) lies(page int) bool {
	words, err := d.viewer.FPDFText_LoadPage(&requests.FPDFText_LoadPage{Page: d.page(page)})
	require.NoError(d.t, err)
	defer func() { _, _ = d.viewer.FPDFText_ClosePage(&requests.FPDFText_ClosePage{TextPage: words.TextPage}) }()
	count, err := d.viewer.FPDFText_CountChars(&requests.FPDFText_CountChars{TextPage: words.TextPage})
	require.NoError(d.t, err)
	some := false
	for i := range count.Count {
		letter, err := d.viewer.FPDFText_GetUnicode(&requests.FPDFText_GetUnicode{TextPage: words.TextPage, Index: i})
		require.NoError(d.t, err)
		if unicode.IsSpace(rune(letter.Unicode)) {
			continue
		}
		some = true
		turned, err := d.viewer.FPDFText_GetCharAngle(&requests.FPDFText_GetCharAngle{TextPage: words.TextPage, Index: i})
		require.NoError(d.t, err)
		if sin, cos := math.Sincos(float64(turned.CharAngle)); math.Abs(sin) < 0.01 && cos > 0 {
			return false
		}
	}
	return some
}
