package proof

import (
	"strings"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
	"forel/geometry/slipcase"
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
	slipcase.LeftOutside:  {"spine", "mouth", "head", "tail"},
	slipcase.RightOutside: {"mouth", "spine", "head", "tail"},
	slipcase.SpineOutside: {"right side", "left side", "head", "tail"},
	slipcase.HeadOutside:  {"left side", "right side", "spine", "mouth"},
	slipcase.TailOutside:  {"left side", "right side", "mouth", "spine"},
	slipcase.LeftMouth:    {"outside", "inside", "head", "tail"},
	slipcase.RightMouth:   {"inside", "outside", "head", "tail"},
	slipcase.HeadMouth:    {"left side", "right side", "outside", "inside"},
	slipcase.TailMouth:    {"left side", "right side", "inside", "outside"},
	slipcase.LeftInside:   {"mouth", "spine", "head", "tail"},
	slipcase.RightInside:  {"spine", "mouth", "head", "tail"},
	slipcase.SpineInside:  {"left side", "right side", "head", "tail"},
	slipcase.HeadInside:   {"left side", "right side", "mouth", "spine"},
	slipcase.TailInside:   {"left side", "right side", "spine", "mouth"},
	slipcase.DividerLeft:  {"spine", "mouth", "head", "tail"},
	slipcase.DividerRight: {"mouth", "spine", "head", "tail"},
	slipcase.DividerMouth: {"left face", "right face", "head", "tail"},
}

// placeOf gives the place of a face as the proof has it. A face is seen with the
// head or, where it lies level, the end that is farther from the viewer's feet
// at the top: of its axes X or Y is turned round where they would show it as in a
// mirror. A face that lies level keeps its X from left to right.
func placeOf(f foldup.FaceReport) place {
	p := place{face: f.Face, frame: f.Frame, normal: f.Normal, edges: beyond[f.Face]}
	if mirrored := dot(cross(f.Frame.U, f.Frame.V), f.Normal) < 0; mirrored {
		p.flipX, p.flipY = f.Normal.Y == 0, f.Normal.Y != 0
	}
	return p
}

func dot(a, b foldup.Vec) Length { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

func cross(a, b foldup.Vec) foldup.Vec {
	return foldup.Vec{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}

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
	case slipcase.LeftMouth, slipcase.RightMouth, slipcase.HeadMouth, slipcase.TailMouth:
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
	b := polygon.Bounds(l.Shape)
	switch {
	case f.place.frame.U.Z == 1:
		return f.Extent.Max.X - b.Min.X, true
	case f.place.frame.V.Z == 1:
		return f.Extent.Max.Y - b.Min.Y, true
	}
	return 0, false
}
