package jobfile_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/paper/stock"
)

// The shop file to begin with can be read, and a job can be made of all that it names.
func TestShopStarter(t *testing.T) {
	shop, err := jobfile.ReadShop("shop.toml", jobfile.ShopStarter())
	require.NoError(t, err)
	for key, want := range map[string]string{"board.material": "grey board 2 mm", "print.printer": "workshop printer"} {
		names, err := shop.Named(key)
		require.NoError(t, err)
		assert.Equal(t, []string{want}, names)
	}
	f, suspects, err := shop.Parse("case.toml", []byte(`
board = "Grey Board 2 mm"
lining = "white paper"
cloth = "blue cloth"
side_paper = "wave paper"
[[book]]
height = 221
width = 148.5
thickness = 32
`))
	require.NoError(t, err)
	assert.Empty(t, suspects)
	j := boards(f)
	// Readings of 8.2 mm and 8.1 mm of four layers and 2.06 mm of one: (2.05 + 2.025 + 2.06) / 3.
	assert.InDelta(t, 2.045, j.Board.Thickness.MM(), 1e-9)
	assert.Equal(t, "measured", j.Board.Known)
	assert.InDelta(t, 0.3625, j.Cloth.Thickness.MM(), 1e-9)
	assert.InDelta(t, 1.5, j.Cloth.Stretch, 1e-9)
	assert.InDelta(t, 30, j.Cloth.Overlap.MM(), 1e-9)
	assert.InDelta(t, 24, j.Pattern.Across.MM(), 1e-9)
	assert.InDelta(t, 6, f.Print.Margins.Left.MM(), 1e-9)
	assert.InDelta(t, 199.4, f.Print.Measured.Across.MM(), 1e-9)
	assert.Equal(t, "blue cloth", f.Names[geometry.Cloth])
	require.Len(t, f.Stock, 4)
	assert.Equal(t, 6, f.Stock[0].Count)
	assert.InDelta(t, 2400, f.Stock[2].Height.MM(), 1e-9)
}

// The thickness of a material in inches stays one, whatever the job measures in, and so does
// a price by the yard.
func TestShopHasUnitsOfItsOwn(t *testing.T) {
	shop, err := jobfile.ReadShop("shop.toml", []byte(`
units = "in"
[[material]]
name = "davey"
kind = "board"
thickness = 0.08
[[material]]
name = "linen"
kind = "cloth"
[[material.sheet]]
roll = 54
price = 9
`))
	require.NoError(t, err)
	text := []byte("board = \"davey\"\ncloth = \"linen\"\n[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n")
	f, _, err := shop.Parse("case.toml", text)
	require.NoError(t, err)
	assert.InDelta(t, 0.08*25.4, boards(f).Board.Thickness.MM(), 1e-9)
	assert.Equal(t, geometry.MM, f.Job.Shared().Unit)
	assert.InDelta(t, 914.4, f.Stock[0].Per.MM(), 1e-9)
	assert.InDelta(t, 6.35, f.Stock[0].Trim.MM(), 1e-9)
	plain, err := shop.Plain("case.toml", text)
	require.NoError(t, err)
	again, _, err := jobfile.Parse("case.toml", plain)
	require.NoError(t, err)
	assert.Equal(t, unpiled(f.Stock), unpiled(again.Stock))
	assert.Equal(t, f.Job, again.Job)
}

// The materials of a chemise and of a box are named in the place of their thickness, or
// beside it.
func TestMaterialsOfOtherKinds(t *testing.T) {
	shop, err := jobfile.ReadShop("shop.toml", []byte(`
[[material]]
name = "thin board"
kind = "board"
thickness = 1.1
known = "measured"
[[material]]
name = "calf"
kind = "leather"
thickness = 0.7
[[material]]
name = "flute"
kind = "corrugated board"
thickness = 1.6
grammage = 400
[[material.sheet]]
size = "700 x 1000"
`))
	require.NoError(t, err)
	const book = "[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n"
	for text, want := range map[string]map[string]string{
		"kind = \"chemise\"\n" + book + "[chemise]\nboard = \"thin board\"\ncovering = \"calf\"\n":                                {"board 1.1": "thin board", "chemise cloth 0.7": "calf"},
		"kind = \"chemise\"\n" + book + "[chemise]\nboard_material = \"thin board\"\nboard = 1.2\ncovering_material = \"calf\"\n": {"board 1.2": "thin board", "chemise cloth 0.7": "calf"},
		"kind = \"drop-spine box\"\n" + book + "[box]\ncase_board = \"thin board\"\nlid_lining = \"calf\"\n":                      {"case board 1.1": "thin board", "lid lining 0.7": "calf"},
		"construction = \"card\"\ncard = \"flute\"\n" + book:                                                                      {"corrugated board 1.6": "flute"},
	} {
		f, suspects, err := shop.Parse("case.toml", []byte(text))
		require.NoError(t, err, text)
		assert.Empty(t, suspects)
		plan, err := f.Case.Make()
		require.NoError(t, err)
		for is, name := range want {
			i := strings.LastIndex(is, " ")
			m := geometry.Material(is[:i])
			if m == geometry.Board {
				m = geometry.ThinBoard
			}
			assert.Equal(t, is[i+1:], fmt.Sprint(plan.Thickness(m).MM()), text)
			assert.Equal(t, name, f.Names[m], text)
		}
		if m := f.Stock; strings.Contains(text, "flute") {
			require.Len(t, m, 1)
			assert.Equal(t, geometry.Corrugated, m[0].Material)
			assert.InDelta(t, 400, plan.Grammage(geometry.Corrugated), 1e-9)
		}
	}
}

