package job

import "slices"

// Settings returns the settings of a job of any kind: clearances, errors and
// limits.
func (c *Common) Settings() Settings {
	room := &c.Clearance
	return append(Settings{
		LengthOf("clearance.height", "the room above the book", 0, 25, &room.Height),
		LengthOf("clearance.width", "the room beyond the fore-edge", 0, 25, &room.Width),
		LengthOf("clearance.thickness", "the room beside the book", 0, 25, &room.Thickness),
	}, c.FitSettings()...)
}

// FitSettings returns those of Settings that are not clearances, for a kind that
// has its own keys for these.
func (c *Common) FitSettings() Settings {
	u := &c.Uncertainty
	return Settings{
		LengthOf("uncertainty.measuring", "plus or minus of a reading of the book, beside its step", 0, 5, &u.Measuring),
		LengthOf("uncertainty.reading_step", "the step readings of the book are rounded to", 0, 5, &u.ReadingStep),
		WordOf("uncertainty.settings", "whether pieces that share a size are cut at one setting or each by itself", []string{OneSetting, EachBySelf}, &u.Settings),
		LengthOf("uncertainty.cutting", "plus or minus of a cut size", 0, 5, &u.Cutting),
		LengthOf("uncertainty.repeat", "plus or minus from piece to piece at one setting", 0, 5, &u.Repeat),
		LengthOf("uncertainty.placing", "plus or minus of a wall on its line", 0, 5, &u.Placing),
		LengthOf("uncertainty.squareness", "plus or minus of an edge at its far end", 0, 5, &u.Squareness),
		LengthOf("uncertainty.board", "plus or minus of the thickness of board or card", 0.005, 2, &u.Board).OrAuto(),
		LengthOf("uncertainty.lining", "plus or minus of the lining's thickness", 0, 1, &u.Lining),
		LengthOf("uncertainty.cloth", "plus or minus of the cloth's thickness", 0, 1, &u.Cloth),
		LengthOf("uncertainty.side_paper", "plus or minus of the side paper's thickness", 0, 1, &u.SidePaper),
		LengthOf("uncertainty.warp", "plus or minus of a side at its middle", 0, 5, &u.Warp),
		LengthOf("fit.tight", "the least room that lets the book slide", 0, 5, &c.Limits.Tight),
		LengthOf("fit.loose_height", "the most room in height before the book is loose", 0.5, 25, &c.Limits.LooseHeight),
		LengthOf("fit.loose_thickness", "the most room in thickness before the book is loose", 0.5, 25, &c.Limits.LooseThickness),
		PercentOf("fit.swell", "how much thicker a book may grow when damp", 0, 20, &c.Limits.Swell),
	}
}

// Settings are the settings of a job, in the order of a job file.
type Settings []Setting

// Lengths returns those that hold a length.
func (s Settings) Lengths() Settings { return s.those(func(s Setting) bool { return s.Length != nil }) }

// Words returns those that hold one of a few words.
func (s Settings) Words() Settings { return s.those(func(s Setting) bool { return s.Word != nil }) }

// Numbers returns those that hold a number or a share in percent.
func (s Settings) Numbers() Settings { return s.those(func(s Setting) bool { return s.Number != nil }) }

func (s Settings) those(hold func(Setting) bool) Settings {
	return slices.DeleteFunc(slices.Clone(s), func(one Setting) bool { return !hold(one) })
}

// Find returns the setting of a key.
func (s Settings) Find(key string) (found Setting, ok bool) {
	i := slices.IndexFunc(s, func(one Setting) bool { return one.Key == key })
	if i < 0 {
		return Setting{}, false
	}
	return s[i], true
}
