package page

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry"
)

// Request is one question of the page.
type Request struct {
	Do      string            `json:"do"`
	Source  string            `json:"source,omitempty"`  // what messages call the job file; "": job.toml
	Text    string            `json:"text,omitempty"`    // the job file; of roster and class, what the roster leaves out
	Data    []byte            `json:"data,omitempty"`    // of roster and class, the roster; of open, a job file as it was read, instead of Text; base64 in JSON
	Changes []Change          `json:"changes,omitempty"` // of set and adopt
	Unit    string            `json:"unit,omitempty"`    // of fields: that defaults are round in; "": mm
	Name    string            `json:"name,omitempty"`    // of make, the command; of measuring, the picture; of roster and class, what messages call the roster
	Flags   map[string]string `json:"flags,omitempty"`   // of make, its settings as typed, by name; of new, by the keys of jobfile.NewKeys
	Step    int               `json:"step,omitempty"`    // of figures, from 0
	Pages   bool              `json:"pages,omitempty"`   // of make: the pages of its document too, to look at
	Example bool              `json:"example,omitempty"` // of new, the invented book
	Full    bool              `json:"full,omitempty"`    // of new, every setting
	Shop    string            `json:"shop,omitempty"`    // the shop file, for jobs to name; "": none
	Record  string            `json:"record,omitempty"`  // of make, the record of the case; "": none
	Records []Text            `json:"records,omitempty"` // of lessons, those of all cases
	Others  []Text            `json:"others,omitempty"`  // of make, job files of other cases to be made together with this one
}

// Text is a file of a case, with what the maker calls the case.
type Text struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// Change sets a key of the job file, or takes it or a table out.
type Change = jobfile.Change

// Response is the answer. What a request does not ask for is left out.
type Response struct {
	Text     *string   `json:"text,omitempty"` // the job file, where it is new
	State    *State    `json:"state,omitempty"`
	Answer   *Answer   `json:"answer,omitempty"`
	Faults   []Fault   `json:"faults,omitempty"`
	Sections []Section `json:"sections,omitempty"` // of fields
	Pictures *Pictures `json:"pictures,omitempty"`
	Steps    []Step    `json:"steps,omitempty"`
	Figures  []string  `json:"figures,omitempty"` // SVG
	Outputs  []Output  `json:"outputs,omitempty"`
	Pages    []File    `json:"pages,omitempty"`    // of the document among the files, as SVG, named by their number
	Students []Student `json:"students,omitempty"` // of a class
	Advised  []Mend    `json:"advised,omitempty"`  // of what was made: settings to take over
	Warnings []Fault   `json:"warnings,omitempty"` // of what was made
	Report   string    `json:"report,omitempty"`
	Notes    []string  `json:"notes,omitempty"` // what to know of the files, a line each
	Print    string    `json:"print,omitempty"` // the file to print at actual size
	Files    []File    `json:"files,omitempty"`
	Shop     *string   `json:"shop,omitempty"`   // the shop file, where it is new
	Record   *string   `json:"record,omitempty"` // the record of the case, where it is new
	Offers   []Offer   `json:"offers,omitempty"` // of shop
	Error    string    `json:"error,omitempty"`  // a failure of our own
}

// File is a file that was made; its bytes go beside the response.
type File struct {
	Name string `json:"name"`
	Type string `json:"type"` // its media type
	Size int    `json:"size"`
	Data []byte `json:"-"`
}

// Desk answers requests. It keeps the last case worked out, so that a picture of it need
// not work it out again.
type Desk struct {
	text, source string
	shop         string
	worked       *pipeline.Case
	err          error
}

// JSON answers a request in JSON with a response in JSON, and the bytes of its files and
// then of its pages.
func (d *Desk) JSON(ctx context.Context, request []byte, progress pipeline.Progress) (response []byte, files [][]byte) {
	var q Request
	var a Response
	if err := json.Unmarshal(request, &q); err != nil {
		a.Error = "no request: " + err.Error()
	} else {
		a = d.Answer(ctx, q, progress)
	}
	for _, list := range [][]File{a.Files, a.Pages} {
		for i := range list {
			list[i].Size = len(list[i].Data)
			files = append(files, list[i].Data)
		}
	}
	response, err := json.Marshal(a)
	if err != nil {
		panic("a response is always JSON: " + err.Error())
	}
	return response, files
}

