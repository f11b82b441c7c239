// Package assets holds the parts of the page that are not the program: its text, its
// look and its scripts, plain ES modules.
package assets

import "embed"

// Files are the parts, by name.
//
//go:embed *.html *.css *.js
var Files embed.FS
