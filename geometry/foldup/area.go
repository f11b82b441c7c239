package foldup

import "forel/geometry/polygon"

// Meet, Without and United return what two shapes share, what the first has
// beyond the second, and all together. Where that can't be worked out, what
// stands for it is such that a fault is found rather than missed.
func Meet(a, b polygon.Shape) polygon.Shape { return or(a)(polygon.Meet(a, b)) }

// Without: see Meet.
func Without(a, b polygon.Shape) polygon.Shape { return or(a)(polygon.Without(a, b)) }

// United: see Meet.
func United(shapes []polygon.Shape) polygon.Shape { return or(nil)(polygon.Union(shapes...)) }

func or(instead polygon.Shape) func(polygon.Shape, error) polygon.Shape {
	return func(s polygon.Shape, err error) polygon.Shape {
		if err != nil {
			return instead
		}
		return s
	}
}

// Sliver is how broad a strip must be to count as more than rounding, in mm.
const Sliver Length = 1e-3

// Solid tells whether a shape has a part broader than a limit.
func Solid(s polygon.Shape, limit Length) bool { return len(s.Broader(limit)) > 0 }

// slight tells whether what two shapes share can be no broader than rounding: a
// part of a box has at most its smaller side as its mean breadth.
func slight(a, b polygon.Shape) bool {
	both := a.Bounds().Intersect(b.Bounds())
	return min(both.Width(), both.Height()) <= Sliver
}
