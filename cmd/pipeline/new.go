package pipeline

import (
	"fmt"
	"slices"

	"forel/cmd/jobfile"
)

// New writes a job file to begin with.
type New struct {
	Full    bool           // every setting
	Example bool           // the invented book
	From    *File          // an old job whose materials, printer and habits are kept; may be nil
	Flags   []jobfile.Flag // of jobfile.NewKeys
	Shop    File           // whose habits and materials it takes; without a name there is none
}

// Text returns the job file, and whether its book is still to be typed in.
func (n New) Text() (text []byte, empty bool, err error) {
	sets := func(key string) bool {
		return slices.ContainsFunc(n.Flags, func(f jobfile.Flag) bool { return f.Key == key })
	}
	measured := sets("book.height") || sets("book.width") || sets("book.thickness")
	empty = !n.Example && !(sets("book.height") && sets("book.width") && sets("book.thickness"))
	var bad jobfile.Issues
	shop, _ := Source{Shop: n.Shop, Flags: n.Flags}.shop(&bad)
	if n.Example && measured {
		bad = refuse(bad, "both --example and measures of a book", "give one of them")
	}
	if n.From != nil {
		switch {
		case n.Example:
			bad = refuse(bad, "both --example and --from", "give one of them")
		case n.Full:
			bad = refuse(bad, "both --full and --from", "give one of them")
		case sets("units"):
			bad = refuse(bad, "both --units and --from", "leave --units out: the new job has the units of the old one")
		}
	}
	if len(bad) > 0 {
		return nil, false, bad
	}
	setup, _, err := shop.Print("", nil, n.Flags)
	if err != nil {
		return nil, false, err
	}
	if err := setup.Check(); err != nil {
		return nil, false, Problems(fmt.Errorf("--paper: %w", err))
	}
	if n.From != nil {
		text, err = shop.Next(n.From.Name, n.From.Data, n.Flags)
	} else {
		text, err = jobfile.New{Full: n.Full, Example: n.Example, Flags: n.Flags, Shop: shop}.Text()
	}
	return text, empty, err
}
