package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"sync"

	"github.com/klauspost/compress/zlib"
)

// update is an incremental update (ISO 32000-1, 7.5.6): objects behind the
// untouched file, new ones and others in the place of some it has.
type update struct {
	file   []byte
	table  []int // where each object of the file is, by number
	was    int   // where the file's own table is
	next   int   // the next number for a new object
	places map[int]int
	out    bytes.Buffer
}

var tailPattern = regexp.MustCompile(`(?s)\ntrailer\n<<\n/Size (\d+)\n/Root 1 0 R\n>>\nstartxref\n(\d+)\n%%EOF\n$`)

// newUpdate starts an update of a file as the PDF library writes it: one table
// of all its objects, the catalog first.
func newUpdate(file []byte) (*update, error) {
	odd := errors.New("the library's file is not as expected")
	tail := tailPattern.FindSubmatch(file[max(0, len(file)-256):])
	if tail == nil {
		return nil, odd
	}
	size, _ := strconv.Atoi(string(tail[1]))
	was, _ := strconv.Atoi(string(tail[2]))
	const row = 20 // bytes of an entry (7.5.4)
	head := fmt.Sprintf("xref\n0 %d\n", size)
	if was+len(head)+size*row > len(file) || !bytes.HasPrefix(file[was:], []byte(head)) {
		return nil, odd
	}
	u := &update{file: file, was: was, next: size, table: make([]int, size), places: map[int]int{}}
	for n := range u.table {
		var err error
		entry := file[was+len(head)+n*row:]
		if u.table[n], err = strconv.Atoi(string(entry[:10])); err != nil {
			return nil, odd
		}
	}
	u.out.Grow(len(file) * 2)
	u.out.Write(file)
	return u, nil
}

// object gives an object of the file as it was written.
func (u *update) object(n int) string {
	if n >= len(u.table) {
		return ""
	}
	rest := u.file[u.table[n]:]
	end := bytes.Index(rest, []byte("endobj"))
	return string(rest[:max(end, 0)])
}

// reserve gives a number for a new object.
func (u *update) reserve() int {
	u.next++
	return u.next - 1
}

// dict writes a dictionary as an object.
func (u *update) dict(n int, entries string) {
	u.places[n] = u.out.Len()
	fmt.Fprintf(&u.out, "%d 0 obj\n<< %s >>\nendobj\n", n, entries)
}

// stream writes a stream, packed before, as a new object.
func (u *update) stream(packed []byte) (n int) {
	n = u.reserve()
	u.places[n] = u.out.Len()
	fmt.Fprintf(&u.out, "%d 0 obj\n<< /Filter /FlateDecode /Length %d >>\nstream\n", n, len(packed))
	u.out.Write(packed)
	u.out.WriteString("\nendstream\nendobj\n")
	return n
}

// packers are used again: a new one takes longer than a page.
var packers = sync.Pool{New: func() any {
	w, _ := zlib.NewWriterLevel(io.Discard, zlib.BestSpeed) // an error only for a level that is none
	return w
}}

// pack compresses a stream (7.4.4).
func pack(data []byte) []byte {
	var out bytes.Buffer
	out.Grow(len(data) / 2)
	w := packers.Get().(*zlib.Writer)
	defer packers.Put(w)
	w.Reset(&out)
	w.Write(data) // to memory: can't fail
	w.Close()
	return out.Bytes()
}

// bytes ends the update with its table and trailer, and gives the whole file.
func (u *update) bytes(info int) []byte {
	table := u.out.Len()
	u.out.WriteString("xref\n0 1\n0000000000 65535 f \n")
	var numbers []int
	for n := range u.places {
		numbers = append(numbers, n)
	}
	slices.Sort(numbers)
	for i := 0; i < len(numbers); {
		run := 1
		for i+run < len(numbers) && numbers[i+run] == numbers[i]+run {
			run++
		}
		fmt.Fprintf(&u.out, "%d %d\n", numbers[i], run)
		for _, n := range numbers[i : i+run] {
			fmt.Fprintf(&u.out, "%010d 00000 n \n", u.places[n])
		}
		i += run
	}
	fmt.Fprintf(&u.out, "trailer\n<< /Size %d /Root 1 0 R /Info %d 0 R /Prev %d >>\nstartxref\n%d\n%%%%EOF\n", u.next, info, u.was, table)
	return u.out.Bytes()
}
