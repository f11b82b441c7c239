package pattern

import (
	"fmt"

	"forel/geometry"
	"forel/render"
)

// Name says what a piece is and how many are cut of it.
func Name(p geometry.Piece) string {
	if p.Count == 1 {
		return p.Name
	}
	return fmt.Sprintf("%s × %d", p.Name, p.Count)
}

// Cut says how many pieces are cut and of what.
func Cut(p geometry.Piece) string {
	if p.FaceOf != "" {
		return "the same as the " + p.FaceOf + ", seen from its face"
	}
	return fmt.Sprintf("cut %d of %s", p.Count, materialName(p.Material))
}

func materialName(m geometry.Material) string {
	switch m {
	case geometry.Lining:
		return "lining paper"
	case geometry.Cloth:
		return "book cloth"
	case geometry.Paper:
		return "side paper"
	}
	return string(m)
}

// Dimensions gives width by height as they are read off the pattern.
func Dimensions(p geometry.Piece, r geometry.Rounding) string {
	w, h := p.Size()
	return fmt.Sprintf("%s × %s", r.Pretty(w), r.Pretty(h))
}

// titles gives the piece's own label with the address of what is shown of it,
// from the fullest to the barest: those that say what it is, then its name alone.
func titles(p geometry.Piece, address string, r geometry.Rounding) (long, short []block) {
	full := block{{p.Name, render.HeadSize, true}}
	brief := block{{p.Name, render.BodySize, true}}
	with := ""
	if address != "" {
		full = append(full, line{address, render.BodySize, true})
		brief = append(brief, line{address, render.NoteSize, true})
		with = ", " + address
	}
	full = append(full, block{
		{Cut(p), render.BodySize, false},
		{Dimensions(p, r), render.BodySize, false},
		{p.FaceUp, render.BodySize, false},
	}...)
	if p.Hand != "" {
		full = append(full, line{p.Hand, render.NoteSize, false})
	}
	for _, c := range p.Confused {
		full = append(full, line{"not to be mistaken for " + c, render.NoteSize, true})
	}
	brief = append(brief, block{
		{Cut(p), render.NoteSize, false},
		{p.FaceUp, render.NoteSize, false},
	}...)
	small := block{{Name(p) + with, render.SmallSize, true}}
	return []block{full, full.wrapped(60), full.wrapped(42), full.wrapped(32), brief, brief.wrapped(26)},
		[]block{
			{{p.Name + ", " + Cut(p) + with, render.NoteSize, true}},
			{{Name(p) + with, render.NoteSize, true}},
			small, small.wrapped(26), small.wrapped(16),
		}
}

// regionLabels gives the label of a region, from the fullest to the barest.
func regionLabels(r geometry.Region) []block {
	if r.Face == "" {
		return []block{{{r.Name, render.BodySize, true}}, {{r.Name, render.NoteSize, true}}, {{r.Name, render.SmallSize, true}}, block{{r.Name, render.SmallSize, true}}.wrapped(10)}
	}
	full := block{
		{r.Name, render.BodySize, true},
		{"→ " + string(r.Face), render.NoteSize, false},
	}
	small := block{
		{r.Name, render.NoteSize, true},
		{"→ " + string(r.Face), render.SmallSize, false},
	}
	return []block{
		full, small, small.wrapped(24), small.wrapped(16),
		{{r.Name, render.NoteSize, true}},
		{{r.Name, render.SmallSize, true}},
		block{{r.Name, render.SmallSize, true}}.wrapped(10),
	}
}

// edgeLabels gives the label of an edge, the fuller first.
func edgeLabels(e geometry.Edge, r geometry.Rounding) []block {
	short := block{{e.Name, render.NoteSize, false}}
	if e.Meets == "" {
		return []block{short, {{e.Name, render.SmallSize, false}}}
	}
	full := e.Name + ": " + e.Meets
	if e.Off > 0 {
		full = e.Name + ": " + r.Pretty(e.Off) + " " + e.Meets
	}
	return []block{{{full, render.NoteSize, false}}, {{full, render.SmallSize, false}}, short}
}
