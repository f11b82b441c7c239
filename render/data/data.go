// Package data writes what is reported for other programs: JSON, a line a value,
// its lengths in millimetres to a thousandth.
package data

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"

	"forel/geometry"
)

// MM is a length in millimetres, written to a thousandth.
type MM geometry.Length

// InMM returns a length as it is written.
func InMM(l geometry.Length) MM { return MM(l) }

// Value returns the number that is written.
func (m MM) Value() float64 { return Round(float64(m), 3) }

// MarshalJSON writes the number without needless zeros.
func (m MM) MarshalJSON() ([]byte, error) { return number(m.Value()) }

// Point is a place: its X, then its Y.
type Point [2]MM

// At returns a place as it is written.
func At(p geometry.Point) Point { return Point{MM(p.X), MM(p.Y)} }

// Line returns places as they are written.
func Line(points []geometry.Point) []Point { return List(points, At) }

// Object is a JSON object: pairs of a key and its value, in their order. What is nil is left
// out.
type Object [][2]any

// MarshalJSON writes the object.
func (o Object) MarshalJSON() ([]byte, error) {
	b := []byte("{")
	for _, pair := range o {
		if pair[1] == nil {
			continue
		}
		value, err := encoded(pair[1], "")
		if err != nil {
			return nil, err
		}
		if len(b) > 1 {
			b = append(b, ',')
		}
		b = fmt.Appendf(b, "%q:%s", pair[0], value)
	}
	return append(b, '}'), nil
}

// Given is a value of an Object that is left out where it is zero.
func Given[T comparable](v T) any {
	if v == *new(T) {
		return nil
	}
	return v
}

// Null is a value that is not known.
var Null = json.RawMessage("null")

// List returns what is written of each in a list; no list is null.
func List[T, U any](all []T, of func(T) U) []U {
	out := make([]U, len(all))
	for i, v := range all {
		out[i] = of(v)
	}
	return out
}

// Part is a share or a chance, from 0 to 1, written to a millionth.
type Part float64

// MarshalJSON writes the number without needless zeros.
func (p Part) MarshalJSON() ([]byte, error) { return number(Round(float64(p), 6)) }

func number(v float64) ([]byte, error) { return strconv.AppendFloat(nil, v, 'f', -1, 64), nil }

// Round returns a number to so many decimals, and zero for -0.
func Round(v float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Round(v*scale)/scale + 0
}

// numbers is a list of nothing but numbers, as it is indented.
var numbers = regexp.MustCompile(`\[\n *(-?[0-9.]+(?:,\n *-?[0-9.]+)*)\n *\]`)

// JSON writes a value indented by two spaces, a list of numbers, such as a point, on
// one line, with a line feed at its end. Characters of HTML are left as they are. of is what is
// written, for an error.
func JSON(of string, v any) ([]byte, error) {
	written, err := encoded(v, "  ")
	if err != nil {
		return nil, fmt.Errorf("%s: %w", of, err)
	}
	return numbers.ReplaceAllFunc(written, func(list []byte) []byte {
		fields := bytes.Fields(list[1 : len(list)-1])
		return append(append([]byte("["), bytes.Join(fields, []byte(" "))...), ']')
	}), nil
}

// Compact is JSON on one line, for what is long.
func Compact(v any) ([]byte, error) { return encoded(v, "") }

func encoded(v any, indent string) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", indent)
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
