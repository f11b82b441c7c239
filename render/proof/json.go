package proof

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/render/data"
)

type mm = data.MM

type jsonBox struct {
	Min data.Point `json:"min"`
	Max data.Point `json:"max"`
}

type jsonLayer struct {
	Piece   string         `json:"piece"`
	Order   int            `json:"order"`
	Tucked  bool           `json:"tucked"`
	Outline []data.Point   `json:"outline_mm"` // the last point joins the first
	Holes   [][]data.Point `json:"holes_mm,omitempty"`
}

type jsonFace struct {
	Name    string      `json:"name"`
	Board   string      `json:"board"`
	Inside  bool        `json:"inside"`
	Ground  string      `json:"ground"` // what is seen where no layer lies
	Extent  jsonBox     `json:"extent_mm"`
	Frame   jsonFrame   `json:"frame_mm"`
	Covered *float64    `json:"covered_percent,omitempty"` // of a face outside
	Deepest int         `json:"most_layers"`
	Stack   mm          `json:"pile_mm"`         // the thickest, tucks left out
	Corners mm          `json:"pile_corners_mm"` // the thickest, tucks counted
	Layers  []jsonLayer `json:"layers"`          // from the board up
}

// jsonFrame tells where a face lies in the case: the origin of its coordinates, and
// the unit steps that its X and Y go.
type jsonFrame struct {
	Origin [3]mm `json:"origin"`
	X      [3]mm `json:"x"`
	Y      [3]mm `json:"y"`
}

type jsonFault struct {
	Kind  string   `json:"kind"`
	Piece string   `json:"piece,omitempty"`
	Face  string   `json:"face,omitempty"`
	At    *jsonBox `json:"at_mm,omitempty"`
	What  string   `json:"what"`
}

// jsonSolid is a board as it stands: the corners of the box around it.
type jsonSolid struct {
	Name string `json:"name"`
	Min  [3]mm  `json:"min_mm"`
	Max  [3]mm  `json:"max_mm"`
}

// lengths are by the key of a fact and the name of its part.
type lengths map[string]map[string]mm

type jsonReport struct {
	Title     string      `json:"title"`
	Kind      string      `json:"kind"`
	Sound     bool        `json:"sound"`
	Faults    []jsonFault `json:"faults"`
	Faces     []jsonFace  `json:"faces"`
	Solids    []jsonSolid `json:"boards"`
	Clearance lengths     `json:"clearance_mm"`
	Folded    lengths     `json:"folded_mm,omitempty"`
}

// JSON returns the report for other programs, exact to a thousandth of a
// millimetre. Outlines are in their face's own coordinates and not cut off at
// its extent.
func JSON(p plan.Plan) ([]byte, error) {
	r := p.Proof
	out := jsonReport{Title: p.Title, Kind: p.Kind, Sound: r.Sound(), Faults: []jsonFault{}, Faces: []jsonFace{}, Solids: []jsonSolid{},
		Clearance: factsJSON(r.Clearances), Folded: factsJSON(r.Folded)}
	for _, f := range r.Faults {
		j := jsonFault{Kind: string(f.Kind), Piece: f.Piece, Face: string(f.Face), What: f.What}
		if f.At != (geometry.Box{}) {
			at := boxJSON(f.At)
			j.At = &at
		}
		out.Faults = append(out.Faults, j)
	}
	for _, s := range r.Solids {
		out.Solids = append(out.Solids, solidJSON(s))
	}
	for _, f := range study(r) {
		j := jsonFace{
			Name: string(f.Face), Board: f.Board, Inside: f.Inside, Ground: f.Ground.Name, Extent: boxJSON(f.Extent),
			Frame:   jsonFrame{vecJSON(f.Frame.O), vecJSON(f.Frame.U), vecJSON(f.Frame.V)},
			Deepest: f.deepest, Stack: mm(f.Stack), Corners: mm(f.Corners), Layers: []jsonLayer{},
		}
		if !f.Inside {
			// Three decimals, and less than 100 where anything is bare.
			c := math.Floor(f.covered*1000) / 1000
			j.Covered = &c
		}
		for _, l := range ordered(f.FaceReport) {
			for _, p := range l.Shape {
				layer := jsonLayer{Piece: l.Piece, Order: l.Order, Tucked: l.Tucked}
				for i, ring := range p.Rings {
					if i == 0 {
						layer.Outline = data.Line(ring)
					} else {
						layer.Holes = append(layer.Holes, data.Line(ring))
					}
				}
				j.Layers = append(j.Layers, layer)
			}
		}
		out.Faces = append(out.Faces, j)
	}
	written, err := data.JSON(out)
	if err != nil {
		return nil, fmt.Errorf("proof: %w", err)
	}
	return written, nil
}

func factsJSON(facts []plan.Fact) lengths {
	out := lengths{}
	for _, f := range facts {
		out[f.Key] = map[string]mm{}
		for _, p := range f.Parts {
			out[f.Key][p.Key] = mm(p.Length)
		}
	}
	return out
}

func solidJSON(s plan.Solid) jsonSolid {
	j := jsonSolid{Name: s.Name}
	for i, v := range s.Corners() {
		for k, l := range vecJSON(v) {
			if i == 0 {
				j.Min[k], j.Max[k] = l, l
			}
			j.Min[k], j.Max[k] = min(j.Min[k], l), max(j.Max[k], l)
		}
	}
	return j
}

func vecJSON(v space.Vec) [3]mm { return [3]mm{mm(v.X), mm(v.Y), mm(v.Z)} }

func boxJSON(b geometry.Box) jsonBox { return jsonBox{data.At(b.Min), data.At(b.Max)} }
