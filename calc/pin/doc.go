// Package pin holds the published formulas and tables of pins and dowels: slotted
// spring pins, solid dowels, ring dowels round a bolt, and the pressure they
// put on the holes they sit in.
package pin
