package main

import (
	"fmt"

	"forel/cmd/pipeline"
	"forel/geometry/wording"
)

// What the help of each command says: usage, what it does, an example.

const aboutShop = `
usage: forel shop [FILE] [flags]

Writes a shop file to begin with, shop.toml where no name is given: what you have,
for all your jobs. It tells of materials by name, with their thickness as measured and
their sheets, of printers, and of your habits: any section of a job file but the book.
A job beside it then says

  board = "grey board 2 mm"

and takes all of it from there. What the job says itself goes before. A file that is
there already is left as it is.

forel looks for shop.toml beside the job, and nowhere else; --shop names another. With
--list the names of what a shop file has are printed, and with --names those that a key
of a job file can have, which is what a shell completes by.

example:
  forel shop
  forel shop --list
  forel templates case.toml --shop ../shop.toml --out case/
`

const aboutPlain = `
usage: forel plain [JOB.toml] [flags]

Prints the job with all that it takes from the shop file as one job file, which makes
the same case without it: for somebody who does not have your shop. Flags that change
the job are in it too.

example:
  forel plain case.toml > for-you.toml
  forel plain case.toml --set board='grey board 2 mm' > other.toml
`

const aboutMeasure = `
usage: forel measure [JOB.toml] [flags]

Writes measure.pdf into a folder: how to measure a book and the materials for its
case, each with a picture, and beside it blanks for several readings, of which
the largest is ringed. It needs no job. With one the pictures show its book, as
far as that is measured, and there are blanks for each of its books and for what
its kind is made of; each has the line of the job file that takes it.

example:
  forel measure --out measure/
  forel measure case.toml --paper letter
  forel measure --set kind=chemise --volumes 3 --both-units
`

const aboutChoose = `
usage: forel choose [JOB.toml] [flags]

Advises what to make for a book: of boards, of card, a chemise in a case, a
drop-spine box; of how thick a board, by an estimate of how it bends; and whether
to have a thumb hole or a ribbon. Each piece of advice has its reasons, each with
its source or the words that it is common practice. At the end stand the
lines of a job file that it comes to; --format toml prints the whole file, a new
one or the job with them. Of a job its books and unit count.

example:
  forel choose --height 221 --width 148.5 --thickness 32 --weight "640 g"
  forel choose case.toml --use "handled daily" --condition fragile
  forel choose case.toml --use gift --format toml > next.toml
`

var aboutTemplates = `
usage: forel templates [JOB.toml] [flags]

Writes the templates into a folder: templates.pdf with every piece at true size
on the paper your printer takes, and one SVG drawing a piece in millimetres.
Print the PDF at actual size (100 %) and measure the rulers on its pages; where
they are a little off, forel gauge has them corrected. In a drawing lines are in
layers: Inside-cuts, Cutting, Creasing, Positions, Legend; --line draws it in
hairlines for a machine. The PDF has no date unless
SOURCE_DATE_EPOCH is set, to seconds since 1970.

` + careful(wording.Machine) + `

example:
  forel templates case.toml --out case/
  forel templates --height 221 --width 148.5 --thickness 32 --out case/
`

const aboutGauge = `
usage: forel gauge [JOB.toml] [flags]

Writes a sheet that tells how true your printer is, gauge.pdf and gauge.svg: a
rule across the sheet and one along it, in millimetres and inches. Print it at
actual size (100 %), measure both rules with a steel rule and type what they
measured into the job file:

  [print]
  measured_across = "199.2 mm"
  measured_along = "200.4 mm"

The templates and the paper strips of forel fit, which have to be true, are then
corrected by it, and their pages state it. The sheet itself is not, so that it can be measured again; with --check
it is, as gauge-check.pdf, to see that the rules are true now.

Two pairs of crosses show whether the paper is fed squarely: their diagonals are
alike then. The sheet says what a difference means.

Paper and margins are those of the job file. Without one the margins are 4.5 mm,
so that a rule of 200 mm finds room across A4 and Letter. A printer that can't
print so near the edge leaves ends out: type its margins into [print] as well.

example:
  forel gauge --out gauge/
  forel gauge --paper letter --units in
  forel gauge case.toml --check
`

const aboutCutlist = `
usage: forel cutlist [JOB.toml] [flags]

Prints every piece with its size, what the case measures inside and outside,
and how to check the fit. As text and Markdown in your unit, rounded; as JSON
and CSV in millimetres, exact to 0.001.

example:
  forel cutlist case.toml
  forel cutlist --height 221 --width 148.5 --thickness 32 --format json
`

