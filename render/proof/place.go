package proof

import (
	"strings"

	"forel/geometry"
	"forel/geometry/foldup"
)

// place is where a face lies in the case, and how it is seen by someone who
// looks straight at it.
type place struct {
	face         geometry.Face
	frame        foldup.Frame
	normal       foldup.Vec // out of the board
	flipX, flipY bool       // seen from in front, X runs left or Y runs down
	edges
}

// edges name what lies beyond each edge of a face as it is seen.
type edges struct{ left, right, top, bottom string }

// beyond names what lies beyond the edges of each face as it is seen.
var beyond = map[geometry.Face]edges{
	geometry.LeftOutside:  {"spine", "mouth", "head", "tail"},
	geometry.RightOutside: {"mouth", "spine", "head", "tail"},
	geometry.SpineOutside: {"right side", "left side", "head", "tail"},
	geometry.HeadOutside:  {"left side", "right side", "spine", "mouth"},
	geometry.TailOutside:  {"left side", "right side", "mouth", "spine"},
	geometry.LeftMouth:    {"outside", "inside", "head", "tail"},
	geometry.RightMouth:   {"inside", "outside", "head", "tail"},
	geometry.HeadMouth:    {"left side", "right side", "outside", "inside"},
	geometry.TailMouth:    {"left side", "right side", "inside", "outside"},
	geometry.LeftInside:   {"mouth", "spine", "head", "tail"},
	geometry.RightInside:  {"spine", "mouth", "head", "tail"},
	geometry.SpineInside:  {"left side", "right side", "head", "tail"},
	geometry.HeadInside:   {"left side", "right side", "mouth", "spine"},
	geometry.TailInside:   {"left side", "right side", "spine", "mouth"},
	geometry.DividerLeft:  {"spine", "mouth", "head", "tail"},
	geometry.DividerRight: {"mouth", "spine", "head", "tail"},
	geometry.DividerMouth: {"left face", "right face", "head", "tail"},
}

// placeOf gives the place of a face as the proof has it. A face is seen with the
// head or, where it lies level, the end that is farther from the viewer's feet
// at the top: of its axes X or Y is turned round where they would show it as in a
// mirror. A face that lies level keeps its X from left to right.
func placeOf(f foldup.FaceReport) place {
	p := place{face: f.Face, frame: f.Frame, normal: f.Normal, edges: beyond[f.Face]}
	if p.mirrored() {
		p.flipX, p.flipY = f.Normal.Y == 0, f.Normal.Y != 0
	}
	return p
}

// mirrored tells whether one who looks at the face sees its axes as in a mirror.
func (p place) mirrored() bool { return p.frame.Normal().Dot(p.normal) < 0 }

// at gives where a point of the face lies in the case.
func (p place) at(q geometry.Point) foldup.Vec { return p.frame.At(q) }

// board names the board a face belongs to: "the left side", "the head wall".
func board(f geometry.Face) string {
	_, name, ok := strings.Cut(string(f), " of ")
	if !ok {
		return string(f)
	}
	return name
}

// mouthEdge tells whether a face is an edge of board at the mouth.
func mouthEdge(f geometry.Face) bool {
	switch f {
	case geometry.LeftMouth, geometry.RightMouth, geometry.HeadMouth, geometry.TailMouth:
		return true
	}
	return false
}

// reach gives how far a layer on an inside face reaches into the case from the
// mouth, and whether it comes from there: on the faces beside the mouth one
// axis runs from spine to mouth.
func (f face) reach(l foldup.Layer) (Length, bool) {
	if !f.Inside {
		return 0, false
	}
	b := l.Shape.Bounds()
	switch {
	case f.place.frame.U.Z == 1:
		return f.Extent.Max.X - b.Min.X, true
	case f.place.frame.V.Z == 1:
		return f.Extent.Max.Y - b.Min.Y, true
	}
	return 0, false
}
