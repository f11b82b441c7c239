package labelled

import (
	"strings"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// line is one line of a label.
type line struct {
	text string
	size render.Points
	bold bool
}

// block is a label: some lines, set one below the other.
type block []line

// size returns the extent of a block as it reads, its width times wider.
func (b block) size(wider float64) (w, h geometry.Length) {
	for i, l := range b {
		w = max(w, typeset.Width(l.text, l.size, l.bold))
		if i == 0 {
			h += typeset.Ascent(l.size)
		} else {
			h += typeset.LineHeight(l.size)
		}
	}
	if len(b) > 0 {
		h += typeset.Descent(b[len(b)-1].size)
	}
	return w * geometry.Length(wider), h
}

// draw sets the block centred in a box; turned, it reads upward.
func (b block) draw(s render.Surface, box geometry.Box, turned bool, color render.Color) {
	c := box.Center()
	var down geometry.Length
	for i, l := range b {
		if i == 0 {
			down += typeset.Ascent(l.size)
		} else {
			down += typeset.LineHeight(l.size)
		}
		at := geometry.Pt(c.X, box.Min.Y+down)
		if turned {
			at = geometry.Pt(box.Min.X+down, c.Y)
		}
		s.Text(render.Text{At: at, String: strings.ReplaceAll(l.text, string(typeset.Held), " "), Size: l.size, Bold: l.bold, Align: render.Middle, Turned: turned, Color: color})
	}
}

// wrapped returns the block with each line broken to a width.
func (b block) wrapped(width geometry.Length) block {
	var out block
	for _, l := range b {
		for _, part := range typeset.Wrap(l.text, l.size, l.bold, width) {
			out = append(out, line{part, l.size, l.bold})
		}
	}
	return out
}

// way is a way to set a label: as it is, or with its lines broken so that none
// is wider than a width. How it comes out is worked out once.
type way struct {
	block
	width geometry.Length // 0: as it is
	laid  block
	w, h  geometry.Length
}

// ways returns the ways to set a label: as it is, and broken at widths.
func (b block) ways(widths ...geometry.Length) []way {
	all := make([]way, 1, len(widths)+1)
	all[0].block = b
	for _, w := range widths {
		all = append(all, way{block: b, width: w})
	}
	return all
}

// set returns the block as it is set this way, with its extent as size returns it.
func (w *way) set(wider float64) (b block, wide, high geometry.Length) {
	if w.laid == nil {
		w.laid = w.block
		if w.width > 0 {
			w.laid = w.wrapped(w.width)
		}
		w.w, w.h = w.laid.size(wider)
	}
	return w.laid, w.w, w.h
}
