package proof

import (
	"bytes"
	"encoding/xml"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
)

// The same case gives the same bytes, and what is written is well-formed.
func TestSameBytes(t *testing.T) {
	o := Options{Setup: setup("A4"), Round: geometry.ToTenthMM}
	s := subjects()["divided, triangle"]
	a, b := Document(s.Plan, o), Document(s.Plan, o)
	svgA, svgB := a.SVG(), b.SVG()
	assert.True(t, bytes.Equal(svgA, svgB))
	pdfA, err := a.PDF()
	require.NoError(t, err)
	pdfB, err := b.PDF()
	require.NoError(t, err)
	assert.True(t, bytes.Equal(pdfA, pdfB))
	assert.True(t, bytes.HasPrefix(pdfA, []byte("%PDF-")))

	ids := map[string]int{}
	for dec := xml.NewDecoder(bytes.NewReader(svgA)); ; {
		token, err := dec.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok {
			for _, a := range e.Attr {
				if a.Name.Local == "id" {
					ids[a.Value]++
				}
			}
		}
	}
	assert.Equal(t, map[string]int{"Legend": 1}, ids, "nothing that is to be cut, no id twice")
}
