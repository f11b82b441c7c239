package jobfile

import (
	"strconv"

	"forel/geometry/job"
	"forel/paper/bed"
)

// Machine is what a job or its shop tells of the laser or drag knife that it is cut on, as
// forel cutter is told by its flags; what is left out is "".
type Machine struct {
	Bed, Kerf, Spacing, Margin, Tabs, TabWidth, Line string
}

// Of a line for a machine, both allowed.
const (
	LeastLine Length = 0.001
	MostLine  Length = 1
)

var bedSize = job.Setting{Key: "machine.bed", What: "the size of the bed", Min: float64(bed.LeastSide), Max: float64(bed.MostSide)}

// machineSettings are the keys of [machine].
var machineSettings = []job.Setting{
	bedSize,
	job.LengthOf("machine.kerf", "what the beam takes away, 0 for a knife", 0, float64(bed.MostKerf), new(Length)),
	job.LengthOf("machine.spacing", "the distance between neighbouring pieces", 0, float64(bed.MostGap), new(Length)),
	job.LengthOf("machine.margin", "the distance kept from the bed's edges", 0, float64(bed.MostMargin), new(Length)),
	job.NumberOf("machine.tabs", "how many tabs hold each piece in its sheet", 0, bed.MostTabs, new(float64)),
	job.LengthOf("machine.tab_width", "the width of a tab", float64(bed.LeastTabWidth), float64(bed.MostTabWidth), new(Length)),
	job.LengthOf("machine.line", "the width of all lines", float64(LeastLine), float64(MostLine), new(Length)),
}

// machine reads [machine].
func (r *reader) machine() (m Machine) {
	to := map[string]*string{"bed": &m.Bed, "kerf": &m.Kerf, "spacing": &m.Spacing, "margin": &m.Margin, "tabs": &m.Tabs, "tab_width": &m.TabWidth, "line": &m.Line}
	exactly := func(l Length) string { return strconv.FormatFloat(l.MM(), 'g', -1, 64) }
	for _, s := range machineSettings {
		v, ok := r.get(s.Key)
		if !ok {
			continue
		}
		text, before := "", len(r.issues)
		switch {
		case s.Key == bedSize.Key:
			text = r.bed(v, exactly)
		case s.Length != nil:
			text = exactly(r.length(v, s.Key, s.What, Length(s.Min), Length(s.Max))) + " mm"
		default:
			text = strconv.Itoa(int(r.number(v, s, true)))
		}
		if len(r.issues) == before {
			*to[wordOf(s.Key)] = text
		}
	}
	return m
}

// bed reads the size of a bed.
func (r *reader) bed(v value, exactly func(Length) string) string {
	const right = `give width x height, such as bed = "600 x 300 mm"`
	if v.kind != textKind {
		r.reject(v, "is no size of a bed", right)
		return ""
	}
	w, h, err := bed.ParseSize(v.text, r.unitOf(v))
	switch {
	case err != nil:
		r.reject(v, "is no size of a bed", right)
	case min(w, h) < bed.LeastSide || max(w, h) > bed.MostSide:
		r.reject(v, "is no size of a bed", job.Limited("each side of it", bed.LeastSide, bed.MostSide, r.unitOf(v)))
	default:
		return exactly(w) + " x " + exactly(h) + " mm"
	}
	return ""
}
