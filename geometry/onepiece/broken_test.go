package onepiece_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/onepiece"
)

// made gives a job's blank with the places of its scores.
func made(t require.TestingT, j onepiece.Job) scored {
	c, err := onepiece.Make(j)
	require.NoError(t, err)
	return partsOf(c.Pieces[0])
}

// faults proves a blank for a job.
func faults(j onepiece.Job, p geometry.Piece) []foldup.Fault {
	return onepiece.Prove(p, j).Faults
}

// names tells whether one of the faults is of a kind and says all the words.
func names(fs []foldup.Fault, kind foldup.Kind, words ...string) bool {
	return slices.ContainsFunc(fs, func(f foldup.Fault) bool {
		return f.Kind == kind && !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(f.String(), w) })
	})
}

// breakable draws jobs whose blank a break can't turn inside out, with some
// bend and some relief.
func breakable() *rapid.Generator[onepiece.Job] {
	return rapid.Custom(func(t *rapid.T) onepiece.Job {
		j := goodJobs().Draw(t, "job")
		in := j.Cavity()
		j.Flaps.Relief = max(j.Flaps.Relief, 0.01)
		if in.Thickness < 4*j.Card.Thickness+4*j.Flaps.Relief || in.Width < in.Thickness+20 || in.Width < 8*j.Card.Thickness {
			t.Skip("so thick for its size")
		}
		j.Card.Bend = max(j.Card.Bend, 0.05)
		return j
	})
}

// up gives a place raised by d where it is in a box.
func up(box geometry.Box, d geometry.Length) func(geometry.Point) geometry.Point {
	return func(p geometry.Point) geometry.Point {
		if box.Contains(geometry.Box{Min: p, Max: p}) {
			p.Y += d
		}
		return p
	}
}

// aside gives a place shifted by d where it is right of x.
func aside(x, d geometry.Length) func(geometry.Point) geometry.Point {
	return func(p geometry.Point) geometry.Point {
		if p.X > x {
			p.X += d
		}
		return p
	}
}

const far geometry.Length = 1e4

// breaks are ways to spoil a blank, by d where that says how much, and what the
// proof is to say of each.
var breaks = []struct {
	name   string
	broken func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece
	kind   foldup.Kind
	words  []string
}{
	{"inner flap too long", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		return b.moved(up(geometry.Bx(0, b.innerHead+eps, b.left-1e-3, far), d))
	}, foldup.Collision, []string{"inner flap (inside of the head wall)", "right side"}},

	{"outer flap too long", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		return b.moved(up(geometry.Bx(b.right, b.outerTip()-eps, far, far), d))
	}, foldup.Overhang, []string{"outside of the head wall", "past the face"}},

	{"outer flap out of the mouth", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		width, _ := b.Size()
		return b.moved(func(p geometry.Point) geometry.Point {
			if p.Y > b.outerTip()-eps && p.X > (b.right+width)/2 {
				p.X = width + d
			}
			return p
		})
	}, foldup.Overhang, []string{"outside of the head wall", "past the face"}},

	{"head scores of spine and right side one thickness too far in", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		return b.moved(up(geometry.Bx(b.left-1e-9, b.outerHead-eps, far, far), -j.Card.Thickness))
	}, foldup.Collision, []string{"inner flap (inside of the head wall)", "outer flap (outside of the head wall)"}},

	{"tail scores of spine and right side one thickness too far out", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		return b.moved(up(geometry.Bx(b.left-1e-9, -far, far, b.outerTail+eps), -j.Card.Thickness))
	}, foldup.Misfit, []string{"flap (outside of the tail wall)", "off the layer under it"}},

	{"head score of the left side one thickness too far in", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		return b.moved(up(geometry.Bx(0, b.innerHead-eps, b.left-1e-3, far), -j.Card.Thickness))
	}, foldup.Tight, []string{"height"}},

	{"spine scores one thickness too close", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		return b.moved(aside((b.left+b.right)/2, -j.Card.Thickness))
	}, foldup.Tight, []string{"thickness"}},

	{"spine scores one thickness too far apart", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		return b.moved(aside((b.left+b.right)/2, j.Card.Thickness))
	}, foldup.Misfit, []string{"thickness", "too much"}},

	{"right side one thickness too shallow", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		width, _ := b.Size()
		return b.moved(aside(width-(width-b.right)/3, -j.Card.Thickness))
	}, foldup.Tight, []string{"width"}},

	{"spine flap into the right side", func(j onepiece.Job, b scored, d geometry.Length) geometry.Piece {
		// The nick, half as far from the corner as the inside of the right side.
		bend := j.Card.Thickness * geometry.Length(j.Card.Bend)
		return b.moved(func(p geometry.Point) geometry.Point {
			if p.Y > b.outerHead-1e-9 && p.X < b.right-1e-9 && p.X > b.right-bend-j.Flaps.Relief/2-1e-9 {
				p.X = b.right - bend/2
			}
			return p
		})
	}, foldup.Collision, []string{"spine flap (outside of the head wall)"}},
}

