package hairline

import (
	"strings"
	"sync"

	"forel/geometry"
)

// The alphabet is our own: letters of straight lines and quarter circles, on a grid on
// which capitals are 12 tall.
//
// Each letter is its strokes, parted by spaces. A point of a stroke is two digits to
// the base 36, right and up. Between two points stands the way from one to the other:
// - a straight line, ) a quarter circle to the left, ( one to the right.
const (
	baseline = 4
	capital  = 12 // units from the baseline to the top of a capital
	apart    = 3  // units between letters
	space    = 4
)

const (
	bowl  = "69)3c)09-07)34)67-69"
	pane  = "3c)09-07)34)67-69)3c"
	round = "4g)0c-08)44)88-8c)4g"
)

var strokes = map[rune]string{
	'A': "04-4g-84 2a-6a", 'B': "04-0g-5g(8d(5a-0a 5a(87(54-04", 'C': "8c)4g)0c-08)44)88", 'D': "04-0g-4g(8c-88(44-04",
	'E': "8g-0g-04-84 0a-6a", 'F': "8g-0g-04 0a-6a", 'G': "8c)4g)0c-08)44)88-8a-5a", 'H': "04-0g 84-8g 0a-8a", 'I': "04-0g",
	'J': "07)34)67-6g", 'K': "04-0g 8g-08 3b-84", 'L': "0g-04-74", 'M': "04-0g-48-8g-84", 'N': "04-0g-84-8g", 'O': round,
	'P': "04-0g-5g(8d(5a-0a", 'Q': round + " 57-84", 'R': "04-0g-5g(8d(5a-0a 4a-84", 'S': "8d)5g-3g)0d)3a-5a(87(54-34(07",
	'T': "0g-8g 4g-44", 'U': "0g-08)44)88-8g", 'V': "0g-44-8g", 'W': "0g-34-5c-74-ag", 'X': "04-8g 0g-84", 'Y': "0g-4a-8g 4a-44",
	'Z': "0g-8g-04-84", 'Ø': round + " 04-8g", 'Đ': "04-0g-4g(8c-88(44-04 0a-4a", 'Ł': "0g-04-74 08-4b",

	'a': bowl + " 6c-64", 'b': "0g-04 " + pane, 'c': "69)3c)09-07)34)67", 'd': bowl + " 6g-64", 'e': "08-68-69)3c)09-07)34-54",
	'f': "5g)2d-24 0c-4c", 'g': "6c-63(30-10 " + bowl, 'h': "0g-04 09(3c(69-64", 'i': "04-0c 0f-0g", 'ı': "04-0c", 'j': "3c-33(00 3f-3g",
	'k': "0g-04 5c-07 29-54", 'l': "0g-04", 'm': "0c-04 09(3c(69-64 69(9c(c9-c4", 'n': "0c-04 09(3c(69-64", 'o': pane,
	'p': "0c-00 " + pane, 'q': "6c-60 " + bowl, 'r': "0c-04 09(3c-4c", 's': "6a)4c-2c)0a)28-48(66(44-24(06", 't': "2g-26)44 0c-4c",
	'u': "0c-07)34)67 6c-64", 'v': "0c-34-6c", 'w': "0c-24-4a-64-8c", 'x': "04-6c 0c-64", 'y': "0c-07)34)67 6c-63(30-10",
	'z': "0c-6c-04-64", 'ø': pane + " 04-6c", 'đ': bowl + " 6g-64 3e-8e", 'ł': "2g-24 09-4c", 'ß': "04-0d(3g(6d(3a(67(34-24",

	'0': "3g)0d-07)34)67-6d)3g", '1': "0d-3g-34", '2': "0d(3g(6d-04-64", '3': "0d(3g(6d(3a(67(34(07", '4': "44-4g-07-67",
	'5': "6g-0g-0a-3a(67(34-04", '6': "6d)3g)0d-07)34)67)3a)07", '7': "0g-6g-24", '8': "3a(0d(3g(6d(3a)07)34)67)3a",
	'9': "07)34)67-6d)3g)0d)3a)6d",

	'.': "04-05", ',': "15-03", ':': "04-05 0a-0b", ';': "15-03 1a-1b", '!': "04-05 08-0g", '?': "0d(3g(6d(3a-38 34-35",
	'-': "09-49", '–': "09-69", '—': "09-99", '_': "02-82", '(': "3i)0f-05)32", ')': "0i(3f-35(02", '[': "3i-0i-02-32", ']': "0i-3i-32-02",
	'{': "4i)2g-2b-0a-29-24)42", '}': "0i(2g-2b-4a-29-24(02", '/': "04-6g", '\\': "0g-64", '|': "02-0i", '\'': "0g-0d", '"': "0g-0d 2g-2d",
	'+': "08-68 3b-35", '=': "06-66 0a-6a", '×': "06-4a 0a-46", '<': "6c-08-64", '>': "0c-68-04", '*': "3b-3h 0c-6g 0g-6c", '^': "0d-3g-6d",
	'~': "08(29)4a(6b", '`': "0g-2d", '#': "14-3g 54-7g 08-88 0c-8c", '%': "04-8g 2g)0e)2c)4e)2g 68)46)64)86)68",
	'&': "84-1d(3g(5d-07)34)88", '@': "8c-88)aa)6g)0a)64-94 6c)4a)68)8a)6c", '$': "8d)5g-3g)0d)3a-5a(87(54-34(07 42-4i",
	'÷': "0a-6a 3d-3e 36-37", '→': "0a-8a 5d-8a-57", '←': "8a-0a 3d-0a-37", '↑': "34-3g 0d-3g-6d", '↓': "3g-34 07-34-67", '↔': "0a-aa 3d-0a-37 7d-aa-77",
	'°': "2g)0e)2c)4e)2g", '·': "09-0a", '•': "09-0a",

	missing: "04-0g-6g-64-04",
}

