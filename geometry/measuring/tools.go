package measuring

import (
	"forel/geometry/stage"
)

// squares are two squares that stand on the bench with a length between them, and a rule
// before them, its end level with the first. All is as large as suits the book.
type squares struct {
	between, long, tall Length // between them; of a stock; of a blade
}

// between returns squares for a book whose longer side is that long and which is that tall as
// it lies.
func between(length, side, tall Length) squares {
	return squares{length, side * 0.22, max(tall*1.25, side*0.3)}
}

// Parts of a square, beside the length of its stock.
const (
	stockWide = 0.28 // before the blade, and so much behind it
	stockTall = 0.26
	bladeWide = 0.3
	bladeThin = 0.05
	ruleOff   = 0.12 // from the squares
	ruleWide  = 0.42
	ruleThin  = 0.02
)

// inward is where the blades stand, from the front of what is measured.
func (q squares) inward() Length { return q.long * 0.32 }

// faces returns both squares and the rule.
func (q squares) faces() (out []stage.Face) {
	y, wide, thin := q.inward(), q.long*stockWide, q.long*bladeThin/2
	for i, name := range []string{"square", "other square"} {
		box := func(from, to, y0, y1, z0, z1 Length) {
			a, b := -to, -from
			if i == 1 {
				a, b = q.between+from, q.between+to
			}
			out = append(out, stage.Box(name, stage.Vec{X: a, Y: y0, Z: z0}, stage.Vec{X: b, Y: y1, Z: z1}, stage.Blank)...)
		}
		box(0, q.long, y-wide, y+wide, 0, q.long*stockTall)
		box(0, q.long*bladeWide, y-thin, y+thin, q.long*stockTall, q.tall)
	}
	front, back := q.rule()
	end := q.between + q.long*1.1
	rule := stage.Box("rule", stage.Vec{Y: front}, stage.Vec{X: end, Y: back, Z: q.long * ruleThin}, stage.Blank)
	step := graduation(end)
	for n := 1; step*Length(n) < end; n++ {
		tick := 0.3
		if n%5 == 0 {
			tick = 0.6
		}
		x := step * Length(n)
		rule[0].Lines = append(rule[0].Lines, stage.Line{Kind: stage.Thin, Points: []stage.Vec{{X: x, Y: back, Z: q.long * ruleThin}, {X: x, Y: back - (back-front)*Length(tick), Z: q.long * ruleThin}}})
	}
	return append(out, rule...)
}

// graduation is the step of the ticks of a rule, so that a picture can show them.
func graduation(long Length) Length {
	for _, step := range []Length{1, 2, 5, 10, 20} {
		if long/step <= 40 {
			return step
		}
	}
	return long / 40
}

// rule tells where the rule lies, its front edge and its back.
func (q squares) rule() (front, back Length) {
	back = q.inward() - q.long*(stockWide+ruleOff)
	return back - q.long*ruleWide, back
}

// reading is where the rule is read.
func (q squares) reading() stage.Vec {
	front, back := q.rule()
	return stage.Vec{X: q.between, Y: (front + back) / 2, Z: q.long * ruleThin}
}

// top is the upper end of a blade.
func (q squares) top(n int) stage.Vec {
	x := -q.long * bladeWide / 2
	if n == 1 {
		x = q.between - x
	}
	return stage.Vec{X: x, Y: q.inward(), Z: q.tall * 0.92}
}

// arrow returns the measure from square to square.
func (q squares) arrow() []stage.Arrow {
	front, _ := q.rule()
	y := front - q.long*0.12
	return []stage.Arrow{{Path: []stage.Vec{{Y: y}, {X: q.between, Y: y}}, Twin: true}}
}

func ofBoards() Picture {
	p := stacked(4, 3, stage.Board)
	p.Notes = append(p.Notes, stage.Note{Name: stage.Words("4 pieces"), More: stage.Words("of the board that you will cut"), Spot: "layer 3"})
	return Picture{Name: Boards, Title: "Board and card, several together",
		Text: []string{
			"Stack four pieces of the very sheet, off its edges, where no burr lifts them. Close the jaws until they just hold, and read as finely as the caliper shows.",
			`Divide by four; or write it as it is: "4 layers 8.1 mm". Corrugated board: one layer, with jaws that only just touch it.`,
		}, Picture: p}
}

