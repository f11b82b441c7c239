package proof

import (
	"sync"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
)

// jobOf gives the job for a book of a size, with every setting at its default.
func jobOf(height, width, thickness Length) slipcase.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Title = "Invented"
	j.Books = []job.Book{{Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thickness}}}
	return j
}

// subject is a case that was folded up, sound or not.
type subject struct {
	plan.Plan
	Report slipcase.Report
}

func made(t require.TestingT, j slipcase.Job) subject {
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	return subject{c.Plan(), c.Proof}
}

// mouthEdge tells whether a face is an edge of board at the mouth.
func mouthEdge(f geometry.Face) bool {
	switch f {
	case slipcase.LeftMouth, slipcase.RightMouth, slipcase.HeadMouth, slipcase.TailMouth:
		return true
	}
	return false
}

// changed gives a job with some settings changed.
func changed(j slipcase.Job, change func(*slipcase.Job)) slipcase.Job {
	change(&j)
	return j
}

// subjects are cases from a 3 mm pamphlet to a 150 mm folio, small, flat and
// low ones, and every kind of covering, lining, hole and compartment, made once.
var subjects = sync.OnceValue(func() map[string]subject {
	ordinary := jobOf(221.5, 148.5, 32)
	jobs := map[string]slipcase.Job{
		"pamphlet of 3 mm": jobOf(148, 105, 3),
		"ordinary book":    ordinary,
		"folio of 150 mm":  jobOf(400, 295, 150),
		"smallest":         jobOf(40, 30, 3),
		"largest":          jobOf(500, 400, 150),
		"thicker than all": jobOf(60, 60, 150),
		"low and oblong":   jobOf(40, 200, 60), // head and tail cloth overlap
		"unlined":          changed(ordinary, func(j *slipcase.Job) { j.Lining.Thickness = 0 }),
		"lined last, semicircle": changed(ordinary, func(j *slipcase.Job) {
			j.Lining.Order, j.ThumbHole.Shape = slipcase.LinedAfter, slipcase.Semicircle
		}),
		"cloth all round": changed(ordinary, func(j *slipcase.Job) { j.Covering = slipcase.AllCloth }),
		"paper all round, semicircle": changed(ordinary, func(j *slipcase.Job) {
			j.Covering, j.ThumbHole = slipcase.AllPaper, slipcase.ThumbHole{Shape: slipcase.Semicircle, Radius: 14}
		}),
		"sides only, triangle": changed(ordinary, func(j *slipcase.Job) {
			j.Covering, j.ThumbHole.Shape = slipcase.SidesOnly, slipcase.Triangle
		}),
		"divided, triangle": changed(ordinary, func(j *slipcase.Job) {
			j.Compartments, j.ThumbHole.Shape = slipcase.EachItsOwn, slipcase.Triangle
			j.Books = append(j.Books, j.Books[0], j.Books[0])
		}),
	}
	out := map[string]subject{}
	for name, j := range jobs {
		out[name] = made(plantest.Must{}, j)
	}
	return out
})

// spoiled proves an ordinary case one of whose pieces was changed.
func spoiled(t require.TestingT, j slipcase.Job, name string, change func(*geometry.Piece)) subject {
	s := made(t, j)
	pieces := append([]geometry.Piece(nil), s.Pieces...)
	found := false
	for i := range pieces {
		if pieces[i].Name == name {
			pieces[i].Outline.Vertices = append([]geometry.Vertex(nil), pieces[i].Outline.Vertices...)
			change(&pieces[i])
			found = true
		}
	}
	require.True(t, found, name)
	s.Pieces, s.Report = pieces, slipcase.Prove(pieces, j)
	s.Proof = s.Report.Proof
	return s
}

// broken are cases that are not sound, made once.
var broken = sync.OnceValue(func() map[string]subject {
	t := plantest.Must{}
	wide := func(by Length) func(*geometry.Piece) {
		return func(p *geometry.Piece) {
			for i := range p.Outline.Vertices {
				if v := &p.Outline.Vertices[i]; v.X > 60 {
					v.X += by
				}
			}
		}
	}
	raise := func(by Length) func(*geometry.Piece) {
		return func(p *geometry.Piece) {
			_, h := p.Size()
			for i := range p.Outline.Vertices {
				if v := &p.Outline.Vertices[i]; v.Y > h*0.7 {
					v.Y += by
				}
			}
		}
	}
	ordinary := jobOf(221.5, 148.5, 32)
	return map[string]subject{
		"paper short of the mouth": spoiled(t, ordinary, "side paper", wide(-40)),
		"paper past the spine":     spoiled(t, ordinary, "side paper", func(p *geometry.Piece) { p.Outline.Vertices[0].X, p.Outline.Vertices[3].X = -20, -20 }),
		"paper over the walls":     spoiled(t, ordinary, "side paper", func(p *geometry.Piece) { p.Outline = geometry.Rectangle(p.Outline.Bounds().Grow(12)) }),
		"spine cloth too narrow":   spoiled(t, ordinary, "spine cloth", raise(-45)),
		"spine cloth too long":     spoiled(t, ordinary, "spine cloth", raise(150)),
		"no head cloth to speak of": spoiled(t, ordinary, "head cloth", func(p *geometry.Piece) {
			p.Outline = geometry.Rectangle(geometry.Bx(20, 30, 60, 90))
			p.Slits = nil
		}),
		"pamphlet, paper short": spoiled(t, jobOf(148, 105, 3), "side paper", wide(-40)),
		"boards that do not meet": spoiled(t, ordinary, "spine wall", func(p *geometry.Piece) {
			p.Outline = geometry.Rectangle(geometry.Bx(0, 0, 30, 200))
		}),
	}
})

func setup(sheet string) paper.Setup {
	s := paper.DefaultSetup()
	for _, known := range paper.Sheets {
		if known.Name == sheet {
			s.Sheet = known
		}
	}
	return s
}