// A blank spoilt in any of these ways, whatever the job, is found out.
func TestBreaksAreNamed(t *testing.T) {
	for _, c := range breaks { // each at least once
		j := jobFor(220, 150, 30, nil)
		fs := faults(j, c.broken(j, made(t, j), 1))
		assert.True(t, names(fs, c.kind, c.words...), "%s: %v", c.name, fs)
	}
	rapid.Check(t, func(t *rapid.T) {
		j := breakable().Draw(t, "job")
		c := breaks[rapid.IntRange(0, len(breaks)-1).Draw(t, "break")]
		d := j.Flaps.Relief + length(0.1, 2).Draw(t, "by")
		fs := faults(j, c.broken(j, made(t, j), d))
		require.True(t, names(fs, c.kind, c.words...), "%s: %v", c.name, fs)
	})
}

// Without slits, the inner flap and the spine flap are one part on two folds.
func TestMissingSlit(t *testing.T) {
	for _, card := range []onepiece.Card{{Kind: onepiece.Solid, Bend: 0.5}, {Kind: onepiece.Corrugated, Thickness: 2}} {
		j := jobFor(203, 130, 22, func(j *onepiece.Job) { j.Card, j.Flaps = card, onepiece.Flaps{} })
		b := made(t, j)
		require.Len(t, b.Slits, 2)
		b.Slits = nil
		fs := faults(j, b.Piece)
		assert.NotEmpty(t, fs)
		if card.Thickness == 0 {
			assert.True(t, names(fs, foldup.Misfit, "two ways", "slit"), "%v", fs)
		} else {
			assert.True(t, names(fs, foldup.Misfit, "slit"), "%v", fs)
		}
	}
}

// A slit that takes a strip away, filled up: by any amount of it, and wholly.
func TestShortSlit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := breakable().Draw(t, "job")
		b := made(t, j)
		_, high := b.Size()
		slot := b.pointsIn(geometry.Bx(b.left-j.Card.Thickness-j.Flaps.Relief-1e-3, b.innerHead-eps, b.left+eps, b.outerHead+eps))
		require.NotEmpty(t, slot)
		by := length(0.5, (high-b.outerHead).MM()).Draw(t, "by")
		p := b.Piece
		p.Outline.Vertices = slices.Clone(p.Outline.Vertices)
		if rapid.Bool().Draw(t, "wholly") {
			p.Outline.Vertices = slices.DeleteFunc(p.Outline.Vertices, func(v geometry.Vertex) bool {
				return slices.ContainsFunc(slot, v.Point.Near)
			})
		} else {
			bottom := geometry.Bx(b.left-j.Card.Thickness-j.Flaps.Relief-1e-3, b.innerHead-eps, b.left+eps, b.innerHead+min(by, j.Cavity().Thickness/2))
			for i, v := range p.Outline.Vertices {
				if slices.ContainsFunc(slot, v.Point.Near) {
					p.Outline.Vertices[i].Y = bottom.Max.Y
				}
			}
		}
		fs := faults(j, p)
		require.True(t, names(fs, foldup.Misfit, "slit"), "%v", fs)
	})
}

// A flap at the mouth shuts it.
func TestShutMouth(t *testing.T) {
	j := jobFor(220, 150, 30, nil)
	b := made(t, j)
	width, _ := b.Size()
	p := b.Piece
	n := slices.IndexFunc(p.Outline.Vertices, func(v geometry.Vertex) bool { return v.Point.Near(geometry.Pt(width, b.outerHead)) })
	require.Positive(t, n)
	flap := []geometry.Vertex{
		{Point: geometry.Pt(width, b.outerTail)}, {Point: geometry.Pt(width+20, b.outerTail)}, {Point: geometry.Pt(width+20, b.outerHead)},
	}
	p.Outline.Vertices = slices.Insert(slices.Clone(p.Outline.Vertices), n, flap[1:]...)
	p.Folds = append(slices.Clone(p.Folds), geometry.Line(geometry.Pt(width, b.outerTail), geometry.Pt(width, b.outerHead)))
	fs := faults(j, p)
	assert.True(t, names(fs, foldup.Overhang, "lands on no face"), "%v", fs)
}

