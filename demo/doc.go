// Package demo fills the invented shop of the demo, Fellgate Axle Works: its
// people, cards and a dozen jobs, one at least in every state. Everything goes
// through the rules of package shop, as if people had typed it; the clock is the
// demo's own, so that the records reach back some months.
//
// The records stand in jobs.go as they would be typed, one box a line:
//
//	lash/lash/1    0.14 mm
//
// Nothing here belongs to a real maker, shop or person.
package demo
