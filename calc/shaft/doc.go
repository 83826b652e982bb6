// Package shaft holds the elastic and strength formulas of shafts: the stepped
// shaft on springs in two planes, the overhung pinion of the handbooks, torsion
// of half-shafts, and shear of the pins that carry torque.
package shaft
