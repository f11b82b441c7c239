package chemise

import (
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/stage"
)

// posed is the boards of a chemise as they stand at some stage of closing, cut
// across from spine to fore-edge as in closed.
type posed struct {
	bars  []bar
	cloth [][2]geometry.Point // of each joint, from board to board along the outside
}

// bar is a board with its layers in the section: its outer face from its left end to
// its right as the chemise lies flat, and a unit step toward the inside.
type bar struct {
	name     string
	from, to geometry.Point
	inner    geometry.Point
	thick    Length
}

// opened poses the boards on the back cover, which lies flat, each joint closed by so
// many degrees. Halfway the cloth of a joint is taken to bend at both its ends alike.
func (c made) opened(degrees func(left, right string) float64) posed {
	ps, j := c.job.panels(), c.job
	root := boardAt(ps, backCoverName)
	out := posed{bars: make([]bar, len(ps)), cloth: make([][2]geometry.Point, len(ps)-1)}
	out.bars[root] = bar{backCoverName, geometry.Pt(0, 0), geometry.Pt(ps[root].Wide, 0), geometry.Pt(0, 1), j.through()}
	step := func(angle float64, l Length) geometry.Point {
		return geometry.Pt(l*Length(math.Cos(angle)), l*Length(math.Sin(angle)))
	}
	for _, way := range []int{1, -1} { // to the right, then to the left
		angle, at := 0.0, out.bars[root].to
		if way < 0 {
			angle, at = math.Pi, out.bars[root].from
		}
		for n := root + way; n >= 0 && n < len(ps); n += way {
			left := min(n, n-way)
			turn := float64(way) * degrees(ps[left].Name, ps[left+1].Name) * math.Pi / 180
			begin := at.Add(step(angle+turn/2, j.joint()))
			angle += turn
			end := begin.Add(step(angle, ps[n].Wide))
			cloth, b := [2]geometry.Point{at, begin}, bar{ps[n].Name, begin, end, step(angle+float64(way)*math.Pi/2, 1), j.through()}
			if way < 0 {
				cloth, b.from, b.to = [2]geometry.Point{begin, at}, end, begin
			}
			out.cloth[left], out.bars[n], at = cloth, b, end
		}
	}
	return out
}

// closed poses the boards round the book, from the section of the closed chemise.
func (c made) closed() posed {
	shut := c.proof.closed
	var out posed
	down := shut.dressed(backCoverName).Min.Y
	spine := boardAt(c.job.panels(), spineName)
	for n, p := range c.job.panels() {
		name := p.Name
		s := shut.boards[name]
		box := shut.dressed(name)
		box.Min.Y, box.Max.Y = box.Min.Y-down, box.Max.Y-down
		// Of the two ends the left is nearer to the front cover's free end.
		along := s.along
		if along == (geometry.Point{}) { // the spine: from front to back
			along = geometry.Pt(0, -1)
		} else if n < spine {
			along = along.Mul(-1)
		}
		b := bar{name: name, inner: s.inner, thick: reach(box, s.inner) + reach(box, s.inner.Mul(-1))}
		outer, left, right := -reach(box, s.inner.Mul(-1)), -reach(box, along.Mul(-1)), reach(box, along)
		at := func(l Length) geometry.Point {
			return s.inner.Mul(float64(outer)).Add(along.Mul(float64(l)))
		}
		b.from, b.to = at(left), at(right)
		out.bars = append(out.bars, b)
		if n > 0 {
			out.cloth = append(out.cloth, [2]geometry.Point{out.bars[n-1].to, b.from})
		}
	}
	return out
}

// faces returns the boards with covering and lining on, and the cloth of the joints,
// as high as they are. X runs from spine to fore-edge, Y from tail to head, Z up.
func (p posed) faces(high Length) []stage.Face {
	const object = "chemise"
	var out []stage.Face
	at := func(q geometry.Point, y Length) stage.Vec { return stage.Vec{X: q.X, Y: y, Z: q.Y} }
	wall := func(name string, a, b geometry.Point, front, back stage.Stuff, toward geometry.Point) {
		f := stage.Face{Object: object, Name: name, Front: front, Back: back, Grain: stage.Vec{Y: 1},
			Points: []stage.Vec{at(a, 0), at(b, 0), at(b, high), at(a, high)}}
		out = append(out, facing(f, stage.Vec{X: toward.X, Z: toward.Y}))
	}
	for _, b := range p.bars {
		in := b.inner.Mul(float64(b.thick))
		from, to := b.from.Add(in), b.to.Add(in)
		way := b.to.Sub(b.from)
		wall(b.name, b.from, b.to, stage.Cloth, stage.None, b.inner.Mul(-1))
		wall(b.name+", inside", from, to, stage.Lining, stage.None, b.inner)
		wall(b.name+", edge", b.from, from, stage.Cloth, stage.None, way.Mul(-1))
		wall(b.name+", edge", b.to, to, stage.Cloth, stage.None, way)
		for _, end := range []struct {
			y  Length
			to stage.Vec
		}{{0, stage.Vec{Y: -1}}, {high, stage.Vec{Y: 1}}} {
			out = append(out, facing(stage.Face{Object: object, Name: b.name + ", edge", Front: stage.Cloth,
				Points: []stage.Vec{at(b.from, end.y), at(b.to, end.y), at(to, end.y), at(from, end.y)}}, end.to))
		}
	}
	for _, j := range p.cloth {
		if j[0].Near(j[1]) {
			continue
		}
		d := j[1].Sub(j[0])
		wall("joint", j[0], j[1], stage.Cloth, stage.Lining, geometry.Pt(d.Y, -d.X))
	}
	return out
}

// facing turns a face's outline so that its front looks a way.
func facing(f stage.Face, way stage.Vec) stage.Face {
	n := f.Points[1].Sub(f.Points[0]).Cross(f.Points[2].Sub(f.Points[1]))
	if n.Dot(way) < 0 {
		slices.Reverse(f.Points)
	}
	return f
}
