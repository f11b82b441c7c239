package slipcase_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// The same job gives the same answer, word for word, however often it is asked.
func TestRepeatable(t *testing.T) {
	for name, change := range map[string]func(*slipcase.Job){
		"usual": func(*slipcase.Job) {},
		"thin": func(j *slipcase.Job) {
			j.Books[0] = job.Book{Height: readings(99.369140625), Width: readings(150), Thickness: readings(7.203125)}
		},
		"board of 5/64 in": func(j *slipcase.Job) { j.Board.Thickness = 5 * inch / 64 },
		"refused":          func(j *slipcase.Job) { j.Cloth.Thickness, j.SidePaper.Inset = 1.5, 60 },
	} {
		t.Run(name, func(t *testing.T) {
			j := exampleJob(change)
			first, firstErr := slipcase.Make(j)
			for range 20 {
				again, err := slipcase.Make(j)
				require.Equal(t, firstErr, err)
				require.Equal(t, first.Pieces, again.Pieces)
				require.Equal(t, first.Stands.Mouth(), again.Stands.Mouth())
			}
		})
	}
}
