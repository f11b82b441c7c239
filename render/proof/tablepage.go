package proof

import (
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render/document"
)

// table sets the table of all faces into a box, or on a page of its own if it
// is too tall for that.
func (b *book) table(box geometry.Box) {
	rows := faceRows(b.faces, b.Round)
	t := document.Table{Rows: rows[1:], Size: noteSize, Wider: substitute, Whole: true}
	for i, head := range rows[0] {
		words := i == 0 || i == len(rows[0])-1
		t.Columns = append(t.Columns, document.Column{Head: head, Right: !words, Broken: words && i > 0})
	}
	blocks := b.Table("Face by face", t)
	blocks[0].Bookmark = "Face by face"
	for _, n := range notes(b.Proof, b.faces, b.Round) {
		blocks[len(blocks)-1].Stays = true
		blocks = append(blocks, b.Paragraph(wording.Sentence(n), noteSize, false).After(1))
	}
	b.Flow(func(page int) geometry.Box {
		if page == 0 {
			return box
		}
		return b.NewPage(false, "")
	}, blocks...)
}
