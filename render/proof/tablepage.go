package proof

import (
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render/document"
	"forel/render/typeset"
)

// table sets the table of all faces into a box, or on a page of its own if it
// is too tall for that.
func (d *doc) table(box geometry.Box) {
	rows := faceRows(d.faces, d.Round)
	t := document.Table{Rows: rows[1:], Size: noteSize, Wider: typeset.Substitute, Whole: true}
	for i, head := range rows[0] {
		words := i == 0 || i == len(rows[0])-1
		t.Columns = append(t.Columns, document.Column{Head: head, Right: !words, Broken: words && i > 0})
	}
	blocks := d.Table("Face by face", t)
	blocks[0].Bookmark = "Face by face"
	for _, n := range notes(d.Proof, d.faces, d.Round) {
		blocks[len(blocks)-1].Stays = true
		blocks = append(blocks, d.Paragraph(wording.Sentence(n), noteSize, false).After(1))
	}
	d.Flow(func(page int) geometry.Box {
		if page == 0 {
			return box
		}
		return d.NewPage(false, "")
	}, blocks...)
}
