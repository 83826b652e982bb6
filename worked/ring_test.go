package worked_test

import (
	"fmt"

	"axlewright/calc/ring"
)

// ringDone hands on a value and stops the example on an error.
func ringDone[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// A crane hook carries 5000 lbf. Its section is a rectangle, 0.75 in wide,
// from a radius of 2 in to one of 6 in; the load hangs at the centre of
// curvature.
//
//	        6 in
//	  |<----------->|
//	2 in
//	|<->|
//	+   #########     F through +, at right angles to this page's top edge
//	        A-A
//
// Wanted: the stress at the inner and the outer face.
//
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th
// ed., ex. 3-15: r_n = 3.641 in, e = 0.359 in, 16.9 and −5.63 kpsi.
func Example_ring1CraneHook() {
	const inch, lbf, kpsi = 0.0254, 4.4482216, 6.894757e6
	const F, ri, ro, b = 5000 * lbf, 2 * inch, 6 * inch, 0.75 * inch

	// 1. The load pulls the section apart and straightens the hook: its arm is
	// the radius of the centroid.
	const rc = (ri + ro) / 2
	s := ringDone(ring.CurvedBeam(ring.CurvedBeamParams{
		InnerRadius: ri, OuterRadius: ro, InnerWidth: b, OuterWidth: b, Force: F, Moment: F * rc,
	}))

	// 2. The neutral fibre lies inside the centroid.
	fmt.Printf("1. centroid %.3f in, neutral fibre %.3f in, between them %.3f in\n",
		s.CentroidRadius/inch, s.NeutralRadius/inch, (s.CentroidRadius-s.NeutralRadius)/inch)

	// 3. Three times as much tension inside as compression outside: a trapezoid
	// with its broad side inside would be the better section.
	fmt.Printf("2. inner face %.1f kpsi, outer face %.2f kpsi\n", s.InnerStress/kpsi, s.OuterStress/kpsi)

	// 4. What a straight beam would have said.
	straight := F/s.Area + F*rc/(b*(ro-ri)*(ro-ri)/6)
	fmt.Printf("3. a straight beam says %.1f kpsi inside: %.0f %% too little\n",
		straight/kpsi, 100*(1-straight/s.InnerStress))

	// Output:
	// 1. centroid 4.000 in, neutral fibre 3.641 in, between them 0.359 in
	// 2. inner face 16.9 kpsi, outer face -5.63 kpsi
	// 3. a straight beam says 11.7 kpsi inside: 31 % too little
}

// A round plate of 200 mm, 10 mm thick, is clamped round its edge and pressed
// on one side. Steel: yield 315 MPa, E = 200 GPa, ν = 0.29.
//
// Wanted: the pressure at which it first yields, and its deflection then.
//
// Source: Boresi and Schmidt, Advanced Mechanics of Materials, 6th ed.,
// ex. 13.3: 4.2 MPa, 0.36 mm.
func Example_ring2ClampedPlate() {
	plate := ring.DiscPressureParams{
		Radius: 0.100, Thickness: 0.010, Modulus: 200e9, Poisson: 0.29, Edge: ring.Clamped, Pressure: 1e6,
	}

	// 1. Stress goes with the pressure: one megapascal says all.
	one := ringDone(ring.DiscUnderPressure(plate))
	fmt.Printf("1. at 1 MPa the edge is stressed %.0f MPa\n", one.MaxStress/1e6)

	// 2. Yield, by the largest stress.
	plate.Pressure = 315e6 / one.MaxStress * 1e6
	at := ringDone(ring.DiscUnderPressure(plate))
	fmt.Printf("2. first yield at %.1f MPa, deflection in the middle %.2f mm\n", plate.Pressure/1e6, at.CentreDeflection*1e3)

	// 3. Deflection is far below half the thickness: the thin plate was allowed.
	fmt.Printf("3. deflection is %.1f %% of the thickness\n", 100*at.CentreDeflection/plate.Thickness)

	// Output:
	// 1. at 1 MPa the edge is stressed 75 MPa
	// 2. first yield at 4.2 MPa, deflection in the middle 0.36 mm
	// 3. deflection is 3.6 % of the thickness
}

// A wooden beam, 4 by 6 in, has a steel strap of 4 by 1/2 in fixed under it.
// E = 1500 ksi and 30 000 ksi, bending moment 60 kip·in.
//
//	+------+
//	| wood |  6 in
//	+------+
//	|######|  1/2 in, steel
//	+------+
//	  4 in
//
// Wanted: the stresses in both; and what a strap that is not fixed would do.
//
// Source: Gere, Mechanics of Materials, 5th ed., ex. 6-1: neutral axis 5.031 in
// below the top; −1310 and 251 psi in the wood, 7620 and 5030 psi in the steel.
func Example_ring3StrappedBeam() {
	const inch, lbf, psi = 0.0254, 4.4482216, 6894.757
	beam := ring.CompositeParams{
		Layers: []ring.SectionLayer{ // from the bottom up
			{Thickness: 0.5 * inch, Width: 4 * inch, Modulus: 30e6 * psi},
			{Thickness: 6 * inch, Width: 4 * inch, Modulus: 1.5e6 * psi},
		},
		Bond: 1, Moment: 60e3 * lbf * inch, Shear: 1000 * lbf,
	}
	const steel, wood = 0, 1

	// 1. Fixed: one piece.
	s := ringDone(ring.CompositeBeam(beam))
	fmt.Printf("1. neutral axis %.3f in below the top\n", 6.5-s.NeutralAxis/inch)
	fmt.Printf("2. wood  %.0f psi at the top, %.0f psi at the seam\n", s.TopStress[wood]/psi, s.BottomStress[wood]/psi)
	fmt.Printf("3. steel %.0f psi at the seam, %.0f psi at the bottom\n", s.TopStress[steel]/psi, s.BottomStress[steel]/psi)

	// 2. The seam must pass this for every 1000 lbf of shear force.
	fmt.Printf("4. the seam passes %.0f lbf/in per 1000 lbf\n", s.ShearFlow[0]/lbf*inch)

	// 3. Not fixed, the strap bends by itself and the wood carries nearly all.
	beam.Bond = 0
	loose := ringDone(ring.CompositeBeam(beam))
	fmt.Printf("5. loose: %.0f psi in the wood, %.1f times the movement\n",
		-loose.TopStress[wood]/psi, s.Stiffness/loose.Stiffness)

	// Output:
	// 1. neutral axis 5.031 in below the top
	// 2. wood  -1305 psi at the top, 251 psi at the seam
	// 3. steel 5027 psi at the seam, 7621 psi at the bottom
	// 4. the seam passes 211 lbf/in per 1000 lbf
	// 5. loose: 2471 psi in the wood, 3.2 times the movement
}
