package shelf

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// ListName is the file that tells what forel wrote into a folder.
const ListName = "forel-files.txt"

// header begins the list. A line of a file is as sha256sum reads it; one that begins
// with # is passed over there.
const header = `# What forel wrote into this folder: a digest (SHA-256) of each file, and its name.
# A later run replaces or takes away only these files, and only as they were written.
`

const (
	setLine  = "# set "     // begins a set, with its name
	madeLine = "# made of " // what a set was made of, where that was told
)

// digest is that of a file, by SHA-256 (FIPS 180-4).
type digest [sha256.Size]byte

// entry is a file that forel wrote. Its name is below the folder, with slashes.
type entry struct {
	name   string
	digest digest
	staged bool // it is in the working folder
}

// set is files that were made together and are of use only together.
type set struct {
	name  string
	made  string // tells what they were made of; may be empty
	files []entry
}

// digests returns those of files, by name.
func digests(files []entry) map[string]digest {
	all := map[string]digest{}
	for _, f := range files {
		all[f.name] = f.digest
	}
	return all
}

// write writes a set as it stands in the list.
func (s set) write(w io.Writer) {
	fmt.Fprintf(w, "\n%s%s\n", setLine, s.name)
	if s.made != "" {
		fmt.Fprintf(w, "%s%s\n", madeLine, s.made)
	}
	for _, f := range s.files {
		fmt.Fprintf(w, "%x  %s\n", f.digest, f.name)
	}
}

// writeList writes the list of sets, in order of names.
func writeList(w io.Writer, sets []set) {
	slices.SortFunc(sets, func(a, b set) int { return strings.Compare(a.name, b.name) })
	io.WriteString(w, header)
	for _, s := range sets {
		slices.SortFunc(s.files, func(a, b entry) int { return strings.Compare(a.name, b.name) })
		s.write(w)
	}
}

var errNotOurs = errors.New("is not as forel writes it")

// parseSets reads sets as text writes them. A name that leads out of the folder is
// not one of ours.
func parseSets(text string) (sets []set, err error) {
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\r\n")
		last := len(sets) - 1
		if name, ok := strings.CutPrefix(line, setLine); ok {
			sets = append(sets, set{name: name})
			continue
		}
		if line == "" {
			continue
		}
		if last < 0 {
			return sets, errNotOurs
		}
		if made, ok := strings.CutPrefix(line, madeLine); ok {
			sets[last].made = made
			continue
		}
		hexed, name, _ := strings.Cut(line, "  ")
		sum, err := hex.DecodeString(hexed)
		if err != nil || len(sum) != sha256.Size || !filepath.IsLocal(filepath.FromSlash(name)) {
			return sets, errNotOurs
		}
		sets[last].files = append(sets[last].files, entry{name: name, digest: digest(sum)})
	}
	return sets, nil
}

// readList reads the list of a folder; there may be none.
func readList(path string) ([]set, error) {
	if info, err := os.Lstat(path); err != nil {
		return nil, missingIsFine(err)
	} else if !info.Mode().IsRegular() {
		return nil, errNotOurs
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	rest, ours := strings.CutPrefix(strings.ReplaceAll(string(data), "\r\n", "\n"), header)
	if !ours {
		return nil, errNotOurs
	}
	return parseSets(rest)
}

// digestOf returns the digest of a file; what is no regular file has none.
func digestOf(path string) (sum digest, err error) {
	info, err := os.Lstat(path)
	if err != nil {
		return sum, err
	}
	if !info.Mode().IsRegular() {
		return sum, errNotOurs
	}
	f, err := os.Open(path)
	if err != nil {
		return sum, err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return sum, err
	}
	return digest(h.Sum(nil)), nil
}

// missingIsFine drops the error that a file is not there.
func missingIsFine(err error) error {
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	return err
}
