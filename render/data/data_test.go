package data_test

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/render/data"
)

// What another program reads is the length to half a thousandth, and never -0.
func TestLengthsAreReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := rapid.Float64Range(-5000, 5000).Draw(t, "length")
		out, err := data.JSON("a length", data.Object{{"l", data.MM(l)}})
		require.NoError(t, err)
		var read map[string]float64
		require.NoError(t, json.Unmarshal(out, &read))
		assert.InDelta(t, l, read["l"], 0.0005+1e-9)
		assert.False(t, read["l"] == 0 && math.Signbit(read["l"]))
	})
}

func ExampleJSON() {
	out, _ := data.JSON("a list", data.Object{
		{"room & more", data.MM(-1e-9)},
		{"at", data.List([]geometry.Length{1.5, -2}, data.InMM)},
		{"none", data.Given("")},
		{"unknown", data.Null},
		{"within", data.Object{{"share", data.Part(1.0 / 3)}}},
	})
	fmt.Print(string(out))
	// Output:
	// {
	//   "room & more": 0,
	//   "at": [1.5, -2],
	//   "unknown": null,
	//   "within": {
	//     "share": 0.333333
	//   }
	// }
}
