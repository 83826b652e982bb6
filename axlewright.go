// Package axlewright is only the root of the module: it holds the tests that
// keep the house in order. Start reading at ARCHITECTURE.md.
package axlewright
