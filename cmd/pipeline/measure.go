package pipeline

import (
	"context"
	"fmt"
	"slices"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/measuring"
	"forel/render/measure"
)

// Measure makes the sheet to measure a book and its materials by, with pictures and blanks.
// It needs no job; of one the kind, the books as far as they are measured, the materials and
// the printer count.
type Measure struct {
	Job
	Volumes int  // blanks for so many books at least
	Both    bool // blanks for both units
}

// Make makes measure.pdf.
func (m Measure) Make(context.Context) (r Result, err error) {
	var bad jobfile.Issues
	if m.Volumes < 0 || m.Volumes > job.MostBooks {
		bad = refuse(bad, fmt.Sprintf("--volumes: %d is out of range", m.Volumes), fmt.Sprintf("give 1 to %d", job.MostBooks))
	}
	w, err := m.unchecked(true, bad)
	if err != nil {
		return r, err
	}
	c := w.file.Job.Shared()
	books := slices.Clone(c.Books)
	for len(books) < max(1, m.Volumes) {
		books = append(books, job.Book{})
	}
	err = r.add("measure.pdf", measure.Document(measuring.Sheet(books, measuring.Size(c.Book().Size()), w.toMeasure(), w.file.Job.Settings()), w.file.Kind.About, c.Title,
		measure.Options{Options: w.printed(), Both: m.Both}))
	r.Wrote, r.Set = namesOf(r.Files), "measure"
	return r, err
}

// MeasurePicture draws a picture of measuring (of measuring.Names) with the first book of a
// job, as far as it is measured.
func (j Job) MeasurePicture(name string) ([]byte, error) {
	w, err := j.unchecked(true, nil)
	if err != nil {
		return nil, err
	}
	for _, p := range measuring.Pictures(measuring.Size(w.file.Job.Shared().Book().Size())) {
		if p.Name == name {
			return measure.Drawing(p, w.printed()), nil
		}
	}
	return nil, fmt.Errorf("no picture of measuring %.40q", name)
}

// unchecked reads the one job there is, or none, without working it out. bad is what is
// wrong with the settings of the command; all is told together. Books need not be measured
// yet where it is unbooked.
func (j Job) unchecked(unbooked bool, bad jobfile.Issues) (w worked, err error) {
	if err := j.one(bad); err != nil {
		return w, err
	}
	shop, wrong := j.shop(&bad)
	files := j.toRead(&bad)
	if len(files) == 0 {
		return w, bad
	}
	w.date = j.Date
	w.file = new(jobfile.File)
	*w.file, err = shop.Unchecked(files[0].Name, files[0].Data, unbooked, j.Flags...)
	bad = append(bad, Problems(err)...)
	if err == nil {
		w.round, err = rounding(j.Round, w.file.Job.Shared().Unit)
		bad = append(bad, Problems(err)...)
	}
	return w, eachOnce(bad, wrong).Err()
}

// toMeasure returns the materials of a job, each once, with what is taken for them until
// they are measured.
func (w worked) toMeasure() (out []measuring.Material) {
	settings := w.file.Job.Settings()
	for _, n := range w.file.Kind.Named {
		m := measuring.Material{Of: n.Material, Name: w.file.Names[n.Material], Key: n.Thickness()}
		if slices.ContainsFunc(out, func(have measuring.Material) bool { return have.Key == m.Key }) {
			continue
		}
		if s, ok := settings.Find(m.Key); ok && s.Length != nil {
			if m.Now = geometry.Settable(*s.Length, w.round.Unit); s.Auto && *s.Length == 0 {
				m.Now = "auto"
			}
		}
		out = append(out, m)
	}
	return out
}
