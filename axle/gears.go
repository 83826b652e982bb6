package axle

import "axlewright/calc/gear"

// A GearSet is a crown wheel and pinion lapped together.
type GearSet struct {
	Name        string `yaml:"name"`
	Note        string `yaml:"note,omitempty"`
	PinionTeeth int    `yaml:"pinion_teeth"` // how many
	WheelTeeth  int    `yaml:"wheel_teeth"`  // how many

	OutsideDiameter Length `yaml:"outside_diameter"`          // m, of the crown wheel
	MeanRadius      Length `yaml:"mean_radius,omitempty"`     // m, of the wheel, where it is known; else from diameter and face
	Face            Length `yaml:"face"`                      // m, width of the wheel's teeth
	Offset          Length `yaml:"offset" range:">= 0"`       // m, hypoid offset; 0 mm for a spiral bevel
	PinionSpiral    Angle  `yaml:"spiral" range:">= 0"`       // rad, mean spiral angle of the pinion
	DriveAngle      Angle  `yaml:"drive_angle"`               // rad, effective pressure angle of the drive flank
	CoastAngle      Angle  `yaml:"coast_angle"`               // rad, of the coast flank
	Cutter          Length `yaml:"cutter"`                    // m, cutter radius
	Hand            Hand   `yaml:"hand"`                      // of the pinion's spiral
	Metal           string `yaml:"metal"`                     // of calc/material
	RootStrength    Stress `yaml:"root_strength"`             // Pa, tooth root under a single overload
	RootLowCycle    Stress `yaml:"root_low_cycle,omitempty"`  // Pa, tooth root over some ten thousand loads, where a test gives it
	FlankStrength   Stress `yaml:"flank_strength"`            // Pa, contact pressure the flank endures
	GeometryFactor  Ratio  `yaml:"geometry_factor,omitempty"` // J of the wheel's root where a maker or test gives it

	PinionNeck    Length `yaml:"pinion_neck"`     // m, diameter between teeth and head bearing
	PinionNeckMin Length `yaml:"pinion_neck_min"` // m, the least diameter that carries torque and bending
	PinionShank   Length `yaml:"pinion_shank"`    // m, diameter between the bearings
	PinionSpline  Length `yaml:"pinion_spline"`   // m, root of the spline
	PinionYield   Stress `yaml:"pinion_yield"`    // Pa, core of the shank

	Plate      WheelPlate `yaml:"plate"`
	WheelBolts Bolts      `yaml:"wheel_bolts"`

	Price float64 `yaml:"price,omitempty"` // of the shop's own money; all builds share the gears, so no part of a build's price
}

// Hand is the hand of spiral of a pinion; its wheel has the other one.
type Hand = gear.Hand

// A WheelPlate is the crown wheel behind its teeth, seen as a ring.
type WheelPlate struct {
	Bore      Length `yaml:"bore"`              // m, radius
	Outer     Length `yaml:"outer"`             // m, radius
	Thickness Length `yaml:"thickness"`         // m
	Modulus   Stress `yaml:"modulus"`           // Pa
	Bond      Ratio  `yaml:"bond" range:"0..1"` // 0 two loose plates, 1 one solid, where flange and wheel overlap
	Spread    Angle  `yaml:"spread"`            // rad, half the arc over which the mesh presses
}

// A DiffCentre is what the crown wheel bolts to.
type DiffCentre struct {
	Name            string `yaml:"name"`
	Note            string `yaml:"note,omitempty"`
	HubRadius       Length `yaml:"hub_radius"`                  // m, where the flange is really held
	FlangeRadius    Length `yaml:"flange_radius"`               // m
	FlangeThickness Length `yaml:"flange_thickness"`            // m
	NearOuter       Length `yaml:"near_outer"`                  // m, outer diameter between hub and crown-wheel side
	NearInner       Length `yaml:"near_inner"`                  // m, inner diameter there
	FarOuter        Length `yaml:"far_outer"`                   // m, outer diameter on the other side
	FarInner        Length `yaml:"far_inner"`                   // m, inner diameter there
	BendingShare    Ratio  `yaml:"bending_share" range:"0..1"`  // left of the bending stiffness after the windows
	Pins            int    `yaml:"pins"`                        // ends that carry: 2 of a straight pin, 4 of a cross
	PinDiameter     Length `yaml:"pin_diameter"`                // m
	PinRadius       Length `yaml:"pin_radius"`                  // m, where the small gears sit on the pin
	PinShear        Stress `yaml:"pin_shear"`                   // Pa, ultimate
	Locking         Drive  `yaml:"locking"`                     // open, limited slip, locked
	Bias            Ratio  `yaml:"bias,omitempty" range:">= 1"` // torque of the gripping wheel over that of the slipping one, of a limited-slip centre
}

// Drive is how a diff centre shares torque.
type Drive string

// The kinds of diff centre.
const (
	Open        Drive = "open"
	LimitedSlip Drive = "limited slip"
	Locked      Drive = "locked"
)

// HalfShafts are the two shafts to the wheels.
type HalfShafts struct {
	Name     string `yaml:"name"`
	Note     string `yaml:"note,omitempty"`
	Diameter Length `yaml:"diameter"` // m, the least
	Yield    Stress `yaml:"yield"`    // Pa, in shear
}