// Where both layers at the head stop 10 mm short of the spine, one can look in.
func TestGap(t *testing.T) {
	j := jobFor(220, 150, 30, nil)
	b := made(t, j)
	p := b.moved(func(p geometry.Point) geometry.Point {
		switch {
		case p.Y < b.innerHead-eps || p.X > b.right:
		case p.X < b.left-eps && p.X > b.left-10: // the inner flap beside the slit
			p.X -= 10
		case p.X >= b.left-eps && p.Y > b.outerHead+1: // the end of the spine flap
			p.Y = b.outerHead + 1
		}
		return p
	})
	fs := faults(j, p)
	assert.True(t, names(fs, foldup.Bare, "head wall"), "%v", fs)
	assert.False(t, names(fs, foldup.Bare, "tail wall"), "%v", fs)
}

// A fold that is left out, is askew or ends short; an outline that crosses itself.
func TestFoldsAndOutline(t *testing.T) {
	j := jobFor(220, 150, 30, nil)
	b := made(t, j)
	width, height := b.Size()
	change := func(f func(p *geometry.Piece)) []foldup.Fault {
		p := b.Piece
		p.Folds, p.Outline.Vertices = slices.Clone(p.Folds), slices.Clone(p.Outline.Vertices)
		f(&p)
		return faults(j, p)
	}
	for n := range b.Folds {
		assert.NotEmpty(t, change(func(p *geometry.Piece) { p.Folds = slices.Delete(p.Folds, n, n+1) }), "without fold %d", n)
		fs := change(func(p *geometry.Piece) {
			from, to := p.Folds[n].Vertices[0].Point, p.Folds[n].Vertices[1].Point
			p.Folds[n] = geometry.Line(from, from.Add(to.Sub(from).Mul(0.9)))
		})
		assert.True(t, names(fs, foldup.Misfit, "ends short"), "fold %d: %v", n, fs)
	}
	fs := change(func(p *geometry.Piece) {
		p.Folds = append(p.Folds, geometry.Line(geometry.Pt(-1, height/2), geometry.Pt(b.left+1, height/2+3)))
	})
	assert.NotEmpty(t, fs, "a fold across the left side")
	fs = change(func(p *geometry.Piece) {
		p.Folds = append(p.Folds, geometry.Line(geometry.Pt(width-30, -1), geometry.Pt(width+1, 15)))
	})
	assert.True(t, names(fs, foldup.Overhang, "lands on no face"), "%v", fs)
	fs = change(func(p *geometry.Piece) { // with card on one side of it only
		p.Folds = append(p.Folds, geometry.Line(geometry.Pt(0, b.innerTail+5), geometry.Pt(0, b.innerHead-5)))
	})
	assert.True(t, names(fs, foldup.Misfit, "does not part"), "%v", fs)
	fs = change(func(p *geometry.Piece) {
		v := p.Outline.Vertices
		v[0], v[1] = v[1], v[0]
	})
	assert.True(t, names(fs, foldup.Misfit, "not simple"), "%v", fs)
}

// A blank made for thinner card than it is cut from: its scores are too near for the
// case, where the bend lies within the card.
func TestThickerCardThanMeasured(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := breakable().Draw(t, "job")
		b := made(t, j)
		j.Card.Thickness += length(0.1, 1).Draw(t, "thicker by")
		fs := faults(j, b.Piece)
		require.True(t, names(fs, foldup.Misfit, "does not fit"), "%v", fs)
	})
}

// A part that no fold holds.
func TestLoosePart(t *testing.T) {
	j := jobFor(220, 150, 30, nil)
	b := made(t, j)
	p := b.Piece
	cut := slices.IndexFunc(p.Folds, func(f geometry.Path) bool {
		return f.Vertices[0].Y.Near(b.innerHead) && f.Vertices[1].Y.Near(b.innerHead)
	})
	require.GreaterOrEqual(t, cut, 0)
	p.Slits = []geometry.Path{p.Folds[cut]}
	p.Folds = slices.Delete(slices.Clone(p.Folds), cut, cut+1)
	fs := faults(j, p)
	assert.True(t, names(fs, foldup.Misfit, "hangs on nothing"), "%v", fs)
}
