package fit

import "math"

// Effect is what one error does to one clearance: how far it shifts it on
// average, the standard deviation, and the range when the error keeps within its
// plus-or-minus. Flat: any value of the range is as likely as any other.
type Effect struct {
	Mean, SD  Length
	Low, High Length
	Flat      bool
}

// Moves gives how far the error can move the clearance, from end to end.
func (e Effect) Moves() Length { return e.High - e.Low }

// Error is something that can be off, and what it does to each clearance of a
// report, in the order of Report.Gaps.
type Error struct {
	Name      string
	Key       string // of the job file, that says how far
	PlusMinus Length // zero where there is a range instead
	Low, High Length // the range of a thickness known by its trade name only, else zero
	Effects   []Effect
}

// sym gives the effect of a normal error within plus or minus l, that counts so
// many times.
func sym(l Length, counts float64) Effect {
	w := l * Length(math.Abs(counts))
	return Effect{SD: w / 2, Low: -w, High: w}
}

// times gives the effect of several independent errors alike.
func (e Effect) times(n int) Effect {
	k := Length(n)
	e.Mean, e.Low, e.High = e.Mean*k, e.Low*k, e.High*k
	e.SD *= Length(math.Sqrt(float64(n)))
	return e
}

// plus gives the effect of two independent errors.
func (e Effect) plus(f Effect) Effect {
	return Effect{Mean: e.Mean + f.Mean, SD: rss(e.SD, f.SD), Low: e.Low + f.Low, High: e.High + f.High}
}

// least gives the effect of the smallest of n pieces, each within plus or minus
// l: the narrowest wall is the one that counts.
func least(n int, l Length) Effect {
	if l == 0 {
		return Effect{}
	}
	m := smallest(n, l/2)
	return Effect{Mean: m.mean, SD: m.sd, Low: -l, High: l}
}

// pinches gives the effect of an error that takes room whichever way it goes.
func pinches(l Length) Effect {
	m := oneSided(l / 2)
	return Effect{Mean: -m.mean, SD: m.sd, Low: -l}
}

// bows gives the effect of a side that bows in or out at its middle: in takes
// room, out gives none, since the walls hold its edges. Half of the errors of a
// normal distribution are one way.
func bows(l Length) Effect {
	sd := l / 2
	mean := sd / Length(math.Sqrt(2*math.Pi))
	return Effect{Mean: -mean, SD: Length(math.Sqrt(max(0, float64(sd*sd/2-mean*mean)))), Low: -l}
}

// opposed gives the effect of a true length that is less than drawn: taken the
// other way and that many times.
func (t truth) opposed(drawn Length, counts float64) Effect {
	k := Length(counts)
	e := Effect{Mean: k * (t.mean - drawn), SD: t.sd * Length(math.Abs(counts)), Low: k * (t.low - drawn), High: k * (t.high - drawn)}
	if e.Low > e.High {
		e.Low, e.High = e.High, e.Low
	}
	return e
}
