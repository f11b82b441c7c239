package measuring_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/measuring"
	"forel/geometry/stage"
)

// a size that a picture can show as it is.
func drawn(t *rapid.T) measuring.Size {
	h, w := rapid.Float64Range(150, 350).Draw(t, "height"), rapid.Float64Range(150, 350).Draw(t, "width")
	return measuring.Size{Height: geometry.Length(h), Width: geometry.Length(w), Thickness: geometry.Length(rapid.Float64Range(25, 80).Draw(t, "thickness"))}
}

// extent returns the box around what objects of a picture are.
func extent(p stage.Picture, of func(object string) bool) (lo, hi stage.Vec) {
	inf := geometry.Length(math.Inf(1))
	lo, hi = stage.Vec{X: inf, Y: inf, Z: inf}, stage.Vec{X: -inf, Y: -inf, Z: -inf}
	for _, f := range p.Faces {
		for _, q := range f.Points {
			if of(f.Object) {
				lo, hi = stage.Vec{X: min(lo.X, q.X), Y: min(lo.Y, q.Y), Z: min(lo.Z, q.Z)}, stage.Vec{X: max(hi.X, q.X), Y: max(hi.Y, q.Y), Z: max(hi.Z, q.Z)}
			}
		}
	}
	return lo, hi
}

func is(object string) func(string) bool { return func(o string) bool { return o == object } }

// The book is as large as it was measured, and what is to be measured of it runs from
// square to square: both touch it and neither is in it.
func TestSquaresTouchTheBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawn(t)
		for _, p := range measuring.Pictures(s)[:3] {
			lo, hi := extent(p.Picture, is("book"))
			sides := map[string][3]geometry.Length{
				measuring.Height: {s.Height, s.Width, s.Thickness}, measuring.Width: {s.Width, s.Height, s.Thickness}, measuring.Thickness: {s.Thickness, s.Width, s.Height},
			}[p.Name]
			for i, got := range []geometry.Length{hi.X - lo.X, hi.Y - lo.Y, hi.Z - lo.Z} {
				assert.InDelta(t, sides[i].MM(), got.MM(), 1e-6, p.Name)
			}
			_, left := extent(p.Picture, is("square"))
			right, _ := extent(p.Picture, is("other square"))
			assert.InDelta(t, lo.X.MM(), left.X.MM(), 1e-6, p.Name)
			assert.InDelta(t, hi.X.MM(), right.X.MM(), 1e-6, p.Name)
			on, _ := extent(p.Picture, func(string) bool { return true })
			assert.InDelta(t, 0, on.Z.MM(), 1e-6, "%s: all stands on the bench", p.Name)
			require.Len(t, p.Arrows, 1)
			path := p.Arrows[0].Path
			assert.InDelta(t, sides[0].MM(), path[1].Sub(path[0]).Size().MM(), 1e-6, p.Name)
		}
	})
}

// Faces look outward: the volume of the book by them is a little less than that of its
// block, by what the round and the leaves leave out; and squares have some.
func TestFacesLookOutward(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawn(t)
		for _, p := range measuring.Pictures(s) {
			six := map[string]float64{}
			for _, f := range p.Faces {
				for i := 1; i+1 < len(f.Points); i++ {
					six[f.Object] += f.Points[0].Dot(f.Points[i].Cross(f.Points[i+1])).MM()
				}
			}
			for object, v := range six {
				assert.Positive(t, v, "%s: %s", p.Name, object)
			}
			if v, ok := six["book"]; ok {
				part := v / 6 / (s.Height * s.Width * s.Thickness).MM()
				assert.Greater(t, part, 0.8, p.Name)
				assert.Less(t, part, 1.0, p.Name)
			}
		}
	})
}

// Whatever a book measures, or where nothing was measured, there is every picture, and no
// place in it is off the page.
func TestPicturesOfAnySize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		any := func(name string) geometry.Length {
			return geometry.Length(rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 800), rapid.Just(math.NaN()), rapid.Just(math.Inf(1))).Draw(t, name))
		}
		pictures := measuring.Pictures(measuring.Size{Height: any("height"), Width: any("width"), Thickness: any("thickness")})
		require.Len(t, pictures, len(measuring.Names))
		for i, p := range pictures {
			assert.Equal(t, measuring.Names[i], p.Name)
			assert.NotEmpty(t, p.Title)
			assert.NotEmpty(t, p.Text)
			assert.NotEmpty(t, p.Notes)
			for _, f := range p.Faces {
				for _, q := range f.Points {
					assert.Less(t, max(q.X.Abs(), q.Y.Abs(), q.Z.Abs()), geometry.Length(40_000), p.Name)
				}
			}
		}
	})
}

// There is a row for each measure of each book, for each material and for what is measured
// later; rows of several books tell them apart.
func TestSheet(t *testing.T) {
	var covers geometry.Length
	var built job.Readings
	settings := job.Settings{
		job.LengthOf("a.cover", "the cover", 0, 9, &covers).OnBook(), job.LengthOf("a.room", "the room", 0, 9, &covers),
		job.ReadingsOf("as_built.height", "the tray", 1, 9, &built),
	}
	books := []job.Book{{Title: "Tide log"}, {}} // invented
	materials := []measuring.Material{{Of: geometry.ThinBoard, Key: "b.board", Now: "1 mm"}, {Of: geometry.Cloth, Name: "blue", Key: "b.cloth"}}
	keys := map[string]string{}
	for _, s := range measuring.Sheet(books, measuring.Assumed, materials, settings) {
		names := map[string]bool{}
		for _, b := range s.Blanks {
			key, _, _ := strings.Cut(b.Key, " ")
			keys[key] = s.Name
			assert.False(t, names[b.Name], "%s: %s", s.Title, b.Name)
			names[b.Name] = true
			assert.NotEmpty(t, b.Places)
		}
	}
	for n := range books {
		for _, d := range job.Dimensions {
			want := d.Key
			if d.Optional {
				want = measuring.Thickness
			}
			assert.Equal(t, want, keys[job.BookKey(n, d.Key)])
		}
		assert.Contains(t, keys, job.BookKey(n, "weight"))
	}
	assert.Equal(t, measuring.Pressing, keys["a.cover"])
	assert.NotContains(t, keys, "a.room")
	assert.Equal(t, measuring.Boards, keys["b.board"])
	assert.Equal(t, measuring.Sheets, keys["b.cloth"])
	assert.Contains(t, keys, "as_built.height")
}
