package handout

// book is the document being made.
type book struct {
	Options
	Subject
	pages
	palette palette
	page    int
	total   int
}
