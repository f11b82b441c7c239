// Package work is how long the steps of a case take: work, and drying between it, which
// leaves hands free. Which tasks a step has stands with its kind; how long each
// takes stands in one table here. Durations are common practice, no source.
package work

import (
	"time"

	"forel/geometry"
)

// Task is something that takes time: work, or drying. It is the name of its time in a
// job file.
type Task string

// What is done at the bench. Each takes its time once for each thing it is done to.
const (
	Measure  Task = "measure"    // a book, or a material
	Print    Task = "print"      // a set of templates
	CutBoard Task = "cut_board"  // a board
	CutSheet Task = "cut_sheet"  // a piece of cloth or paper
	CutFace  Task = "cut_design" // a piece by its printed design
	CutHole  Task = "cut_hole"   // a thumb hole in a board
	CutCard  Task = "cut_card"   // the outline of a case of card
	Score    Task = "score"      // a fold of card
	Fold     Task = "fold"       // a fold, or a joint that is creased
	Try      Task = "try"        // the book, or a part in another
	Paste    Task = "paste"      // a lining, or a board onto its covering
	Join     Task = "join"       // an edge that is glued and held
	Cover    Task = "cover"      // a face that is covered
	TurnIn   Task = "turn_in"    // a flap or an edge of the covering
	HoleTabs Task = "hole_tabs"  // a thumb hole that is covered
	Trim     Task = "trim"       // a lining that is trimmed, an edge that is sanded
	Press    Task = "press"      // putting under weight, and taking out
)

// What must dry.
const (
	GlueSet     Task = "glue_set"     // glue, until it holds
	GlueDry     Task = "glue_dry"     // glue between boards, or card
	CoveringDry Task = "covering_dry" // cloth
	PaperDry    Task = "paper_dry"    // paper on a case
	LiningDry   Task = "lining_dry"   // linings
	LastDry     Task = "last_dry"     // the finished thing, in its shape
)

// Overnight is how long something is left overnight (common practice, no source).
const Overnight = 12 * time.Hour

// TaskTime is how long a task usually takes.
type TaskTime struct {
	Task   Task
	Dries  bool // it is drying: hands are free meanwhile
	What   string
	Usual  time.Duration
	Pieces string // what is counted; empty for drying
}

// TaskTimes are the usual times of one pair of practised but unhurried hands (common
// practice, no source): where a maker has times of their own, these go.
var TaskTimes = []TaskTime{
	{Measure, false, "measuring a book or a material, several readings", 4 * time.Minute, "thing measured"},
	{Print, false, "printing templates, checking their rulers, joining sheets", 15 * time.Minute, "set of templates"},
	{CutBoard, false, "marking out and cutting a board", 5 * time.Minute, "board"},
	{CutSheet, false, "marking out and cutting a piece of cloth or paper", 3 * time.Minute, "piece"},
	{CutFace, false, "laying a drawing on a printed design and cutting round it", 8 * time.Minute, "piece"},
	{CutHole, false, "cutting a thumb hole and sanding it", 8 * time.Minute, "board with a hole"},
	{CutCard, false, "cutting the outline and the slits of a case of card", 15 * time.Minute, "case"},
	{Score, false, "scoring or crushing a fold of card", 2 * time.Minute, "fold"},
	{Fold, false, "folding, or creasing a joint", time.Minute, "fold"},
	{Try, false, "trying the book or a part, and looking at what the check says", 5 * time.Minute, "try"},
	{Paste, false, "pasting a lining or a board and rubbing it down", 5 * time.Minute, "piece"},
	{Join, false, "gluing an edge, setting it square and holding it", 6 * time.Minute, "joint"},
	{Cover, false, "gluing a covering to a face and rubbing it down", 6 * time.Minute, "face"},
	{TurnIn, false, "turning in a flap or an edge", 3 * time.Minute, "flap"},
	{HoleTabs, false, "covering the edge of a thumb hole and turning in its tabs", 12 * time.Minute, "hole"},
	{Trim, false, "trimming a lining, or sanding edges", 2 * time.Minute, "piece"},
	{Press, false, "putting something under a weight, and taking it out", 5 * time.Minute, "pile"},
	{GlueSet, true, "glue, until it holds", 10 * time.Minute, ""},
	{GlueDry, true, "glue between boards or card", 2 * time.Hour, ""},
	{CoveringDry, true, "a covering of cloth", 2 * time.Hour, ""},
	{PaperDry, true, "a covering of paper", Overnight, ""},
	{LiningDry, true, "linings", Overnight, ""},
	{LastDry, true, "the finished thing, in its shape", Overnight, ""},
}

