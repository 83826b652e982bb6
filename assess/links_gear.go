package assess

import (
	"math"

	"axlewright/axle"
	"axlewright/calc/gear"
)

// A toothLoad is what one newton metre at the crown wheel does to the teeth.
// Root stress goes with the torque, flank pressure with its square root.
type toothLoad struct {
	pinion, wheel [2]float64 // Pa per N·m, root stress by flank
	flank         [2]float64 // Pa per √(N·m), pressure by flank
	hypoid        [2]float64 // -, what the sliding of a hypoid leaves of the permissible pressure
}

// staticShare is Y_NT of a static overload: a root stands so many times its
// endurance limit once.
const staticShare = 2.5

// lappedFilm is Z_L·Z_v·Z_R of lapped teeth.
const lappedFilm = 0.92

// newToothLoad works out both flanks by ISO 10300 method B1, or the roots by
// a geometry factor J where the catalogue gives one.
func newToothLoad(u *unit, n *notes) (toothLoad, error) {
	var t toothLoad
	g := &u.axle.Gears
	cones, err := g.Cones()
	if err != nil {
		return t, err
	}
	depths, err := gear.MeanToothDepths(gear.DepthsParams{Cones: cones})
	if err != nil {
		return t, err
	}
	lim, err := gear.LimitPressureAngle(cones)
	if err != nil {
		return t, err
	}
	angles := gear.PressureAngles{
		Limit: lim, GeneratedDrive: g.DriveAngle.Value, GeneratedCoast: g.CoastAngle.Value,
		EffectiveDrive: g.DriveAngle.Value - lim, EffectiveCoast: g.CoastAngle.Value + lim,
	}
	for f, flank := range flanks {
		effective := angles.EffectiveDrive
		if flank == gear.Coast {
			effective = angles.EffectiveCoast
		}
		virtual, err := gear.VirtualCylindricalGears(gear.VirtualParams{
			Cones: cones, PinionAddend: depths.PinionAddendum, WheelAddend: depths.WheelAddendum,
			FaceWidth: g.Face.Value, PressureAngle: effective, Edition: gear.ISO10300of2014,
		})
		if err != nil {
			return t, err
		}
		const trial = 1000 // N·m
		root, err := gear.RootStress(gear.RootStressParams{
			Cones: cones, Depths: depths, Virtual: virtual, WheelTorque: trial, PressureAngle: effective,
		})
		if err != nil {
			return t, err
		}
		contact, err := gear.FlankStress(gear.FlankStressParams{
			Cones: cones, Angles: angles, Virtual: virtual, WheelTorque: trial, Flank: flank,
		})
		if err != nil {
			return t, err
		}
		t.pinion[f], t.wheel[f] = root.Pinion/trial, root.Wheel/trial
		t.flank[f], t.hypoid[f] = contact.Stress/math.Sqrt(trial), contact.Hypoid
		n.by("gear.RootStress", "σ_F1/T", "pinion root stress for each N·m at the axle, "+string(flank)+" flank", t.pinion[f], "Pa/(N·m)")
		n.by("gear.RootStress", "σ_F2/T", "wheel root stress for each N·m, "+string(flank)+" flank", t.wheel[f], "Pa/(N·m)")
		n.by("gear.FlankStress", "σ_H/√T", "flank pressure for each √(N·m), "+string(flank)+" flank", t.flank[f], "Pa/√(N·m)")
	}
	if j := g.GeometryFactor; j.Given() {
		perTorque := byGeometryFactor(g, cones, j.Value)
		t.pinion, t.wheel = [2]float64{perTorque, perTorque}, [2]float64{perTorque, perTorque}
		n.say("σ_F/T", "root stress for each N·m, by the geometry factor of the catalogue", perTorque, "Pa/(N·m)", "W_t/(b·m_et·J), American form without load factors")
	}
	return t, nil
}

// byGeometryFactor is the American form: tangential force at the outer end over
// face width, outer transverse module and J.
func byGeometryFactor(g *axle.GearSet, c gear.PitchCones, j float64) float64 {
	outer := c.WheelMeanRadius + g.Face.Value/2*math.Sin(c.WheelPitchAngle)
	module := 2 * outer / float64(g.WheelTeeth)
	return 1 / outer / (g.Face.Value * module * j)
}

