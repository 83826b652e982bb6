package loadpath

import (
	"axlewright/calc/bolt"
	"axlewright/calc/check"
	"axlewright/calc/ring"
)

// CapJoint is what holds a bearing cap down: two bolts and what they clamp.
type CapJoint struct {
	Bolt      bolt.BoltResilienceParams // one of the two
	Clamped   bolt.MemberParams         // what it clamps: the cap's foot
	LoadPlane float64                   // -, share of the clamped parts between the planes where the load enters, n of VDI 2230
}

// CapBuild is a bearing cap with its two bolts.
type CapBuild struct {
	Arch ring.CapParams // curved beam, with an overlay where there is one; its Force is not used
	CapJoint
}

// CapStiffness is how a cap gives towards its own side.
type CapStiffness struct {
	Arch  float64 // N/m, curved beam between its feet
	Joint float64 // N/m, both bolts and joints, as long as the joint is closed
	Total float64 // N/m, both in series: Axle.NearSeat.Cap
	Open  float64 // N/m, the same with the joint open, when only the bolts hold
}

// Stiffness returns the stiffness of the cap as the bearing feels it.
func (c CapBuild) Stiffness() (CapStiffness, error) {
	arch := c.Arch
	arch.Force = 1e4 // the arch is linear
	a, err := ring.Cap(arch)
	if err != nil {
		return CapStiffness{}, err
	}
	return c.CapJoint.Stiffness(a.Stiffness)
}

// Stiffness returns the stiffness of a cap whose arch alone has the stiffness
// given, N/m.
//
// A preloaded joint is stiff: under a load that enters at the load planes, the
// parts between the planes spring back while bolt and parts outside them stretch,
// two springs side by side.
//
//	1/k = 1/k_arch + ½/(1/(n·δ_P) + 1/(δ_S + (1 − n)·δ_P))
//
// Once the joint has opened the bolts alone are left: k_open with ½·(δ_S + (1 − n)·δ_P).
func (c CapJoint) Stiffness(arch float64) (CapStiffness, error) {
	if err := check.All("loadpath.CapJoint.Stiffness",
		check.Within("LoadPlane", c.LoadPlane, 0, 1), check.Positive("arch", arch),
	); err != nil {
		return CapStiffness{}, err
	}
	screw, err := bolt.BoltResilience(c.Bolt)
	if err != nil {
		return CapStiffness{}, err
	}
	parts, err := bolt.MemberResilience(c.Clamped)
	if err != nil {
		return CapStiffness{}, err
	}
	between := c.LoadPlane * parts.Resilience
	outside := screw.Resilience + (1-c.LoadPlane)*parts.Resilience
	closed := 0.5 * between * outside / (between + outside)
	return CapStiffness{
		Arch:  arch,
		Joint: 1 / closed,
		Total: 1 / (1/arch + closed),
		Open:  1 / (1/arch + outside/2),
	}, nil
}
