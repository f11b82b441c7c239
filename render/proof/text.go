package proof

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/wording"
)

// Text gives the report in words, in the maker's unit: whether the case is
// sound, face by face what lies there, and the clearance that is left. Sizes
// are rounded as r says; piles and clearances to 0.01 mm or 0.001 in.
func Text(s Subject, r geometry.Rounding) []byte {
	var b bytes.Buffer
	if t := wording.OneLine(s.Title); t != "" {
		fmt.Fprintf(&b, "%s\n\n", t)
	}
	fmt.Fprintln(&b, s.verdict())
	for i, f := range s.Report.Faults {
		fmt.Fprintf(&b, "%d. %s\n", i+1, f)
	}
	if len(s.Report.Faces) == 0 {
		return b.Bytes()
	}
	faces := each(study(s.Report))
	b.WriteString("\n")
	columns(&b, s.faceRows(faces, r))
	b.WriteString("\n")
	columns(&b, clearanceRows(s.Report.Clearance, r.Unit))
	b.WriteString("\n")
	for _, n := range s.notes(faces, r) {
		b.WriteString(n + "\n")
	}
	return b.Bytes()
}

// faceRows gives a row a face under a row of heads.
func (s Subject) faceRows(faces []face, r geometry.Rounding) [][]string {
	unit := r.Unit.String()
	rows := [][]string{{"face", "size (" + unit + ")", "covered", "parts", "layers", "pile (" + unit + ")", "pieces"}}
	for _, f := range faces {
		row := []string{string(f.Face), r.Number(f.Extent.Width()) + " x " + r.Number(f.Extent.Height()), "", "", "", "", ""}
		if f.Inside {
			row[2] = map[Lining]string{LinedBefore: "lined", LinedAfter: "lined last"}[s.Lining]
			if f.divider > 0 && row[2] != "" {
				row[2] = "lined"
			}
			row[5] = geometry.FineNumber(f.Corners, r.Unit)
		} else {
			row[2] = fmt.Sprintf("%.1f %%", percent(f.covered))
		}
		row[3], row[4] = fmt.Sprint(len(f.layers)), fmt.Sprint(f.deepest)
		row[6] = strings.Join(f.pieces(), ", ")
		rows = append(rows, row)
	}
	return rows
}

func clearanceRows(k foldup.Clearance, u geometry.Unit) [][]string {
	n := func(l Length) string { return geometry.FineNumber(l, u) }
	return [][]string{
		{"left beyond the book (" + u.String() + ")", "height", "depth", "thickness"},
		{"in the body", n(k.BodyHeight), n(k.BodyWidth), n(k.BodyThickness)},
		{"at the mouth", n(k.MouthHeight), "-", n(k.MouthThickness)},
		{"in the corners of the mouth", n(k.MouthCorners), "-", "-"},
	}
}

// notes says what the tables mean.
func (s Subject) notes(faces []face, r geometry.Rounding) []string {
	out := []string{
		"parts: pieces of covering between folds that reach the face; layers: the most that lie on one spot, linings not counted; " +
			"pile: the thickest of them, tucks in the corners counted",
		"sizes are rounded " + r.String() + "; piles and clearances are shown to " + geometry.FineStep(r.Unit) + "; the JSON report is exact to 0.001 mm",
	}
	if s.Report.Sound() && !s.MayShow && slices.ContainsFunc(faces, func(f face) bool { return !f.Inside && f.covered < 100 }) {
		out = append(out, "less than 100 % in a sound case: the gap that is left is no broader than the covering beside it is thick, which closes it")
	}
	return append(out, s.remarks()...)
}

// columns sets rows in columns: the first and the one that holds words flush left,
// numbers flush right.
func columns(b *bytes.Buffer, rows [][]string) {
	b.WriteString(wording.Aligned(rows, func(i int) bool { return i > 0 && rows[0][i] != "pieces" }))
}
