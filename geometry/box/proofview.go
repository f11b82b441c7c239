package box

import (
	"forel/geometry"
)

func (r *report) show(pieces []geometry.Piece) {}
