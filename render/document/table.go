package document

import (
	"cmp"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/typeset"
)

// Table is rows under a row of heads. Columns are as wide as their widest cell,
// those without a filled cell are left out, and what is left over stands between
// them.
type Table struct {
	Columns []Column
	Rows    [][]string
	Size    render.Points      // a smaller one is taken where room is short
	Wider   Length             // by how much a viewer's typeface may be wider than ours; 0: it is ours
	Ticks   []string           // heads of the boxes to tick before each row
	Notes   []string           // in small letters below each row, from where its broken column starts; nil: none
	Gap     Length             // white between rows; 0: as usual
	Apart   func(row int) bool // there is a rule above a row; nil: nowhere
	Dotted  bool               // the last column ends at the right side, and dots lead to it
	Whole   bool               // on one page where a page holds it
	Full    bool               // as wide as its room
}

// Column is a column of a table.
type Column struct {
	Head   string
	Right  bool // flush right, as numbers are
	Bold   bool
	Broken bool   // over lines, where room is short
	Least  Length // it is no narrower
}

// White in a table.
const (
	leastGap Length = 3 // between columns
	mostGap  Length = 8
	dotGap   Length = 1.4 // so near that readers of the file take words and their symbol for one line
	tickWide Length = 5
	tickSide Length = 2.4
	tickWith Length = 3.4 // where a row has a note
	rowGap   Length = 1
)

// Rules returns an Apart that parts all rows.
func Rules(row int) bool { return row > 0 }

// sizes are those a table can be set in, the largest first.
var sizes = []render.Points{render.BodySize, render.NoteSize, render.SmallSize}

// fitted is a table as it is set in a width.
type fitted struct {
	Table
	wide  []Length // of columns; 0 for one left out
	gap   Length
	heads [][]string
	deep  int // lines of the heads
}

// Form is how a report is written: as plain text, or in Markdown.
type Form struct {
	Plain         bool
	Table         func(Table) string
	Head, Chapter string              // before the heading of all, and of a part
	Item, Under   string              // before an item of a list, and one that belongs to it
	Says          func(string) string // what may have a maker's own words
}

// The forms of reports.
var (
	Plain    = Form{true, Table.Text, "", "", "", "  ", func(s string) string { return s }}
	Markdown = Form{false, Table.Markdown, "# ", "## ", "- ", "  - ", wording.Escape}
)

// Text returns the table as text, as wording.Aligned sets it.
func (t Table) Text() string { return wording.Aligned(t.withHeads(), t.right) }

// Markdown returns the table in Markdown.
func (t Table) Markdown() string { return wording.Markdown(t.withHeads(), t.right) }

func (t Table) right(column int) bool { return t.Columns[column].Right }

// withHeads returns the rows below that of the heads.
func (t Table) withHeads() [][]string {
	heads := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = c.Head
	}
	return append([][]string{heads}, t.Rows...)
}

// In returns the table as it is set in a width.
func (t Table) in(width Length) fitted {
	f := fitted{Table: t}
	for _, size := range sizes {
		if size > t.Size {
			continue
		}
		f.Size = size
		width := width - f.left(geometry.Box{})
		broken, narrower := f.share(width, true)
		whole, narrow := f.share(width, false)
		if whole && !(narrow < squeezed && narrower > narrow/squeezed) {
			break
		}
		if broken {
			f.share(width, true)
			break
		}
		if size == sizes[len(sizes)-1] {
			f.share(width, true)
		}
	}
	f.heads = make([][]string, len(f.wide))
	for i, c := range f.Columns {
		if f.wide[i] > 0 {
			f.heads[i] = typeset.Wrap(c.Head, f.Size, true, f.wide[i]+1e-6)
			f.deep = max(f.deep, len(f.heads[i]))
		}
	}
	return f
}

// squeezed is the part of their width at which columns are so narrow that heads are broken
// first, where that makes them as much wider.
const squeezed = 0.5

// share finds each column its width, with heads on one line or broken between
// words, and tells whether there is room for all, and which part of their width is left to
// columns that are broken.
func (f *fitted) share(width Length, broken bool) (fits bool, part Length) {
	part = 1
	more := max(1, f.Wider)
	f.wide = make([]Length, len(f.Columns))
	var fixed, loose, least Length
	columns := 0
	for i, c := range f.Columns {
		var word Length // the longest, which is not broken
		for _, row := range f.Rows {
			f.wide[i] = max(f.wide[i], typeset.Width(row[i], f.Size, c.Bold)*more)
		}
		if f.wide[i] == 0 {
			continue
		}
		head := []string{c.Head}
		if broken {
			head = typeset.Wrap(c.Head, f.Size, true, 0)
		}
		for _, w := range head {
			word = max(word, typeset.Width(w, f.Size, true)*more)
		}
		f.wide[i] = max(f.wide[i], word, c.Least)
		columns++
		if !c.Broken {
			fixed += f.wide[i]
			continue
		}
		for _, row := range f.Rows {
			for _, w := range typeset.Wrap(row[i], f.Size, c.Bold, 0) {
				word = max(word, min(30, typeset.Width(w, f.Size, c.Bold)*more))
			}
		}
		loose += f.wide[i]
		least += word
	}
	gaps := Length(max(1, columns-1))
	fits = fixed+least+gaps*leastGap <= width
	if room := width - fixed - gaps*leastGap; loose > room && loose > 0 {
		part = max(0.1, room/loose)
		for i, c := range f.Columns {
			if c.Broken {
				f.wide[i] *= part
			}
		}
		loose = room
	}
	switch f.gap = max(0.5, (width-fixed-loose)/gaps); {
	case f.Dotted:
		f.wide[len(f.wide)-1] += gaps * (f.gap - dotGap)
		f.gap = dotGap
	case !f.Full:
		f.gap = min(mostGap, f.gap)
	}
	return fits, part
}

