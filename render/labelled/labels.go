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
	long := Block{{p.Name, render.HeadSize, true}}
	less := Block{{p.Name, render.BodySize, true}}
	with := ""
	if address != "" {
		long = append(long, Line{address, render.BodySize, true})
		less = append(less, Line{address, render.NoteSize, true})
		with = ", " + address
	}
	long = append(long, Block{
		{Cut(p), render.BodySize, false},
		{dimensions(p, v.Turned, r), render.BodySize, false},
		{p.FaceUp, render.BodySize, false},
	}...)
	if p.Hand != "" {
		long = append(long, Line{p.Hand, render.NoteSize, false})
	}
	for _, c := range p.Confused {
		long = append(long, Line{"not to be mistaken for " + c, render.NoteSize, true})
	}
	less = append(less, Block{
		{Cut(p), render.NoteSize, false},
		{p.FaceUp, render.NoteSize, false},
	}...)
	small := Block{{Name(p) + with, render.SmallSize, true}}
	return long.ways(60, 42, 32), less.ways(26), slices.Concat(
		Block{{p.Name + ", " + Cut(p) + with, render.NoteSize, true}}.ways(),
		Block{{Name(p) + with, render.NoteSize, true}}.ways(),
		small.ways(26, 16))
}

// regionLabels returns the label of a region, from the fullest to the barest.
func regionLabels(r geometry.Region) []way {
	name := r.Label()
	note, tiny := Block{{name, render.NoteSize, true}}, Block{{name, render.SmallSize, true}}
	if r.Face == "" {
		return slices.Concat(Block{{name, render.BodySize, true}}.ways(), note.ways(), tiny.ways(10))
	}
	full := Block{
		{name, render.BodySize, true},
		{"→ " + string(r.Face), render.NoteSize, false},
	}
	small := Block{
		{name, render.NoteSize, true},
		{"→ " + string(r.Face), render.SmallSize, false},
	}
	return slices.Concat(full.ways(), small.ways(24, 16), note.ways(), tiny.ways(10))
}

// edgeLabels returns the label of an edge, the fuller first.
func edgeLabels(e geometry.Edge, r geometry.Rounding) []way {
	short := Block{{e.Name, render.NoteSize, false}}
	if e.Meets == "" {
		return slices.Concat(short.ways(), Block{{e.Name, render.SmallSize, false}}.ways())
	}
	full := e.Name + ": " + e.Meets
	if e.Off > 0 {
		full = e.Name + ": " + r.Pretty(e.Off) + " " + e.Meets
	}
	return slices.Concat(Block{{full, render.NoteSize, false}}.ways(), Block{{full, render.SmallSize, false}}.ways(), short.ways())
}
