// Package loadpath finds how an axle sits under load: the forces and movements
// from the teeth through shafts, bearings, crown wheel, caps and peg to the
// casting, for either flank.
//
// # Frame
//
// Right-handed, with its origin where the common perpendicular of the two axes
// meets the crown-wheel axis. x runs along the pinion axis, out of the nose
// towards the input flange; y along the crown-wheel axis, from the pinion
// towards the back of the crown wheel, so that a wheel pushed off the pinion
// moves along +y; z = x × y. This is the frame of package gear.
//
// # What the reference state is
//
// Deflections, the peg's gap and the reading of the dial count from the
// assembled, preloaded axle without torque, as a fitter measures them. Loads of
// the bearings are whole: preload is in them.
//
// # What is left out
//
// Weight, inertia, tooth compliance and heat of the shafts. The state is static:
// a shock is a larger torque, not a vibration. Where a figure of this package
// decides whether someone may be hurt, it is a comparison between builds and
// not a proof; local rules and a licensed engineer go before it.
package loadpath
