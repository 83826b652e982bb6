// Package ring holds the elastic formulas of the round and flat parts of an
// axle: the crown wheel and its flange as a stepped annular plate, classical
// circular and annular plates, the bearing cap as a curved beam, sections
// built up of two metals, and rectangular plates under a pad.
package ring
