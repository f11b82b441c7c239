// Package measuring shows how a book and the materials for its case are measured: pictures
// with a few words, each under a name that it can be asked for by.
//
// Several readings, of which the largest is kept, to the nearest 0.5 mm: G. Malkin,
// "Straightforward Slipcases", Society of Bookbinders "Bookbinder" (2016). All else, how
// hard to press and the way to hold squares and calipers among it, is common practice, no
// source.
package measuring

import (
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/stage"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Size is that of a book: head to tail, spine to fore-edge, through both covers.
type Size job.Size

// Assumed is the size of the book in pictures where none was measured.
var Assumed = Size{Height: 220, Width: 150, Thickness: 32}

// The names of the pictures. The first three are those of the dimensions of a book in a job
// file.
const (
	Height    = "height"
	Width     = "width"
	Thickness = "thickness"
	Pressing  = "pressing"
	Boards    = "boards"
	Sheets    = "sheets"
)

// Names lists the names of the pictures, in the order of the work.
var Names = []string{Height, Width, Thickness, Pressing, Boards, Sheets}

// Picture is a picture of measuring, with its words.
type Picture struct {
	Name  string // one of Names
	Title string
	Text  []string // a sentence or two each
	stage.Picture
}

// Of returns the name of the picture that shows how a material is measured.
func Of(m geometry.Material) string {
	switch m.Like() {
	case geometry.Board, geometry.Card, geometry.Corrugated:
		return Boards
	}
	return Sheets
}

// Pictures returns all pictures in the order of Names, with a book of about this size:
// they show it no slimmer and no thicker than can be drawn.
func Pictures(s Size) []Picture {
	s = s.drawable()
	return []Picture{ofHeight(s), ofWidth(s), ofThickness(s), ofPressing(s), ofBoards(), ofSheets()}
}

// drawable returns a size near one that a picture can show.
func (s Size) drawable() Size {
	for _, l := range []Length{s.Height, s.Width, s.Thickness} {
		if !(l > 0 && l < 10_000) {
			return Assumed
		}
	}
	const slim, thick = 0.06, 0.6 // of its longer side
	long := max(s.Height, s.Width)
	s.Height, s.Width = max(s.Height, long/3), max(s.Width, long/3)
	s.Thickness = min(max(s.Thickness, slim*long), thick*long)
	return s
}

// headRight returns where a place of a book lies that is turned with its head to the right.
func (s Size) headRight(v stage.Vec) stage.Vec { return stage.Vec{X: v.Y, Y: s.Width - v.X, Z: v.Z} }

func ofHeight(s Size) Picture {
	b := stage.Placed(s.lying(), s.headRight)
	on := between(s.Height, max(s.Height, s.Width), s.Thickness)
	b = append(b, on.faces()...)
	b = across(b, "book, upper cover", s, true)
	at := func(u Length) stage.Vec { return stage.Vec{X: s.Height * 0.4, Y: s.Width - u, Z: s.Thickness} }
	return Picture{Name: Height, Title: "Height, from head to tail",
		Text: []string{
			"Lay the book down and set a square against head and tail. Measure from square to square, not along the book.",
			"Three readings: near the spine, in the middle, at the fore-edge.",
		},
		Picture: stage.Picture{Faces: b, View: before(32), Fresh: []string{"book"}, Arrows: on.arrow(), Notes: []stage.Note{
			{Name: stage.Words("H  height"), More: stage.Words("read the rule here"), At: on.reading()},
			{Name: stage.Words("fore-edge"), At: at(s.Width * near)},
			{Name: stage.Words("middle"), At: at(s.Width / 2)},
			{Name: stage.Words("near the spine"), At: at(s.Width * (1 - near))},
			{Name: stage.Words("square"), More: stage.Words("at the tail"), At: on.top(0)},
			{Name: stage.Words("square"), More: stage.Words("at the head"), At: on.top(1)},
		}},
	}
}

func ofWidth(s Size) Picture {
	b := s.lying()
	on := between(s.Width, max(s.Height, s.Width), s.Thickness)
	b = append(b, on.faces()...)
	b = across(b, "book, upper cover", s, false)
	at := func(v Length) stage.Vec { return stage.Vec{X: s.Width * 0.35, Y: v, Z: s.Thickness} }
	return Picture{Name: Width, Title: "Width, from spine to fore-edge",
		Text: []string{
			"One square against the spine, one against the edges of the covers. The round of the spine counts: its farthest point touches the square.",
			"Three readings: at head, middle and tail.",
		},
		Picture: stage.Picture{Faces: b, View: before(32), Fresh: []string{"book"}, Arrows: on.arrow(), Notes: []stage.Note{
			{Name: stage.Words("W  width"), More: stage.Words("read the rule here"), At: on.reading()},
			{Name: stage.Words("tail"), At: at(s.Height * near)},
			{Name: stage.Words("middle"), At: at(s.Height / 2)},
			{Name: stage.Words("head"), At: at(s.Height * (1 - near))},
			{Name: stage.Words("round"), More: stage.Words("the farthest point of the spine counts"), At: stage.Vec{X: s.Width, Z: s.Thickness / 2}},
			{Name: stage.Words("covers"), More: stage.Words("they stand out beyond the leaves"), At: stage.Vec{Z: s.Thickness - s.cover()/2}},
		}},
	}
}

func ofThickness(s Size) Picture {
	b := stage.Placed(s.lying(), func(v stage.Vec) stage.Vec { return stage.Vec{X: s.Thickness - v.Z, Y: s.Width - v.X, Z: v.Y} })
	on := between(s.Thickness, max(s.Thickness, s.Height*0.7), s.Height*0.7)
	b = append(b, on.faces()...)
	return Picture{Name: Thickness, Title: "Thickness, through both covers",
		Text: []string{
			"Stand the book between two squares and bring them up until they just hold it.",
			"Three readings: at head, middle and tail of the spine. Then turn it round: where the fore-edge is thicker or thinner, write that down too.",
		},
		Picture: stage.Picture{Faces: b, View: stage.View{Toward: stage.Vec{Y: -1}, Up: stage.Vec{Z: 1}, Yaw: 16, Pitch: 24}, Fresh: []string{"book"}, Arrows: on.arrow(), Notes: []stage.Note{
			{Name: stage.Words("T  thickness"), More: stage.Words("read the rule here"), At: on.reading()},
			{Name: stage.Words("spine"), Spot: "book, spine"},
			{Name: stage.Words("square"), At: on.top(0)},
			{Name: stage.Words("square"), More: stage.Words("it touches the cover, and does not press"), At: on.top(1)},
		}},
	}
}

func ofPressing(s Size) Picture {
	b := stage.Placed(s.lying(), s.headRight)
	long := max(s.Height, s.Width)
	out, thick := long*0.05, long*0.025
	top := s.Thickness + thick
	board := stage.Box("board", stage.Vec{X: -out, Y: -out, Z: s.Thickness}, stage.Vec{X: s.Height + out, Y: s.Width + out, Z: top}, stage.Board)
	side := min(s.Width*0.5, long*0.2)
	weight := stage.Box("weight", stage.Vec{X: s.Height*0.5 - side, Y: s.Width*0.5 - side/2, Z: top}, stage.Vec{X: s.Height*0.5 + side, Y: s.Width*0.5 + side/2, Z: top + side*0.7}, stage.Blank)
	p := stage.Picture{Faces: append(append(b, board...), weight...), View: before(20), Fresh: []string{"board", "weight"}}
	for i, name := range []string{"tail", "middle", "head"} {
		x := s.Height * []Length{near, 0.5, 1 - near}[i]
		p.Arrows = append(p.Arrows, stage.Arrow{Path: []stage.Vec{{X: x, Y: -out}, {X: x, Y: -out, Z: s.Thickness}}, Twin: true})
		p.Notes = append(p.Notes, stage.Note{Name: stage.Words(name), At: stage.Vec{X: x, Y: -out, Z: s.Thickness * 0.35}})
	}
	p.Notes = append(p.Notes,
		stage.Note{Name: stage.Words("light weight"), More: stage.Words("or your flat hand, no more"), Spot: "weight"},
		stage.Note{Name: stage.Words("flat board"), More: stage.Words("measure from the bench up to it"), Spot: "board"})
	return Picture{Name: Pressing, Title: "How hard to press",
		Text: []string{
			"As the book will be held in its case: a flat hand, no more. A book that springs open is measured as it is shut by that hand.",
			"A flat board and a light weight hold it still while you measure from the bench up to the board.",
		}, Picture: p}
}
