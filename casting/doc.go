// Package casting tells which variant of nose casting lies on the bench, what
// metal it is, and how it differs from its sisters: identification from any
// evidence, metal and its stops, measuring stations, trims and plate patterns.
//
// Values are coherent SI. Chances are 0 to 1. Nothing here is a strength
// rating: it says what was seen, what that supports and what it rules out.
package casting
