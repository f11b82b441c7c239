package labelled

import (
	"strings"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Line is one line of a label.
type Line struct {
	Text string
	Size render.Points
	Bold bool
}

// Block is a label: some lines, set one below the other.
type Block []Line

// Size returns the extent of a block as it reads, its width times wider.
func (b Block) Size(wider float64) (w, h geometry.Length) {
	for i, l := range b {
		w = max(w, typeset.Width(l.Text, l.Size, l.Bold))
		if i == 0 {
			h += typeset.Ascent(l.Size)
		} else {
			h += typeset.LineHeight(l.Size)
		}
	}
	if len(b) > 0 {
		h += typeset.Descent(b[len(b)-1].Size)
	}
	return w * geometry.Length(wider), h
}

// Draw sets the block centred in a box; turned, it reads upward.
func (b Block) Draw(s render.Surface, box geometry.Box, turned bool, color render.Color) {
	c := box.Center()
	var down geometry.Length
	for i, l := range b {
		if i == 0 {
			down += typeset.Ascent(l.Size)
		} else {
			down += typeset.LineHeight(l.Size)
		}
		at := geometry.Pt(c.X, box.Min.Y+down)
		if turned {
			at = geometry.Pt(box.Min.X+down, c.Y)
		}
		s.Text(render.Text{At: at, String: strings.ReplaceAll(l.Text, string(typeset.Held), " "), Size: l.Size, Bold: l.Bold, Align: render.Middle, Turned: turned, Color: color})
	}
}

// wrapped returns the block with each line broken to a width.
func (b Block) wrapped(width geometry.Length) Block {
	var out Block
	for _, l := range b {
		for _, part := range typeset.Wrap(l.Text, l.Size, l.Bold, width) {
			out = append(out, Line{part, l.Size, l.Bold})
		}
	}
	return out
}

// way is a way to set a label: as it is, or with its lines broken so that none
// is wider than a width. How it comes out is worked out once.
type way struct {
	Block
	width geometry.Length // 0: as it is
	laid  Block
	w, h  geometry.Length
}

// ways returns the ways to set a label: as it is, and broken at widths.
func (b Block) ways(widths ...geometry.Length) []way {
	all := make([]way, 1, len(widths)+1)
	all[0].Block = b
	for _, w := range widths {
		all = append(all, way{Block: b, width: w})
	}
	return all
}

// set returns the block as it is set this way, with its extent as size returns it.
func (w *way) set(wider float64) (b Block, wide, high geometry.Length) {
	if w.laid == nil {
		w.laid = w.Block
		if w.width > 0 {
			w.laid = w.wrapped(w.width)
		}
		w.w, w.h = w.laid.Size(wider)
	}
	return w.laid, w.w, w.h
}
