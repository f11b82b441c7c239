package box

import (
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
)

// Named lists the keys for what its materials are called.
var Named = []plan.Named{
	{Key: "box.board_name", Material: geometry.Board}, {Key: "box.cloth_name", Material: geometry.Cloth}, {Key: "box.lining_name", Material: geometry.Lining},
	{Key: "box.case_board_name", Material: geometry.CaseBoard}, {Key: "box.case_cloth_name", Material: geometry.CaseCloth},
	{Key: "box.hinge_cloth_name", Material: geometry.HingeCloth}, {Key: "box.lid_lining_name", Material: geometry.LidLining},
}

// made is a box worked out.
type made struct {
	job    Job // as the small tray is cut
	stands Job // as that stands: what the rest is cut for
	pieces []geometry.Piece
	proof  report
}

// work works the box out and proves it. Boards and cloth of the small tray are cut as
// planned, all else for that tray as it stands.
func (j Job) work() (made, error) {
	s := j.standing()
	pieces := s.pieces()
	proof := prove(pieces, s)
	if !proof.Sound() {
		return made{}, proof.Problems()
	}
	for i, p := range j.pieces() {
		if ofBatch(p.Name) == 0 {
			pieces[i] = p
		}
	}
	plan.MarkMistakable(pieces)
	return made{job: j, stands: s, pieces: pieces, proof: proof}, nil
}

// Plan returns all that is rendered of the box.
func (c made) Plan() plan.Plan {
	j, s := c.job, c.stands
	return plan.Plan{
		Title:     j.Title,
		Kind:      "drop-spine box",
		Content:   j.content(),
		Pieces:    c.pieces,
		Shows:     "the box lying open with its book: cloth",
		Mistaken:  plan.Mistakable(c.pieces),
		Materials: j.materials(),
		Equals:    equals(),
		Batches:   c.batches(),
		InParts:   j.inParts(),
		Remarks:   c.remarks(),
		Runs:      "width runs from the open edge or the spine to the fore-edge, height from tail to head; of walls and their cloth width runs along the wall, height from base to rim",
		Facts:     c.facts(),
		Tools:     tools(),
		Worksheet: j.worksheet(s),
		Steps:     c.steps(),
		Finished:  c.care(),
		Proof:     c.proof.Proof,
		Chain:     j.Chain(),
		Gauges:    j.gauges(),
		Load:      j.load(),
		Warnings:  j.suspects().Sentences(),
	}
}

// content names what the box is made for.
func (j Job) content() string {
	if j.Wears != "" {
		return "book in its " + j.Wears
	}
	return "book"
}

// materials returns what the pieces are cut from, each once.
func (j Job) materials() []plan.Material {
	var out []plan.Material
	for _, m := range []plan.Material{
		{Of: geometry.Board, Thickness: j.Board, Fitted: true},
		{Of: j.caseBoardOf(), Thickness: j.caseBoard(), Fitted: true},
		{Of: geometry.Cloth, Thickness: j.Cloth, Fitted: true},
		{Of: j.caseClothOf(), Thickness: j.caseCloth(), Fitted: true},
		{Of: j.hingeClothOf(), Thickness: j.hingeCloth(), Fitted: true},
		{Of: geometry.Lining, Thickness: j.Lining, Fitted: true},
		{Of: j.lidLiningOf(), Thickness: j.lidLining(), Fitted: true},
		{Of: geometry.Paper, Thickness: j.caseCloth()},
	} {
		if m.Of == geometry.Paper && j.Filler != Filled {
			continue
		}
		if !slices.ContainsFunc(out, func(have plan.Material) bool { return have.Of == m.Of }) {
			out = append(out, m)
		}
	}
	return out
}

// equals returns the sides that must be the same.
func equals() []plan.Equal {
	var out []plan.Equal
	for _, t := range []string{smallName, largeName} {
		out = append(out, plan.Equal{What: "the height of the three walls of the " + t, Heights: []string{ofTray(t, foreWallOf), ofTray(t, sideWallOf)}})
	}
	return append(out, plan.Equal{What: "the height of case boards and spine", Heights: []string{caseBoardName, spineName}})
}

// batches returns the parts that are printed and made one after the other.
func (c made) batches() []plan.Batch {
	out := []plan.Batch{{Name: smallName}, {Name: largeName}, {Name: "case"}}
	for _, p := range c.pieces {
		n := ofBatch(p.Name)
		out[n].Pieces = append(out[n].Pieces, p.Name)
	}
	return out
}

// inParts says in which order the parts are cut, for all outputs alike.
func (j Job) inParts() string {
	if j.AsBuilt.Measured() {
		return "the small tray is made and was measured: the large tray and the case are cut for what it measures; its own pieces are shown here too"
	}
	said := "cut and make the small tray first; measure it over its cloth, type what you find under [as_built], and only then print and cut the rest, which follows it"
	if j.Order == AsPlanned {
		said += "; cut all at once, as this job has it, the trays stick far more often"
	}
	return said
}

// ofBatch returns when a piece is cut: with the small tray, with the large one, or last.
func ofBatch(piece string) int {
	for n, t := range []string{smallName, largeName} {
		for _, of := range []string{baseOf, foreWallOf, sideWallOf, clothOf} {
			if piece == ofTray(t, of) {
				return n
			}
		}
	}
	return 2
}

// facts returns what the box measures.
func (c made) facts() []plan.Fact {
	j, s := c.job, c.stands
	small, large := s.small(), s.large()
	inside := func(t tray) plan.Size { return plan.Size{Height: t.l, Width: t.b, Thickness: t.d} }
	return []plan.Fact{
		plan.SizeFact(plan.Contents, j.content(), "wide", j.Book().Size()),
		plan.SizeFact("small_tray_inside", "small tray inside, between boards", "wide", inside(small)),
		plan.SizeFact("small_tray", "small tray, covered", "wide", s.covered(small)),
		plan.SizeFact("large_tray_inside", "large tray inside, between boards", "wide", inside(large)),
		plan.SizeFact("large_tray", "large tray, covered", "wide", s.covered(large)),
		plan.SizeFact(plan.Outside, "outside, closed", "wide", s.outside()),
		{Key: "case", Name: "case laid flat, over boards and joints", Text: "%s wide, %s high; each joint %s",
			Parts: []plan.Part{{Key: "width", Length: s.laid().Across}, {Key: "height", Length: s.laid().High}, {Key: "joint", Length: s.joint()}}},
		{Key: "between", Name: "between the case boards, closed", Text: "%s", Parts: []plan.Part{{Key: "thickness", Length: s.between()}}},
	}
}

// remarks returns what is to be known of the sizes.
func (c made) remarks() []plan.Remark {
	j, s := c.job, c.stands
	out := []plan.Remark{
		plan.Say("the three walls of a tray have one height: cut them at one setting"),
		plan.Say(j.inParts()),
		plan.Say("a wall has two layers of cloth at the open end and in the corners at the fore-edge: " + j.Whose(0) + " and the trays have the least room there"),
	}
	if s.joint() < s.clearJoint()-1e-6 {
		out = append(out, plan.Say("the joint of %s is %s narrower than keeps the spine off the ends of the walls: it counts on the cloth there giving way", s.joint(), s.clearJoint()-s.joint()))
	}
	if d := j.Book().Taper(); d > 0 {
		out = append(out, plan.Say("the book is %s thinner at one edge: there it has %s of play", d, d+j.Clearance.Thickness))
	}
	return append(out, plan.Say("the box opens like its book, the spine at the left: laid open, head away, the large tray is at the left and the small tray at the right"))
}
