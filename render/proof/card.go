package proof

import (
	"bytes"
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
	"forel/render/data"
)

// CardText gives the report of a case of card as text.
func CardText(c onepiece.Case, r geometry.Rounding) []byte {
	var b bytes.Buffer
	if t := wording.OneLine(c.Job.Title); t != "" {
		fmt.Fprintf(&b, "%s\n\n", t)
	}
	b.WriteString(cardVerdict(c) + "\n\n")
	wide := 0
	for _, w := range c.Proof.Walls {
		wide = max(wide, len(w.Face))
	}
	b.WriteString("wall" + strings.Repeat(" ", wide-4) + "  layers from the inside out\n")
	for _, w := range c.Proof.Walls {
		fmt.Fprintf(&b, "%-*s  %s\n", wide, w.Face, layerText(w))
	}
	size := func(s slipcase.Size) string {
		return fmt.Sprintf("%s high, %s deep, %s thick", r.Format(s.Height), r.Format(s.Width), r.Format(s.Thickness))
	}
	fmt.Fprintf(&b, "\nroom inside, as folded: %s\noutside, as folded: %s\n", size(c.Proof.Cavity), size(c.Proof.Outside))
	k := c.Job.Clearance
	fmt.Fprintf(&b, "left beyond the book: height %s, depth %s, thickness %s\n", r.Format(k.Height), r.Format(k.Width), r.Format(k.Thickness))
	b.WriteString("sizes are rounded " + r.String() + "\n")
	return b.Bytes()
}

func cardVerdict(c onepiece.Case) string {
	if c.Proof.Sound() {
		return "sound: the blank folds to the room that was asked for, every wall is closed, and no two parts lie in one place"
	}
	var faults []string
	for _, f := range c.Proof.Faults {
		faults = append(faults, f.String())
	}
	return strings.Join(faults, "\n")
}

// layerText names the parts in a wall: those of one layer with "beside".
func layerText(w onepiece.Wall) string {
	layers := make([]string, len(w.Layers))
	for i, l := range w.Layers {
		names := make([]string, len(l))
		for k, n := range l {
			names[k], _, _ = strings.Cut(n, " (")
		}
		layers[i] = strings.Join(names, " beside ")
	}
	return strings.Join(layers, ", ")
}

// CardJSON gives the report of a case of card, sizes exact to 0.001 mm.
func CardJSON(c onepiece.Case) ([]byte, error) {
	type size struct {
		Height    mm `json:"height"`
		Width     mm `json:"width"`
		Thickness mm `json:"thickness"`
	}
	type wall struct {
		Name   string     `json:"name"`
		Layers [][]string `json:"layers"` // from the inside out
	}
	of := func(s slipcase.Size) size { return size{mm(s.Height), mm(s.Width), mm(s.Thickness)} }
	out := struct {
		Title     string      `json:"title"`
		Sound     bool        `json:"sound"`
		Walls     []wall      `json:"walls"`
		Cavity    size        `json:"cavity_mm"`
		Outside   size        `json:"outside_mm"`
		Clearance size        `json:"clearance_mm"`
		Faults    []jsonFault `json:"faults"`
	}{
		Title: c.Job.Title, Sound: c.Proof.Sound(), Cavity: of(c.Proof.Cavity), Outside: of(c.Proof.Outside),
		Clearance: size{mm(c.Job.Clearance.Height), mm(c.Job.Clearance.Width), mm(c.Job.Clearance.Thickness)},
		Faults:    []jsonFault{},
	}
	for _, w := range c.Proof.Walls {
		out.Walls = append(out.Walls, wall{string(w.Face), w.Layers})
	}
	for _, f := range c.Proof.Faults {
		out.Faults = append(out.Faults, jsonFault{Kind: string(f.Kind), Piece: f.Piece, Face: string(f.Face), What: f.What})
	}
	written, err := data.JSON(out)
	if err != nil {
		return nil, fmt.Errorf("proof: %w", err)
	}
	return written, nil
}