// toothRoot is a tooth broken at its root by one overload.
func toothRoot(pinion bool) func(*unit, *notes) (limit, error) {
	return func(u *unit, n *notes) (limit, error) {
		t, err := newToothLoad(u, n)
		if err != nil {
			return nil, err
		}
		perTorque := t.wheel
		if pinion {
			perTorque = t.pinion
		}
		capacity := u.axle.Gears.RootStrength.Value
		return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
			stress := u.doubts.RootStress.Value * perTorque[flankIndex(flank)] * torque
			n.say("σ_F", "root stress", stress, "Pa", "stress for each N·m times the torque")
			n.say("σ_max", "stress at which the root breaks at once", capacity, "Pa", "catalogue")
			return stress, capacity
		}, nil
	}
}

// cyclesOf returns the load cycles of a member in a block of the duty.
func cyclesOf(u *unit, b *axle.Block, pinion bool) float64 {
	cycles := b.Share.Value * u.turns()
	if pinion {
		cycles *= float64(u.axle.Gears.WheelTeeth) / float64(u.axle.Gears.PinionTeeth)
	}
	return cycles
}

// toothLife is a root that tires under the duty. Both flanks bend the same root.
func toothLife(pinion bool) func(*unit, *notes) (limit, error) {
	return func(u *unit, n *notes) (limit, error) {
		t, err := newToothLoad(u, n)
		if err != nil {
			return nil, err
		}
		perTorque := t.wheel
		if pinion {
			perTorque = t.pinion
		}
		endurance := u.axle.Gears.RootStrength.Value / staticShare
		n.by("gear.PermissibleRootStress", "σ_FP", "what the root stands three million times: the overload strength over Y_NT of 2.5", endurance, "Pa")
		capacity := u.doubts.ToothLife.Value
		return func(_ axle.Flank, torque float64, n *notes) (float64, float64) {
			damage := 0.0
			for i := range u.duty.Blocks {
				b := &u.duty.Blocks[i]
				f := flankIndex(u.mounting.FlankOf(b.Going))
				k := u.doubts.RootStress.Value * perTorque[f] * torque * b.Torque.Value / endurance
				damage += rootCurve.wornBy(k, cyclesOf(u, b, pinion))
			}
			n.by("gear.RootLife", "D", "share of the root's life that the duty uses up", damage, "-")
			return damage, capacity
		}, nil
	}
}

// flankLife is pitting of the pinion's flanks, which turn most often. Each
// flank wears by itself.
func flankLife(u *unit, n *notes) (limit, error) {
	t, err := newToothLoad(u, n)
	if err != nil {
		return nil, err
	}
	capacity := u.doubts.ToothLife.Value
	return func(_ axle.Flank, torque float64, n *notes) (float64, float64) {
		var damage [2]float64
		for i := range u.duty.Blocks {
			b := &u.duty.Blocks[i]
			f := flankIndex(u.mounting.FlankOf(b.Going))
			permissible := u.axle.Gears.FlankStrength.Value * lappedFilm * t.hypoid[f]
			k := u.doubts.FlankStress.Value * t.flank[f] * math.Sqrt(torque*b.Torque.Value) / permissible
			damage[f] += flankCurve.wornBy(k, cyclesOf(u, b, true))
		}
		worse := math.Max(damage[0], damage[1])
		n.by("gear.FlankLife", "D", "share of the worse flank's life that the duty uses up", worse, "-")
		return worse, capacity
	}, nil
}

// A lifeCurve is a stress-cycle curve of calc/gear with what lies past its
// steep end.
type lifeCurve struct {
	life  func(share float64) (gear.LifeResult, error)
	end   float64 // highest share of the endurance limit on the curve
	slope float64 // of its steep part
}

// The curves of case-hardened teeth, ISO 6336-2 and -3 as calc/gear has them.
var (
	rootCurve  = lifeCurve{gear.RootLife, 2.5, 8.74}
	flankCurve = lifeCurve{gear.FlankLife, 1.6, 13.2}
)

// wornBy is Miner's share of one block. A stress past the end of the curve, an
// overload that a few teeth may survive, goes on down the steep slope: that
// one push breaks the tooth is for the link of the single overload to say.
func (c lifeCurve) wornBy(share, cycles float64) float64 {
	if share <= 0 || cycles == 0 {
		return 0
	}
	r, err := c.life(math.Min(share, c.end))
	if err != nil {
		return math.Inf(1)
	}
	if r.Beyond {
		return 0
	}
	if share > c.end {
		r.Cycles *= math.Pow(c.end/share, c.slope)
	}
	return cycles / r.Cycles
}
