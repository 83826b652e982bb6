// Package axle says what an axle IS: castings, gear sets, bearings, bolts,
// pegs, upgrades and builds; and what is asked of it: vehicles, duties,
// enquiries. All of it is data, read from strict YAML in which every figure may
// carry a unit, a doubt and an origin.
package axle
