package jobfile

import (
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"forel/geometry/slipcase"
)

// bookKey names a key of the nth book as slipcase does: book.height in the
// first, then book[2].height and so on. Other keys stay as they are.
func bookKey(key string, n int) string {
	table, word, _ := strings.Cut(key, ".")
	if table != "book" || n < 2 {
		return key
	}
	return strings.TrimSuffix(slipcase.BookKey(n-1, word), ".")
}

// newBook counts the books and refuses the first that is too many.
func (t *tree) newBook(line int) {
	t.books++
	name := bookKey("book", t.books)
	if t.books <= slipcase.MostBooks {
		t.tables[name] = line
	} else if t.books == slipcase.MostBooks+1 {
		t.refuse(t.at(line, name), fmt.Sprintf("more than %d books", slipcase.MostBooks), "make two cases")
	}
}

// singleBrackets tells of the book just counted that it was not written as one
// of several.
func (t *tree) singleBrackets(line int) {
	if t.books <= slipcase.MostBooks {
		t.refuse(t.at(line, bookKey("book", t.books)), "a book has double brackets", "write [[book]]")
	}
}

// putBooks takes books written inline.
func (t *tree) putBooks(n *unstable.Node, line int) {
	switch n.Kind {
	case unstable.Array:
		for it := n.Children(); it.Next(); {
			at := line
			if it.Node().Raw.Length > 0 {
				at = t.lines.line(int(it.Node().Raw.Offset))
			}
			t.newBook(at)
			if t.books > slipcase.MostBooks {
				return
			}
			t.putTable("book", it.Node(), at)
		}
	case unstable.InlineTable:
		t.newBook(line)
		t.singleBrackets(line)
		t.putTable("book", n, line)
	default:
		t.newBook(line)
		t.putTable("book", n, line)
	}
}
