package proof

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/render/data"
)

type mm = data.MM

type jsonPoint [2]mm

type jsonBox struct {
	Min jsonPoint `json:"min"`
	Max jsonPoint `json:"max"`
}

type jsonLayer struct {
	Piece   string        `json:"piece"`
	Order   int           `json:"order"`
	Tucked  bool          `json:"tucked"`
	Outline []jsonPoint   `json:"outline_mm"` // the last point joins the first
	Holes   [][]jsonPoint `json:"holes_mm,omitempty"`
}

type jsonFace struct {
	Name    string      `json:"name"`
	Inside  bool        `json:"inside"`
	Extent  jsonBox     `json:"extent_mm"`
	Covered *float64    `json:"covered_percent,omitempty"` // of a face outside or an edge at the mouth
	Deepest int         `json:"most_layers"`
	Stack   mm          `json:"pile_mm"`         // inside: the thickest, tucks left out
	Corners mm          `json:"pile_corners_mm"` // inside: the thickest, tucks counted
	Layers  []jsonLayer `json:"layers"`          // from the board up
}

type jsonFault struct {
	Kind  string   `json:"kind"`
	Piece string   `json:"piece,omitempty"`
	Face  string   `json:"face,omitempty"`
	At    *jsonBox `json:"at_mm,omitempty"`
	What  string   `json:"what"`
}

// jsonBlock is a divider: its corners in the case, from left, tail and spine.
type jsonBlock struct {
	Min   [3]mm      `json:"min_mm"`
	Max   [3]mm      `json:"max_mm"`
	Faces []jsonFace `json:"faces"`
}

type jsonReport struct {
	Title     string      `json:"title"`
	Sound     bool        `json:"sound"`
	Faults    []jsonFault `json:"faults"`
	Lining    Lining      `json:"lining"`
	Rooms     int         `json:"compartments"`
	Faces     []jsonFace  `json:"faces"`
	Dividers  []jsonBlock `json:"dividers,omitempty"` // from left to right
	Clearance struct {
		Body struct {
			Height    mm `json:"height"`
			Depth     mm `json:"depth"`
			Thickness mm `json:"thickness"` // of each compartment
		} `json:"body"`
		Mouth struct {
			Height    mm `json:"height"`
			Corners   mm `json:"height_corners"`
			Thickness mm `json:"thickness"`
		} `json:"mouth"`
	} `json:"clearance_mm"`
}

// JSON gives the report for other programs, exact to a thousandth of a
// millimetre. Outlines are in their face's own coordinates and not cut off at
// its extent.
func JSON(s Subject) ([]byte, error) {
	r := s.Report
	out := jsonReport{Title: s.Title, Sound: r.Sound(), Lining: s.Lining, Rooms: s.Compartments, Faults: []jsonFault{}, Faces: []jsonFace{}}
	for _, f := range r.Faults {
		j := jsonFault{Kind: string(f.Kind), Piece: f.Piece, Face: string(f.Face), What: f.What}
		if f.At != (geometry.Box{}) {
			at := boxJSON(f.At)
			j.At = &at
		}
		out.Faults = append(out.Faults, j)
	}
	for _, d := range r.Dividers {
		out.Dividers = append(out.Dividers, jsonBlock{Min: [3]mm{mm(d.Min.X), mm(d.Min.Y), mm(d.Min.Z)}, Max: [3]mm{mm(d.Max.X), mm(d.Max.Y), mm(d.Max.Z)}})
	}
	for _, f := range study(r) {
		j := jsonFace{
			Name: string(f.Face), Inside: f.Inside, Extent: boxJSON(f.Extent),
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
						layer.Outline = ringJSON(ring)
					} else {
						layer.Holes = append(layer.Holes, ringJSON(ring))
					}
				}
				j.Layers = append(j.Layers, layer)
			}
		}
		if f.divider > 0 {
			of := &out.Dividers[f.divider-1]
			of.Faces = append(of.Faces, j)
			continue
		}
		out.Faces = append(out.Faces, j)
	}
	k, c := r.Clearance, &out.Clearance
	c.Body.Height, c.Body.Depth, c.Body.Thickness = mm(k.BodyHeight), mm(k.BodyWidth), mm(k.BodyThickness)
	c.Mouth.Height, c.Mouth.Corners, c.Mouth.Thickness = mm(k.MouthHeight), mm(k.MouthCorners), mm(k.MouthThickness)

	written, err := data.JSON(out)
	if err != nil {
		return nil, fmt.Errorf("proof: %w", err)
	}
	return written, nil
}

func boxJSON(b geometry.Box) jsonBox { return jsonBox{pointJSON(b.Min), pointJSON(b.Max)} }

func pointJSON(p geometry.Point) jsonPoint { return jsonPoint{mm(p.X), mm(p.Y)} }

func ringJSON(ring []geometry.Point) []jsonPoint {
	out := make([]jsonPoint, len(ring))
	for i, p := range ring {
		out[i] = pointJSON(p)
	}
	return out
}
