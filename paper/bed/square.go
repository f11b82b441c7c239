package bed

import "forel/geometry"

// The test square, and the slot within it.
const (
	TestSide Length = 40
	TestSlot Length = 10 // wide; it is three times as long
)

// Test returns a bed of its own with a square to cut and to measure, a slot within it,
// laid out as all pieces are. A beam takes half its kerf off the square at each edge and
// adds as much to the slot: what both measure tells the kerf.
func Test(s Setup) (Bed, error) {
	mid := TestSide / 2
	square := geometry.Piece{
		Name: "test square", Count: 1, Outline: geometry.Rectangle(geometry.Bx(0, 0, TestSide, TestSide)),
		Slits: []geometry.Path{geometry.Rectangle(geometry.Bx(mid-TestSlot*1.5, mid-TestSlot/2, mid+TestSlot*1.5, mid+TestSlot/2))},
	}
	s.Tabs = 0
	sh, err := s.shaped(square, "")
	b := Bed{Number: 1, Width: TestSide + 10, Height: TestSide + 10}
	if err == nil {
		edge := (b.Width - sh.box.Width()) / 2
		b.Parts = []Part{sh.placed(geometry.Pt(edge, edge), false)}
		b.Parts[0].Of = 1
		b.route(s)
	}
	return b, err
}
