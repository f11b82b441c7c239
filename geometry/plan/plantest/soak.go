package plantest

import (
	"os"
	"strconv"
)

// Soak tells whether tests are to try all that they can, as make soak does, and not a part.
func Soak() bool {
	checks, _ := strconv.Atoi(os.Getenv("RAPID_CHECKS"))
	return checks >= 100
}