// cell sets a line of a column that starts at x.
func (f fitted) cell(on render.Surface, column int, x, y Length, text string, bold bool) {
	switch at := geometry.Pt(x, y); {
	case text == "":
	case f.Columns[column].Right:
		WriteEnd(on, at.Add(geometry.Pt(f.wide[column], 0)), text, f.Size, bold)
	default:
		Write(on, at, text, f.Size, bold)
	}
}

// left is where the first column starts, behind the boxes to tick.
func (f fitted) left(box geometry.Box) Length {
	for _, head := range f.Ticks {
		box.Min.X += f.tickWide(head)
	}
	return box.Min.X
}

// tickWide is what the boxes to tick below a head take.
func (f fitted) tickWide(head string) Length {
	return max(tickWide, typeset.Width(head, f.Size, true)*max(1, f.Wider)+leastGap)
}

// head sets the heads from the top of a box, with a rule below, and returns where
// they end.
func (f fitted) head(on render.Surface, box geometry.Box) Length {
	line, x := typeset.LineHeight(f.Size), box.Min.X
	for _, head := range f.Ticks {
		Write(on, geometry.Pt(x, box.Min.Y+line*Length(f.deep)), head, f.Size, true)
		x += f.tickWide(head)
	}
	for i, lines := range f.heads {
		for k, l := range lines {
			f.cell(on, i, x, box.Min.Y+line*Length(f.deep-len(lines)+k+1), l, true)
		}
		if f.wide[i] > 0 {
			x += f.wide[i] + f.gap
		}
	}
	y := box.Min.Y + line*Length(f.deep) + 1.2
	Rule(on, geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y))
	return y
}

// row sets a row from the top of a box, below the last one a rule, and returns where
// it ends.
func (f fitted) row(on render.Surface, box geometry.Box, row int) Length {
	line, x := typeset.LineHeight(f.Size), box.Min.X
	half := cmp.Or(f.Gap, rowGap) / 2
	top := box.Min.Y + half
	if f.Apart != nil && f.Apart(row) {
		Rule(on, geometry.Pt(box.Min.X, box.Min.Y+0.6), geometry.Pt(box.Max.X, box.Min.Y+0.6))
	}
	for _, head := range f.Ticks {
		if f.Notes != nil {
			Tick(on, geometry.Pt(x+0.2, top+line+0.6), tickWith)
		} else {
			Tick(on, geometry.Pt(x+0.2, top+line+0.2), tickSide)
		}
		x += f.tickWide(head)
	}
	most, notesAt, words := 1, Length(0), x
	for i, text := range f.Rows[row] {
		lines := []string{text}
		if f.Columns[i].Broken {
			lines = typeset.Break(text, f.Size, f.Columns[i].Bold, f.wide[i]/max(1, f.Wider)+1e-6)
		}
		most = max(most, len(lines))
		if f.Dotted && i == len(f.wide)-1 && text != "" {
			Leader(on, words, x+f.wide[i]-typeset.Width(text, f.Size, f.Columns[i].Bold), top+line, f.Size)
		}
		for k, l := range lines {
			f.cell(on, i, x, top+line*Length(k+1), l, f.Columns[i].Bold)
		}
		if f.Columns[i].Broken && len(lines) > 0 {
			notesAt, words = cmp.Or(notesAt, x), x+typeset.Width(lines[0], f.Size, f.Columns[i].Bold)
		}
		if f.wide[i] > 0 {
			x += f.wide[i] + f.gap
		}
	}
	y := top + line*Length(most)
	if f.Notes != nil {
		for _, l := range typeset.Break(f.Notes[row], render.SmallSize, false, (box.Max.X-notesAt)/max(1, f.Wider)) {
			y += typeset.LineHeight(render.SmallSize)
			Write(on, geometry.Pt(notesAt, y), l, render.SmallSize, false)
		}
	}
	y += half
	if row == len(f.Rows)-1 && !f.Dotted {
		y += 0.8
		Rule(on, geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y))
	}
	return y
}

// Draw sets a table from the top of a box and returns where it ends.
func (t Table) Draw(on render.Surface, box geometry.Box) Length {
	f := t.in(box.Width())
	box.Min.Y = f.head(on, box)
	for i := range t.Rows {
		box.Min.Y = f.row(on, box, i)
	}
	return box.Min.Y
}

// Table returns a table below a heading, a block a row; on further pages the
// heading and the heads are repeated. An empty heading is none.
func (d *Document) Table(heading string, t Table) []Block {
	t.Wider = d.Wider
	var f fitted
	var made Length // the width f is for
	in := func(box geometry.Box) fitted {
		if made != box.Width() {
			f, made = t.in(box.Width()), box.Width()
		}
		return f
	}
	var out []Block
	again := heading
	if heading != "" {
		out = append(out, d.Heading(heading))
		again += ", continued"
	}
	for i := range t.Rows {
		k := Block{Stays: (t.Whole || i < 2) && i < len(t.Rows)-1, Draw: func(box geometry.Box) Length { return in(box).row(d, box, i) }}
		if i == 0 {
			k.Draw = func(box geometry.Box) Length {
				if heading != "" {
					box.Min.Y += 0.5
				}
				box.Min.Y = in(box).head(d, box)
				return in(box).row(d, box, i)
			}
		} else {
			k.Head = func(box geometry.Box) Length {
				if again != "" {
					box.Min.Y = d.Heading(again).Draw(box) + 0.5
				}
				return in(box).head(d, box)
			}
		}
		out = append(out, k)
	}
	return out
}
