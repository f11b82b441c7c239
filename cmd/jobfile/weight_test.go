package jobfile_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
)

func TestWeightOfABook(t *testing.T) {
	const book = "[[book]]\nheight = 200\nwidth = 100\nthickness = 20\nweight = "
	for text, grams := range map[string]float64{`850`: 850, `"850 g"`: 850, `"1.2 kg"`: 1200, `"1,25 kg"`: 1250, `" 900g "`: 900, `"30 kg"`: 30000} {
		f, _, err := jobfile.Parse("case.toml", []byte(book+text+"\n"))
		require.NoError(t, err, text)
		assert.InDelta(t, grams, f.Job.Shared().Books[0].Weight, 1e-9, text)
	}
	for text, wrong := range map[string]string{
		`"2 lb"`: `"2 lb" is no weight; give 5 g to 30 kg`, `2`: "2 is too light", `"31 kg"`: `"31 kg" is too heavy`, `-5`: "-5 is too light",
		`[850]`: "is no weight", `"1,250 g"`: "can be read in two ways", `nan`: "is no weight", `true`: "is no weight",
	} {
		_, _, err := jobfile.Parse("case.toml", []byte(book+text+"\n"))
		assert.ErrorContains(t, err, "case.toml:5: book.weight: ", text)
		assert.ErrorContains(t, err, wrong, text)
	}
	f, _, err := fromFlags([]jobfile.Flag{
		{Name: "--height", Key: "book.height", Value: "200"}, {Name: "--width", Key: "book.width", Value: "100"},
		{Name: "--thickness", Key: "book.thickness", Value: "20"}, {Name: "--set book.weight", Key: "book.weight", Value: "1.5 kg"},
	})
	require.NoError(t, err)
	assert.InDelta(t, 1500, f.Job.Shared().Books[0].Weight, 1e-9)
}
