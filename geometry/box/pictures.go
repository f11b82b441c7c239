package box

import "forel/geometry/stage"

// model is a box in space, to be shown at each step.
type model struct{ c made }

func (c made) model() model { return model{c} }

// boards is the boards of a tray beside each other on the bench.
func (m model) boards(w tray) [][]stage.Picture { return nil }

// glued is the tray being put together.
func (m model) glued(w tray) [][]stage.Picture { return nil }

// covering is the stages of covering a tray: round the walls, under the base, the ends,
// head and tail wall inside, the fore-edge wall.
func (m model) covering(w tray) (around, under, ends, inside, fore [][]stage.Picture) {
	return nil, nil, nil, nil, nil
}

// measured is the covered small tray with what is measured of it.
func (m model) measured() [][]stage.Picture { return nil }

// nested is the large tray over the small one.
func (m model) nested() [][]stage.Picture { return nil }

// caseOnPair is the case boards on the nested trays.
func (m model) caseOnPair() [][]stage.Picture { return nil }

// caseCovered is the case being covered.
func (m model) caseCovered() [][]stage.Picture { return nil }

// casedIn is the trays being glued to the case.
func (m model) casedIn() [][]stage.Picture { return nil }

// hinged is the hinge going in.
func (m model) hinged() [][]stage.Picture { return nil }

// lined is the linings going in, and the finished box.
func (m model) lined() [][]stage.Picture { return nil }
