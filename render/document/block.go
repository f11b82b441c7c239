package document

import (
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/record"
	"forel/render/typeset"
)

// Block is something that stays together on a page.
type Block struct {
	Bookmark string
	Fresh    bool   // starts a page
	Stays    bool   // on the page of what follows: a heading; or all of a list, where a page holds it
	Above    Length // white, where it is not the first of its page
	// Draw sets it from the top of a box, within its sides, and returns where it ends.
	Draw func(box geometry.Box) Length
	// Head is set above it where it is the first of a page: the head of a list that
	// goes on. It returns where it ends; nil: none.
	Head func(box geometry.Box) Length
	// Figures stand below it, one below the other, each in a box of its own. They
	// share what a page has to spare.
	Figures []func(box geometry.Box)
}

// After returns the block with so much white above it.
func (k Block) After(white Length) Block {
	k.Above = white
	return k
}

// Heights of a figure, and the white above it.
const (
	leastFigure Length = 50
	mostFigure  Length = 84
	figureGap   Length = 1.5
)

// drawn is what was drawn from the top of a room, and how tall it is.
type drawn struct {
	record.Surface
	tall Length
}

// laid is a block as it was drawn, with its head.
type laid struct {
	Block
	body, top drawn
}

// height returns how tall a block is with its figures as low as they may be: the
// first of its page, or a later one.
func (k laid) height(first bool) Length {
	h := k.body.tall + Length(len(k.Figures))*(leastFigure+figureGap)
	if first {
		return h + k.top.tall
	}
	return h + k.Above
}

// Flow sets blocks one below the other on pages, and returns how many stand on
// each. Start starts a page, from 0, and returns the room on it; nil starts upright
// pages with a foot. The first may be one that was begun before, with little room
// left or none. All rooms are as wide as the first; of two columns each is a room.
func (d *Document) Flow(start func(page int) geometry.Box, blocks ...Block) (on []int) {
	if start == nil {
		start = func(int) geometry.Box { return d.NewPage(false, "") }
	}
	box := start(0)
	left := box.Min.X
	draw := func(do func(geometry.Box) Length) (out drawn) {
		if do != nil {
			d.Aside(func() {
				out.tall = do(geometry.Bx(box.Min.X, 0, box.Max.X, box.Height()))
				out.Surface = d.Page.Surface
			})
		}
		return out
	}
	all := make([]laid, len(blocks))
	for i, k := range blocks {
		all[i] = laid{k, draw(k.Draw), draw(k.Head)}
	}
	full := box.Height()
	d.Aside(func() { full = max(full, d.NewPage(false, "").Height()) })
	for page := 0; ; page++ {
		n := holds(all, box.Height(), full)
		if n == 0 && (box.Height() >= full || page > 1 && on[page-1]+on[page-2] == 0) { // no page holds what stays together
			n = max(1, fitting(all, box.Height()))
		}
		d.place(all[:n], box, box.Min.X-left)
		on, all = append(on, n), all[n:]
		if len(all) == 0 {
			return on
		}
		box = start(page + 1)
	}
}

// Below draws blocks one below the other from the top of a box, on the page that is drawn on,
// and returns where they end.
func Below(box geometry.Box, blocks ...Block) Length {
	for i, k := range blocks {
		if i > 0 {
			box.Min.Y += k.Above
		}
		box.Min.Y = k.Draw(box)
	}
	return box.Min.Y
}

// FlowOn is Flow that begins below what is on the page, after so much white.
func (d *Document) FlowOn(white Length, blocks ...Block) []int {
	return d.Flow(func(page int) geometry.Box {
		if page == 0 {
			return d.Rest(white)
		}
		return d.NewPage(false, "")
	}, blocks...)
}

// FlowInColumns is FlowOn in two columns, so far apart, which are about as tall on the last
// page.
func (d *Document) FlowInColumns(apart, white Length, blocks ...Block) {
	room := d.Rest(white)
	try := func(tall Length) []int {
		begun := room
		begun.Max.Y = room.Min.Y + tall
		return d.Try(d.Columns(apart, begun), blocks...)
	}
	high := room.Height()
	if on := try(high); len(on) > 2 {
		n := on[0] + on[1]
		d.Flow(d.Columns(apart, room), blocks[:n]...)
		d.NewPage(false, "")
		d.FlowInColumns(apart, 0, blocks[n:]...)
		return
	}
	for low := Length(0); high-low > 0.5; {
		if middle := (low + high) / 2; len(try(middle)) > 2 {
			low = middle
		} else {
			high = middle
		}
	}
	room.Max.Y = room.Min.Y + high
	d.Flow(d.Columns(apart, room), blocks...)
}

