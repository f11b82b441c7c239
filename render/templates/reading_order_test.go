package templates_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A reader of the file that goes by where words stand, not by the order in which they
// were drawn, gets each label with its value and each step with its number, on one line.
func TestReadingOrderFollowsTheEye(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not installed")
	}
	file := filepath.Join(t.TempDir(), "templates.pdf")
	require.NoError(t, os.WriteFile(file, octavo.on("A4").file(), 0o644))
	out, err := exec.Command("pdftotext", "-enc", "UTF-8", "-l", "1", file, "-").Output()
	require.NoError(t, err)
	text := strings.NewReplacer(" .", "").Replace(string(out)) // without the dots between them
	for _, line := range []string{
		"Book 221.5 mm high, 148.5 mm wide, 32.0 mm thick",
		"Room inside 223.5 mm high, 149.5 mm deep, 34.0 mm thick", // 2, 1 and 2 mm more
		"1. Print on A4 at actual size",
		"1. A page with several templates",
	} {
		assert.Contains(t, "\n"+text, "\n"+line)
	}
}