const aboutHandout = `
usage: forel handout [JOB.toml] [flags]

Writes handout.pdf into a folder, for someone who makes the case: the worksheet
with every piece and its size, drawings of the pieces, the steps in order, each
with a figure drawn from this job, when to dry, what to check, cautions. With the
prints of forel templates it is all that is needed.

With --short it is four pages at most: the worksheet, the steps, each with one figure
where there is room, checks and cautions; on sheets smaller than A4 or Letter it may be
more.

With --blank it writes worksheet.pdf instead: the worksheet empty, with the rule
of every line, to be filled in by hand. It needs no job; what --set says of the
kind of case counts, and --units. It has no sizes of a book, no title and no
figures: flags that give them are refused.

example:
  forel handout case.toml --out case/
  forel handout --blank --units in --out case/
  forel handout --blank --set construction=card
`

var aboutStock = fmt.Sprintf(`
usage: forel stock [JOB.toml ...] [flags]

Lays the pieces of all jobs out on the sheets and rolls that [[stock]] in the job
files tells of, for a knife and straightedge or a board shear: every cut runs
edge to edge. Prints what to buy, and with --out writes stock.pdf (the shopping
list, a drawing of each sheet, the order of the cuts with the fence setting of
each) and a drawing of each sheet as SVG. A material without [[stock]] is laid
out on a usual size.

Boards are cut to size, each side at the fence: none is what other cuts leave.
What is trimmed later, linings and cloth, is rounded up to 5 mm or 1/4 in, so that
many pieces are cut at one setting; --exact cuts it to size.

Sheets with a count in the shop file (see forel shop) are what you have. --take takes
what the plan uses off them, and puts the offcuts worth keeping into the shop file, each
with a number; with --out it makes offcuts.pdf too, a label for each. Later plans lie on
offcuts first, where the grain allows. --undo takes the last taking back. Without
--take nothing is written into the shop file.

Fewest sheets count first, then fewest settings of the fence, then large
offcuts. --effort takes a number of steps (%d where it is left out), which gives
the same plan every time, or a time such as 20s, which may not. An interrupt ends
the search with the best plan until then.

%s

example:
  forel stock case.toml --out bench/
  forel stock class/*.toml --effort 20s --out bench/
  forel stock case.toml --take --on 2026-11-28 --out bench/
`, pipeline.StockSteps, careful(wording.Knife, wording.Shear))

const aboutOrder = `
usage: forel order [JOB.toml ...] [flags]
       forel order ROSTER.csv [--job JOB.toml] [flags]

Lists what is to be ordered for all jobs, from the plan that forel stock makes: sheets
by the name their supplier has for them, with size, thickness and grain, cloth in
lengths as shops cut it, adhesive by the area that is glued. There is a block for each
supplier. What [[stock]] counts, and a roll with a length, is there: it is used up
first and not ordered.

In [[stock]] supplier and ordered_as say who sells it and what it is called there;
sold_by is the step that lengths off a roll are cut in. [order] has what is spare, and
[adhesive] what you glue with. What a square metre of it takes is a usual figure
(common practice, no source) until you give your maker's own.

With --out it writes order.pdf, a page to print or to send.

example:
  forel order case.toml
  forel order case.toml other.toml --out order/
  forel order case.toml --format csv --set "order.spare=5 %"
`

const aboutQuote = `
usage: forel quote [JOB.toml ...] [flags]
       forel quote ROSTER.csv [--job JOB.toml] [flags]

Reckons what a case costs: material, what is spoilt of it, work step by step, lines of
your own, tax, and the price rounded as you like. Several jobs are reckoned together,
and each alone beside it: cases that share sheets are cheaper together.

Prices stand in [[stock]] and [adhesive], all else in [quote]: currency, hour,
spoilage, material (the "share" of the sheets that is used up, or "whole" sheets),
round_to, tax, tax_name, client, maker, valid, excluded. [[extra]] adds a line; below
zero it takes something off. What has no price is named, and the quote says that it is
not complete. Amounts are exact decimals, each line rounded to 0.01, halves up.

Tax is only arithmetic, at the rate that you type in: whether it is owed, and how much,
is for local rules and those who know them. How long steps take is a habit (common
practice, no source).

With --out it writes quote.pdf for the client, without your own figures, and
costing.pdf for you.

example:
  forel quote case.toml
  forel quote case.toml --set quote.hour=34 --set quote.currency=EUR --out quote/
  forel quote case.toml other.toml --format csv
`

