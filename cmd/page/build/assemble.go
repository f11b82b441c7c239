package main

import (
	"bytes"
	"compress/flate"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
	"golang.org/x/text/encoding/unicode"

	"forel/cmd/page/assets"
)

// sizes are those of the program within a page, in bytes.
type sizes struct{ compressed, text int }

// encoded writes a page as UTF-16 with a byte order mark, which holds the program in a
// fifteenth less than UTF-8 does. The mark goes before whatever the server that sends the
// page says, and before all else (WHATWG Encoding Standard, "decode": BOM sniff).
var encoded = unicode.UTF16(unicode.LittleEndian, unicode.UseBOM)

// assemble puts all into one HTML file. No script but these runs in it, and it can ask
// nobody for anything: its policy (W3C Content Security Policy Level 3) allows what
// stands in the file by its digest, and workers from it.
func assemble(program []byte, support string) ([]byte, sizes, error) {
	page, err := bundle("page.js", api.FormatESModule)
	if err != nil {
		return nil, sizes{}, err
	}
	worker, err := bundle("worker.js", api.FormatIIFE)
	if err != nil {
		return nil, sizes{}, err
	}
	support, err = smaller(support, api.LoaderJS)
	if err != nil {
		return nil, sizes{}, err
	}
	html, err := assets.Files.ReadFile("index.html")
	if err != nil {
		return nil, sizes{}, err
	}
	style, err := styles()
	if err != nil {
		return nil, sizes{}, err
	}
	packed := compress(program)
	text := pack(packed)
	worker = support + "\n" + worker
	policy := strings.Join([]string{
		"default-src 'none'",
		"script-src '" + digest(page) + "' 'wasm-unsafe-eval'",
		"worker-src blob: 'self'", // itself: the file that keeps the page offline, on a web server
		"style-src '" + digest(style) + "'",
		"img-src blob: data:",
		"base-uri 'none'",
		"form-action 'none'",
	}, "; ")
	for _, part := range []string{page, worker, style} {
		if strings.Contains(part, "</script") || strings.Contains(part, "</style") || strings.Contains(part, "<!--") {
			return nil, sizes{}, errors.New("a script or the style would end the part of the page that it stands in")
		}
	}
	out := strings.NewReplacer(
		"{{policy}}", policy, "{{style}}", style, "{{worker}}", worker, "{{page}}", page,
		"{{size}}", fmt.Sprint(len(packed)), "{{program}}", text,
	).Replace(string(html))
	data, err := encoded.NewEncoder().Bytes([]byte(out))
	return data, sizes{len(packed), 2 * len([]rune(text))}, err
}

// styles returns all style files as one, in the order of their names after style.css,
// which is for the whole page.
func styles() (string, error) {
	names, err := fs.Glob(assets.Files, "*.css")
	if err != nil {
		return "", err
	}
	const first = "style.css"
	all := []string{first}
	for _, name := range names {
		if name != first {
			all = append(all, name)
		}
	}
	var b strings.Builder
	for _, name := range all {
		data, err := assets.Files.ReadFile(name)
		if err != nil {
			return "", err
		}
		b.Write(data)
	}
	return smaller(b.String(), api.LoaderCSS)
}

// smaller returns a style or a script that means the same, without what is there for readers.
func smaller(text string, kind api.Loader) (string, error) {
	script := kind == api.LoaderJS
	r := api.Transform(text, api.TransformOptions{Loader: kind, MinifyWhitespace: true, MinifySyntax: script, MinifyIdentifiers: script, Charset: api.CharsetUTF8})
	for _, e := range r.Errors {
		return "", errors.New("a style or a script: " + e.Text)
	}
	return string(r.Code), nil
}

// bundle puts a script and what it imports into one.
func bundle(name string, format api.Format) (string, error) {
	r := api.Build(api.BuildOptions{
		EntryPoints: []string{name},
		Bundle:      true,
		Format:      format,
		Target:      api.ES2022,
		Charset:     api.CharsetUTF8,
		LogLevel:    api.LogLevelSilent,

		MinifyWhitespace: true, MinifySyntax: true, MinifyIdentifiers: true,

		Plugins: []api.Plugin{{Name: "assets", Setup: func(b api.PluginBuild) {
			b.OnResolve(api.OnResolveOptions{Filter: ".*"}, func(a api.OnResolveArgs) (api.OnResolveResult, error) {
				return api.OnResolveResult{Path: strings.TrimPrefix(a.Path, "./"), Namespace: "assets"}, nil
			})
			b.OnLoad(api.OnLoadOptions{Filter: ".*"}, func(a api.OnLoadArgs) (api.OnLoadResult, error) {
				data, err := assets.Files.ReadFile(a.Path)
				script := string(data)
				return api.OnLoadResult{Contents: &script, Loader: api.LoaderJS}, err
			})
		}}},
	})
	for _, e := range r.Errors {
		return "", fmt.Errorf("%s: %s", name, e.Text)
	}
	return string(r.OutputFiles[0].Contents), nil
}

// compress deflates data (RFC 1951), which browsers call deflate-raw.
func compress(data []byte) []byte {
	var out bytes.Buffer // where no writing fails
	w, _ := flate.NewWriter(&out, flate.BestCompression)
	w.Write(data)
	w.Close() // writes the end
	return out.Bytes()
}

// digest names a text as a policy does.
func digest(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
