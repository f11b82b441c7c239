package tolerance_test

import (
	"fmt"

	"forel/geometry/tolerance"
)

func ExampleDistribution() {
	// A normal error with a deviation of 0.3 mm, and a board of anything between
	// 1.70 and 2.38 mm in place of 2 mm, that counts twice.
	d := tolerance.Distribution{Mean: 1.3, SD: 0.3, Low: -2 * 0.38, High: 2 * 0.30}
	fmt.Printf("%.2f mm +/- %.2f mm\n", d.Expected(), 2*d.StandardDeviation())
	fmt.Printf("under a quarter of a millimetre: %.1f %%\n", 100*d.Below(0.25))
	// Output:
	// 1.22 mm +/- 0.99 mm
	// under a quarter of a millimetre: 2.0 %
}
