package jobfile

import (
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/kinds"
)

// slot is what a job is made from that a shop can have: the board of a slipcase, the
// covering of a chemise.
type slot struct {
	material  string              // the key that names a material of the shop: board.material, chemise.board_material
	name      string              // the key for what the maker calls it
	thickness string              // the key of its thickness, which may name a material too where it is not of the form x.thickness
	of        []geometry.Material // what its pieces are; of a case of card, solid or corrugated
}

// slots are those of every kind.
var slots = func() (all []slot) {
	for _, n := range kinds.Named() {
		if i := slices.IndexFunc(all, func(s slot) bool { return s.name == n.Key }); i >= 0 {
			all[i].of = append(all[i].of, n.Material)
			continue
		}
		all = append(all, slot{strings.TrimSuffix(n.Key, "name") + "material", n.Key, n.Thickness(), []geometry.Material{n.Material}})
	}
	return all
}()

// beside returns the key of another word of the slot, such as known or stretch; "" where a
// job file has none.
func (s slot) beside(word string) string {
	if key := strings.TrimSuffix(s.name, "name") + word; slices.Contains(knownKeys, key) {
		return key
	}
	return ""
}

// The kinds of material that a shop has.
const (
	boardKind      = "board"
	cardKind       = "card"
	corrugatedKind = "corrugated board"
	paperKind      = "paper"
	clothKind      = "cloth"
	leatherKind    = "leather"
	feltKind       = "felt"
)

var materialKinds = []string{boardKind, cardKind, corrugatedKind, paperKind, clothKind, leatherKind, feltKind}

// takes returns the kinds of material that a slot can be made of.
func (s slot) takes() []string {
	switch s.of[0] {
	case geometry.Board, geometry.CaseBoard:
		return []string{boardKind}
	case geometry.ThinBoard:
		return []string{boardKind, cardKind}
	case geometry.Card, geometry.Corrugated:
		return []string{cardKind, corrugatedKind}
	case geometry.ChemiseCloth:
		return []string{clothKind, paperKind, leatherKind}
	case geometry.LidLining:
		return []string{paperKind, clothKind, leatherKind, feltKind}
	case geometry.Lining:
		if s.name == "box.lining_name" {
			return []string{paperKind, clothKind, leatherKind, feltKind}
		}
		return []string{paperKind}
	case geometry.ChemiseLining, geometry.Paper:
		return []string{paperKind}
	}
	return []string{clothKind}
}