// missing is drawn for a letter that the alphabet lacks.
const missing = '□'

// marks are the accents over a small letter, about x = 4: over a capital and over another
// accent they stand higher. Those of the second kind hang below any letter, or beside it.
var marks = map[rune]string{
	'\u0300': "3g-5e", '\u0301': "3e-5g", '\u0302': "2e-4g-6e", '\u0303': "1e(3f)5e(7f", '\u0304': "2f-6f", '\u0306': "2g)4e)6g", '\u0307': "4e-4f",
	'\u0308': "2e-2f 6e-6f", '\u0309': "3g(4h(5g(4f-4e", horn: "7b-9d", '\u030a': "4h)3g)4f)5g)4h", '\u030b': "1e-3g 5e-7g", '\u030c': "2g-4e-6g",
}

var hung = map[rune]string{'\u0323': "42-41", '\u0331': "21-61", '\u0326': "43-31", '\u0327': "44-43(51(40-30", '\u0328': "44)32)50"}

// horn is an accent at the upper right of a letter.
const horn = '\u031b'

// said are letters that are written as others, and letters whose accent takes the place of
// a dot.
var said = strings.NewReplacer("i\u0300", "ı\u0300", "i\u0301", "ı\u0301", "i\u0302", "ı\u0302", "i\u0303", "ı\u0303", "i\u0308", "ı\u0308",
	"æ", "ae", "Æ", "AE", "œ", "oe", "Œ", "OE", "⁄", "/", "’", "'", "‘", "'", "‚", ",", "“", `"`, "”", `"`, "„", `"`, "−", "-", "‐", "-", "‑", "-")

// letter is what is drawn of one letter, the baseline at 0, Y upward.
type letter struct {
	paths []geometry.Path
	wide  geometry.Length
}

var letters = sync.OnceValue(func() map[rune]letter {
	all := map[rune]letter{' ': {wide: space}}
	for _, from := range []map[rune]string{strokes, marks, hung} {
		for r, text := range from {
			var l letter
			for _, s := range strings.Fields(text) {
				p := stroke(s)
				l.paths, l.wide = append(l.paths, p), max(l.wide, p.Bounds().Max.X)
			}
			all[r] = l
		}
	}
	return all
})

// stroke reads one stroke.
func stroke(text string) geometry.Path {
	const quarter = 0.41421356237309503 // the bulge of a quarter circle
	digit := func(i int) geometry.Length {
		return geometry.Length(strings.IndexByte("0123456789abcdefghijklmnopqrstuvwxyz", text[i]))
	}
	var p geometry.Path
	for i := 0; i < len(text); i += 3 {
		v := geometry.Vertex{Point: geometry.Pt(digit(i), digit(i+1)-baseline)}
		if i+2 < len(text) {
			v.Bulge = map[byte]float64{'-': 0, ')': quarter, '(': -quarter}[text[i+2]]
		}
		p.Vertices = append(p.Vertices, v)
	}
	return p
}
