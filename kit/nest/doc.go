// Package nest lays parts on sheets: shapes with arcs, a gap between them, an
// edge kept free, a rolling direction, mirrored pairs on one sheet, remnants
// first. The same parts, rules and seed give the same plan on any machine.
//
// How it works: each part, grown by half the gap, is divided into narrow
// columns. From the columns of two parts follows where one may not lie beside
// the other (their no-fit region); joined over all parts on a sheet, that is
// where the next part may not lie. It goes as far left, and then as far down,
// as the rest allows. Orders and turns are tried with different beginnings and
// the plan that needs the least sheet is kept. Check proves a plan with the
// exact outlines, and shares no code with the placing.
package nest
