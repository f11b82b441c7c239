package plan

import (
	"slices"

	"forel/geometry"
)

// Only returns the plan with those of its pieces alone that have one of these names,
// or are of a material or in a batch with one, and their faces. unknown are the names
// that none has.
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

// Onlys returns the names that Only takes: the batches, the materials, then the pieces.
func (p Plan) Onlys() []string {
	var batches, materials, pieces []string
	for _, b := range p.Batches {
		batches = append(batches, b.Name)
	}
	for _, q := range p.Pieces {
		if m := string(q.Material); !slices.Contains(materials, m) {
			materials = append(materials, m)
		}
		pieces = append(pieces, q.Name)
	}
	return slices.Concat(batches, materials, pieces)
}
