package assess

import "axlewright/axle"

// modelDoubts is what no catalogue can state: how far the methods themselves
// and the metal of one casting may be off. Each multiplies a capacity or a
// demand. All are assumed; docs/doubt.md argues for each.
type modelDoubts struct {
	CastingMetal axle.Ratio // strength of this casting against its metal's typical figure
	WeldToe      axle.Ratio // strength beside a structural weld against the usual share for the metal
	BoltMetal    axle.Ratio // strength of a bolt against the least its class allows
	RootStress   axle.Ratio // real tooth root stress against the computed one
	FlankStress  axle.Ratio // real flank pressure against the computed one
	ToothLife    axle.Ratio // real tooth life against the computed one
	WeldLife     axle.Ratio // real life of a weld under its load cycles against that of its category
	BearingLife  axle.Ratio // one bearing's life against its L10: bearings differ by nature
	BearingLoad  axle.Ratio // real bearing load against the load path's
	Movement     axle.Ratio // real movement against the load path's
	LockedShare  axle.Ratio // share of the torque in one half-shaft of a locked centre: a wheel may hang
}

func newModelDoubts() modelDoubts {
	return modelDoubts{
		CastingMetal: assumed(1, 0.20),
		WeldToe:      assumed(1, 0.25),
		BoltMetal:    assumed(1.05, 0.05),
		RootStress:   assumed(1, 0.20),
		FlankStress:  assumed(1, 0.12),
		ToothLife:    assumed(1, 2.5),
		WeldLife:     assumed(2.6, 2.2),
		BearingLife:  assumed(2, 2),
		BearingLoad:  assumed(1, 0.10),
		Movement:     assumed(1, 0.25),
		LockedShare: axle.Ratio{Number: axle.Number{
			Value: 0.75, Low: 0.5, High: 1, Shape: axle.Uniform, Origin: axle.Assumed,
		}},
	}
}

// assumed is a lognormal factor: share is two standard deviations either way.
func assumed(value, share float64) axle.Ratio {
	return axle.Ratio{Number: axle.Number{
		Value: value, Low: value / (1 + share), High: value * (1 + share), Shape: axle.Lognormal, Origin: axle.Assumed,
	}}
}

func (d *modelDoubts) boltStrength() float64    { return d.BoltMetal.Value }
func (d *modelDoubts) castingStrength() float64 { return d.CastingMetal.Value }