// Try is Flow whose pages are not kept: it tells how many blocks stand on each.
func (d *Document) Try(start func(page int) geometry.Box, blocks ...Block) (on []int) {
	d.Aside(func() { on = d.Flow(start, blocks...) })
	return on
}

// Columns returns rooms for Flow: two columns a page, so far apart. The first are in what is
// left of a page that was begun; where that is empty, on a new one.
func (d *Document) Columns(apart Length, begun geometry.Box) func(room int) geometry.Box {
	var page geometry.Box
	return func(room int) geometry.Box {
		switch {
		case room == 0 && begun.Height() > 0:
			page = begun
		case room%2 == 0:
			page = d.NewPage(false, "")
		}
		half := (page.Width() - apart) / 2
		x := page.Min.X + Length(room%2)*(half+apart)
		return geometry.Bx(x, page.Min.Y, x+half, page.Max.Y)
	}
}

// holds returns how many blocks a room holds. What stays together and is taller
// than a full page goes on from where it starts.
func holds(all []laid, room, full Length) (n int) {
	for n < len(all) && !(n > 0 && all[n].Fresh) {
		end := n + 1
		for end < len(all) && all[end-1].Stays && !all[end].Fresh {
			end++
		}
		if fitting(all[:end], room) == end {
			n = end
			continue
		}
		if fitting(all[n:end], full) < end-n {
			if most := fitting(all[:end], room); most > n+1 {
				n = most
			}
		}
		break
	}
	return n
}

// fitting returns how many blocks stand below each other in a room.
func fitting(all []laid, room Length) int {
	for i, k := range all {
		if room -= k.height(i == 0); room < -1e-9 {
			return i
		}
	}
	return len(all)
}

// place sets blocks on the last page, so far aside of where they were drawn, what is left
// over shared between their figures.
func (d *Document) place(all []laid, box geometry.Box, aside Length) {
	left, figures := box.Height(), 0
	for i, k := range all {
		left -= k.height(i == 0)
		figures += len(k.Figures)
	}
	figure := leastFigure
	if figures > 0 {
		figure = min(mostFigure, leastFigure+max(0, left)/Length(figures))
	}
	y := box.Min.Y
	for i, k := range all {
		if i > 0 {
			y += k.Above
		} else {
			k.top.Play(d, geometry.Pt(aside, y))
			y += k.top.tall
		}
		if k.Bookmark != "" {
			d.Bookmark(k.Bookmark)
		}
		k.body.Play(d, geometry.Pt(aside, y))
		y += k.body.tall
		for _, draw := range k.Figures {
			y += figureGap
			draw(geometry.Bx(box.Min.X, y, box.Max.X, y+figure))
			y += figure
		}
	}
}

// Add adds blocks, to be set below those that were added before.
func (d *Document) Add(blocks ...Block) { d.added = append(d.added, blocks...) }

// Say adds a paragraph below so much white.
func (d *Document) Say(text string, size render.Points, bold bool, above Length) {
	d.Add(d.Paragraph(text, size, bold).After(above))
}

// Notes adds sentences in small print, given without capital and full stop.
func (d *Document) Notes(sentences ...string) {
	above := Length(4)
	for _, s := range sentences {
		d.Say(wording.Sentence(s), render.NoteSize, false, above)
		above = 0.4
	}
}

// Break sets what was added; what is added next starts a page.
func (d *Document) Break() {
	if d.added != nil {
		d.Flow(nil, d.added...)
		d.added = nil
	}
}

// Paragraph returns a paragraph.
func (d *Document) Paragraph(text string, size render.Points, bold bool) Block {
	return Block{Draw: func(box geometry.Box) Length {
		box.Max.X = box.Min.X + d.Writable(box.Width())
		return Paragraph(d, box, box.Min.Y, text, size, bold)
	}}
}

// Heading returns a heading, which stays with what follows.
func (d *Document) Heading(text string) Block {
	k := d.Paragraph(text, render.HeadSize, true)
	k.Stays, k.Above = true, 3
	return k
}

// Opening returns the head of a document: its name, shortened to fit, what it is,
// and a rule.
func (d *Document) Opening(name, about string) Block {
	return Block{Draw: func(box geometry.Box) Length {
		wide := d.Writable(box.Width())
		y := box.Min.Y + typeset.Ascent(render.TitleSize)
		Write(d, geometry.Pt(box.Min.X, y), typeset.Fit(name, render.TitleSize, true, wide), render.TitleSize, true)
		y = Paragraph(d, box, y+1.5, about, render.HeadSize, false) + 2
		Rule(d, geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y))
		return y
	}}
}
