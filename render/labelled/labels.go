package labelled

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
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
	return fmt.Sprintf("cut %d of %s", p.Count, p.Material.Words())
}

// dimensions returns width by height as lists have them, and tells where the
// template lies turned.
func dimensions(p geometry.Piece, turned bool, r geometry.Rounding) string {
	w, h := p.Size()
	if turned {
		return fmt.Sprintf("%s × %s, turned on this page", r.Pretty(h), r.Pretty(w))
	}
	return fmt.Sprintf("%s × %s", r.Pretty(w), r.Pretty(h))
}

// held returns an address of rows and columns that is broken between the two only.
func held(address string) string {
	return strings.ReplaceAll(strings.ReplaceAll(address, " ", string(typeset.Held)), ","+string(typeset.Held), ", ")
}

// titles returns the piece's own label with the address of what is shown of it,
// from the fullest to the barest: all there is to say, the most of it, its name.
func titles(p geometry.Piece, v View) (full, brief, short []way) {
	address, r := held(v.Address), v.Round
	long := block{{p.Name, render.HeadSize, true}}
	less := block{{p.Name, render.BodySize, true}}
	with := ""
	if address != "" {
		long = append(long, line{address, render.BodySize, true})
		less = append(less, line{address, render.NoteSize, true})
		with = ", " + address
	}
	long = append(long, block{
		{Cut(p), render.BodySize, false},
		{dimensions(p, v.Turned, r), render.BodySize, false},
		{p.FaceUp, render.BodySize, false},
	}...)
	if p.Hand != "" {
		long = append(long, line{p.Hand, render.NoteSize, false})
	}
	for _, c := range p.Confused {
		long = append(long, line{"not to be mistaken for " + c, render.NoteSize, true})
	}
	less = append(less, block{
		{Cut(p), render.NoteSize, false},
		{p.FaceUp, render.NoteSize, false},
	}...)
	small := block{{Name(p) + with, render.SmallSize, true}}
	return long.ways(60, 42, 32), less.ways(26), slices.Concat(
		block{{p.Name + ", " + Cut(p) + with, render.NoteSize, true}}.ways(),
		block{{Name(p) + with, render.NoteSize, true}}.ways(),
		small.ways(26, 16))
}

// regionLabels returns the label of a region, from the fullest to the barest.
func regionLabels(r geometry.Region) []way {
	name := r.Label()
	note, tiny := block{{name, render.NoteSize, true}}, block{{name, render.SmallSize, true}}
	if r.Face == "" {
		return slices.Concat(block{{name, render.BodySize, true}}.ways(), note.ways(), tiny.ways(10))
	}
	full := block{
		{name, render.BodySize, true},
		{"→ " + string(r.Face), render.NoteSize, false},
	}
	small := block{
		{name, render.NoteSize, true},
		{"→ " + string(r.Face), render.SmallSize, false},
	}
	return slices.Concat(full.ways(), small.ways(24, 16), note.ways(), tiny.ways(10))
}

// edgeLabels returns the label of an edge, the fuller first.
func edgeLabels(e geometry.Edge, r geometry.Rounding) []way {
	short := block{{e.Name, render.NoteSize, false}}
	if e.Meets == "" {
		return slices.Concat(short.ways(), block{{e.Name, render.SmallSize, false}}.ways())
	}
	full := e.Name + ": " + e.Meets
	if e.Off > 0 {
		full = e.Name + ": " + r.Pretty(e.Off) + " " + e.Meets
	}
	return slices.Concat(block{{full, render.NoteSize, false}}.ways(), block{{full, render.SmallSize, false}}.ways(), short.ways())
}
