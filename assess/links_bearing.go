package assess

import (
	"math"

	"axlewright/axle"
	"axlewright/calc/bearing"
)

// A seat names a bearing and where its loads stand in a response.
type seat struct {
	radial, axial int
	pinion        bool // turns with the pinion
	of            func(a *axle.Assembly) *axle.Bearing
}

// The four bearings.
var (
	head = seat{headRadial, headAxial, true, func(a *axle.Assembly) *axle.Bearing { return &a.Head }}
	tail = seat{tailRadial, tailAxial, true, func(a *axle.Assembly) *axle.Bearing { return &a.Tail }}
	near = seat{nearRadial, nearAxial, false, func(a *axle.Assembly) *axle.Bearing { return &a.Side }}
	far  = seat{farRadial, farAxial, false, func(a *axle.Assembly) *axle.Bearing { return &a.Side }}
)

// rate gives a bearing's ratings: the maker's where they stand in the
// catalogue, else by its rollers.
func rate(b *axle.Bearing, n *notes) (bearing.Rating, error) {
	r, err := bearing.RatingFromRollers(bearing.RatingParams{Rollers: b.RollerSet(), Rows: 1, MaterialFactor: bearing.TaperRollerMaterialFactor})
	if err != nil {
		return r, err
	}
	if b.Dynamic.Given() {
		r.Dynamic = b.Dynamic.Value
		n.say("C", "dynamic rating of "+b.Name, r.Dynamic, "N", "maker's figure, "+string(b.Dynamic.Origin))
	} else {
		n.by("bearing.DynamicRating", "C", "dynamic rating of "+b.Name+" from its rollers", r.Dynamic, "N")
	}
	if b.Static.Given() {
		r.Static = b.Static.Value
		n.say("C_0", "static rating of "+b.Name, r.Static, "N", "maker's figure, "+string(b.Static.Origin))
	} else {
		n.by("bearing.StaticRating", "C_0", "static rating of "+b.Name+" from its rollers", r.Static, "N")
	}
	return r, nil
}

// load returns radial and axial load at a torque.
func (s seat) load(u *unit, flank axle.Flank, torque float64) (radial, axial float64) {
	k := u.doubts.BearingLoad.Value
	return k * u.at(flank, s.radial, torque), k * math.Max(0, u.at(flank, s.axial, torque))
}

// dents is static overload: dents in the raceways when C_0/P_0 falls below the limit.
func dents(s seat) func(*unit, *notes) (limit, error) {
	return func(u *unit, n *notes) (limit, error) {
		r, err := rate(s.of(u.axle), n)
		if err != nil {
			return nil, err
		}
		least := u.axle.Casting.Limits.StaticMin.Value
		return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
			radial, axial := s.load(u, flank, torque)
			load := r.EquivalentStatic(radial, axial)
			n.say("F_r", "radial load", radial, "N", "load path")
			n.say("F_a", "axial load", axial, "N", "load path")
			n.by("bearing.EquivalentStaticLoad", "P_0", "equivalent static load", load, "N")
			n.by("bearing.StaticSafety", "C_0/s_0", "load that the raceways stand", r.Static/least, "N")
			return load, r.Static / least
		}, nil
	}
}

// wears is fatigue of the raceways under the duty.
func wears(s seat) func(*unit, *notes) (limit, error) {
	return func(u *unit, n *notes) (limit, error) {
		r, err := rate(s.of(u.axle), n)
		if err != nil {
			return nil, err
		}
		ratio := 1.0
		if s.pinion {
			ratio = float64(u.axle.Gears.WheelTeeth) / float64(u.axle.Gears.PinionTeeth)
		}
		turns := u.turns() * ratio
		capacity := u.doubts.BearingLife.Value
		n.say("N", "turns over the wanted distance", turns, "-", "distance over the tyre's rolling circumference, times the ratio for a pinion bearing")
		return func(_ axle.Flank, torque float64, n *notes) (float64, float64) {
			damage := 0.0
			for i := range u.duty.Blocks {
				b := &u.duty.Blocks[i]
				flank := u.mounting.FlankOf(b.Going)
				radial, axial := s.load(u, flank, torque*b.Torque.Value)
				if load := r.EquivalentDynamic(radial, axial); load > 0 {
					damage += b.Share.Value * turns / r.Life(load)
				}
			}
			n.by("bearing.DutyLife", "D", "share of the L10 life that the duty uses up", damage, "-")
			return damage, capacity
		}, nil
	}
}

const metresAKilometre = 1000

// turns is how often the wheels turn over the wanted distance.
func (u *unit) turns() float64 {
	return u.duty.Life.Value * metresAKilometre / (2 * math.Pi * u.vehicle.Tyre.LoadedRadius.Value)
}
