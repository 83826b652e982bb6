// Package traction holds the published formulas of what a vehicle can put
// through an axle: engine and grip, weight transfer, differentials, road
// resistance, and the duties an axle is worked at.
package traction