// What a shop lends to a job can be written out as one file, which is read as the same job.
func TestPlainIsTheSameJob(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := anyShop(t)
		shop, err := jobfile.ReadShop("shop.toml", []byte(text))
		require.NoError(t, err, text)
		job := anyJobOf(t, shop)
		f, suspects, err := shop.Parse("case.toml", []byte(job))
		if err != nil {
			var issues jobfile.Issues
			require.ErrorAs(t, err, &issues)
			_, err = shop.Plain("case.toml", []byte(job))
			require.Equal(t, issues.Error(), err.Error())
			return
		}
		plain, err := shop.Plain("case.toml", []byte(job))
		require.NoError(t, err, "%s\n%s", text, job)
		again, more, err := jobfile.Parse("case.toml", plain)
		require.NoError(t, err, "%s", plain)
		require.Len(t, more, len(suspects), "%s\n%v", plain, more)
		for i, s := range f.Job.Settings() {
			require.True(t, s.Same(again.Job.Settings()[i]), "%s\n%s\n%s", s.Key, job, plain)
		}
		require.Equal(t, f.Job.Shared().Unit, again.Job.Shared().Unit)
		require.Equal(t, unpiled(f.Stock), unpiled(again.Stock), "%s\n%s\n%s", text, job, plain)
		require.Equal(t, f.Names, again.Names)
		require.Equal(t, f.Print, again.Print)
		require.Equal(t, f.Kind.About, again.Kind.About)
	})
}

// anyShop writes a shop file.
func anyShop(t *rapid.T) string {
	var b strings.Builder
	inches := rapid.Bool().Draw(t, "inches")
	if inches {
		b.WriteString("units = \"in\"\n")
	}
	length := func(mm float64) string {
		if inches {
			mm /= 25.4
		}
		return fmt.Sprintf("%.5g", mm)
	}
	thick := func(lo, hi float64, name string) string {
		mm := rapid.Float64Range(lo, hi).Draw(t, name)
		switch rapid.IntRange(0, 3).Draw(t, name+" is written") {
		case 0:
			return length(mm)
		case 1:
			return fmt.Sprintf(`"4 layers %.4g mm"`, 4*mm)
		case 2:
			return fmt.Sprintf(`[%s, "%.4g mm", "2 layers %s"]`, length(mm), mm*1.01, length(2*mm))
		}
		return fmt.Sprintf(`"%.4g in"`, mm/25.4)
	}
	if rapid.Bool().Draw(t, "habits") {
		fmt.Fprintf(&b, "[cloth]\noverlap = %s\n[clearance]\nheight = \"%d mm\"\n[box]\nsquare = %s\n", length(26), rapid.IntRange(1, 3).Draw(t, "clearance"), length(5))
		if rapid.Bool().Draw(t, "printer") {
			b.WriteString("[print]\nprinter = \"the printer\"\noverlap = \"11 mm\"\n")
		}
	}
	fmt.Fprintf(&b, "[[printer]]\nname = \"The printer\"\npaper = \"letter\"\nmargin = %s\nmeasured_along = \"%d.5 mm\"\n", length(7), rapid.IntRange(198, 201).Draw(t, "along"))
	for _, m := range []struct {
		kind   string
		lo, hi float64
	}{{"board", 1, 3}, {"card", 0.5, 2}, {"corrugated board", 1, 3}, {"paper", 0.08, 0.3}, {"cloth", 0.2, 0.6}, {"leather", 0.5, 1}} {
		for n := range rapid.IntRange(0, 2).Draw(t, m.kind) {
			fmt.Fprintf(&b, "[[material]]\nname = \"%s %d\"\nkind = %q\n", m.kind, n, m.kind)
			if rapid.IntRange(0, 5).Draw(t, "measured") > 0 {
				fmt.Fprintf(&b, "thickness = %s\n", thick(m.lo, m.hi, "thickness"))
			}
			for _, line := range []string{"stretch = 1.5", "grammage = 300", `known = "measured"`, "price = 3.5", `trim = "3 mm"`, "pattern = { repeat_across = " + length(20) + ", match = \"height\" }"} {
				if rapid.IntRange(0, 2).Draw(t, line) == 0 {
					b.WriteString(line + "\n")
				}
			}
			for range rapid.IntRange(0, 2).Draw(t, "sheets") {
				b.WriteString("[[material.sheet]]\n")
				if rapid.Bool().Draw(t, "roll") {
					fmt.Fprintf(&b, "roll = %s\n", length(1300))
				} else {
					fmt.Fprintf(&b, "size = \"700 x 1000 mm\"\ngrain = \"width\"\ncount = %d\n", rapid.IntRange(1, 9).Draw(t, "count"))
				}
			}
		}
	}
	return b.String()
}

