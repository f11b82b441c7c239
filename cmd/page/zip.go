package page

import (
	"archive/zip"
	"bytes"
	"context"
	"strings"
	"time"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
)

// packer puts files into a zip, in memory, where no writing fails. The same files give the same
// bytes.
type packer struct {
	out bytes.Buffer
	zip *zip.Writer
}

func newPacker() *packer {
	p := &packer{}
	p.zip = zip.NewWriter(&p.out)
	return p
}

// first is the earliest date that a zip can tell (APPNOTE.TXT 4.4.6, the date format of
// MS-DOS, from memory): nothing in it tells when it was made.
var first = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

func (p *packer) add(name string, data []byte) {
	h := &zip.FileHeader{Name: name, Method: zip.Deflate, Modified: first}
	if strings.HasSuffix(name, ".pdf") {
		h.Method = zip.Store // it is compressed inside
	}
	h.SetMode(0o644)
	w, err := p.zip.CreateHeader(h)
	if err != nil {
		panic("a name for a file of a zip: " + err.Error())
	}
	w.Write(data)
}

// done ends the zip and returns it as a file.
func (p *packer) done(name string) File {
	p.zip.Close()
	return File{Name: name, Type: media(".zip"), Data: p.out.Bytes()}
}

// everything makes all that can be made of a job and puts it into one zip, a folder for each
// command, with the job file beside them. Beds are left out: they need a size.
func (d *Desk) everything(ctx context.Context, a *Response, q Request, progress pipeline.Progress) error {
	p := newPacker()
	p.add("case/job.toml", []byte(q.Text))
	if q.Shop != "" {
		p.add("case/"+jobfile.ShopName, []byte(q.Shop))
	}
	if q.Record != "" {
		p.add("case/"+pipeline.RecordName("job.toml"), []byte(q.Record))
	}
	for i, o := range outputs {
		if o.Name == "cutter" || o.Place == InKeep {
			continue
		}
		part := progress.Part(float64(i)/float64(len(outputs)), float64(i+1)/float64(len(outputs)))
		var made Response
		if err := d.make(ctx, &made, Request{Name: o.Name, Source: q.Source, Text: q.Text, Shop: q.Shop}, part); err != nil {
			return err
		}
		if len(made.Faults) > 0 || made.Error != "" {
			a.Faults, a.Error = made.Faults, made.Error
			return nil
		}
		for _, f := range made.Files {
			p.add("case/"+o.Name+"/"+f.Name, f.Data)
		}
	}
	a.Files = []File{p.done("case.zip")}
	return nil
}
