package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
)

// Objects parts a file as this package and its library write it into its objects, each
// with its first and last line, by the cross-reference table at its end (ISO 32000-1,
// 7.5.4). That of number 0 is the file's first line.
func Objects(file []byte) (objects [][]byte, err error) {
	bad := errors.New("the file has no cross-reference table")
	_, end, _ := bytes.Cut(file[max(0, len(file)-64):], []byte("startxref"))
	var table int
	if _, err := fmt.Sscan(string(end), &table); err != nil || table < 0 || table > len(file) {
		return nil, bad
	}
	// "xref", the first number and the count, then three words an object.
	words := bytes.Fields(file[table:])
	if len(words) < 3 {
		return nil, bad
	}
	var starts []int
	for row := words[3:]; len(row) > 2 && len(row[2]) == 1; row = row[3:] {
		start, err := strconv.Atoi(string(row[0]))
		if err != nil {
			return nil, bad
		}
		starts = append(starts, start)
	}
	starts = append(starts, table)
	for i, start := range starts[:len(starts)-1] {
		if start < 0 || start > starts[i+1] || starts[i+1] > len(file) {
			return nil, bad
		}
		objects = append(objects, file[start:starts[i+1]])
	}
	return objects, nil
}