// anyJobOf writes a job that names what a shop has.
func anyJobOf(t *rapid.T, shop *jobfile.Shop) string {
	var top, rest strings.Builder
	k := rapid.SampledFrom(kinds.All).Draw(t, "kind")
	fmt.Fprintf(&top, "kind = %q\n", k.Name)
	if k.Construction != "" {
		fmt.Fprintf(&top, "construction = %q\n", k.Construction)
	}
	if rapid.Bool().Draw(t, "job in inches") {
		top.WriteString("units = \"in\"\n")
	}
	if rapid.Bool().Draw(t, "names the printer") {
		top.WriteString("printer = \"the printer\"\n")
	}
	tables := map[string]string{}
	seen := map[string]bool{}
	for _, n := range k.Named {
		names, err := shop.Named(strings.TrimSuffix(n.Key, "name") + "material")
		require.NoError(t, err)
		if len(names) == 0 || seen[n.Key] || rapid.IntRange(0, 3).Draw(t, n.Key) == 0 {
			continue
		}
		seen[n.Key] = true
		name := rapid.SampledFrom(names).Draw(t, "name")
		table, word, _ := strings.Cut(n.Key, ".")
		switch {
		case word == "name" && rapid.Bool().Draw(t, "short"):
			fmt.Fprintf(&top, "%s = %q\n", table, name)
		case word == "name" || rapid.Bool().Draw(t, "beside"):
			tables[table] += fmt.Sprintf("%smaterial = %q\n", strings.TrimSuffix(word, "name"), name)
		default:
			tables[table] += fmt.Sprintf("%s = %q\n", strings.TrimSuffix(word, "_name"), name)
		}
	}
	for _, table := range slices.Sorted(func(yield func(string) bool) {
		for k := range tables {
			if !yield(k) {
				return
			}
		}
	}) {
		fmt.Fprintf(&rest, "[%s]\n%s", table, tables[table])
	}
	if rapid.IntRange(0, 4).Draw(t, "own stock") == 0 {
		rest.WriteString("[[stock]] # own\nmaterial = \"board\"\nsize = \"A0\"\n")
	}
	return top.String() + "[[book]]\nheight = \"221 mm\"\nwidth = \"148.5 mm\"\nthickness = \"32 mm\"\n" + rest.String()
}

