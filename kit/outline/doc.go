// Package outline is flat geometry that is exact for lines and arcs: closed
// outlines, their areas, lengths, bounds, distances, offsets and mirror images.
//
// Lengths are metres, x to the right and y up, angles radians anticlockwise. An
// outline of material runs anticlockwise, with the material on its left.
package outline

// Touch is the distance below which two places are one: a nanometre, a
// thousandth of what any cutter or reader of a file can tell apart.
const Touch = 1e-9 // m
