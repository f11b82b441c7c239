package jobfile_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/slipcase"
	"forel/geometry/work"
	"forel/paper"
)

func TestStarter(t *testing.T) {
	f, suspects, err := jobfile.Parse("starter.toml", jobfile.Starter())
	require.NoError(t, err)
	assert.Empty(t, suspects)
	want := slipcase.DefaultJob(geometry.MM)
	want.Title, want.Books = "Harbour log", harbour().Books
	near(t, want, boards(f))
	assert.Equal(t, paper.DefaultSetup(), f.Print)
}

var (
	setting   = regexp.MustCompile(`^(# )?([a-z_]+) = (.+?)( +# .*)?$`)
	heading   = regexp.MustCompile(`^(# )?\[+([a-z_]+)\]+$`)
	shownOnly = []string{"book.weight", "book.thickness_at_fore_edge", // commented: not every book has one, nor is every printer gauged
		"print.margin_left", "print.margin_right", "print.margin_top", "print.margin_bottom", "print.measured_across", "print.measured_along",
		"times.closed", "as_built.height", "as_built.width", "as_built.thickness",
		"board.name", "lining.name", "cloth.name", "side_paper.name", "card.name",
		"chemise.board_name", "chemise.covering_name", "chemise.lining_name",
		"box.board_name", "box.cloth_name", "box.lining_name", "box.case_board_name", "box.case_cloth_name", "box.hinge_cloth_name", "box.lid_lining_name"}
	// Two kinds of stock are there to be uncommented.
	sheetStock = []string{"stock.material", "stock.name", "stock.thickness", "stock.size", "stock.grain", "stock.count",
		"stock.price", "stock.supplier", "stock.ordered_as", "stock.trim", "stock.kerf", "stock.grammage"}
	rollStock = []string{"stock.material", "stock.roll", "stock.length", "stock.per", "stock.sold_by", "stock.density"}
	// What is ordered, and what it costs.
	terms = []string{"machine.bed", "machine.kerf", "machine.spacing", "machine.margin", "machine.tabs", "machine.tab_width", "machine.line", "offcuts.least", "order.spare", "order.spare_pieces", "adhesive.name", "adhesive.coverage", "adhesive.pack", "adhesive.price", "adhesive.at_hand",
		"adhesive.supplier", "adhesive.ordered_as", "quote.currency", "quote.hour", "quote.spoilage", "quote.material", "quote.round_to", "quote.tax",
		"quote.tax_name", "quote.client", "quote.maker", "quote.valid", "quote.excluded", "extra.text", "extra.amount"}
)

// shown is a key the starter shows, on the line with this index.
type shown struct {
	key, value string
	line       int
	commented  bool
	nth        int // of the tables of this name
}

// showing lists the keys of a starter in its order, those of commented lines
// too, and gives the starter with these lines as they are meant.
func showing(lines []string) (keys []shown, meant []string) {
	table := ""
	tables := map[string]int{}
	for n, line := range lines {
		if m := heading.FindStringSubmatch(line); m != nil {
			table = m[2] + "."
			tables[table]++
			line = strings.TrimPrefix(line, "# ")
		} else if m := setting.FindStringSubmatch(line); m != nil {
			keys = append(keys, shown{table + m[2], m[3], n, m[1] != "", tables[table]})
			line = strings.TrimPrefix(line, "# ")
		}
		meant = append(meant, line)
	}
	return keys, meant
}

// The starter shows every key there is, once, in its table; the second book is
// there to be uncommented.
func TestStarterHasEveryKey(t *testing.T) {
	want := []string{"title", "units", "book.title", "book.weight", "print.paper", "print.margin", "print.overlap", "print.ink",
		"print.margin_left", "print.margin_right", "print.margin_top", "print.margin_bottom", "print.measured_across", "print.measured_along",
		"kind", "construction", "times.hours", "times.closed"}
	for _, u := range work.TaskTimes {
		want = append(want, "times."+string(u.Task))
	}
	for _, f := range job.Dimensions {
		want = append(want, "book."+f.Key)
	}
	for _, k := range kinds.All {
		for _, s := range k.New(geometry.MM).Settings() {
			if !slices.Contains(want, s.Key) {
				want = append(want, s.Key)
			}
		}
	}
	keys, _ := showing(strings.Split(string(jobfile.Starter()), "\n"))
	var active, commented []string
	for _, k := range keys {
		if k.commented {
			commented = append(commented, k.key)
		} else {
			active = append(active, k.key)
		}
	}
	assert.ElementsMatch(t, want, slices.DeleteFunc(append(active, shownOnly...), func(k string) bool { return strings.HasSuffix(k, "name") }))
	assert.ElementsMatch(t, slices.Concat([]string{"book.title", "book.height", "book.width", "book.thickness"}, shownOnly, sheetStock, rollStock, terms), commented)
}

