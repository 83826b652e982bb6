package loadpath

import (
	"errors"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"axlewright/calc/bearing"
)

// unbalance sums forces and moments on each member as a reader of the state
// would, from vectors and places alone, and returns what is left over against
// the forces at work.
func unbalance(a *Axle, s *State) float64 {
	type pull struct{ at, force, moment Vector }
	point := a.Mesh.MeanPoint
	headX := point.X + a.Layout.GearToHead
	axis := func(x float64) Vector { return Vector{X: x, Z: a.Mesh.PinionAxisZ} }
	back := func(at Vector, l SeatLoad) pull { return pull{at, l.Force.times(-1), l.Moment.times(-1)} }
	pinion := []pull{
		{point, s.OnPinion, Vector{}},
		back(axis(headX), s.Head), back(axis(headX+a.Layout.HeadToTail), s.Tail),
		{at: axis(point.X - a.Pinion.SpigotDistance), force: s.Spigot.times(-1)},
	}
	wheel := []pull{
		{point, s.OnWheel, Vector{}},
		back(Vector{Y: a.Layout.Near}, s.Near), back(Vector{Y: -a.Layout.Far}, s.Far),
	}
	if s.Peg.Load > 0 {
		arm, round := a.pegArm()
		way := a.rubbing(s.Flank)
		wheel = append(wheel, pull{arm.plus(Vector{Y: a.hub()}), Vector{Y: -s.Peg.Load}.plus(round.times(way * s.Peg.Friction)), Vector{}})
	}
	worst := 0.0
	for i, member := range [][]pull{pinion, wheel} {
		var force, moment Vector
		size := 1.0
		origin := axis(headX)
		if i == 1 {
			origin = Vector{}
		}
		for _, p := range member {
			force = force.plus(p.force)
			moment = moment.plus(p.at.minus(origin).cross(p.force)).plus(p.moment)
			size = max(size, p.force.norm())
		}
		if i == 0 {
			moment.X = 0 // carried by the flange
		} else {
			moment.Y = 0 // by the half shafts
		}
		worst = max(worst, force.norm()/size, moment.norm()/(size*0.1))
	}
	return worst
}

func TestForcesAndMomentsBalance(t *testing.T) {
	for _, id := range referenceBuilds {
		a := referenceAxle(t, id)
		e, err := Prepare(a)
		if err != nil {
			t.Fatal(err)
		}
		for _, flank := range flanks {
			for _, torque := range []float64{0, 1, 300, 2000, 6000, 15000} {
				s, err := e.Solve(flank, torque)
				if err != nil {
					t.Fatal(err)
				}
				if u := unbalance(a, &s); u > 1e-9 || s.Residual > 1e-9 {
					t.Errorf("%s %s %g N·m: %.2g of the load is left over, residual %.2g", id, flank, torque, u, s.Residual)
				}
			}
		}
	}
}

// randomAxle makes an axle somewhere around the reference one, with every
// stiffness off by up to three decades either way, end play as often as
// preload, and a peg with or without a gap.
func randomAxle(base *Axle, rng *rand.Rand) *Axle {
	a := *base
	spread := func(x *float64, decades float64) { *x *= math.Pow(10, decades*(2*rng.Float64()-1)) }
	for _, s := range []*Seat{&a.HeadSeat, &a.TailSeat} {
		for _, k := range []*float64{&s.Axial, &s.Radial, &s.Tilt} {
			spread(k, 3)
		}
	}
	for _, s := range []*SideSeat{&a.NearSeat, &a.FarSeat} {
		for _, k := range []*float64{&s.Inward, &s.Leg, &s.Cap, &s.Across, &s.Axial, &s.Tilt} {
			spread(k, 3)
		}
	}
	spread(&a.Pinion.Modulus, 1)
	spread(&a.Centre.Modulus, 1)
	a.Plate = a.Plate.Scaled(a.Plate.Modulus * math.Pow(10, 2*(2*rng.Float64()-1)))
	a.PinionPreload = 1e-4 - 4e-4*rng.Float64()
	a.SidePreload = 1e-4 - 4e-4*rng.Float64()
	angle := 2 * math.Pi * rng.Float64()
	a.CapDirection = Vector{X: math.Cos(angle), Z: math.Sin(angle)}
	turn := func(v *Vector) { // thrust that may unload any row
		v.Y *= 4*rng.Float64() - 2
		v.X *= 4*rng.Float64() - 2
	}
	turn(&a.Mesh.Drive)
	turn(&a.Mesh.Coast)
	for _, r := range []*bearing.Rollers{&a.Head, &a.Tail, &a.Near, &a.Far} {
		r.CupAngle = (8 + 25*rng.Float64()) * degree
		r.Count = 8 + rng.IntN(r.Count-7)
	}
	switch rng.IntN(4) {
	case 0:
		a.Pinion.SpigotDistance, a.Pinion.SpigotDiameter = 0.03, 0.03
		a.Pinion.SpigotStiffness = math.Pow(10, 6+6*rng.Float64())
	case 1:
		a.Casting = randomCasting(&a, rng)
	}
	if a.Peg != nil {
		p := *a.Peg
		p.Gap = 5e-4*rng.Float64() - 1e-4
		p.Friction = 0.3 * rng.Float64()
		spread(&p.Stiffness, 3)
		if rng.IntN(5) == 0 {
			p.Stiffness = 0
		}
		a.Peg = &p
	}
	return &a
}

