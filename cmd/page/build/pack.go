package main

import "strings"

// lowest is the first of the 32768 characters that bytes are packed into: none of them is
// one that HTML changes, none is half of a pair.
const lowest = 0x100

// pack writes bytes as text, fifteen bits a character, so that of UTF-16 only a sixteenth
// is lost. unpack.js reads it.
func pack(data []byte) string {
	var b strings.Builder
	var held uint32
	bits := 0
	for _, c := range data {
		held, bits = held<<8|uint32(c), bits+8
		if bits >= 15 {
			bits -= 15
			b.WriteRune(rune(lowest + held>>bits&0x7fff))
		}
	}
	if bits > 0 {
		b.WriteRune(rune(lowest + held<<(15-bits)&0x7fff))
	}
	return b.String()
}