func ofSheets() Picture {
	p := stacked(8, 1.5, stage.Cloth) // thicker than they are, to be told apart
	p.Notes = append(p.Notes, stage.Note{Name: stage.Words("8 layers"), More: stage.Words("folded or cut, smooth"), Spot: "layer 6"})
	return Picture{Name: Sheets, Title: "Cloth and paper, more of them",
		Text: []string{
			"Eight layers of one material, without folds or crumbs between them. Do not squeeze cloth.",
			`Divide by eight; or write it as it is: "8 layers 2.8 mm".`,
		}, Picture: p}
}

// stacked returns a stack of layers between the jaws of a caliper.
func stacked(n int, thick Length, s stage.Stuff) stage.Picture {
	const wide, deep, jaw, thin = 62, 40, 34, 3 // jaw: how far the jaws reach over the stack
	var p stage.Picture
	tall := Length(n) * thick
	for i := range n {
		layer := stage.Box("layer "+string(rune('1'+i)), stage.Vec{Z: thick * Length(i)}, stage.Vec{X: wide, Y: deep, Z: thick * Length(i+1)}, s)
		for k := range layer {
			layer[k].Grain = stage.Vec{Y: 1}
			if k > 1 {
				layer[k].Plain = true
			}
		}
		p.Faces = append(p.Faces, layer...)
	}
	const y = deep * 0.3
	bar := func(object string, fat Length, outline ...stage.Vec) {
		for i := range outline {
			outline[i].Y = y - fat/2
		}
		p.Faces = append(p.Faces, stage.Block(object, outline, stage.Vec{Y: fat}, stage.Blank, stage.Blank, stage.Blank)...)
	}
	beam, end, high := Length(wide+14), Length(wide+28), Length(58)
	tip := Length(wide - jaw)
	bar("caliper", thin, stage.Vec{X: tip}, stage.Vec{X: tip + 3, Z: -5}, stage.Vec{X: wide, Z: -13}, stage.Vec{X: end, Z: -13}, stage.Vec{X: end, Z: high}, stage.Vec{X: beam, Z: high}, stage.Vec{X: beam})
	scale := len(p.Faces) - 9 // the front of the bar
	for z := Length(2); z < high; z += 2 {
		long := Length(4)
		if int(z)%10 == 0 {
			long = 8
		}
		p.Faces[scale].Lines = append(p.Faces[scale].Lines, stage.Line{Kind: stage.Thin, Points: []stage.Vec{{X: end, Y: y - thin/2, Z: z}, {X: end - long, Y: y - thin/2, Z: z}}})
	}
	slide := thin + 2.5
	bar("slide", Length(slide), stage.Vec{X: tip, Z: tall}, stage.Vec{X: end - 5, Z: tall}, stage.Vec{X: end - 5, Z: tall + 22}, stage.Vec{X: beam - 3, Z: tall + 22}, stage.Vec{X: beam - 3, Z: tall + 13}, stage.Vec{X: wide, Z: tall + 13}, stage.Vec{X: tip + 3, Z: tall + 5})
	front := Length(y - slide/2)
	p.View, p.Fresh = stage.View{Toward: stage.Vec{Y: -1}, Up: stage.Vec{Z: 1}, Yaw: -20, Pitch: 20}, nil
	p.Arrows = []stage.Arrow{{Path: []stage.Vec{{X: -5}, {X: -5, Z: tall}}, Twin: true}}
	p.Notes = []stage.Note{
		{Name: stage.Words("read here"), More: stage.Words("level with the jaw"), At: stage.Vec{X: end - 2.5, Y: y - thin/2, Z: tall}},
		{Name: stage.Words("jaws"), More: stage.Words("they just hold, and do not squeeze"), At: stage.Vec{X: wide * 0.75, Y: front, Z: tall + 5}},
		{Name: stage.Words("all together"), At: stage.Vec{X: -5, Z: tall / 2}},
	}
	return p
}
