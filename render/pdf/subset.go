package pdf

import (
	"encoding/binary"
	"errors"
	"slices"
)

// Of a TrueType font (ISO/IEC 14496-22), what a PDF needs (ISO 32000-1, 9.9), in the
// order of its tables' names.
var needed = []string{"cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep"}

var errFont = errors.New("a font is not as it was")

// subset returns a TrueType font that has only some glyphs, and those that they are
// made of, under their numbers.
func subset(ttf []byte, glyphs []int) (font []byte, err error) {
	defer func() {
		if recover() != nil { // an offset beyond the data
			err = errFont
		}
	}()
	u16 := func(b []byte, at int) int { return int(binary.BigEndian.Uint16(b[at:])) }
	u32 := func(b []byte, at int) int { return int(binary.BigEndian.Uint32(b[at:])) }
	tables := map[string][]byte{}
	for i := range u16(ttf, 4) {
		entry := ttf[12+16*i:]
		tables[string(entry[:4])] = ttf[u32(entry, 8) : u32(entry, 8)+u32(entry, 12)]
	}
	loca, glyf := tables["loca"], tables["glyf"]
	if u16(tables["head"], 50) != 1 { // offsets of four bytes
		return nil, errFont
	}
	outline := func(g int) []byte { return glyf[u32(loca, 4*g):u32(loca, 4*g+4)] }
	keep := map[int]bool{}
	for todo := append(slices.Clone(glyphs), 0); len(todo) > 0; {
		g := todo[0]
		todo = todo[1:]
		if !keep[g] {
			keep[g] = true
			todo = append(todo, parts(outline(g))...)
		}
	}
	var some, places []byte
	for g := range len(loca)/4 - 1 {
		places = binary.BigEndian.AppendUint32(places, uint32(len(some)))
		if keep[g] {
			some = append(some, outline(g)...)
		}
	}
	tables["glyf"], tables["loca"] = some, binary.BigEndian.AppendUint32(places, uint32(len(some)))
	// The header: the version, and a search range for the number of tables.
	font = append(font, 0, 1, 0, 0, 0, byte(len(needed)), 0, 128, 0, 3, 0, byte(16*len(needed)-128))
	at := len(font) + 16*len(needed)
	var body []byte
	for _, name := range needed {
		data := tables[name]
		font = append(font, name...)
		for _, n := range []uint32{sum(data), uint32(at + len(body)), uint32(len(data))} {
			font = binary.BigEndian.AppendUint32(font, n)
		}
		body = append(body, data...)
		body = append(body, make([]byte, -len(data)&3)...)
	}
	return append(font, body...), nil
}

// parts returns the glyphs that one is made of: those of its components.
func parts(outline []byte) (out []int) {
	const words, scale, more, scales, matrix = 1, 1 << 3, 1 << 5, 1 << 6, 1 << 7
	if len(outline) == 0 || outline[0] < 0x80 { // a number of contours below zero: it has components
		return nil
	}
	for at := 10; ; {
		flags := binary.BigEndian.Uint16(outline[at:])
		out = append(out, int(binary.BigEndian.Uint16(outline[at+2:])))
		if flags&more == 0 {
			return out
		}
		at += 6
		for flag, size := range map[uint16]int{words: 2, scale: 2, scales: 4, matrix: 8} {
			if flags&flag != 0 {
				at += size
			}
		}
	}
}

// sum is the checksum of a table.
func sum(data []byte) (total uint32) {
	for len(data) > 0 {
		var word [4]byte
		data = data[copy(word[:], data):]
		total += binary.BigEndian.Uint32(word[:])
	}
	return total
}
