package onepiece

import "forel/geometry"

// The faces of the five walls. Left and right are as seen by someone looking into
// the mouth with the head up.
const (
	LeftOutside  geometry.Face = "outside of the left side"
	RightOutside geometry.Face = "outside of the right side"
	SpineOutside geometry.Face = "outside of the spine wall"
	HeadOutside  geometry.Face = "outside of the head wall"
	TailOutside  geometry.Face = "outside of the tail wall"
	LeftInside   geometry.Face = "inside of the left side"
	RightInside  geometry.Face = "inside of the right side"
	SpineInside  geometry.Face = "inside of the spine wall"
	HeadInside   geometry.Face = "inside of the head wall"
	TailInside   geometry.Face = "inside of the tail wall"
)
