package jobfile

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry/kinds"
	"forel/geometry/plan"
)

// What would make another kind of a job is said in as few keys as do.
func TestTelling(t *testing.T) {
	boards, card := kinds.All[0], kinds.All[1]
	folder := plan.Kind{Name: "folder", About: "a folder"} // invented
	assert.Equal(t, `construction = "card"`, telling(boards, card))
	assert.Equal(t, `construction = "boards"`, telling(card, boards))
	assert.Equal(t, `kind = "folder"`, telling(card, folder))
	assert.Equal(t, `kind = "slipcase"`, telling(folder, boards))
	assert.Equal(t, `kind = "slipcase" and construction = "card"`, telling(folder, card))
}