// What looks like a key in the starter is that key: a wrong value is refused
// on its line, by its name.
func TestStarterKeysAreRead(t *testing.T) {
	keys, meant := showing(strings.Split(string(jobfile.Starter()), "\n"))
	for _, k := range keys {
		spoilt := slices.Clone(meant)
		spoilt[k.line] = k.key[strings.Index(k.key, ".")+1:] + " = true"
		_, _, err := jobfile.Parse("starter.toml", []byte(strings.Join(spoilt, "\n")))
		require.Error(t, err, k.key)
		name := k.key
		if k.nth == 2 {
			name = strings.Replace(name, ".", "[2].", 1)
		}
		begins(t, "starter.toml", []string{fmt.Sprintf(":%d: %s: true is ", k.line+1, name)}, err.Error())
	}
}

// The commented lines make a job of two books when they are uncommented.
func TestStarterUncommented(t *testing.T) {
	_, meant := showing(strings.Split(string(jobfile.Starter()), "\n"))
	f, _, err := jobfile.Parse("starter.toml", []byte(strings.Join(meant, "\n")))
	require.NoError(t, err)
	require.Len(t, f.Job.Shared().Books, 2)
	assert.Equal(t, harbour().Books[0].Height, f.Job.Shared().Books[0].Height)
	require.Len(t, f.Stock, 2)
	assert.Equal(t, "grey board", f.Stock[0].Name)
	assert.InDelta(t, 965.2, f.Stock[0].Height.MM(), 1e-9) // 38 in
	assert.InDelta(t, 1371.6, f.Stock[1].Width.MM(), 1e-9) // 54 in
	assert.Equal(t, "blue cloth", f.Names[geometry.Cloth])
	assert.Equal(t, job.Readings{30.5}, f.Job.Shared().Books[0].ForeEdge)
	assert.Equal(t, job.Book{
		Title: "Harbour log, part two", Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{27},
	}, f.Job.Shared().Books[1])
}

func TestStarterIsACopy(t *testing.T) {
	jobfile.Starter()[0] = 'x'
	assert.Equal(t, byte('#'), jobfile.Starter()[0])
}

// A starter in inches is the same book measured with another rule, all else at the
// default that is round in inches; each starter prints on its sheet.
func TestStarterFor(t *testing.T) {
	assert.Equal(t, jobfile.Starter(), jobfile.StarterFor(geometry.MM, paper.DefaultSetup().Sheet))
	for _, sheet := range append(slices.Clone(paper.Sheets), paper.Sheet{Width: 250, Height: 350.5}) {
		f, suspects, err := jobfile.Parse("starter.toml", jobfile.StarterFor(geometry.IN, sheet))
		if s := paper.DefaultSetup(); sheet.Width < 140 {
			s.Sheet = sheet
			require.ErrorContains(t, err, s.Check().Error()[:20], sheet)
			continue
		}
		require.NoError(t, err, sheet)
		assert.Empty(t, suspects)
		assert.Equal(t, sheet, f.Print.Sheet)
		assert.Equal(t, geometry.IN, f.Job.Shared().Unit)
		const half64 = 25.4 / 128 // a rule of sixty-fourths reads to half of one
		got, want := f.Job.Shared().Books[0], harbour().Books[0]
		assert.InDelta(t, want.Height.Largest().MM(), got.Height.Largest().MM(), half64)
		assert.InDelta(t, want.Width.Largest().MM(), got.Width.Largest().MM(), half64)
		assert.InDelta(t, want.Thickness.Largest().MM(), got.Thickness.Largest().MM(), half64)
		rest := slipcase.DefaultJob(geometry.IN)
		rest.Title, rest.Books = "Harbour log", f.Job.Shared().Books
		near(t, rest, boards(f))
	}
	// Its commented lines are inches too.
	_, meant := showing(strings.Split(string(jobfile.StarterFor(geometry.IN, paper.Sheets[0])), "\n"))
	f, _, err := jobfile.Parse("starter.toml", []byte(strings.Join(meant, "\n")))
	require.NoError(t, err)
	assert.InDelta(t, 27, f.Job.Shared().Books[1].Thickness.Largest().MM(), 0.2)
}
