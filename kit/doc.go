// Package kit draws plate kits: parametric plates that hang on the numbered
// stations of a casting, their holes, slots, vents, tabs and etched marks, the
// bill, the drill-and-tap table and the price.
//
// A kit is a YAML file for one revision, such as KIT-T24-A.2. Once a revision
// is issued its seal stands in the ledger and the file may not change: what
// moves is a new revision, with its reason.
//
// Values are coherent SI: metres, kilograms, radians. In a kit file a bare
// number in a drawing is a millimetre and an angle is in degrees.
package kit
