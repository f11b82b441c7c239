package jobfile

import (
	"forel/geometry/job"
	"forel/paper/bed"
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

// machineKeys are the keys of [machine].
func (r *reader) machineKeys(m *Machine) []kept {
	return []kept{
		{bedSize, func(v value) {
			size := r.size(v, bed.ParseSize)
			m.Width, m.Height = size.Width, size.Height
		}},
		{Setting: job.LengthOf("machine.kerf", "what the beam takes away, 0 for a knife", 0, float64(bed.MostKerf), &m.Kerf)},
		{Setting: job.LengthOf("machine.spacing", "the distance between neighbouring pieces", 0, float64(bed.MostGap), &m.Gap)},
		{Setting: job.LengthOf("machine.margin", "the distance kept from the bed's edges", 0, float64(bed.MostMargin), &m.Margin)},
		numberAt("machine.tabs", "how many tabs hold each piece in its sheet", 0, bed.MostTabs, &m.Tabs),
		{Setting: job.LengthOf("machine.tab_width", "the width of a tab", float64(bed.LeastTabWidth), float64(bed.MostTabWidth), &m.TabWidth)},
		{Setting: job.LengthOf("machine.line", "the width of all lines", float64(LeastLine), float64(MostLine), &m.Line)},
	}
}
