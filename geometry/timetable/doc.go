// Package timetable tells what to do when: the work of one case or of several, by one pair
// of hands, in the hours that a bench is open. What dries goes on drying meanwhile, also
// when the bench is closed.
//
// Work is not put down once begun, unless it is longer than the bench is ever open at a
// stretch. The steps of a case keep their order. Times of day are those of the bench's
// own clock: they have no zone.
package timetable