var aboutCutter = `
usage: forel cutter [JOB.toml ...] --bed WIDTHxHEIGHT [flags]

Lays every piece of the jobs out on the bed of a laser or a drag knife, each
material on beds of its own, and writes an SVG drawing a bed in real
millimetres: board-1.svg, cloth-1.svg and so on. Lines are hairlines in layers by
what is done, in the order it is done: Creasing (never cut through), Inside-cuts
(slits and holes), Cutting (outlines). Folds of cloth and paper are left out, since
a machine that takes no heed of layers would cut them; so are those of corrugated
board, which are crushed and never cut. --creases says otherwise.
Pieces are turned by a quarter only where their grain allows. For the bed and its
distances a bare number is in the unit of the job, of the first where there are several. map.pdf is to print: each bed with the
numbers and names of its pieces, and which face of each is up.

A laser takes away a kerf. kerf-test.svg is a square with a slot: cut it from your
stock, measure both, and map.pdf tells what to give as --kerf. Outlines then grow
by half of it, and holes shrink, so that the pieces come out as they should. A drag
knife has none: leave it at 0; the offset of its blade is for its driver.

` + careful(wording.Machine) + `

example:
  forel cutter case.toml --bed 600x300 --kerf 0.18 --out cut/
  forel cutter case.toml other.toml --bed 24x12in --grain board=width --tabs 4
`

const aboutProve = `
usage: forel prove [JOB.toml] [flags]

Folds the case up from its flat pieces and reports what it finds: whether it is
sound, face by face what lies there, and the clearance left in the body and at
the mouth. A job that is not sound is refused with its faults.

With --out it draws the proof too, into the folder: proof.svg, all figures one
below the other, and proof.pdf, the same on pages. They show the case from
outside at an angle, then every face with its layers. They are figures, not at
true size: cut from the templates, not from them.

example:
  forel prove case.toml
  forel prove case.toml --out case/
  forel prove --height 221 --width 148.5 --thickness 32 --format json
`

const aboutFit = `
usage: forel fit [JOB.toml] [flags]

Follows the chain of dimensions from the measured book and materials to the
clearance that is left in the body and at the mouth. With what measuring,
cutting and materials can be off (the job's [uncertainty]) it tells in a few lines
whether the book fits, where it is tightest, what to do about it with the least
effort, and the checks to make at the bench.

With --all it tells the worst case, the chance of too tight and too loose in each
place, what eats the clearance, the chain of each dimension, all that can be done,
what is left if the board is really another that is sold by the same name, the
weight of the case and, where the job tells it, of the book, and each check in full.

With --out it draws the fit too, into the folder: fit-height.svg, fit-depth.svg
and fit-thickness.svg with the distributions, limits and chains, and fit.pdf with
all of it, the checks, and paper strips at true size to try round the book
before any board is cut. Print fit.pdf at actual size (100 %).

example:
  forel fit case.toml
  forel fit case.toml --swell 1.5 --out case/
  forel fit case.toml --set board.thickness=1.93 --board-known measured
`

var aboutTimetable = `
usage: forel timetable [JOB.toml ...] [flags]
       forel timetable ROSTER.csv [--job JOB.toml] [flags]

Tells what to do when: each step with how long it takes, what then must dry and until
when, day by day in the hours that your bench is open; and on which day each case can
be handed over. Of several cases, or of those of a roster as forel class reads it, one
pair of hands works at one while another dries: the order of each case is kept, and
all are ready as early as could be found. It is told how early they could be at best.
Where each student of a class works at their own case, the timetable of one case is
that of each.

--start is the first day. Without it days are counted from 1. Times, and when the bench is
open, are habits of yours: [times] in the job file has a line for each, as
forel new FILE --full shows. What it leaves out is as usual (common practice, no source).

With --out it writes timetable.pdf into the folder, each day as a picture and as a
table, and where there is a date timetable.ics, which calendars read (RFC 5545).
Drying is in it as time that is free.

Nothing is dry because a time is over: touch it. Paper that is cold to the cheek is
still damp.

` + careful(wording.Knife, wording.Adhesive) + `

example:
  forel timetable case.toml
  forel timetable case.toml other.toml --start 2026-12-01 --out case/
  forel timetable roster.csv --job common.toml --start "2026-12-01 10:30"
`