// Answer answers a request. What panics is told as an error: the page must not lose what
// was typed.
func (d *Desk) Answer(ctx context.Context, q Request, progress pipeline.Progress) (a Response) {
	defer func() {
		if p := recover(); p != nil {
			a = Response{Error: fmt.Sprintf("%s failed: %v", q.Do, p)}
		}
	}()
	if q.Source == "" {
		q.Source = "job.toml"
	}
	var err error
	switch q.Do {
	case "fields":
		unit := geometry.MM
		if q.Unit == geometry.IN.String() {
			unit = geometry.IN
		}
		a.Sections = plainSections(unit)
	case "typeface":
		a.Files = typeface()
	case "new":
		var text []byte
		text, _, err = pipeline.New{Full: q.Full, Example: q.Example, Flags: flagsOf(q.Flags)}.Text()
		if err == nil {
			d.open(&a, q, string(text))
		}
	case "open":
		if q.Data != nil {
			q.Text = string(q.Data)
		}
		d.open(&a, q, q.Text)
	case "set":
		var text []byte
		text, err = jobfile.Changed(q.Source, []byte(q.Text), q.Changes)
		if err == nil {
			d.open(&a, q, string(text))
		}
	case "pictures":
		err = d.pictures(&a, q)
	case "steps":
		err = d.steps(&a, q)
	case "figures":
		err = d.figures(&a, q)
	case "measuring":
		var picture []byte
		if picture, err = jobOf(q).MeasurePicture(q.Name); err == nil {
			a.Figures = []string{string(picture)}
		}
	case "outputs":
		a.Outputs = outputsOf()
	case "settings":
		err = a.settings(q)
	case "shop":
		err = a.shopOf(q)
	case "add":
		err = a.addToShop(q)
	case "adopt":
		err = a.adopt(q)
	case "untake":
		err = a.untake(ctx, q)
	case "make":
		err = d.make(ctx, &a, q, progress)
	case "everything":
		err = d.everything(ctx, &a, q, progress)
	case "roster":
		err = lookAtRoster(ctx, &a, q, progress)
	case "class":
		err = makeClass(ctx, &a, q, progress)
	default:
		a.Error = fmt.Sprintf("unknown request %.40q", q.Do)
	}
	a.refuse(err, geometry.MM)
	return a
}

// open tells of a job file.
func (d *Desk) open(a *Response, q Request, text string) {
	a.Text, q.Text = &text, text
	state, err := jobfile.Read(q.Source, []byte(text))
	if err != nil {
		a.refuse(err, geometry.MM)
		a.Answer = &Answer{Verdict: Refused, Says: "This job file can't be read."}
		return
	}
	a.State = stateOf(state)
	c, err := d.work(q)
	a.refuse(err, state.Unit)
	for i, f := range a.Faults {
		a.Faults[i].Empty = strings.HasPrefix(f.Key, "book") && state.Values[f.Key] == ""
	}
	if err != nil && len(a.Faults) == 0 {
		a.Answer = &Answer{Verdict: Refused, Says: "This could not be worked out."}
		return
	}
	a.Answer = answerOf(c, a.Faults)
	a.Answer.Warnings = faultsOf(c.Warnings, state.Unit)
}

// work works a job out, or has it already.
func (d *Desk) work(q Request) (*pipeline.Case, error) {
	if d.worked == nil || d.text != q.Text || d.source != q.Source || d.shop != q.Shop {
		c, err := jobOf(q).Case()
		d.text, d.source, d.shop, d.worked, d.err = q.Text, q.Source, q.Shop, &c, err
	}
	return d.worked, d.err
}

// jobOf returns the job of a request.
func jobOf(q Request) pipeline.Job {
	return pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{q.job()}, Shop: q.shop()}}
}

// flagsOf returns the flags of a new job.
func flagsOf(values map[string]string) (flags []jobfile.Flag) {
	for _, key := range jobfile.NewKeys {
		if v, ok := values[key]; ok {
			flags = append(flags, jobfile.Flag{Name: key, Key: key, Value: v})
		}
	}
	return flags
}

// media returns the media type of a file.
func media(name string) string {
	for end, of := range map[string]string{".zip": "application/zip", ".pdf": "application/pdf", ".svg": "image/svg+xml", ".json": "application/json", ".csv": "text/csv", ".ics": "text/calendar", ".md": "text/markdown", ".html": "text/html", ".toml": "application/toml"} {
		if strings.HasSuffix(name, end) {
			return of
		}
	}
	return "text/plain"
}
