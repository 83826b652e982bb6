// Package examples holds a catalogue and enquiries that a newcomer can run.
// Everything in it is invented.
package examples

import "embed"

// Files holds the example files by the paths they have in this folder, such as
// "tarnhow.yaml" and "enquiries/01-hill-farm.yaml".
//
//go:embed *.yaml *.csv bench enquiries identify kits matrix reference stations weld
var Files embed.FS
