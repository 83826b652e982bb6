// Package setup works out the setting-up of a crown wheel and pinion: pinion
// shim, bearing preload, adjusters, lash, run-out, pattern, peg, bores and
// tightening torques.
//
// Every question is a struct of what was asked and measured, every answer a
// struct that holds an [Answer]: how it stands and why, what to do in the
// fitter's words, the sum line by line, and each reading beside the range that
// is allowed for it. Answers are values: they are stored and printed as they are
// and never worked out again.
//
// Inside, all figures are coherent SI; the sentences and the lines of a sum carry
// both systems of units, and torques in pounds have inch or foot spelled out.
//
// # Three kinds of "no"
//
// An input that cannot be right (a pitch of zero, a side that is neither left nor
// right) is an error, axle.Findings, that names each field and says what was
// expected. An input that is not there yet is no error: the answer's state is
// [NotYet] and its reason lists what is missing. A reading that is there and
// outside its range is [Look], or [Stop] where going on would spoil the unit or
// hurt someone.
//
// # Ranges
//
// Ranges come from a [Spec]: the shop types the figures of the maker's page or
// its own; what it has not typed falls back on what the trade uses, and every
// range says which of these it is. A figure published for one axle is never
// taken for a rule.
package setup
