// Package gear computes crown wheel and pinion pairs, spiral bevel and hypoid,
// at a right angle: pitch cones, blanks, tooth forces, tooth strength, lash and
// losses.
//
// # Frame
//
// Right-handed, with its origin where the common perpendicular of the two axes
// meets the crown-wheel axis.
//
//   - x runs along the pinion axis, out of the nose towards the input flange.
//   - y runs along the crown-wheel axis, from the pinion towards the back of the
//     crown wheel: a wheel pushed off the pinion moves along +y.
//   - z = x × y. Looking at the teeth of the crown wheel with the pinion on the
//     right hand side, z points upward.
//
// The pitch cones open along +x (pinion) and +y (wheel); the teeth meet at
// x > 0, y > 0.
//
// # Offset, hand and spiral angles
//
// Both spiral angles are magnitudes; the members have opposite hands. The hand
// is the pinion's. An offset is positive where it makes the pinion's spiral
// angle greater than the wheel's, ψ1 = ψ2 + ζ (the usual, stronger pinion), and
// negative where it makes it smaller. In the frame a positive offset puts the
// axis of a left-hand pinion at z = −a ("below centre") and that of a
// right-hand pinion at z = +a.
//
// # Flanks
//
// Drive is the convex flank of the crown wheel, meeting the concave flank of the
// pinion; coast is the other pair. Which of them pulls a vehicle forward is not
// known here. On the drive flank of a right-hand wheel (left-hand pinion) the
// pinion pushes the wheel's teeth along −z and turns the wheel about +y; the
// coast flank and the other hand each reverse that.
//
// # What the sums are for
//
// They compare builds with the same unknowns; they are no rating. Cracks, odd
// steel, a bad pattern and shock lie outside them. Absolute tooth strength is
// uncertain by a fifth and more, lives by a factor of several.
package gear
