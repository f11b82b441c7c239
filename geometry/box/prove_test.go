package box

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestUsualBoxesAreSound(t *testing.T) {
	for _, walls := range []string{Around, On} {
		j := usualJob()
		j.Walls = walls
		r := prove(j.pieces(), j.conditions())
		for _, f := range r.Faults {
			t.Error(walls, f)
		}
		assert.NotEmpty(t, r.Faces)
	}
}
