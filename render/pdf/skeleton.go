package pdf

import (
	_ "embed" // for the usual skeleton
	"sync"

	"github.com/signintech/gopdf"

	"forel/render/typeset"
)

// skeleton is the PDF library's file of one empty page and the typeface.
type skeleton struct {
	data []byte
	page int // the number of the page's object
}

// families are the library's names of the regular and the bold, which are F1
// and F2 on pages.
var families = [2]string{"regular", "bold"}

// usualSigns are the characters that most documents ask for, beside ASCII.
const usualSigns = "°±×·¼½¾–‘’“”•…⅛⅜⅝⅞→−"

// usual are the usual characters as a string.
var usual = sync.OnceValue(func() string {
	var u used
	for r := ' '; r <= '~'; r++ {
		u.add(r)
	}
	for _, r := range usualSigns {
		u.add(r)
	}
	return string(u.runes())
})

// usualFile is the skeleton of the usual characters, as the library made it; a
// test writes it again with -update. It is here since most runs would make
// nothing else.
//
//go:embed skeleton.pdf
var usualFile []byte

// usualPage is the number of its page.
const usualPage = 15

// skeletons are others made before. More than mostKept are not kept.
var skeletons = struct {
	sync.Mutex
	by map[[2]string]skeleton
}{by: map[[2]string]skeleton{}}

const mostKept = 16

// skeletonWith gives a file whose fonts, regular and bold, have the characters
// given, and the usual ones, so that most documents share one.
func skeletonWith(chars [2]used) (skeleton, error) {
	var key [2]string
	for weight := range chars {
		for _, r := range usual() {
			chars[weight].add(r)
		}
		key[weight] = string(chars[weight].runes())
	}
	if key == [2]string{usual(), usual()} {
		return skeleton{usualFile, usualPage}, nil
	}
	skeletons.Lock()
	s, ok := skeletons.by[key]
	skeletons.Unlock()
	if ok {
		return s, nil
	}
	s, err := newSkeleton(key)
	if err != nil {
		return skeleton{}, err
	}
	skeletons.Lock()
	defer skeletons.Unlock()
	if len(skeletons.by) < mostKept {
		skeletons.by[key] = s
	}
	return s, nil
}

func newSkeleton(chars [2]string) (s skeleton, err error) {
	var p gopdf.GoPdf
	p.Start(gopdf.Config{Unit: gopdf.UnitPT, PageSize: gopdf.Rect{W: 1, H: 1}})
	for weight, data := range [2][]byte{typeset.Regular, typeset.Bold} {
		if err := p.AddTTFFontData(families[weight], data); err != nil {
			return s, err
		}
	}
	s.page = p.GetNextObjectID()
	p.AddPageWithOption(gopdf.PageOption{PageSize: &gopdf.Rect{W: 1, H: 1}})
	for weight, family := range families {
		if err := p.SetFont(family, "", 1); err != nil {
			return s, err
		}
		// Measuring tells the library what the font it embeds is to have.
		if _, err := p.MeasureTextWidth(chars[weight]); err != nil {
			return s, err
		}
	}
	s.data, err = p.GetBytesPdfReturnErr()
	return s, err
}
