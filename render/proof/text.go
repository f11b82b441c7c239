package proof

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
)

// Text returns the report in words, in the maker's unit: whether the case is
// sound, face by face what lies there, and the clearance that is left. Sizes
// are rounded as r says; piles and clearances to 0.01 mm or 0.001 in.
func Text(p plan.Plan, r geometry.Rounding) []byte {
	var b bytes.Buffer
	if t := wording.OneLine(p.Title); t != "" {
		fmt.Fprintf(&b, "%s\n\n", t)
	}
	fmt.Fprintln(&b, Verdict(p.Proof))
	for i, f := range p.Proof.Faults {
		fmt.Fprintf(&b, "%d. %s\n", i+1, f)
	}
	if len(p.Proof.Faces) == 0 {
		return b.Bytes()
	}
	faces := study(p.Proof)
	b.WriteString("\n")
	columns(&b, faceRows(faces, r))
	b.WriteString("\n")
	columns(&b, clearanceRows(p.Proof.Clearances, "left beyond the book ("+r.Unit.String()+")", "-", r.Unit))
	b.WriteString("\n")
	for _, f := range p.Proof.Folded {
		b.WriteString(folded(f, r) + "\n")
	}
	for _, n := range notes(p.Proof, faces, r) {
		b.WriteString(n + "\n")
	}
	return b.Bytes()
}

// folded says what the case measures as it is folded: "outside, as folded: 214.0 mm
// high, 131.5 mm deep, 25.0 mm thick".
func folded(f plan.Fact, r geometry.Rounding) string { return f.Name + ": " + f.Says().In(r.Format) }

// faceRows returns a row a face under a row of heads. Faces like others are left
// out.
func faceRows(faces []face, r geometry.Rounding) [][]string {
	unit := r.Unit.String()
	rows := [][]string{{"face", "size (" + unit + ")", "covered", "parts", "layers", "pile (" + unit + ")", "pieces"}}
	for _, f := range faces {
		if f.Again {
			continue
		}
		row := []string{string(f.Face), r.Number(f.Extent.Width()) + " x " + r.Number(f.Extent.Height()), f.Ground.State, "", "", "", ""}
		if !f.Inside {
			row[2] = fmt.Sprintf("%.1f %%", percent(f.covered))
		}
		if f.Inside || f.Corners > 0 {
			row[5] = geometry.FineNumber(f.Corners, r.Unit)
		}
		row[3], row[4] = fmt.Sprint(len(f.layers)), fmt.Sprint(f.deepest)
		row[6] = strings.Join(f.pieces(), ", ")
		rows = append(rows, row)
	}
	return rows
}

// clearanceRows returns facts as a table: a row each, a column for each part that
// any of them has. none stands where a fact lacks a part.
func clearanceRows(facts []plan.Fact, head, none string, u geometry.Unit) [][]string {
	heads := []string{head}
	for _, f := range facts {
		for _, p := range f.Parts {
			if !slices.Contains(heads, p.Key) {
				heads = append(heads, p.Key)
			}
		}
	}
	rows := [][]string{heads}
	for _, f := range facts {
		row := append([]string{f.Name}, slices.Repeat([]string{none}, len(heads)-1)...)
		for _, p := range f.Parts {
			row[slices.Index(heads, p.Key)] = geometry.FineNumber(p.Length, u)
		}
		rows = append(rows, row)
	}
	return rows
}

// notes says what the tables mean.
func notes(p plan.Proof, faces []face, r geometry.Rounding) []string {
	parts := "parts: pieces of " + p.Stuff + " between folds that reach the face; layers: the most that lie on one spot"
	if slices.ContainsFunc(faces, func(f face) bool { return f.Inside }) {
		parts += ", linings not counted; pile: the thickest of them, tucks in the corners counted"
	} else {
		parts += "; pile: the thickest of them"
	}
	out := []string{
		parts,
		"sizes are rounded " + r.String() + "; piles and clearances are shown to " + geometry.FineStep(r.Unit) + "; the JSON report is exact to 0.001 mm",
	}
	if p.Sound() && p.Means != "" && slices.ContainsFunc(faces, func(f face) bool { return !f.Inside && f.covered < 100 }) {
		out = append(out, "less than 100 % in a sound case: "+p.Means)
	}
	return append(out, p.Remarks...)
}

// columns sets rows in columns: the first and the one that holds words flush left,
// numbers flush right.
func columns(b *bytes.Buffer, rows [][]string) {
	b.WriteString(wording.Aligned(rows, func(i int) bool { return i > 0 && rows[0][i] != "pieces" }))
}
