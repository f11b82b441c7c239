package measure_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/measuring"
	"forel/paper"
	"forel/render/document"
	"forel/render/figure"
	"forel/render/measure"
	"forel/render/pagetest"
	"forel/render/pdf/pdftest"
)

// sections are what a sheet is made of for a kind, with so many books.
func sections(k int, books []job.Book, s measuring.Size) []measuring.Section {
	kind := kinds.All[k]
	var materials []measuring.Material
	for _, n := range kind.Named {
		materials = append(materials, measuring.Material{Of: n.Material, Key: n.Key, Name: "invented", Now: "0.35 mm"})
	}
	return measuring.Sheet(books, s, materials, kind.New(geometry.MM).Settings())
}

// On any sheet and printer words are apart, off lines and within the margins, and every row
// stands there once.
func TestAnySheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := measure.Options{Options: document.Options{Setup: pagetest.AnySetup(t), Round: pagetest.Rounding(geometry.MM)}, Both: rapid.Bool().Draw(t, "both")}
		var books []job.Book
		for i := range rapid.IntRange(1, 4).Draw(t, "books") {
			books = append(books, job.Book{})
			if rapid.Bool().Draw(t, "titled") {
				books[i].Title = fmt.Sprintf("Invented log %d", i+1)
			}
		}
		length := func(name string) geometry.Length { return geometry.Length(rapid.Float64Range(1, 700).Draw(t, name)) }
		all := sections(rapid.IntRange(0, len(kinds.All)-1).Draw(t, "kind"), books, measuring.Size{Height: length("height"), Width: length("width"), Thickness: length("thickness")})
		text := ""
		for i, p := range measure.Document(all, "a case", pagetest.AnyTitle(t), o).Pages() {
			require.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Printable(false)), "page %d", i+1)
			for _, w := range p.Texts {
				text += w.String + "\n"
			}
		}
		for _, s := range all {
			for _, b := range s.Blanks {
				first, _, _ := strings.Cut(b.Key, " ")
				require.Contains(t, text, first[:min(len(first), 12)], s.Title)
			}
		}
	})
}

// Every shape in the pictures could be worked out, and what is to be noticed is seen.
func TestPicturesAreWorkedOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string) geometry.Length { return geometry.Length(rapid.Float64Range(1, 700).Draw(t, name)) }
		for _, p := range measuring.Pictures(measuring.Size{Height: length("height"), Width: length("width"), Thickness: length("thickness")}) {
			q := figure.Of(p.Picture, figure.Looks(false), geometry.ToTenthMM.Pretty)
			seen, _ := q.See()
			assert.Zero(t, seen.Unworked(), p.Name)
			var objects []string
			for _, o := range seen.Objects {
				objects = append(objects, o.Name)
			}
			for _, want := range q.Fresh() {
				assert.Contains(t, objects, want, p.Name)
			}
		}
	})
}

// In the finished file the two rulers at the foot of each page measure 100 mm and 4 in.
func TestRulersInTheFile(t *testing.T) {
	for _, sheet := range []string{"A4", "Letter", "A5"} {
		s, err := paper.ParseSheet(sheet, geometry.MM)
		require.NoError(t, err)
		o := measure.Options{Options: document.Options{Setup: paper.DefaultSetup(), Round: geometry.ToTenthMM}}
		o.Setup.Sheet = s
		file, err := measure.Document(sections(0, []job.Book{{}}, measuring.Assumed), "a case of boards", "", o).PDF()
		require.NoError(t, err)
		doc := pdftest.Open(t, file)
		for page := 1; page <= doc.Pages; page++ {
			var found [2]bool
			for _, p := range doc.Paths(page) {
				lo, hi := p.Bounds()
				if hi.Y-lo.Y < 0.01 && len(p.Pieces) == 1 {
					found[0] = found[0] || near(hi.X-lo.X, 100)
					found[1] = found[1] || near(hi.X-lo.X, 4*25.4)
				}
			}
			assert.Equal(t, [2]bool{true, true}, found, "%s, page %d", sheet, page)
		}
	}
}

func near(got, want float64) bool { return got > want-0.01 && got < want+0.01 }