// Of a shop file every fault is told with its line, all at once; no job is needed for that.
func TestBadShops(t *testing.T) {
	for _, test := range []struct {
		name, text string
		says       []string
	}{
		{"newer", "version = 2\n[[materials]]\n", []string{`shop.toml:1: version: 2 is of a later forel than this one; use that one`}},
		{"no version", "version = \"one\"\n", []string{`shop.toml:1: version: "one" is no version of a shop file; write version = 1`}},
		{"no name", "[[material]]\nkind = \"board\"\n", []string{`shop.toml:1: material.name: missing; give the name that jobs call it by`}},
		{"no kind", "[[material]]\nname = \"x\"\n", []string{`shop.toml:1: material.kind: missing; give "board", `}},
		{"a length for a name", "[[material]]\nname = \"2 mm\"\nkind = \"board\"\n", []string{`shop.toml:2: material.name: "2 mm" can be read as a length; `}},
		{"two of one name", "[[material]]\nname = \"Grey\"\nkind = \"board\"\n[[material]]\nname = \"grey\"\nkind = \"paper\"\n", []string{`shop.toml:5: material[2].name: "grey" is a name that is there already, on line 2; `}},
		{"a book", "[[book]]\nheight = 3\n", []string{`shop.toml:1: book: unknown key; `}},
		{"as built", "[as_built]\nheight = 3\n", []string{`shop.toml:1: as_built: unknown key; `}},
		{"a sheet of nothing", "[[material.sheet]]\nsize = \"A1\"\n", []string{`shop.toml:1: material.sheet: a sheet of no material; write it below its [[material]]`}},
		{"a sheet without size", "[[material]]\nname = \"x\"\nkind = \"board\"\n[[material.sheet]]\ncount = -1\n",
			[]string{`shop.toml:4: material.sheet: missing; give the size of a sheet`, `shop.toml:5: material.sheet.count: -1 is too small; `}},
		{"no thickness", "[[material]]\nname = \"x\"\nkind = \"board\"\nthickness = [2, \"much\"]\nmeasured_on = \"2026-02-30\"\n",
			[]string{`shop.toml:4: material.thickness: "much" `, `shop.toml:5: material.measured_on: "2026-02-30" is no date; write it as in 2026-11-28`}},
		{"a slip", "[[material]]\nname = \"x\nkind = \"board\"\n", []string{`shop.toml:2: `}},
		{"a pattern of nothing", "[material.pattern]\nmatch = \"none\"\n", []string{`shop.toml:1: material.pattern: a pattern of no material; `}},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := jobfile.ReadShop("shop.toml", []byte(test.text))
			require.Error(t, err)
			begins(t, "", test.says, err.Error())
		})
	}
}

// FuzzShop gives anything for a shop file. It is read, or refused with issues of one
// printable line each that lie in it; a job beside it never fails in another way.
func FuzzShop(f *testing.F) {
	f.Add(jobfile.ShopStarter())
	f.Add([]byte("[[material]]\nname = \"x\"\nkind = \"board\"\nsheet = [{size = \"A1\"}, {roll = 3}]\npattern.match = \"none\"\n"))
	f.Add([]byte("material = 3\n[[material.sheet]]\n[material.pattern]\n[[printer]]\nname = \"a\"\n"))
	f.Add([]byte("[print]\nprinter = \"x\"\n[board]\nmaterial = \"y\"\n[[stock]]\nmaterial = \"cloth\"\nroll = 1000\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		shop, err := jobfile.ReadShop("case.toml", data)
		var issues jobfile.Issues
		if err != nil && (!errors.As(err, &issues) || len(issues) == 0) {
			t.Fatalf("an error without issues: %v", err)
		}
		sound(t, data, issues)
		shop.List()
		job := []byte("board = \"x\"\nprinter = \"a\"\n[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n")
		if _, _, err := shop.Parse("job.toml", job); err != nil && !errors.As(err, &issues) {
			t.Fatalf("an error without issues: %v", err)
		}
	})
}

// unpiled returns stock as a job file has it, which does not tell where it is counted.
func unpiled(all []stock.Stock) []stock.Stock {
	all = slices.Clone(all)
	for i := range all {
		all[i].Pile, all[i].At = "", job.Place{}
	}
	return all
}

// The pattern of a paper is that of linings cut from it, as it is that of side papers; what the
// job says goes before, and a job without such linings has no use for it.
func TestPatternOfLinings(t *testing.T) {
	shop, err := jobfile.ReadShop("shop.toml", []byte("[[material]]\nname = \"ruled\"\nkind = \"paper\"\nthickness = 0.15\npattern = { repeat_across = 24, repeat_along = 8, match = \"mirror\", from_tail = 3 }\n"))
	require.NoError(t, err)
	book := "[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n"
	read := func(text string) jobfile.File {
		f, _, err := shop.Parse("case.toml", []byte(text+book))
		require.NoError(t, err, text)
		return f
	}
	named := "[lining]\nmaterial = \"ruled\"\n"
	said := "[lining]\nname = \"ruled\"\nthickness = 0.15\n"
	pattern := "[lining_pattern]\nrepeat_across = 24\nrepeat_along = 8\nmatch = \"mirror\"\n"
	assert.Equal(t, read(said+pattern+"from_tail = 3\n").Job, read(named).Job)
	assert.Equal(t, read(said+pattern+"from_tail = 1\n").Job, read(named+"[lining_pattern]\nfrom_tail = 1\n").Job)
	assert.NotEqual(t, read(said).Job, read(named).Job)
	card := "construction = \"card\"\n"
	assert.Equal(t, read(card).Job, read(card+"[side_paper]\nmaterial = \"ruled\"\n").Job)
	chemise := "kind = \"chemise\"\n[chemise]\nlining_material = \"ruled\"\n"
	read(chemise)
}
