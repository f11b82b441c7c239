package kinds_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
)

// The names that leave pieces out leave out those and no others, of any kind of case, and
// among what is cut on a machine too.
func TestLeftOut(t *testing.T) {
	var plans []plan.Plan
	for _, k := range kinds.All {
		j := k.New(geometry.MM)
		j.Shared().Books = []job.Book{book(221, 148.5, 32)}
		for _, table := range []string{"pattern", "lining_pattern"} { // with pieces seen from their faces
			if match, ok := j.Settings().Find(table + ".match"); ok {
				across, _ := j.Settings().Find(table + ".repeat_across")
				*match.Word, *across.Length = "mirror", 18
			}
		}
		p, err := plantest.Plan(j)
		require.NoError(t, err, k.About)
		plans = append(plans, p)
	}
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(plans).Draw(t, "plan")
		out := map[string]bool{}
		var kept []string
		for _, q := range p.Pieces {
			if out[q.Name] = rapid.Bool().Draw(t, q.Name); !out[q.Name] {
				kept = append(kept, q.Name)
			}
		}
		for _, pieces := range [][]geometry.Piece{p.Pieces, p.Machined()} {
			names := plan.Without(pieces, func(q geometry.Piece) bool { return out[q.Name] || out[q.FaceOf] })
			some, unknown := p.Only(names)
			require.Empty(t, unknown)
			var got []string
			for _, q := range some.Pieces {
				got = append(got, q.Name)
			}
			require.Equal(t, kept, got, "%q", names)
		}
	})
}
