package jobfile

import (
	"strings"

	"forel/geometry/wording"
)

// Flag is a key of the job file set on the command line.
type Flag struct {
	Name  string // as it was typed, for messages: "--height", "--set board.thickness"
	Key   string // "title", "units", "book.height", "print.paper", "board.thickness", ...
	Value string // text, or a length: bare or with its unit; readings have ";" between them
}

// readFlags gathers flags; the last of several for one key holds.
func (r *reader) readFlags(flags []Flag) {
	for _, f := range flags {
		at := place{name: f.Name, flag: true}
		if long := jobWords.short[f.Key]; long != "" {
			f.Key = long
		}
		if key := unnumbered(f.Key); key != f.Key && Known(key) {
			table, _, _ := strings.Cut(key, ".")
			r.refuse(at, "a flag sets the first "+table+" only", "write "+key+", or change the job file")
			continue
		}
		if !Known(f.Key) {
			r.refuse(at, "unknown key "+wording.Quote(f.Key), jobWords.suggest(strings.Split(f.Key, ".")))
			continue
		}
		r.flags[f.Key] = flagValue(f, at)
	}
}

// flagValue is what a flag sets, at several places if need be where that is measured.
func flagValue(f Flag, at place) value {
	v := value{kind: textKind, text: f.Value, at: at}
	if field, _ := fieldOf(f.Key); field.Kind != TakesReadings || !strings.Contains(f.Value, ";") {
		return v
	}
	v.kind = listKind
	for _, reading := range strings.SplitN(f.Value, ";", mostReadings+1) {
		v.items = append(v.items, value{kind: textKind, text: reading, at: at})
	}
	return v
}
