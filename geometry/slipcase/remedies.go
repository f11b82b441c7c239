package slipcase

import (
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
)

const (
	pareEnds  = "pare what is turned in at head and tail"
	pareSides = "pare what is turned in on the sides"
)

// thinnest is the thinnest covering that a case is covered with (common practice, no
// source).
const thinnest Length = 0.1

// remedies returns what can be done where the book does not fit. Work and limits are
// common practice, no source. Between dividers little can be reached.
func (j Job) remedies() []plan.Remedy {
	h, d, t := plan.Height, plan.Depth, plan.Thickness
	out := plan.PadWalls(h, "tail wall", "head and tail wall")
	if j.Dividers() == 0 {
		out = append(out, plan.LineSides(t)...)
	}
	k, p, cover := j.Cloth.Thickness, j.SidePaper.Thickness, j.cover()
	if j.Covering != SidesOnly {
		out = append(out, plan.Remedy{Name: pareEnds, Late: true, Minutes: 60, Gives: map[string]float64{h: 2}, Most: cover / 2, PlusMinus: 0.1, Keeps: "all of the case",
			How: plan.Say("at the mouth pare what is turned in on head and tail wall by %s, with a sharp knife held flat or with fine abrasive paper on a block, and burnish it")})
	}
	side := k
	if j.Covering == SidesOnly || j.Covering == AllPaper {
		side = p
	}
	if j.Dividers() == 0 {
		out = append(out, plan.Remedy{Name: pareSides, Late: true, Minutes: 60, Gives: map[string]float64{t: 2}, Most: side / 2, PlusMinus: 0.1, Keeps: "all of the case",
			How: plan.Say("at the mouth pare what is turned in on both sides by %s, with a sharp knife held flat or with fine abrasive paper on a block, and burnish it")})
	}
	thinner := j.thinner()
	if thinner.Most > 0.02 {
		out = append(out, thinner)
		again := thinner
		again.Without = []string{pareEnds, pareSides}
		again.Name, again.Early, again.Late, again.Minutes = "a new, thinner covering", false, true, 210
		again.How = plan.Say("take the covering off, smooth the carcass, and cover it anew with one that is %s thinner")
		out = append(out, again)
	}
	if j.Dividers() == 0 {
		out = append(out,
			plan.Remedy{Name: "plane the walls lower", Early: true, Minutes: 90, Gives: map[string]float64{t: -1}, Most: 5, PlusMinus: 0.2, Keeps: "all boards",
				How: plan.Say("cut one side free along the walls with a sharp knife, plane or sand all three walls %s lower on a flat block, and glue the side on again")},
			plan.Remedy{Name: "new head and tail wall of thinner board", Early: true, Minutes: 100, Gives: map[string]float64{h: 2}, Most: j.Board.Thickness / 2, PlusMinus: 0.2,
				Again: j.lined("head wall", "head lining", "tail wall", "tail lining"), Keeps: "both sides and the spine wall",
				How: plan.Say("cut head and tail wall free with a sharp knife, and glue in new ones of board that is %s thinner, their outer faces flush with the edges of the sides")},
			plan.Remedy{Name: "three new walls", Early: true, Minutes: 120, Frees: []string{t}, Again: j.lined("spine wall", "spine lining", "head wall", "head lining", "tail wall", "tail lining"), Keeps: "both sides",
				How: plan.Say("cut the walls free of both sides with a sharp knife, and glue three new ones between them")},
			plan.Remedy{Name: "new sides and a new spine wall", Early: true, Minutes: 160, Frees: []string{h}, Again: j.lined("side", "side lining", "spine wall", "spine lining"), Keeps: "head and tail wall",
				How: plan.Say("cut the carcass apart with a sharp knife, and glue head and tail wall between new sides, with a new spine wall")},
			plan.Remedy{Name: "new sides with new head and tail wall", Early: true, Minutes: 170, Frees: []string{d}, Again: j.lined("side", "side lining", "head wall", "head lining", "tail wall", "tail lining"), Keeps: "the spine wall",
				How: plan.Say("cut the carcass apart with a sharp knife, and glue the spine wall between new sides, with a new head and tail wall")},
		)
	}
	boards := []string{string(geometry.Board), string(geometry.Lining)}
	if j.Lining.Thickness == 0 {
		boards = boards[:1]
	}
	again := plan.StartAgain("the case", 420, []string{string(geometry.Board), string(geometry.Lining), string(geometry.Cloth), string(geometry.Paper)}, h, d, t)
	again.Early = false
	return append(out, again,
		plan.Remedy{Name: "a new carcass", Early: true, Whole: true, Minutes: 200, Frees: []string{h, d, t}, Again: boards, Keeps: "the covering, as far as it fits",
			How: plan.Say("make the carcass anew, and keep this one for a book that it fits")},
	)
}

// thinner returns the remedy of a thinner covering, before there is one. What it gives is
// the difference of two cases, all boards as they were cut.
func (j Job) thinner() plan.Remedy {
	m := plan.Remedy{Name: "a thinner covering", Early: true, Minutes: 20, PlusMinus: 0.04, Keeps: "the carcass",
		How: plan.Say("take a covering that is %s thinner, and cut it for the carcass as it stands")}
	thin, key, of := j, "cloth.thickness", func(j *Job) *Length { return &j.Cloth.Thickness }
	if j.Covering == SidesOnly || j.Covering == AllPaper {
		key, of = "side_paper.thickness", func(j *Job) *Length { return &j.SidePaper.Thickness }
	}
	const by Length = 0.01
	*of(&thin) -= by
	m.Thinner, m.Most = map[string]Length{key: *of(&j)}, *of(&j)-thinnest
	was, is := j.Mouth(), thin.Mouth()
	m.Gives = map[string]float64{plan.Thickness: float64((is.Thickness - was.Thickness) / by)}
	if n := float64((is.Height - was.Height) / by); n > 0.5 {
		m.Gives[plan.Height] = n
	}
	m.Again = []string{string(geometry.Cloth), string(geometry.Paper)}
	switch j.Covering {
	case AllCloth:
		m.Again = m.Again[:1]
	case SidesOnly, AllPaper:
		m.Again = m.Again[1:]
	}
	return m
}

// lined returns names of pieces without those of linings that the case does not have.
func (j Job) lined(names ...string) (out []string) {
	for _, n := range names {
		if j.Lining.Thickness > 0 || !strings.HasSuffix(n, "lining") {
			out = append(out, n)
		}
	}
	return out
}
