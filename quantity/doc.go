// Package quantity reads and prints the quantities of the trade.
//
// Text comes in as people write it ("7/16 in", "20 lbf in", "12 ± 0.5 mm") and
// leaves as a coherent SI number; numbers go out in both systems of units
// ("0.20 mm (8 thou)"). Conversions are exact rational arithmetic, rounded once
// to the nearest float64. What cannot be read in one way only is refused with a
// sentence that says what would be right. Nothing here knows about axles.
//
// Three printers serve three readers: Format is for people and rounds to what
// the trade measures, FormatDigits rounds to the digits that are known, and
// Exact is for storage and loses nothing.
package quantity
