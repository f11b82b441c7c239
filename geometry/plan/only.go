package plan

import (
	"cmp"
	"slices"

	"forel/geometry"
)

// Only returns the plan with those of its pieces alone that have one of these names,
// or are of a material or in a batch with one, and their faces. unknown are the names
// that none has. Batches are left where the first of them is, and something else.
func (p Plan) Only(names []string) (some Plan, unknown []string) {
	named := func(q geometry.Piece, name string) bool {
		return q.Name == name || string(q.Material) == name || slices.ContainsFunc(p.Batches, func(b Batch) bool {
			return b.Name == name && slices.Contains(b.Pieces, q.Name)
		})
	}
	some, some.Pieces, some.Faces = p, nil, nil
	for _, q := range p.Pieces {
		if slices.ContainsFunc(names, func(n string) bool { return named(q, n) }) {
			some.Pieces = append(some.Pieces, q)
		}
	}
	for _, f := range p.Faces {
		if slices.ContainsFunc(some.Pieces, func(q geometry.Piece) bool { return q.Name == f.FaceOf }) {
			some.Faces = append(some.Faces, f)
		}
	}
	some.Batches = nil
	for i, b := range p.Batches {
		b.Pieces = slices.DeleteFunc(slices.Clone(b.Pieces), func(n string) bool {
			return !slices.ContainsFunc(some.Pieces, func(q geometry.Piece) bool { return q.Name == n })
		})
		if len(b.Pieces) > 0 && (i == 0 || some.Batches != nil) {
			some.Batches = append(some.Batches, b)
		}
	}
	if len(some.Batches) == 1 {
		some.Batches = nil
	}
	if some.Batches == nil {
		some.InParts = ""
	}
	for _, n := range names {
		if !slices.ContainsFunc(p.Pieces, func(q geometry.Piece) bool { return named(q, n) }) {
			unknown = append(unknown, n)
		}
	}
	return some, unknown
}

// BatchOf returns the name of the batch that a piece is in, or the piece whose face it is;
// "" for one that is in none.
func (p Plan) BatchOf(q geometry.Piece) string {
	for _, b := range p.Batches {
		if slices.Contains(b.Pieces, q.Name) || q.FaceOf != "" && slices.Contains(b.Pieces, q.FaceOf) {
			return b.Name
		}
	}
	return ""
}

// Parts returns the names of the batches.
func (p Plan) Parts() (names []string) {
	for _, b := range p.Batches {
		names = append(names, b.Name)
	}
	return names
}

// Onlys returns the names that Only takes: the batches, the materials, then the pieces.
func (p Plan) Onlys() []string {
	var materials, pieces []string
	for _, q := range p.Pieces {
		if m := string(q.Material); !slices.Contains(materials, m) {
			materials = append(materials, m)
		}
		pieces = append(pieces, q.Name)
	}
	return slices.Concat(p.Parts(), materials, pieces)
}

// Without returns the fewest names that Only takes for all these pieces but those left
// out: the materials that stay whole, then the pieces of others. Faces go by their pieces.
func Without(pieces []geometry.Piece, left func(geometry.Piece) bool) (names []string) {
	of := func(q geometry.Piece) string { return cmp.Or(q.FaceOf, q.Name) }
	out, broken := map[string]bool{}, map[geometry.Material]bool{}
	for _, q := range pieces {
		if left(q) {
			out[of(q)], broken[q.Material] = true, true
		}
	}
	for _, q := range pieces {
		if m := string(q.Material); !broken[q.Material] && !slices.Contains(names, m) {
			names = append(names, m)
		}
	}
	for _, q := range pieces {
		if n := of(q); broken[q.Material] && !out[n] && !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return names
}
