// Package page is what the page in a browser asks: a request goes in and a response comes
// out, both JSON (RFC 8259). It keeps no job between requests that a request does not
// bring: the state of the page is the text of the job file, the same that the command
// line reads, and every answer is worked out from that text.
//
// # Requests
//
// A Request says what to Do:
//
//	fields    the table of every key of a job file, with its words, range and default
//	typeface  the typeface of the prints, as files
//	new       the text of a new job file, by the flags that forel new takes
//	open      reads Text: what it sets, and whether the book will fit
//	set       makes Changes to Text, returns the new text, and answers as open does
//	pictures  the finished case, as SVG
//	steps     how the case is made: each step with its words and checks
//	figures   the pictures of a Step, as SVG
//	measuring how what is measured is measured (Name: height, width, thickness, pressing, boards,
//	          sheets), a picture as SVG with the book of Text, as far as it can be read
//	outputs   the table of what can be made, each with its settings
//	settings  those of one of them (Name), for this very case: what is measured of it
//	make      runs a command (Name: templates, handout, cutlist, ...) with settings (Flags)
//	          and returns its files, and the pages of its document (Pages), as SVG
//	shop      tells of the shop file (Shop): what it has, what it offers for each material, its faults
//	add       adds a material of Text to it (Name: the key of its thickness)
//	adopt     makes Changes to its habits, and says what was there before (Notes)
//	untake    takes its last taking back
//	everything  all that can be made of a job with the usual settings, as one zip
//	roster    reads a roster (Data): every student's case as a picture, with its fit
//	class     the files of a class, as forel class writes them: one zip, and print.pdf
//
// open, set and pictures are quick and run at every key press. The others take
// longer and belong into a second worker, which can be ended.
//
// Every request may bring a shop file (Shop), which the job then takes from; make and
// everything the record of the case (Record), lessons all records (Records), and an Output
// of several cases the job files of the others (Others). Where one
// of them is to be another from now on, the response has its new text.
//
// # Responses
//
// Faults tells what is wrong with the request or its text, each fault with the key of its
// blank and, where there is one, a mend: what to set that key to, and words for a button.
// A job that is at fault still has its State, so that its blanks can be filled in; it has
// no pictures, and the page keeps the last ones, greyed.
//
// Lengths for people are text in the unit of the job. Numbers that end in MM are
// millimetres.
//
// # In the browser
//
// The worker (cmd/page/worker) answers {id, request, files} with {id, response, files}:
// response is the JSON of a Response, files holds the bytes of its Files and then of its Pages, in their order.
// Until then there may be messages {id, progress}, from 0 to 1.
package page
