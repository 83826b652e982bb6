// Package weldplan plans the welding of a plate kit on to a nose casting: what
// may be welded at all, with which process, filler and heat, how much of it, and
// in which order, so that the bores stay in line; and it learns from what was
// really used.
//
// Values are coherent SI. Nothing here approves a weld. The formulas of shrinkage
// are good to about a half: they rank orders of welding, then somebody measures.
// An iron casting needs its own procedure trial, whatever a formula says. Local
// codes and licensed practice come first.
//
// # How an order is found
//
// The casting is a skeleton of beams (skeleton.go), each plate a body that
// stretches and bends evenly (platebody.go), each run two short halves that tie
// plate and casting with springs: soft while only tacked, stiff when welded
// (model.go). A half that cools draws the plate in across itself, folds and draws
// together the wall, and pulls along itself, by published formulas (shrink.go).
// What that moves between bores and peg face (movement.go) hangs on which runs
// are finished already, and only on that: a stage holds the answer of the casting
// to everything still to come, and is stiffened run by run (step.go, response.go).
// Up to ten runs every order and direction is weighed by branch and bound
// (exact.go), beyond that the best is sought by annealing (anneal.go). The order
// found is set beside the trade's rules (rules.go) and the worst, under the doubt
// of the formulas and of the tacks (doubt.go).
//
// Left out: yield in all but the bead itself, the jig (what it holds back it gives
// back when it is opened), expansion while hot and so most of what backsteps do (each
// bead is cold before the next one shrinks: that much is in), and peening.
package weldplan
