package timetable

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/emersion/go-ical"

	"forel/geometry/wording"
	"forel/geometry/work"
)

// local is a time of RFC 5545, 3.3.5, form 1: of no zone, as the clock on the wall has it.
const local = "20060102T150405"

// Calendar returns the timetable as iCalendar (RFC 5545): an event for each step of a
// case, one for what then dries, in which nobody is busy, and one for when the case can be
// handed over. Events of the same step have the same UID whenever the work begins, so that
// a calendar moves them. stamp is when the file was made; zero: when the work begins.
func (t Table) Calendar(stamp time.Time) ([]byte, error) {
	if stamp.IsZero() {
		stamp = t.Entries[0].From
	}
	c := ical.NewCalendar()
	c.Props.SetText(ical.PropVersion, "2.0")
	c.Props.SetText(ical.PropProductID, "-//forel//timetable//EN")
	seen := map[string]int{}
	event := func(of int, what, says string, from, to time.Time, free bool) {
		name := wording.OneLine(t.Cases[of].Name)
		e := ical.NewComponent(ical.CompEvent)
		id := fmt.Sprintf("%d\n%s\n%s", of, name, what)
		seen[id]++
		e.Props.SetText(ical.PropUID, fmt.Sprintf("%.16x@forel", sha256.Sum256(fmt.Appendf(nil, "%s\n%d", id, seen[id]))))
		set(e, ical.PropDateTimeStamp, stamp.UTC().Format(local)+"Z")
		set(e, ical.PropDateTimeStart, from.Format(local))
		if to.After(from) { // DTEND must be later (3.8.2.2)
			set(e, ical.PropDateTimeEnd, to.Format(local))
		}
		e.Props.SetText(ical.PropSummary, what+" ("+name+")")
		if says != "" {
			e.Props.SetText(ical.PropDescription, says)
		}
		if free {
			set(e, ical.PropTransparency, "TRANSPARENT")
		}
		c.Children = append(c.Children, e)
	}
	for _, l := range t.lines() {
		event(l.cases[0], l.title, t.dries(l), l.from, l.to, false)
		if !l.dry.IsZero() {
			event(l.cases[0], "Drying: "+l.dries.What, strings.TrimSpace(l.dries.Under+"\n"+work.DryNote), l.to, l.dry, true)
		}
	}
	for i, r := range t.Ready {
		event(i, "To be handed over", strings.Join(notes, "\n"), r.Over, r.Over, true)
	}
	var b bytes.Buffer
	if err := ical.NewEncoder(&b).Encode(c); err != nil {
		return nil, err
	}
	return folded(b.Bytes()), nil
}

// set sets a property that is no text.
func set(e *ical.Component, name, value string) {
	p := ical.NewProp(name)
	p.Value = value
	e.Props.Set(p)
}

// longestLine is how many octets a line has at most, its break not counted (RFC 5545, 3.1).
const longestLine = 75

// folded breaks lines that are longer, never within a character. The library does not.
func folded(text []byte) []byte {
	var b bytes.Buffer
	long := 0
	for len(text) > 0 {
		_, n := utf8.DecodeRune(text)
		switch {
		case text[0] == '\r' || text[0] == '\n':
			long = 0
		case long+n > longestLine:
			b.WriteString("\r\n ")
			long = 1 + n
		default:
			long += n
		}
		b.Write(text[:n])
		text = text[n:]
	}
	return b.Bytes()
}
