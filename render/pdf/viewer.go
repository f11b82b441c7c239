package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strconv"
)

// The parts of a file as the PDF library writes it.
var (
	catalogPattern = regexp.MustCompile(`(?s)\n1 0 obj\n<<(.*?)>>\nendobj`)
	trailerPattern = regexp.MustCompile(`(?s)\ntrailer\n<<(.*)>>\nstartxref\n(\d+)\n%%EOF\n?$`)
)

// actualSize adds to a finished file what its writer has no call for: viewer
// preferences that ask the print dialogue for actual size (PrintScaling None,
// ISO 32000-1, 12.2) and show the title, and the document's language. It is an
// incremental update (7.5.6): a new catalog behind the untouched file.
func actualSize(file []byte) ([]byte, error) {
	catalog := catalogPattern.FindSubmatch(file[:min(len(file), 1024)])                                 // the first object
	trailer := trailerPattern.FindSubmatch(file[max(0, bytes.LastIndex(file, []byte("\ntrailer\n"))):]) // the last
	if catalog == nil || trailer == nil {
		return nil, errors.New("pdf: no catalog or no trailer in the file")
	}
	previous, err := strconv.Atoi(string(trailer[2]))
	if err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	var out bytes.Buffer
	out.Grow(len(file) + 1024)
	out.Write(file)
	object := out.Len()
	fmt.Fprintf(&out, "1 0 obj\n<<%s", catalog[1])
	out.WriteString("  /Lang (en)\n")
	out.WriteString("  /ViewerPreferences << /PrintScaling /None /PickTrayByPDFSize true /DisplayDocTitle true >>\n")
	out.WriteString(">>\nendobj\n")
	table := out.Len()
	fmt.Fprintf(&out, "xref\n0 1\n0000000000 65535 f \n1 1\n%010d 00000 n \n", object)
	fmt.Fprintf(&out, "trailer\n<<%s/Prev %d\n>>\nstartxref\n%d\n%%%%EOF\n", trailer[1], previous, table)
	return out.Bytes(), nil
}