// What is said wherever times are shown, and wherever drying is.
const (
	TimesNote = "Times are habits, not facts (common practice, no source): write your own under [times] in the job file."
	DryNote   = "Nothing is dry because a time is over. Touch it: paper that is cold to the cheek is still damp, and waits. In a damp room all takes longer."
)

// Times are how long each task takes, once.
type Times map[Task]time.Duration

// UsualTimes returns those of TaskTimes.
func UsualTimes() Times {
	t := Times{}
	for _, u := range TaskTimes {
		t[u.Task] = u.Usual
	}
	return t
}

// Of returns how long the work of spells takes, drying left out.
func (t Times) Of(spells ...Spell) time.Duration {
	var sum time.Duration
	for _, s := range spells {
		for _, l := range s.Work {
			sum += time.Duration(l.Count) * t[l.Task]
		}
	}
	return sum
}

// Drying returns how long a spell must dry after its work; 0 where nothing must.
func (t Times) Drying(s Spell) time.Duration { return t[s.Dries.As] }

// Spell is work that is done at a stretch, and what must dry before the next.
type Spell struct {
	Says  string // what is done, where its step has several spells: "trim them flush"
	Work  []Labour
	Dries Drying
	Wet   bool // the next follows at once, while glue or paste is wet
}

// Labour is a task that is done to Count things.
type Labour struct {
	Task  Task
	Count int
}

// Drying is what must dry after a spell.
type Drying struct {
	As    Task   // its time; empty: nothing must dry
	What  string // "the paste of the linings"
	Under string // "boards and a weight"; empty: nothing lies on it
}

// Words tells what dries, and beneath what.
func (d Drying) Words() string {
	if d.Under == "" {
		return d.What
	}
	return d.What + ", under " + d.Under
}

// Do returns a spell of a task that is done to some things.
func Do(task Task, count int) Spell { return Spell{}.And(task, count) }

// And returns the spell with one more task, where there is anything to do it to.
func (s Spell) And(task Task, count int) Spell {
	if count > 0 {
		s.Work = append(s.Work[:len(s.Work):len(s.Work)], Labour{task, count})
	}
	return s
}

// Dry returns the spell with what must dry after it; under names what lies on it.
func (s Spell) Dry(as Task, what, under string) Spell {
	s.Dries = Drying{as, what, under}
	return s
}

// As returns the spell with what is done in it.
func (s Spell) As(says string) Spell {
	s.Says = says
	return s
}

// WhileWet returns the spell with the next one following at once.
func (s Spell) WhileWet() Spell {
	s.Wet = true
	return s
}

// Counted returns how many are cut of the pieces that are asked for.
func Counted(pieces []geometry.Piece, ok func(geometry.Piece) bool) int {
	n := 0
	for _, p := range pieces {
		if ok(p) {
			n += p.Count
		}
	}
	return n
}

// CountedOf returns how many pieces are cut of a material.
func CountedOf(pieces []geometry.Piece, of geometry.Material) int {
	return Counted(pieces, func(p geometry.Piece) bool { return p.Material == of })
}

// MaterialsIn returns how many materials pieces are cut from.
func MaterialsIn(pieces []geometry.Piece) int {
	of := map[geometry.Material]bool{}
	for _, p := range pieces {
		of[p.Material] = true
	}
	return len(of)
}
