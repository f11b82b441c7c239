package bed

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// Refused tells all of some jobs that a bed does not take. Faults of the setup itself,
// which Setup.Faults tells, are taken to be mended as told.
func (s Setup) Refused(jobs []Job) job.Problems {
	shapes, faults := s.mended().shapes(jobs)
	return append(faults, s.mended().tooLarge(shapes)...)
}

// mended returns the setup so that it fits together, as Faults says it would do.
func (s Setup) mended() Setup {
	d := Default()
	if s.Width <= 2*s.Margin || s.Height <= 2*s.Margin {
		s.Margin = d.Margin
	}
	if s.Tabs > 0 && s.Gap == 0 {
		s.Gap = d.Gap
	}
	return s
}

// shapes returns the pieces of all jobs as they are cut, and what keeps a tool from
// cutting them.
func (s Setup) shapes(jobs []Job) (out []shape, faults job.Problems) {
	most := s.Tabs // tabs that every piece has room for
	for _, j := range jobs {
		for _, p := range j.Pieces {
			sh, err := s.shaped(p, j.Name)
			sh.stock = keyOf(j, p)
			name := p.Name
			if j.Name != "" {
				name = j.Name + ": " + name
			}
			if err == nil {
				sh.spots, err = s.tabs(sh)
				for most > 0 && !s.with(most).takes(sh) {
					most--
				}
				if err != nil {
					faults = append(faults, job.Problem{Reason: name + ": " + err.Error()})
				}
			} else {
				faults = append(faults, job.Problem{Reason: name + ": " + err.Error(), Fix: "give --kerf 0, as a knife has, or use a finer beam"})
			}
			out = append(out, sh)
		}
	}
	for i := range faults {
		if faults[i].Fix == "" {
			faults[i].Fix = fmt.Sprintf("give fewer tabs: --tabs %d", most)
		}
	}
	return out, faults
}

// with returns the setup with so many tabs.
func (s Setup) with(tabs int) Setup {
	s.Tabs = tabs
	return s
}

// takes tells whether the edges of a shape have room for the tabs.
func (s Setup) takes(sh shape) bool {
	_, err := s.tabs(sh)
	return err == nil
}

// tooLarge tells of the shapes that can't lie on the bed, each with what would do for all
// together: a material laid with its grain the other way, where that is enough for all
// its pieces, or else a larger bed, or the others alone.
func (s Setup) tooLarge(shapes []shape) (faults job.Problems) {
	const slack = 1e-4 // the layout's own unit
	lies := func(on Setup, sh shape) bool {
		w, h := sh.box.Width(), sh.box.Height()
		inW, inH := on.Width-2*on.Margin+slack, on.Height-2*on.Margin+slack
		upright, turned := on.turns(sh.piece)
		return upright && w <= inW && h <= inH || turned && h <= inW && w <= inH
	}
	of := map[geometry.Material][]shape{}
	bad := map[geometry.Material]bool{}
	for _, sh := range shapes {
		m := sh.piece.Material
		of[m] = append(of[m], sh)
		bad[m] = bad[m] || !lies(s, sh)
	}
	other := map[geometry.Material]geometry.Grain{} // the way that is enough for all of a material
	larger := s
	for _, m := range geometry.Materials {
		if !bad[m] {
			continue
		}
		turned := s.turned(m)
		enough := true
		for _, sh := range of[m] {
			enough = enough && lies(turned, sh)
		}
		if enough {
			other[m] = turned.GrainOf(m)
			continue
		}
		for _, sh := range of[m] {
			larger = larger.grownFor(sh)
		}
	}
	var pieces []geometry.Piece
	for _, sh := range shapes {
		pieces = append(pieces, sh.piece)
	}
	rest := plan.Without(pieces, func(p geometry.Piece) bool {
		return other[p.Material] == "" && slices.ContainsFunc(of[p.Material], func(sh shape) bool { return sh.piece.Name == p.Name && !lies(s, sh) })
	})
	w, h := up(larger.Width), up(larger.Height)
	fix := fmt.Sprintf("a bed of at least %.0f x %.0f mm would do: --bed %.0fx%s", w.MM(), h.MM(), w.MM(), s.typed(h))
	if len(rest) > 0 {
		fix += "; or lay out the others alone: --only " + quoted(strings.Join(rest, ","))
	}
	for _, sh := range shapes {
		m := sh.piece.Material
		if !bad[m] || lies(s, sh) {
			continue
		}
		p := job.Problem{Reason: s.says(sh), Fix: fix}
		if g := other[m]; g != "" {
			p.Reason += fmt.Sprintf(" as the %s of the %s lies", m.Direction(), m)
			p.Fix = fmt.Sprintf("lay the %s with its %s along the bed's %s: --grain %s", m, m.Direction(), g, quoted(fmt.Sprintf("%s=%s", m, g)))
		}
		faults = append(faults, p)
	}
	return faults
}

// quoted writes what a flag takes, in quotes where a shell would part it.
func quoted(text string) string {
	if strings.Contains(text, " ") {
		return strconv.Quote(text)
	}
	return text
}

// turned returns the setup with the grain of a material the other way.
func (s Setup) turned(m geometry.Material) Setup {
	grain := map[geometry.Material]geometry.Grain{}
	for k, g := range s.Grain {
		grain[k] = g
	}
	switch s.GrainOf(m) {
	case geometry.GrainHeight:
		grain[m] = geometry.GrainWidth
	case geometry.GrainWidth:
		grain[m] = geometry.GrainHeight
	}
	s.Grain = grain
	return s
}

// grownFor returns the setup with a bed that a shape has room on, in whole millimetres.
func (s Setup) grownFor(sh shape) Setup {
	grown := func(w, h Length) Setup {
		s := s
		s.Width, s.Height = max(s.Width, up(w+2*s.Margin)), max(s.Height, up(h+2*s.Margin))
		return s
	}
	upright, turned := s.turns(sh.piece)
	w, h := sh.box.Width(), sh.box.Height()
	a, b := grown(w, h), grown(h, w)
	if !upright || turned && b.Width*b.Height < a.Width*a.Height {
		return b
	}
	return a
}

// says says of a shape that it is larger than the bed.
func (s Setup) says(sh shape) string {
	mm := geometry.ToTenthMM.PrettyNumber
	what := fmt.Sprintf("%s: %s x %s mm", sh.piece.Name, mm(sh.box.Width()), mm(sh.box.Height()))
	if sh.job != "" {
		what = sh.job + ": " + what
	}
	if s.Kerf > 0 {
		what += " with half a kerf on each side"
	}
	what += fmt.Sprintf(" is larger than the bed of %s", s)
	if s.Margin > 0 {
		what += fmt.Sprintf(" less its margin of %.4g mm", s.Margin.MM())
	}
	return what
}

// up returns a length in whole millimetres, rounded up.
func up(l Length) Length { return Length(float64(int((l + 1 - 1e-6).MM()))) }
