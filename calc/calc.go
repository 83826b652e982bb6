// Package calc carries the source text of its formula packages, so that the
// program can show each formula with its symbols, range and source exactly as
// the code documents it. The formulas themselves are in the packages below.
package calc

import "embed"

// Source holds the Go files of every package below calc.
//
//go:embed */*.go
var Source embed.FS
