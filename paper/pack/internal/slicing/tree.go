// Package slicing keeps the tree of edge-to-edge cuts of one sheet while pieces
// come and go. Sizes are whole numbers in any unit; a gap between pieces is
// already part of their sizes.
package slicing

// What a node is, where it is not a piece (its number, 0 or more).
const (
	Open  = -1 // free
	Inner = -2 // parted
	Idle  = -3 // not in use
)

// Which way the parts of an Inner node lie.
const (
	X = 0 // side by side
	Y = 1 // one below the other
)

const none = -1

// Node is a rectangle of the tree. Parts of one node may be permuted freely, so
// at most one of them is Open: all that is free among them.
type Node struct {
	W, H                int
	Item                int32 // or Open, Inner
	parent, first, next int32
	prev                int32
	slot                int32 // place in the list of Open nodes
	Dir                 int8  // of Inner
}

// Side returns the node's size in a direction.
func (n *Node) Side(dir int8) *int {
	if dir == X {
		return &n.W
	}
	return &n.H
}

// Free is an Open node, with its size in floating point, which is exact here.
type Free struct {
	W, H float64
	Node int32
}

// Tree is a sheet. Node 0 is the root.
type Tree struct {
	N    []Node
	open []Free
	idle []int32 // nodes not in use
	Area int     // of the pieces
}

// Reset makes the tree one Open rectangle.
func (t *Tree) Reset(w, h int) {
	t.N = append(t.N[:0], Node{W: w, H: h, Item: Open, parent: none, first: none, next: none, prev: none})
	t.open = append(t.open[:0], Free{float64(w), float64(h), 0})
	t.idle = t.idle[:0]
	t.Area = 0
}

// Copy makes the tree equal to another, reusing memory.
func (t *Tree) Copy(o *Tree) {
	t.N = append(t.N[:0], o.N...)
	t.open = append(t.open[:0], o.open...)
	t.idle = append(t.idle[:0], o.idle...)
	t.Area = o.Area
}

// OpenNodes returns the Open nodes; the slice is the tree's own.
func (t *Tree) OpenNodes() []Free { return t.open }

// Parts calls f for each part of an Inner node.
func (t *Tree) Parts(n int32, f func(int32)) {
	for c := t.N[n].first; c != none; c = t.N[c].next {
		f(c)
	}
}

func (t *Tree) add(n Node) int32 {
	if k := len(t.idle); k > 0 {
		at := t.idle[k-1]
		t.idle = t.idle[:k-1]
		t.N[at] = n
		return at
	}
	t.N = append(t.N, n)
	return int32(len(t.N) - 1)
}

func (t *Tree) list(n int32) {
	t.N[n].Item = Open
	t.N[n].slot = int32(len(t.open))
	t.open = append(t.open, Free{float64(t.N[n].W), float64(t.N[n].H), n})
}

func (t *Tree) unlist(n int32) {
	k := len(t.open) - 1
	at, last := t.N[n].slot, t.open[k]
	t.open[at] = last
	t.N[last.Node].slot = at
	t.open = t.open[:k]
}

// split takes a part of the size given off an Open node, in direction dir, and
// returns it, not listed. The node must be larger than that.
func (t *Tree) split(n int32, dir int8, size int) int32 {
	if p := t.N[n].parent; p != none && t.N[p].Dir == dir {
		part := Node{W: t.N[n].W, H: t.N[n].H, Item: Open, parent: p, first: none, prev: none, next: t.N[p].first}
		*part.Side(dir) = size
		*t.N[n].Side(dir) -= size
		t.open[t.N[n].slot] = Free{float64(t.N[n].W), float64(t.N[n].H), n}
		at := t.add(part)
		t.N[t.N[at].next].prev = at
		t.N[p].first = at
		return at
	}
	t.unlist(n)
	part := Node{W: t.N[n].W, H: t.N[n].H, Item: Open, parent: n, first: none, next: none, prev: none}
	rest := part
	*part.Side(dir) = size
	*rest.Side(dir) -= size
	at := t.add(part)
	left := t.add(rest)
	t.N[at].next, t.N[left].prev = left, at
	m := &t.N[n]
	m.Item, m.Dir, m.first = Inner, dir, at
	t.list(left)
	return at
}

// Insert lays a piece of w by h into an Open node that it fits, parting
// the node in direction first where it must be parted in both.
func (t *Tree) Insert(n int32, item int32, w, h int, first int8) {
	t.Area += w * h
	dw, dh := t.N[n].W > w, t.N[n].H > h
	if !dw && !dh {
		t.unlist(n)
		t.N[n].Item = item
		return
	}
	if !dw {
		first = Y
	} else if !dh {
		first = X
	}
	size := [2]int{w, h}
	part := t.split(n, first, size[first])
	if dw && dh {
		t.list(part)
		part = t.split(part, 1-first, size[1-first])
	}
	t.N[part].Item = item
}

// Remove takes a piece out, or all that lies in an Inner node, whose pieces the
// caller has noted before. The node becomes part of an Open one.
func (t *Tree) Remove(n int32) {
	t.drop(n)
	for {
		p := t.N[n].parent
		if p == none {
			break
		}
		// All that is free among the parts becomes one.
		for c := t.N[p].first; c != none; c = t.N[c].next {
			if c != n && t.N[c].Item == Open {
				*t.N[n].Side(t.N[p].Dir) += *t.N[c].Side(t.N[p].Dir)
				t.unlist(c)
				t.unlink(c)
				break
			}
		}
		if t.N[n].prev != none || t.N[n].next != none {
			break
		}
		t.free(n)
		t.N[p].first = none
		n = p
	}
	t.list(n)
}

func (t *Tree) unlink(c int32) {
	p := t.N[c].parent
	prev, next := t.N[c].prev, t.N[c].next
	if prev != none {
		t.N[prev].next = next
	} else {
		t.N[p].first = next
	}
	if next != none {
		t.N[next].prev = prev
	}
	t.free(c)
}

func (t *Tree) free(n int32) {
	t.N[n].Item = Idle
	t.idle = append(t.idle, n)
}

// drop empties a node of all below it.
func (t *Tree) drop(n int32) {
	m := &t.N[n]
	if m.Item >= 0 {
		t.Area -= m.W * m.H
	} else if m.Item == Open {
		t.unlist(n)
	}
	for c := m.first; c != none; {
		next := t.N[c].next
		t.drop(c)
		t.free(c)
		c = next
	}
	t.N[n].first = none
}
