// Package weldplan plans the welding of a plate kit on to a nose casting: what
// may be welded at all, with which process, filler and heat, how much of it, and
// in which order, so that the bores stay in line; and it learns from what was
// really used.
//
// Values are coherent SI. Nothing here approves a weld. The formulas of shrinkage
// are good to about a half: they rank orders of welding, then somebody measures.
// An iron casting needs its own procedure trial, whatever a formula says. Local
// codes and licensed practice come first.
package weldplan
