package pdf

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
)

// The parts of a page that the PDF library wrote.
var (
	contentsPattern = regexp.MustCompile(`/Contents([^/>]*)`)
	mediaPattern    = regexp.MustCompile(`/MediaBox *\[[^\]]*\]`)
	dictPattern     = regexp.MustCompile(`(?s)<<(.*)>>`)
)

// finish adds to the library's file what it has no call for: its pages with what
// is on them, nested bookmarks and page labels, the document's title and date,
// and viewer preferences that ask the print dialogue for actual size
// (PrintScaling None, 12.2) and show the title.
func (d *Document) finish(bones skeleton) ([]byte, error) {
	u, err := newUpdate(bones.data)
	if err != nil {
		return nil, err
	}
	dict := dictPattern.FindStringSubmatch(u.object(bones.page))
	if dict == nil || !contentsPattern.MatchString(dict[1]) || !mediaPattern.MatchString(dict[1]) {
		return nil, errors.New("the library's page is not as expected")
	}
	var kids []string
	for i, p := range d.pages {
		if p.object = bones.page; i > 0 {
			p.object = u.reserve()
		}
		kids = append(kids, fmt.Sprintf("%d 0 R", p.object))
		entries := contentsPattern.ReplaceAllString(strings.TrimSpace(dict[1]), fmt.Sprintf("/Contents %d 0 R\n", u.stream(p.packed)))
		size := append(number(nil, pt(p.width), decimals), ' ')
		size = number(size, pt(p.height), decimals)
		u.dict(p.object, mediaPattern.ReplaceAllString(entries, fmt.Sprintf("/MediaBox [0 0 %s]", size)))
	}
	if len(kids) > 0 {
		u.dict(2, fmt.Sprintf("/Type /Pages /Count %d /Kids [%s]", len(kids), strings.Join(kids, " ")))
	}
	catalog := []string{
		"/Type /Catalog /Pages 2 0 R /Lang (en)",
		"/ViewerPreferences << /PrintScaling /None /PickTrayByPDFSize true /DisplayDocTitle true >>",
	}
	if len(d.bookmarks) > 0 {
		catalog = append(catalog, fmt.Sprintf("/PageMode /UseOutlines /Outlines %d 0 R", d.outline(u)))
	}
	if len(d.labels) > 0 {
		catalog = append(catalog, d.pageLabels())
	}
	u.dict(1, strings.Join(catalog, "\n"))
	info := u.reserve()
	u.dict(info, d.info())
	return u.bytes(info), nil
}

// info gives the entries of the document information dictionary (14.3.3).
func (d *Document) info() string {
	entries := "/Title " + textString(d.title) + " /Creator (forel) /Producer (forel)"
	if !d.date.IsZero() {
		date := d.date.Format("20060102150405")
		entries += fmt.Sprintf(" /CreationDate (D:%sZ) /ModDate (D:%sZ)", date, date)
	}
	return entries
}
