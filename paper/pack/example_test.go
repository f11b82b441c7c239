package pack_test

import (
	"context"
	"fmt"

	"forel/paper/pack"
)

// The boards of one invented case, cut edge to edge from a board of 700 by
// 500 mm.
func ExampleSolve() {
	p := pack.Problem{
		Items: []pack.Item{
			{Width: 152, Height: 228}, {Width: 152, Height: 228}, // sides
			{Width: 34, Height: 228},             // of the spine
			{Width: 149, Height: 34, Turn: true}, // of head and tail
			{Width: 149, Height: 34, Turn: true},
		},
		Stock: []pack.Stock{{Width: 700, Height: 500}},
	}
	layout := pack.Solve(context.Background(), p, pack.Effort{Iterations: 5000, Seed: 1})
	fmt.Println(len(layout.Sheets), "sheet, optimal:", layout.Optimal)
	fmt.Println(len(layout.Sheets[0].Places), "pieces")
	// Output:
	// 1 sheet, optimal: true
	// 5 pieces
}
