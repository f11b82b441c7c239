package plan

import "forel/geometry/stage"

// reachedInto is the least thickness of what a case holds that a thumb and a finger
// can take hold of at its mouth (common practice, no source).
const reachedInto Length = 12

// TakenOut returns how something so thick comes out of its case, a sentence or more
// after what it is called; none where it can be reached into.
func TakenOut(what string, thickness Length) []stage.Say {
	if thickness >= reachedInto {
		return nil
	}
	return []stage.Say{Say("So thin a case cannot be reached into. To take " + what + " out, hold the case mouth down over your open hand and tap it. Or lay a ribbon round the fore-edge before " + what + " goes in, with both ends out at the mouth, and pull them.")}
}
