package proof

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render/document"
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
	b.WriteString(faceTable(faces, r).Text())
	b.WriteString("\n")
	b.WriteString(clearanceTable(p.Proof.Clearances, "left beyond the book ("+r.Unit.String()+")", "-", r.Unit).Text())
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

// faceTable has a row a face. Faces like others are left out.
func faceTable(faces []face, r geometry.Rounding) document.Table {
	unit := r.Unit.String()
	t := document.Table{Columns: []document.Column{{Head: "face", Broken: true}, {Head: "size (" + unit + ")", Right: true}, {Head: "covered", Right: true}, {Head: "parts", Right: true},
		{Head: "layers", Right: true}, {Head: "pile (" + unit + ")", Right: true}, {Head: "pieces", Broken: true}}}
	for _, f := range faces {
		if f.Again {
			continue
		}
		covered, pile := f.Ground.State, ""
		if !f.Inside {
			covered = fmt.Sprintf("%.1f %%", percent(f.covered))
		}
		if f.Inside || f.Corners > 0 {
			pile = geometry.FineNumber(f.Corners, r.Unit)
		}
		t.Rows = append(t.Rows, []string{string(f.Face), r.Number(f.Extent.Width()) + " x " + r.Number(f.Extent.Height()), covered,
			fmt.Sprint(len(f.layers)), fmt.Sprint(f.deepest), pile, strings.Join(f.pieces(), ", ")})
	}
	return t
}

// clearanceTable has a row a fact and a column for each part that any of them has. none stands
// where a fact lacks a part.
func clearanceTable(facts []plan.Fact, head, none string, u geometry.Unit) document.Table {
	t := document.Table{Columns: []document.Column{{Head: head, Broken: true}}}
	column := map[string]int{}
	for _, f := range facts {
		for _, p := range f.Parts {
			if column[p.Key] == 0 {
				column[p.Key] = len(t.Columns)
				t.Columns = append(t.Columns, document.Column{Head: p.Key, Right: true, Bold: true})
			}
		}
	}
	for _, f := range facts {
		row := append([]string{f.Name}, slices.Repeat([]string{none}, len(column))...)
		for _, p := range f.Parts {
			row[column[p.Key]] = geometry.FineNumber(p.Length, u)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
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
