package pipeline_test

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry/plan/plantest"
)

// fromTheShop is a job that takes all that it is made from out of the shop file to begin with.
const fromTheShop = `title = "Invented"
board = "grey board 2 mm"
cloth = "blue cloth"
lining = "white paper"
side_paper = "wave paper"
cutter = "workshop laser"
[[book]]
height = 221
width = 148.5
thickness = 32
`

// A slip in any one line of a shop file is told once, with what would be right; the files
// that are sound give no other complaint.
func TestSlipsInAShopAreToldOnce(t *testing.T) {
	set := regexp.MustCompile(`^(\w+ = )[^#]*`)
	lines := strings.Split(string(jobfile.ShopStarter()), "\n")
	for n, line := range lines {
		m := set.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		for k, wrong := range []string{`""`, `-1`, `"x"`, `1e300`, `[]`, `{}`, `true`, `2027-02-30`, `nan`, `"=1+1"`, `"a\nb"`, `"😀"`, `[1, "a"]`, `9,5`, `0`, `"9 1/4 in"`} {
			if some := map[bool]int{true: 12, false: 4}[testing.Short()]; (n+k)%some != 0 && !plantest.Soak() {
				continue // each slip on some lines
			}
			spoilt := bytes.Join([][]byte{[]byte(strings.Join(lines[:n], "\n")), []byte(m[1] + wrong), []byte(strings.Join(lines[n+1:], "\n"))}, []byte("\n"))
			c := pipeline.Cutter{}
			c.Job = pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "case.toml", Data: []byte(fromTheShop)}}, Shop: pipeline.File{Name: "shop.toml", Data: spoilt}}}
			c.Effort = "0"
			_, err := c.Make(t.Context())
			if err == nil {
				continue // it can be meant
			}
			var bad jobfile.Issues
			require.ErrorAs(t, err, &bad, "%s%s", m[1], wrong)
			said := fmt.Sprintf("%s%s: %v", m[1], wrong, bad)
			for _, i := range bad {
				require.NotEmpty(t, i.Reason, said)
				require.NotEmpty(t, i.Fix, said)
			}
			if m[1] == "name = " && bad[0].Line != n+1 {
				continue // the name can be one, and something else names the old one
			}
			if bad[0].Source == "shop.toml" {
				require.Len(t, bad, 1, said)
				require.Equal(t, n+1, bad[0].Line, said)
				require.NotEmpty(t, bad[0].Key, said)
			}
		}
	}
}
