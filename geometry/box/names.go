package box

import "forel/geometry"

// foreWord is what is said of the wall opposite the open end.
const foreWord = "fore-edge"

// faces are the names of a tray's faces. A tray is seen standing on the bench with its
// open end at the left: the head of the small tray is then away, and that of the large
// tray near, since it is turned over before it is laid on the small one.
type faces struct {
	tray                                      string
	fore, foreIn, foreRim, under, floor, edge geometry.Face
	ends                                      [2]endFaces // the wall that is away, and the one that is near
}

// endFaces are those of the head wall or the tail wall.
type endFaces struct {
	word              string // "head"
	out, in, rim, end geometry.Face
}

// facesOf returns the names of the faces of a tray.
func facesOf(tray string) faces {
	f := faces{tray: tray}
	name := func(what string) geometry.Face { return geometry.Face(tray + ": " + what) }
	f.fore, f.foreIn, f.foreRim = name("outside, fore-edge wall"), name("inside, fore-edge wall"), name("rim of the fore-edge wall")
	f.under, f.floor, f.edge = name("under the base"), name("floor"), name("edge of the base")
	words := [2]string{"head", "tail"}
	if tray == largeName {
		words = [2]string{"tail", "head"}
	}
	for i, w := range words {
		f.ends[i] = endFaces{w, name("outside, " + w + " wall"), name("inside, " + w + " wall"), name("rim of the " + w + " wall"), name("end of the " + w + " wall")}
	}
	return f
}

// corner returns the name of a lower corner at the fore-edge, the one that is away or the
// one that is near.
func (f faces) corner(away bool) geometry.Corner {
	return geometry.Corner(f.tray + ", fore-edge, " + f.word(away) + ", bottom")
}

// floorCorner returns the name of a corner of the floor at the open edge.
func (f faces) floorCorner(away bool) geometry.Corner {
	return geometry.Corner(f.tray + ", open edge, " + f.word(away) + ", floor")
}

func (f faces) word(away bool) string {
	if away {
		return f.ends[0].word
	}
	return f.ends[1].word
}

// The ends of the case.
const (
	frontForeEdge = "front fore-edge"
	backForeEdge  = "back fore-edge"
)

// The faces of the case as it lies flat, inside up, head away.
const (
	caseOutside   geometry.Face   = "case: outside"
	caseInside    geometry.Face   = "case: inside"
	caseHead      geometry.Face   = "case: edges at the head"
	caseTail      geometry.Face   = "case: edges at the tail"
	caseFront     geometry.Face   = "case: fore-edge of the front board"
	caseBack      geometry.Face   = "case: fore-edge of the back board"
	caseTailLeft  geometry.Corner = frontForeEdge + ", tail"
	caseTailRight geometry.Corner = backForeEdge + ", tail"
)

// The faces that the hinge lies on, from left to right as the box lies open.
const (
	wayLargeFloor geometry.Face   = "hinge: floor of the large tray"
	wayLargeDown  geometry.Face   = "hinge: edge of the large tray and its board"
	wayLargeJoint geometry.Face   = "hinge: in the left joint"
	wayLargeUp    geometry.Face   = "hinge: left edge of the spine"
	waySpine      geometry.Face   = "hinge: spine inside"
	waySmallUp    geometry.Face   = "hinge: right edge of the spine"
	waySmallJoint geometry.Face   = "hinge: in the right joint"
	waySmallDown  geometry.Face   = "hinge: edge of the small tray and its board"
	waySmallFloor geometry.Face   = "hinge: floor of the small tray"
	wayHeadLeft   geometry.Corner = "spine, left, head"
	wayHeadRight  geometry.Corner = "spine, right, head"
)
