// Package material holds the metals a rebuilt axle casting is made of and joined to:
// steels, irons and pad bronzes by their standard grades, what each family bears
// beside a weld, and the conversion of hardness.
//
// How the spread of a figure is given. Strengths carry the standard's least value and
// an estimated mean and standard deviation of a normal spread: the least value is taken
// as the 5 % fractile, with a coefficient of variation by family. Moduli and weld
// factors carry low, typical and high values, to be read as a triangle. A standard's
// figures are for test pieces; the wall of a casting is often weaker, and an unknown
// casting is not a grade until it has been identified.
package material
