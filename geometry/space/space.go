// Package space holds places and planes in three dimensions.
package space

import (
	"math"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Vec is a place or a step in space, in millimetres. In a slipcase X runs from
// left to right, Y from tail to head and Z from spine to mouth; every kind of
// case says how its own axes run.
type Vec struct{ X, Y, Z Length }

// Add returns a + b.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub returns a - b.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Mul returns a scaled by f.
func (a Vec) Mul(f Length) Vec { return Vec{a.X * f, a.Y * f, a.Z * f} }

// Dot returns the scalar product.
func (a Vec) Dot(b Vec) Length { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Cross returns the vector product.
func (a Vec) Cross(b Vec) Vec {
	return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// Size returns the distance from the origin.
func (a Vec) Size() Length { return Length(math.Sqrt(float64(a.Dot(a)))) }

// Unit returns the step of length 1 in the direction of a, which is not zero.
func (a Vec) Unit() Vec { return a.Mul(1 / a.Size()) }

// Frame lays a plane in space: the plane's origin, and the unit steps that its X
// and Y go.
type Frame struct{ O, U, V Vec }

// At returns where a point of the plane lies.
func (f Frame) At(p geometry.Point) Vec { return f.O.Add(f.Along(p)) }

// Along returns where a step in the plane goes.
func (f Frame) Along(p geometry.Point) Vec { return f.U.Mul(p.X).Add(f.V.Mul(p.Y)) }

// Normal returns the unit step out of the plane, toward those who see X to Y run
// counterclockwise.
func (f Frame) Normal() Vec { return f.U.Cross(f.V) }

// Flat returns the coordinates in the plane of a place, which need not lie in it.
func (f Frame) Flat(v Vec) geometry.Point {
	d := v.Sub(f.O)
	return geometry.Pt(d.Dot(f.U), d.Dot(f.V))
}
