package pdf

import (
	"bytes"
	"compress/zlib"
	"flag"
	"io"
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/render/typeset"
)

var again = flag.Bool("update", false, "write the usual skeleton again")

// The skeleton that is kept in the repository is what the library makes: object
// by object, what is packed compared as it is when unpacked.
func TestUsualSkeletonIsTheLibrarys(t *testing.T) {
	made, err := newSkeleton([2]string{usual(), usual()})
	require.NoError(t, err)
	if *again {
		require.NoError(t, os.WriteFile("skeleton.pdf", made.data, 0o644))
		usualFile = made.data
	}
	require.Equal(t, made.page, usualPage)
	want, got := objects(t, made.data), objects(t, usualFile)
	require.Len(t, got, len(want))
	for n := range want {
		assert.Equal(t, want[n], got[n], "object %d", n)
	}
}

// Every usual character is one that the typeface has.
func TestUsualSignsAreInTheTypeface(t *testing.T) {
	for _, r := range usual() {
		assert.True(t, typeset.Has(r), "%q", r)
	}
}

// objects gives the objects of a file, streams unpacked, without their packed
// length.
func objects(t *testing.T, file []byte) (all []string) {
	u, err := newUpdate(file)
	require.NoError(t, err)
	packed := regexp.MustCompile(`/Length \d+`)
	for n := 1; n < u.next; n++ {
		rest := file[u.table[n]:]
		head, body, stream := bytes.Cut(rest, []byte("stream\n"))
		if end := bytes.Index(rest, []byte("endobj")); !stream || end < len(head) {
			all = append(all, string(rest[:end]))
			continue
		}
		text := packed.ReplaceAllString(string(head), "")
		if r, err := zlib.NewReader(bytes.NewReader(body)); err == nil {
			plain, err := io.ReadAll(r)
			require.NoError(t, err, "object %d", n)
			text += string(plain)
		} else {
			text += string(body[:bytes.Index(body, []byte("endstream"))])
		}
		all = append(all, text)
	}
	return all
}
