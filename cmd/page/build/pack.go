package main

import (
	"bytes"
	"strings"
)

// escaped are the characters that can't stand in a script of a page as they are, or may
// be changed on the way: NUL, line ends, and those that begin a tag. unpack.js has them too.
var escaped = []byte{0, '\n', '\r', '&', '<', '>'}

// pack writes bytes as text, seven bits a character, so that of UTF-8 only an eighth is
// lost, where base64 loses a quarter. An escaped character and the one after it become
// one of two bytes: its place in the list, then the seven bits of the other.
func pack(data []byte) string {
	var b strings.Builder
	b.Grow(len(data)*8/7 + 8)
	var held uint32
	bits := uint(0)
	waiting := -1
	put := func(c byte) {
		switch at := bytes.IndexByte(escaped, c); {
		case waiting >= 0:
			b.WriteRune(rune(0x80 + waiting<<7 + int(c)))
			waiting = -1
		case at >= 0:
			waiting = at
		default:
			b.WriteByte(c)
		}
	}
	for _, c := range data {
		held, bits = held<<8|uint32(c), bits+8
		for bits >= 7 {
			bits -= 7
			put(byte(held >> bits & 0x7f))
		}
	}
	if bits > 0 {
		put(byte(held << (7 - bits) & 0x7f))
	}
	if waiting >= 0 {
		put(0)
	}
	return b.String()
}
