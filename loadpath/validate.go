package loadpath

import (
	"math"

	"axlewright/calc/check"
)

// Validate refuses an axle that cannot be: lengths that do not add up, a
// stiffness of zero, a number that is none. Bearings are checked by package bearing.
func (a *Axle) Validate() error {
	if err := check.All("loadpath.Axle",
		positive("Mesh.Ratio", a.Mesh.Ratio),
		vector("Mesh.MeanPoint", a.Mesh.MeanPoint), vector("Mesh.Drive", a.Mesh.Drive), vector("Mesh.Coast", a.Mesh.Coast),
		check.Finite("Mesh.PinionAxisZ", a.Mesh.PinionAxisZ),
		positive("Layout.GearToHead", a.Layout.GearToHead), positive("Layout.HeadToTail", a.Layout.HeadToTail),
		check.Finite("Layout.MeshToPlate", a.Layout.MeshToPlate), check.Finite("Layout.MeshToHub", a.Layout.MeshToHub),
		check.Finite("Layout.Near", a.Layout.Near), check.Finite("Layout.Far", a.Layout.Far),
		check.That("Layout.MeshToHub", a.Layout.MeshToHub, a.hub() > -a.Layout.Far && a.hub() < a.Layout.Near, "a hub between the side bearings"),
		check.Finite("PinionPreload", a.PinionPreload), check.Finite("SidePreload", a.SidePreload),
		positive("Pinion.Modulus", a.Pinion.Modulus), poisson("Pinion.Poisson", a.Pinion.Poisson),
		positive("Centre.Modulus", a.Centre.Modulus), poisson("Centre.Poisson", a.Centre.Poisson),
		check.NotNegative("Pinion.SpigotStiffness", a.Pinion.SpigotStiffness),
		check.That("Pinion.SpigotDistance", a.Pinion.SpigotDistance, a.Pinion.SpigotStiffness == 0 || a.Pinion.SpigotDistance > 0, "> 0"),
		check.That("Pinion.SpigotDiameter", a.Pinion.SpigotDiameter, a.Pinion.SpigotStiffness == 0 || a.Pinion.SpigotDiameter > 0, "> 0"),
		check.That("CapDirection", math.Hypot(a.CapDirection.X, a.CapDirection.Z), math.Hypot(a.CapDirection.X, a.CapDirection.Z) > 0, "square to the wheel axis"),
	); err != nil {
		return err
	}
	if err := a.HeadSeat.validate("HeadSeat.Axial", "HeadSeat.Radial", "HeadSeat.Tilt"); err != nil {
		return err
	}
	if err := a.TailSeat.validate("TailSeat.Axial", "TailSeat.Radial", "TailSeat.Tilt"); err != nil {
		return err
	}
	if err := a.NearSeat.validate(); err != nil {
		return err
	}
	if err := a.FarSeat.validate(); err != nil {
		return err
	}
	if err := sections("Pinion.Neck", a.Pinion.Neck, a.Layout.GearToHead); err != nil {
		return err
	}
	if err := sections("Pinion.Shank", a.Pinion.Shank, a.Layout.HeadToTail); err != nil {
		return err
	}
	if err := sections("Centre.ToNear", a.Centre.ToNear, a.Layout.Near-a.hub()); err != nil {
		return err
	}
	if err := sections("Centre.ToFar", a.Centre.ToFar, a.Layout.Far+a.hub()); err != nil {
		return err
	}
	if err := a.Plate.validate(); err != nil {
		return err
	}
	if p := a.Peg; p != nil {
		return check.All("loadpath.Axle",
			check.Finite("Peg.Gap", p.Gap), check.NotNegative("Peg.RunOut", p.RunOut), check.Finite("Peg.Closing", p.Closing),
			check.NotNegative("Peg.Stiffness", p.Stiffness), check.Within("Peg.Friction", p.Friction, 0, 0.5),
			positive("Peg.Radius", p.Radius), check.Finite("Peg.Angle", p.Angle), check.Finite("Peg.BackFaceY", p.BackFaceY),
			check.That("Peg.Spot", 0, p.Spot == Middle || p.Spot == Tight || p.Spot == Slack || p.Spot == Unknown, "middle, tight, slack or unknown"),
		)
	}
	return nil
}

func (s *Seat) validate(axial, radial, tilt string) error {
	return check.All("loadpath.Axle", positive(axial, s.Axial), positive(radial, s.Radial), positive(tilt, s.Tilt))
}

func (s *SideSeat) validate() error {
	return check.All("loadpath.Axle", positive("SideSeat.Inward", s.Inward), positive("SideSeat.Leg", s.Leg),
		positive("SideSeat.Cap", s.Cap), positive("SideSeat.Across", s.Across),
		positive("SideSeat.Axial", s.Axial), positive("SideSeat.Tilt", s.Tilt))
}

// hub is the place of the flange's hub along y.
func (a *Axle) hub() float64 { return a.Mesh.MeanPoint.Y + a.Layout.MeshToHub }

func (p *Plate) validate() error {
	for i := range p.Compliance {
		for j := range i {
			c, d := p.Compliance[i][j], p.Compliance[j][i]
			if !(math.Abs(c-d) <= 1e-9*math.Sqrt(p.Compliance[i][i]*p.Compliance[j][j])) {
				return &BadAxle{Field: "Plate.Compliance", Reason: "is not symmetric"}
			}
			if c*c > p.Compliance[i][i]*p.Compliance[j][j]*(1+1e-9) {
				return &BadAxle{Field: "Plate.Compliance", Reason: "is not positive"}
			}
		}
		if c := p.Compliance[i][i]; !(c >= 0) || math.IsInf(c, 0) {
			return &BadAxle{Field: "Plate.Compliance", Reason: "is not positive"}
		}
	}
	return nil
}

func sections(name string, list []Section, length float64) error {
	if len(list) == 0 || len(list) > maxSegments/2-1 {
		return &BadAxle{Field: name, Reason: "needs one to eleven sections"}
	}
	sum := 0.0
	for _, s := range list {
		if !(s.Length > 0) || !(s.Inner >= 0) || !(s.Outer > s.Inner) || math.IsInf(s.Outer, 0) || !(s.Share >= 0 && s.Share <= 1) {
			return &BadAxle{Field: name, Reason: "has a section without length, without metal or with a share outside 0 to 1"}
		}
		sum += s.Length
	}
	if !(math.Abs(sum-length) <= 1e-6*length) {
		return &BadAxle{Field: name, Reason: "does not add up to the distance between its ends"}
	}
	return nil
}

func positive(name string, x float64) check.Condition { return check.Positive(name, x) }

func vector(name string, v Vector) check.Condition { return check.Finite(name, v.X+v.Y+v.Z) }

func poisson(name string, nu float64) check.Condition {
	return check.That(name, nu, nu >= 0 && nu < 0.5, "0 <= ν < 0.5")
}
