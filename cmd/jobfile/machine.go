package jobfile

import (
	"forel/geometry/job"
	"forel/paper/bed"
	"forel/render/hairline"
)

// Machine is what a job or its shop tells of the laser or drag knife that it is cut on;
// a bed that is not told of has no sides.
type Machine struct {
	bed.Setup
	Line Length // the width of all lines
}

// Of a line for a machine, both allowed.
const (
	LeastLine Length = 0.001
	MostLine  Length = 1
)

var bedSize = job.Setting{Key: "machine.bed", What: "the size of the bed", Min: float64(bed.LeastSide), Max: float64(bed.MostSide)}

// settings are the keys of [machine]; the size of the bed and the tabs are read apart.
func (m *Machine) settings() []job.Setting {
	return []job.Setting{
		bedSize,
		job.LengthOf("machine.kerf", "what the beam takes away, 0 for a knife", 0, float64(bed.MostKerf), &m.Kerf),
		job.LengthOf("machine.spacing", "the distance between neighbouring pieces", 0, float64(bed.MostGap), &m.Gap),
		job.LengthOf("machine.margin", "the distance kept from the bed's edges", 0, float64(bed.MostMargin), &m.Margin),
		job.NumberOf("machine.tabs", "how many tabs hold each piece in its sheet", 0, bed.MostTabs, new(float64)),
		job.LengthOf("machine.tab_width", "the width of a tab", float64(bed.LeastTabWidth), float64(bed.MostTabWidth), &m.TabWidth),
		job.LengthOf("machine.line", "the width of all lines", float64(LeastLine), float64(MostLine), &m.Line),
	}
}

var machineKeys = keysOf(new(Machine).settings())

// machine reads [machine].
func (r *reader) machine() Machine {
	m := Machine{bed.Default(), hairline.Usual}
	for _, s := range m.settings() {
		v, ok := r.get(s.Key)
		switch {
		case !ok:
		case s.Key == bedSize.Key:
			size := r.size(v, bed.ParseSize)
			m.Width, m.Height = size.Width, size.Height
		case s.Number != nil:
			m.Tabs = int(r.number(v, s, true))
		default:
			r.read(v, s)
		}
	}
	return m
}
