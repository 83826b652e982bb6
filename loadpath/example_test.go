package loadpath_test

import (
	"fmt"
	"log"
	"math"

	"axlewright/calc/bearing"
	"axlewright/calc/gear"
	"axlewright/calc/ring"
	"axlewright/loadpath"
)

// A peg behind the crown wheel of an invented rear axle: what it does under
// 4000 N·m on either flank, and how its gap may be set.
func Example() {
	const mm, degree = 1e-3, math.Pi / 180

	// 1. Teeth: 10/41, 25 mm of offset, a left-hand pinion.
	cones, err := gear.HypoidPitchCones(gear.HypoidConesParams{
		PinionTeeth: 10, WheelTeeth: 41, Offset: 25 * mm, PinionSpiral: 45 * degree,
		WheelMeanRadius: 93 * mm, Condition: gear.ApexAtCrossing,
	})
	if err != nil {
		log.Fatal(err)
	}
	mesh, err := loadpath.NewMesh(cones, gear.LeftHand, 21*degree, 24.5*degree)
	if err != nil {
		log.Fatal(err)
	}

	// 2. Crown wheel on its flange, with the peg a little to the side of the mesh.
	plate, err := loadpath.NewPlate(ring.CrownWheelParams{
		ClampRadius: 50 * mm, Bore: 68 * mm, FlangeRadius: 90 * mm, OuterRadius: 111 * mm,
		FlangeThickness: 14 * mm, WheelThickness: 24 * mm, FlangeBehind: (30 - 22) * mm, Bond: 0.5, WheelModulus: 200e9, Poisson: 0.3,
	}, loadpath.PlatePlaces{
		MeshRadius: 93 * mm, MeshSpread: 0.17, PegRadius: 101 * mm, PegAngle: -8 * degree, PadRadius: 11 * mm, DialRadius: 103 * mm,
	})
	if err != nil {
		log.Fatal(err)
	}

	// 3. Shafts, bearings, seats.
	side := bearing.Rollers{Count: 19, Diameter: 10.4 * mm, Length: 16 * mm, PitchDiameter: 67 * mm, CupAngle: 15.5 * degree}
	seat := loadpath.SideSeat{Inward: 9e8, Leg: 5e8, Cap: 8e8, Across: 6e8, Axial: 2.1e8, Tilt: 2.5e5}
	hub := mesh.MeanPoint.Y + 30*mm
	axle := &loadpath.Axle{
		Mesh:   mesh,
		Layout: loadpath.Layout{GearToHead: 36 * mm, HeadToTail: 88 * mm, MeshToPlate: 22 * mm, MeshToHub: 30 * mm, Near: 86 * mm, Far: 80 * mm},
		Pinion: loadpath.PinionShaft{
			Neck:    []loadpath.Section{{Length: 36 * mm, Outer: 48 * mm}},
			Shank:   []loadpath.Section{{Length: 88 * mm, Outer: 38 * mm}},
			Modulus: 206e9, Poisson: 0.3,
		},
		Centre: loadpath.DiffCentre{
			ToNear:  []loadpath.Section{{Length: 86*mm - hub, Outer: 78 * mm, Inner: 44 * mm, Share: 0.6}},
			ToFar:   []loadpath.Section{{Length: 80*mm + hub, Outer: 110 * mm, Inner: 92 * mm, Share: 0.6}},
			Modulus: 170e9, Poisson: 0.27,
		},
		Head: bearing.Rollers{Count: 17, Diameter: 10.8 * mm, Length: 18.5 * mm, PitchDiameter: 60 * mm, CupAngle: 15 * degree},
		Tail: bearing.Rollers{Count: 16, Diameter: 9.6 * mm, Length: 14.5 * mm, PitchDiameter: 50 * mm, CupAngle: 15 * degree},
		Near: side, Far: side,
		PinionPreload: 0.03 * mm, SidePreload: 0.06 * mm,
		HeadSeat: loadpath.Seat{Axial: 1e9, Radial: 1.4e9, Tilt: 1.5e6},
		TailSeat: loadpath.Seat{Axial: 7e8, Radial: 1e9, Tilt: 8e5},
		NearSeat: seat, FarSeat: seat,
		CapDirection: loadpath.Vector{X: -1},
		Plate:        plate,
		Peg: &loadpath.Peg{
			Gap: 0.25 * mm, Spot: loadpath.Tight, RunOut: 0.06 * mm, Closing: 0.02 * mm, Stiffness: 2e8, Friction: 0.1,
			Radius: 101 * mm, Angle: -8 * degree, BackFaceY: 12 * mm,
		},
	}

	// 4. Both flanks, always.
	e, err := loadpath.Prepare(axle)
	if err != nil {
		log.Fatal(err)
	}
	for _, flank := range []loadpath.Flank{loadpath.Drive, loadpath.Coast} {
		s, err := e.Solve(flank, 4000)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: thrust on the wheel %.0f kN, wheel moves %.2f mm, peg carries %.0f kN\n",
			flank, s.OnWheel.Y/1e3, s.Wheel.Shift.Y/mm, s.Peg.Load/1e3)
	}

	// 5. The gap.
	w, err := e.GapWindow(loadpath.GapParams{
		Running:   []loadpath.Running{{Flank: loadpath.Drive, Torque: 700}, {Flank: loadpath.Coast, Torque: 250}},
		Demands:   []loadpath.Demand{{Flank: loadpath.Coast, Torque: 4000, Speed: 3, Movement: 0.36 * mm}},
		Clearance: 0.05 * mm, Pitch: 1.5 * mm, Capacity: 40e3,
	})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("window %s: from touch at the tight spot %.2f to %.2f mm back, %.1f to %.1f flats\n",
		w.Verdict, w.Least.Gap/mm, w.Most.Gap/mm, w.Least.Flats, w.Most.Flats)

	// Output:
	// drive: thrust on the wheel 11 kN, wheel moves 0.11 mm, peg carries 0 kN
	// coast: thrust on the wheel 29 kN, wheel moves 0.29 mm, peg carries 13 kN
	// window open: from touch at the tight spot 0.09 to 0.30 mm back, 0.4 to 1.2 flats
}
