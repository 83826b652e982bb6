// Package bolt holds the published formulas of threads and bolted joints:
// thread geometry, strength classes, tightening, joint stiffness, slip,
// thread stripping, threaded adjusters and screws in compression.
//
// Bolts of unknown make, old iron and hand tightening are what the trade has:
// every result is a comparison on stated inputs, not a rating of a joint.
package bolt
