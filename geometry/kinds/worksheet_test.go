package kinds_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// product is where a worksheet leaves out the sign of a product: "2s", "3cT".
var product = regexp.MustCompile(`(\d)([a-zA-Z])`)

// worked out by hand: a rule as it is printed is read as arithmetic, with the
// symbols of the sheet.
func workedOut(t require.TestingT, rule string, symbols map[string]float64) float64 {
	text := strings.NewReplacer("−", "-", "÷", "/", "×", "*").Replace(rule)
	expr, err := parser.ParseExpr(product.ReplaceAllString(text, "$1*$2"))
	require.NoError(t, err, rule)
	var value func(ast.Expr) float64
	value = func(e ast.Expr) float64 {
		switch e := e.(type) {
		case *ast.ParenExpr:
			return value(e.X)
		case *ast.Ident:
			v, ok := symbols[e.Name]
			require.True(t, ok, "%s: no %s on the sheet", rule, e.Name)
			return v
		case *ast.BasicLit:
			v, err := strconv.ParseFloat(e.Value, 64)
			require.NoError(t, err)
			return v
		case *ast.BinaryExpr:
			x, y := value(e.X), value(e.Y)
			switch e.Op {
			case token.ADD:
				return x + y
			case token.SUB:
				return x - y
			case token.MUL:
				return x * y
			case token.QUO:
				return x / y
			}
		}
		require.Fail(t, "no arithmetic", rule)
		return 0
	}
	return value(expr)
}

// rulesOf returns every line of a worksheet that has a symbol or a rule, and the
// rules of the pieces' sizes, of one part of what is made.
func rulesOf(p plan.Plan, part string) (lines []plan.Measure, sizes map[string][2]string) {
	for _, g := range p.Worksheet {
		if g.Part == part {
			lines = append(lines, g.Measures...)
		}
	}
	sizes = map[string][2]string{}
	for _, q := range p.Pieces {
		if q.Rule.Part == part {
			sizes[q.Name] = [2]string{q.Rule.Width, q.Rule.Height}
		}
	}
	return lines, sizes
}

// holdRules works every rule of a worksheet out with the lengths of the sheet
// itself: each line, and the size of each piece, must come out as it is.
func holdRules(t require.TestingT, s plan.Plan, pieces map[string][2]float64, what string) {
	parts := map[string]bool{}
	for _, g := range s.Worksheet {
		parts[g.Part] = true
	}
	held := 0
	for part := range parts {
		held += holdPart(t, s, part, pieces, what)
	}
	assert.Len(t, pieces, held, "%s: pieces without a rule", what)
}

// holdPart does so for one part, and returns how many pieces it has.
func holdPart(t require.TestingT, s plan.Plan, part string, pieces map[string][2]float64, what string) (held int) {
	lines, sizes := rulesOf(s, part)
	symbols := map[string]float64{}
	for _, l := range lines {
		if l.Symbol != "" {
			symbols[l.Symbol] = l.Value.MM()
		}
	}
	for _, l := range lines {
		if l.Rule == "" || strings.HasPrefix(l.Rule, "largest") {
			continue
		}
		if strings.Contains(l.Rule, "n × c") {
			continue // n is no length
		}
		assert.InDelta(t, l.Value.MM(), workedOut(t, l.Rule, symbols), 1e-6, "%s: %s = %s", what, l.Symbol, l.Rule)
	}
	for name, r := range sizes {
		size, ok := pieces[name]
		require.True(t, ok, "%s: no %s", what, name)
		held++
		assert.InDelta(t, size[0], workedOut(t, r[0], symbols), 1e-3, "%s: width of the %s: %s", what, name, r[0])
		if r[1] != "" {
			assert.InDelta(t, size[1], workedOut(t, r[1], symbols), 1e-3, "%s: height of the %s: %s", what, name, r[1])
		}
	}
	return held
}

// sizesOf returns the width and the height of every piece.
func sizesOf(p plan.Plan) map[string][2]float64 {
	out := map[string][2]float64{}
	for _, q := range p.Pieces {
		w, h := q.Size()
		out[q.Name] = [2]float64{w.MM(), h.MM()}
	}
	return out
}

// Whatever the kind and its settings, a worksheet filled in by its rules gives the
// sizes of the pieces.
func TestRulesGiveTheSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, p := anyPlan(t)
		holdRules(t, p, sizesOf(p), k.About)
	})
}

// Which flap reaches furthest differs: commonly the outer, of a book thicker than
// wide the inner, or the point of an outer or a spine flap.
func TestRulesGiveTheBlank(t *testing.T) {
	for _, z := range [][4]geometry.Length{{203, 130, 22, 1.6}, {210, 148, 3, 0.6}, {120, 90, 100, 3}, {203, 130, 22, 0.3}, {203, 40, 80, 0.3}, {100, 60, 60, 1}} {
		for _, flaps := range []onepiece.Flaps{{Relief: 0.5, Taper: 1}, {Relief: 2, Taper: 0}, {Relief: 2, Taper: 0.3}} {
			j := onepiece.DefaultJob(geometry.MM)
			j.Books, j.Card.Thickness, j.Flaps = []job.Book{book(z[0], z[1], z[2])}, z[3], flaps
			p, err := plantest.Plan(&j)
			if err != nil {
				require.NotEqual(t, 0.5, flaps.Relief.MM())
				continue
			}
			holdRules(t, p, sizesOf(p), fmt.Sprint("card ", z, flaps))
		}
	}
}

// The worked example of a published worksheet: University of Brighton, Book Arts,
// "Worksheets for bookbinders: slipcase": a book 113 wide, 157 high and 12 thick
// in 2 mm board takes sides of 115 x 163, a spine wall of 163 x 14, head and tail
// walls of 113 x 14; sizes are given without lining paper.
func TestPublishedWorksheet(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{book(157, 113, 12)}
	j.Lining.Thickness, j.Clearance = 0, job.Clearance{Height: 2, Width: 0, Thickness: 2}
	p, err := plantest.Plan(&j)
	require.NoError(t, err)
	lines, sizes := rulesOf(p, "")
	symbols := map[string]float64{}
	for _, l := range lines {
		symbols[l.Symbol] = l.Value.MM()
	}
	for name, want := range map[string][2]float64{"side": {115, 163}, "spine wall": {14, 163}, "head wall": {113, 14}, "tail wall": {113, 14}} {
		assert.InDelta(t, want[0], workedOut(t, sizes[name][0], symbols), 1e-9, name)
		assert.InDelta(t, want[1], workedOut(t, sizes[name][1], symbols), 1e-9, name)
	}
}
