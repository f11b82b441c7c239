package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"
	"pgregory.net/rapid"

	"forel/cmd/page/assets"
)

// read returns what pack wrote, by the rule that its comment tells.
func read(text string, size int) []byte {
	var bits []byte
	for _, c := range text {
		for i := 14; i >= 0; i-- {
			bits = append(bits, byte((c-lowest)>>i&1))
		}
	}
	out := make([]byte, size)
	for i := range out {
		for _, b := range bits[8*i : 8*i+8] {
			out[i] = out[i]<<1 | b
		}
	}
	return out
}

// What is packed is text that no part of HTML changes, and is
// read back whole.
func TestPack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		data := rapid.SliceOf(rapid.OneOf(rapid.Byte(), rapid.SampledFrom([]byte{0, 10, 13, 38, 60, 62, 255}))).Draw(t, "data")
		text := pack(data)
		if !utf8.ValidString(text) || strings.ContainsAny(text, "\x00\r\n<>&") {
			t.Fatalf("%q", text)
		}
		if got := read(text, len(data)); !bytes.Equal(got, data) {
			t.Fatalf("%x became %x", data, got)
		}
	})
}

// The script of the page reads what is packed here. It is run by Node, and skipped where
// there is none; the page itself is tried in a browser.
func TestUnpackInJavaScript(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("no node here")
	}
	script, err := assets.Files.ReadFile("unpack.js")
	require.NoError(t, err)
	var data []byte
	for i := range 100_003 {
		data = append(data, byte(i*i>>3))
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "run.mjs")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "packed"), []byte(pack(data)), 0o644))
	require.NoError(t, os.WriteFile(file, fmt.Appendf(script, `
import { readFileSync } from 'node:fs';
process.stdout.write(unpack(readFileSync(%q, 'utf8'), %d));
`, filepath.Join(dir, "packed"), len(data)), 0o644))
	got, err := exec.Command(node, file).Output()
	require.NoError(t, err)
	assert.True(t, bytes.Equal(data, got))
}

// The page is one file that asks nobody for anything: its policy allows what stands in
// it by digest, and an independent reader of HTML finds just that; twice it is the same.
func TestAssemble(t *testing.T) {
	program := bytes.Repeat([]byte("\x00asm\x01 not a program <\x00\xff\r\n"), 1000)
	data, s, err := assemble(program, "// the support script")
	require.NoError(t, err)
	again, _, err := assemble(program, "// the support script")
	require.NoError(t, err)
	assert.Equal(t, data, again)

	assert.Equal(t, []byte{0xff, 0xfe}, data[:2], "a byte order mark")
	text, err := encoded.NewDecoder().Bytes(data)
	require.NoError(t, err)
	tree, err := html.Parse(bytes.NewReader(text))
	require.NoError(t, err)
	policy, allowed, found := "", map[string]bool{}, 0
	for n := range tree.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		at := map[string]string{}
		for _, a := range n.Attr {
			at[a.Key] = a.Val
			assert.NotRegexp(t, `^(src|srcset|action|formaction|background|on.*|style)$`, a.Key, "<%s>", n.Data)
		}
		switch {
		case at["http-equiv"] == "Content-Security-Policy":
			policy = at["content"]
			for _, d := range regexp.MustCompile(`sha256-[^']+`).FindAllString(policy, -1) {
				allowed[d] = true
			}
		case n.Data == "style", n.Data == "script" && at["type"] != "text/plain":
			sum := sha256.Sum256([]byte(n.FirstChild.Data))
			assert.True(t, allowed["sha256-"+base64.StdEncoding.EncodeToString(sum[:])], "<%s> is not allowed by the policy", n.Data)
			found++
		case at["id"] == "program":
			assert.Equal(t, fmt.Sprint(s.compressed), at["data-size"])
			packed := compress(program)
			assert.True(t, bytes.Equal(packed, read(n.FirstChild.Data, len(packed))), "a reader of HTML leaves the program as it is")
		case n.Data == "link":
			assert.Fail(t, "a link asks for another file")
		}
	}
	assert.Equal(t, len(allowed), found)
	assert.True(t, strings.HasPrefix(policy, "default-src 'none'; "))
	assert.Equal(t, 1, strings.Count(policy, "'self'"))
	assert.Contains(t, policy, "; worker-src blob: 'self'; ", "the file that keeps the page offline, and nothing else")
	for _, loose := range []string{"unsafe-inline", "'unsafe-eval'", "http:", "https:", "*", "connect-src"} {
		assert.NotContains(t, policy, loose)
	}
}