// randomCasting couples all seats by a positive matrix.
func randomCasting(a *Axle, rng *rand.Rand) *Casting {
	const n = CastingFreedoms
	for _, s := range []*SideSeat{&a.NearSeat, &a.FarSeat} {
		s.Leg = s.Inward * (0.05 + 0.9*rng.Float64()) // a leg drawn gives more than a seat pressed
	}
	var own [n]float64
	for i, s := range []Seat{a.HeadSeat, a.TailSeat,
		{a.NearSeat.Axial, a.NearSeat.Inward, a.NearSeat.Tilt}, {a.FarSeat.Axial, a.FarSeat.Inward, a.FarSeat.Tilt}} {
		copy(own[perSeat*i:], []float64{1 / s.Axial, 1 / s.Radial, 1 / s.Radial, 1 / s.Tilt, 1 / s.Tilt})
	}
	own[n-1] = 1 / 3e8
	var c Casting
	var mix [n][n]float64
	for i := range n {
		for j := range n {
			mix[i][j] = 0.3 * (2*rng.Float64() - 1)
		}
		mix[i][i]++
	}
	for i := range n {
		for j := range n {
			v := 0.0
			for k := range n {
				v += mix[i][k] * mix[j][k]
			}
			c.Compliance[i*n+j] = v * math.Sqrt(own[i]*own[j])
		}
	}
	return &c
}

// tryRandom solves one random axle and says what was wrong with the outcome.
func tryRandom(t *testing.T, base *Axle, seed uint64) (refused bool) {
	rng := rand.New(rand.NewPCG(seed, 77))
	a := randomAxle(base, rng)
	flank := flanks[rng.IntN(2)]
	torque := 10000 * rng.Float64()
	e, err := Prepare(a)
	var state State
	if err == nil {
		state, err = e.Solve(flank, torque)
	}
	var stuck *NotConverged
	var bad *BadAxle
	switch {
	case errors.As(err, &stuck):
		if !(stuck.Residual > 0) || stuck.System == "" {
			t.Errorf("seed %d: an error that says nothing: %v", seed, err)
		}
		return true
	case errors.As(err, &bad):
		return true
	case err != nil:
		t.Errorf("seed %d: %v", seed, err)
		return true
	}
	if u := unbalance(a, &state); !(u <= 1e-9) {
		t.Errorf("seed %d: %.2g of the load is left over, residual %.2g", seed, u, state.Residual)
	}
	if state.Peg.Load < 0 || !state.Converged {
		t.Errorf("seed %d: peg pulls with %g N", seed, state.Peg.Load)
	}
	return false
}

// TestRandomAxlesBalance tries 2,000 axles, or as many as AXLEWRIGHT_RANDOM_AXLES
// says: the checks run it with 100,000.
func TestRandomAxlesBalance(t *testing.T) {
	base := referenceAxle(t, "B")
	count := uint64(2000)
	if asked := os.Getenv("AXLEWRIGHT_RANDOM_AXLES"); asked != "" {
		var err error
		if count, err = strconv.ParseUint(asked, 10, 32); err != nil {
			t.Fatal(err)
		}
	}
	refused := 0
	for seed := range count {
		if tryRandom(t, base, seed) {
			refused++
		}
	}
	if refused > 0 {
		t.Errorf("%d of %d axles found no balance", refused, count)
	}
	t.Logf("%d of %d refused", refused, count)
}

func FuzzRandomAxlesBalance(f *testing.F) {
	base := referenceAxle(f, "B")
	for _, seed := range []uint64{1, 2, 3} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, seed uint64) { tryRandom(t, base, seed) })
}
