// Package contact holds the published formulas of bodies that touch: Hertz
// contact, and the thrust peg's pad with its pressure, rubbing speed, heat and
// wear.
package contact
