package handout

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
)

// dividers adds the rules of the dividers, if there are any.
func (r sheetRules) dividers(c slipcase.Case, margin func(symbol, name string, v Length), lined bool) {
	p, ok := pieceOf(c.Pieces, "divider")
	if !ok {
		return
	}
	_, tall := p.Size()
	margin("q", "dividers back from the mouth", c.Job.Divider.SetBack)
	margin("v", "strip onto each face", c.Job.Divider.Lap)
	margin("y", "turned in over a divider", (c.Job.Cavity().Height-tall)/2)
	r.sizes["divider"] = sizeRule{"W + cW − q", "H + cH − 2y", ""}
	if lined {
		if c.Job.Lining.Order == slipcase.LinedAfter {
			margin("r", "divider lining past its board", c.Job.Lining.Trim)
		}
		r.sizes["divider lining"] = sizeRule{"W + cW − q + 2r", "H + cH − 2y + 2r", ""}
	}
	r.sizes["divider strip"] = across(sizeRule{"d + 2v", "H + cH − 2y", ""}, c.Job.Cloth.Stretch)
}

// bookGroup gives the lines of the book, or of several in n compartments.
func bookGroup(j slipcase.Job, n int) group {
	g := group{head: "The book"}
	if len(j.Books) < 2 {
		b := j.Book()
		g.measures = []measure{
			{symbol: "H", name: "height, head to tail", value: b.Height.Largest(), readings: b.Height},
			{symbol: "W", name: "width, with the round", value: b.Width.Largest(), readings: b.Width},
			{symbol: "T", name: "thickness, the thicker edge", value: b.Thick(), readings: append(append([]Length{}, b.Thickness...), b.ForeEdge...)},
		}
		return g
	}
	g.head = "The volumes, from left to right"
	var h, w, t Length
	sum := ""
	for i, b := range j.Books {
		h, w, t = max(h, b.Height.Largest()), max(w, b.Width.Largest()), t+b.Thick()
		num := fmt.Sprint(i + 1)
		g.measures = append(g.measures,
			measure{symbol: "H" + num, name: "volume " + num + ", height", value: b.Height.Largest(), readings: b.Height},
			measure{symbol: "W" + num, name: "width", value: b.Width.Largest(), readings: b.Width},
			measure{symbol: "T" + num, name: "thickness", value: b.Thick(), readings: append(append([]Length{}, b.Thickness...), b.ForeEdge...)})
		if sum != "" {
			sum += " + "
		}
		sum += "T" + num
	}
	if n > 1 {
		sum += fmt.Sprintf(" + %dd", n-1)
		if n == 2 {
			sum = sum[:len(sum)-2] + "d"
		}
		t += Length(n-1) * (j.Board.Thickness + 2*j.Lining.Thickness)
	}
	g.measures = append(g.measures,
		measure{symbol: "H", name: "the tallest", rule: "largest of H1, H2 ...", value: h},
		measure{symbol: "W", name: "the deepest", rule: "largest of W1, W2 ...", value: w},
		measure{symbol: "T", name: "side by side", rule: sum, value: t})
	return g
}

func each(s string, n int) string {
	if n > 1 {
		return s + ", each volume"
	}
	return s
}

// decimal writes a factor plainly.
func decimal(f float64) string { return wording.Decimal(f, 6) }

func pieceOf(pieces []geometry.Piece, name string) (geometry.Piece, bool) {
	for _, p := range pieces {
		if p.Name == name {
			return p, true
		}
	}
	return geometry.Piece{}, false
}

// marginOf gives a margin of a piece by its name, zero where it has none.
func marginOf(c slipcase.Case, piece, name string) Length {
	p, _ := pieceOf(c.Pieces, piece)
	for _, m := range p.Margins {
		if m.Name == name {
			return m.Length
		}
	}
	return 0
}
