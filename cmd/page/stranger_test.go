package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/cmd/page"
)

// strangers returns files that are neither a job nor a roster.
func strangers() []string {
	long := 1_000_000 // nearly as long as may be
	if testing.Short() {
		long = 100_000
	}
	return []string{
		"", " ", "\x00", "\xff\xfe", "\xff\xfen\x00a\x00m\x00e\x00", "name\xff,height\n", "<script>alert(1)</script>", "<!doctype html><body onload=alert(1)>",
		strings.Repeat("a", long), strings.Repeat("a", 3_000_000), strings.Repeat("[", 100_000), strings.Repeat("a.", 100_000) + "b = 1", strings.Repeat(",", long), strings.Repeat("\n", long),
		"{\"do\":\"class\"}", "name;height;height\nA;1;2\n", "name,height,width,thickness\n\"A,210\nB,1,2,3\n", "\u202ename,height", "%PDF-1.7\n", "PK\x03\x04",
	}
}

// A job file from a stranger, as text or as it was read, is told as a fault.
func TestStrangersFiles(t *testing.T) {
	for _, data := range strangers() {
		if strings.TrimSpace(data) == "" {
			continue // a job with nothing in it: every blank is empty
		}
		a := ask(t, page.Request{Do: "open", Data: []byte(data), Source: "<b>.toml"})
		assert.NotEmpty(t, a.Faults, "%.30q", data)
		assert.Empty(t, a.Error, "%.30q", data)
		assert.Nil(t, a.State, "%.30q", data)
	}
}
