package loadpath

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"axlewright/calc/bearing"
)

func solved(t testing.TB, a *Axle, flank Flank, torque float64) State {
	t.Helper()
	e, err := Prepare(a)
	if err != nil {
		t.Fatal(err)
	}
	s, err := e.Solve(flank, torque)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// apart is the greatest difference of two states' movements, m.
func apart(a, b *State) float64 {
	return max(a.Wheel.Shift.minus(b.Wheel.Shift).norm(), a.Pinion.Shift.minus(b.Pinion.Shift).norm(),
		0.1*a.Wheel.Turn.minus(b.Wheel.Turn).norm(), 0.1*a.Pinion.Turn.minus(b.Pinion.Turn).norm(), math.Abs(a.Dial-b.Dial))
}

func TestComplianceIsSymmetricAndPositive(t *testing.T) {
	base := referenceAxle(t, "B")
	for seed := range uint64(300) {
		rng := rand.New(rand.NewPCG(seed, 5))
		e, err := Prepare(randomAxle(base, rng))
		if err != nil {
			continue // refused elsewhere
		}
		for _, s := range []*system{e.wheelSystem(), e.pinionSystem()} {
			for range 20 {
				var y [maxUnknown]float64
				var load [maxLoads]float64
				energy, scale := 0.0, 0.0
				for i := range s.nu {
					y[i] = 2*rng.Float64() - 1
				}
				for l := range s.nl {
					load[l] = 2*rng.Float64() - 1
				}
				for i := range s.nu {
					for j := range s.nu {
						if d := math.Abs(s.k[i][j] - s.k[j][i]); d > 1e-9*math.Sqrt(s.k[i][i]*s.k[j][j]) {
							t.Fatalf("seed %d: stiffness %d,%d: %g and %g", seed, i, j, s.k[i][j], s.k[j][i])
						}
						energy += y[i] * s.k[i][j] * y[j]
						scale += math.Abs(y[i] * s.k[i][j] * y[j])
					}
				}
				if energy < -1e-12*scale {
					t.Fatalf("seed %d: the stiffness gives back %g of %g", seed, energy, scale)
				}
				energy, scale = 0, 0
				for i := range s.nl {
					for j := range s.nl {
						if d := math.Abs(s.g[i][j] - s.g[j][i]); d > 1e-9*math.Sqrt(s.g[i][i]*s.g[j][j]) {
							t.Fatalf("seed %d: compliance %d,%d: %g and %g", seed, i, j, s.g[i][j], s.g[j][i])
						}
						energy += load[i] * s.g[i][j] * load[j]
						scale += math.Abs(load[i] * s.g[i][j] * load[j])
					}
				}
				if energy < -1e-9*scale {
					t.Fatalf("seed %d: the compliance gives back %g of %g", seed, energy, scale)
				}
			}
		}
	}
}

func TestPegFarAwayIsNoPeg(t *testing.T) {
	a := referenceAxle(t, "B")
	peg := *a.Peg
	peg.Gap = 1
	with, without := *a, *a
	with.Peg, without.Peg = &peg, nil
	for _, flank := range flanks {
		s, n := solved(t, &with, flank, 6000), solved(t, &without, flank, 6000)
		if d := apart(&s, &n); d > 1e-12 || s.Peg.Load != 0 {
			t.Errorf("%s: %g m apart, peg carries %g N", flank, d, s.Peg.Load)
		}
	}
}

// Where a peg carries, back face and peg meet to rounding; where it does not,
// there is room left. That is the whole law of a stop.
func TestPegEitherCarriesOrHasRoom(t *testing.T) {
	base := referenceAxle(t, "B")
	carried := 0
	for seed := range uint64(400) {
		rng := rand.New(rand.NewPCG(seed, 6))
		a := randomAxle(base, rng)
		e, err := Prepare(a)
		if err != nil {
			continue
		}
		s, err := e.Solve(Coast, 10000*rng.Float64())
		if err != nil {
			continue
		}
		give := 0.0
		if a.Peg.Stiffness > 0 {
			give = s.Peg.Load / a.Peg.Stiffness
		}
		room := s.Peg.Gap + give - s.Peg.Movement
		switch {
		case s.Peg.Load < 0:
			t.Errorf("seed %d: the peg pulls with %g N", seed, s.Peg.Load)
		case s.Peg.Load > 0:
			carried++
			if math.Abs(room) > 1e-12+1e-9*math.Abs(s.Peg.FreeMovement) {
				t.Errorf("seed %d: carries %g N with %g m of room", seed, s.Peg.Load, room)
			}
			if s.Peg.FreeMovement < s.Peg.Movement {
				t.Errorf("seed %d: the peg draws the wheel on: %g m instead of %g m", seed, s.Peg.Movement, s.Peg.FreeMovement)
			}
		case room < 0:
			t.Errorf("seed %d: carries nothing and is %g m deep", seed, -room)
		}
	}
	if carried < 50 {
		t.Errorf("only %d pegs carried", carried)
	}
}

// Seats that cannot hold a moment make the reactions those of a textbook beam
// on two supports at the roller centres, whatever all else may give.
func TestSeatsFreeToTiltGiveTheReactionsOfABeamOnTwoSupports(t *testing.T) {
	a := referenceAxle(t, "A")
	for _, k := range []*float64{&a.HeadSeat.Tilt, &a.TailSeat.Tilt, &a.NearSeat.Tilt, &a.FarSeat.Tilt} {
		*k = 1
	}
	for _, flank := range flanks {
		s := solved(t, a, flank, 3000)
		l := a.Layout
		// Moments about the other support, by hand.
		f, m := s.OnPinion, Vector{0, a.Mesh.MeanPoint.Y, a.Mesh.MeanPoint.Z - a.Mesh.PinionAxisZ}.cross(s.OnPinion)
		tailY := (-f.Y*l.GearToHead + m.Z) / l.HeadToTail
		headY := f.Y - tailY
		tailZ := (-f.Z*l.GearToHead - m.Y) / l.HeadToTail
		headZ := f.Z - tailZ
		for _, c := range []struct {
			name      string
			got, want float64
		}{{"head y", s.Head.Force.Y, headY}, {"head z", s.Head.Force.Z, headZ}, {"tail y", s.Tail.Force.Y, tailY}, {"tail z", s.Tail.Force.Z, tailZ}} {
			if math.Abs(c.got-c.want) > 1e-3*f.norm() {
				t.Errorf("%s %s: %g N, beam on two supports %g N", flank, c.name, c.got, c.want)
			}
		}
		f, m = s.OnWheel, Vector{a.Mesh.MeanPoint.X, a.Mesh.MeanPoint.Y, a.Mesh.MeanPoint.Z}.cross(s.OnWheel)
		span := l.Near + l.Far
		nearX := (f.X*l.Far - m.Z) / span
		nearZ := (f.Z*l.Far + m.X) / span
		if math.Abs(s.Near.Force.X-nearX) > 1e-3*f.norm() || math.Abs(s.Near.Force.Z-nearZ) > 1e-3*f.norm() {
			t.Errorf("%s near: %g, %g N, beam on two supports %g, %g N", flank, s.Near.Force.X, s.Near.Force.Z, nearX, nearZ)
		}
	}
}

// In a rigid casting with rigid shafts and rollers too short to hold a moment,
// the rollers' forces meet in the pressure centres: handbook reactions.
func TestRigidCastingGivesTheReactionsAtThePressureCentres(t *testing.T) {
	a := referenceAxle(t, "A")
	const rigid = 1e14
	a.HeadSeat, a.TailSeat = Seat{rigid, rigid, rigid}, Seat{rigid, rigid, rigid}
	a.NearSeat = SideSeat{rigid, rigid, rigid, rigid, rigid, rigid}
	a.FarSeat = a.NearSeat
	a.Pinion.Modulus, a.Centre.Modulus = 1e17, 1e17
	for _, r := range []*bearing.Rollers{&a.Head, &a.Tail, &a.Near, &a.Far} {
		r.Length = 0.2e-3
	}
	for _, flank := range flanks {
		s := solved(t, a, flank, 200)
		centre := func(r bearing.Rollers) float64 {
			c, err := bearing.LoadCentre(r.PitchDiameter, r.CupAngle)
			if err != nil {
				t.Fatal(err)
			}
			return c
		}
		// Back to back: the pressure centres lie outside the rollers' centres.
		l := a.Layout
		headAt := l.GearToHead - centre(a.Head)
		span := l.HeadToTail + centre(a.Head) + centre(a.Tail)
		f, m := s.OnPinion, Vector{0, a.Mesh.MeanPoint.Y, a.Mesh.MeanPoint.Z - a.Mesh.PinionAxisZ}.cross(s.OnPinion)
		tailY := (-f.Y*headAt + m.Z) / span
		tailZ := (-f.Z*headAt - m.Y) / span
		if math.Abs(s.Tail.Force.Y-tailY) > 0.01*f.norm() || math.Abs(s.Tail.Force.Z-tailZ) > 0.01*f.norm() {
			t.Errorf("%s tail: %g, %g N, at the pressure centres %g, %g N", flank, s.Tail.Force.Y, s.Tail.Force.Z, tailY, tailZ)
		}
		// Face to face: the side bearings' lie inside.
		nearAt, farAt := l.Near-centre(a.Near), l.Far-centre(a.Far)
		f, m = s.OnWheel, a.Mesh.MeanPoint.cross(s.OnWheel)
		nearX := (f.X*farAt - m.Z) / (nearAt + farAt)
		nearZ := (f.Z*farAt + m.X) / (nearAt + farAt)
		if math.Abs(s.Near.Force.X-nearX) > 0.01*f.norm() || math.Abs(s.Near.Force.Z-nearZ) > 0.01*f.norm() {
			t.Errorf("%s near: %g, %g N, at the pressure centres %g, %g N", flank, s.Near.Force.X, s.Near.Force.Z, nearX, nearZ)
		}
	}
}

// stiffer multiplies every linear stiffness.
func stiffer(a *Axle, k float64) *Axle {
	b := *a
	for _, s := range []*Seat{&b.HeadSeat, &b.TailSeat} {
		s.Axial, s.Radial, s.Tilt = s.Axial*k, s.Radial*k, s.Tilt*k
	}
	for _, s := range []*SideSeat{&b.NearSeat, &b.FarSeat} {
		s.Inward, s.Leg, s.Cap, s.Across, s.Axial, s.Tilt = s.Inward*k, s.Leg*k, s.Cap*k, s.Across*k, s.Axial*k, s.Tilt*k
	}
	b.Pinion.Modulus *= k
	b.Centre.Modulus *= k
	b.Plate = b.Plate.Scaled(b.Plate.Modulus * k)
	if a.Peg != nil {
		p := *a.Peg
		p.Stiffness *= k
		b.Peg = &p
	}
	return &b
}

// Rollers give by the power 9/10 of their load. Without preload, all else
// k^(1/9) stiffer, k^(10/9) of the torque and k times the gap make everything
// move k times as far: a law of the whole axle, peg and caps in it.
func TestMovementScalesWithTheRollersPower(t *testing.T) {
	a := referenceAxle(t, "B")
	a.PinionPreload, a.SidePreload = 0, 0
	for _, k := range []float64{0.5, 2, 5} {
		b := stiffer(a, math.Pow(k, 1.0/9))
		peg := *b.Peg
		peg.Gap *= k
		b.Peg = &peg
		for _, flank := range flanks {
			small, large := solved(t, a, flank, 3000), solved(t, b, flank, 3000*math.Pow(k, 10.0/9))
			if d := large.Wheel.Shift.minus(small.Wheel.Shift.times(k)).norm(); d > 1e-5*large.Wheel.Shift.norm() {
				t.Errorf("%s, %g: wheel moves %v, scaled %v", flank, k, large.Wheel.Shift, small.Wheel.Shift.times(k))
			}
			if d := large.Pinion.Shift.minus(small.Pinion.Shift.times(k)).norm(); d > 1e-5*large.Pinion.Shift.norm() {
				t.Errorf("%s, %g: pinion moves %v, scaled %v", flank, k, large.Pinion.Shift, small.Pinion.Shift.times(k))
			}
			if want := small.Peg.Load * math.Pow(k, 10.0/9); math.Abs(large.Peg.Load-want) > 1e-4*want {
				t.Errorf("%s, %g: peg carries %g N, scaled %g N", flank, k, large.Peg.Load, want)
			}
		}
	}
}

// Where what gives is linear (all so soft that the rollers' own give is lost in
// it) twice the stiffness is half the movement.
func TestTwiceTheStiffnessIsHalfTheMovement(t *testing.T) {
	a := stiffer(referenceAxle(t, "A"), 1e-3)
	b := stiffer(a, 2)
	for _, flank := range flanks {
		soft, stiff := solved(t, a, flank, 300), solved(t, b, flank, 300)
		if d := soft.Wheel.Shift.minus(stiff.Wheel.Shift.times(2)).norm(); d > 0.02*soft.Wheel.Shift.norm() {
			t.Errorf("%s: wheel %v, at twice the stiffness %v", flank, soft.Wheel.Shift, stiff.Wheel.Shift)
		}
		if d := soft.Pinion.Shift.minus(stiff.Pinion.Shift.times(2)).norm(); d > 0.02*soft.Pinion.Shift.norm() {
			t.Errorf("%s: pinion %v, at twice the stiffness %v", flank, soft.Pinion.Shift, stiff.Pinion.Shift)
		}
	}
}

func TestNoBearingPulls(t *testing.T) {
	base := referenceAxle(t, "B")
	for seed := range uint64(400) {
		rng := rand.New(rand.NewPCG(seed, 8))
		e, err := Prepare(randomAxle(base, rng))
		if err != nil {
			continue
		}
		s, err := e.Solve(flanks[seed%2], 8000*rng.Float64())
		if err != nil {
			continue
		}
		for name, l := range map[string]*SeatLoad{"head": &s.Head, "tail": &s.Tail, "near": &s.Near, "far": &s.Far} {
			spring := groundSpring * math.Abs(l.Approach.Axial)
			if l.Axial < -1.001*spring-1e-9 {
				t.Errorf("seed %d: %s pulls with %g N beyond the ground spring's %g N", seed, name, l.Axial, spring)
			}
			if l.Loaded == 0 && math.Abs(l.Axial)+l.Radial > 2*groundSpring*(math.Abs(l.Approach.Axial)+math.Hypot(l.Approach.Radial1, l.Approach.Radial2)) {
				t.Errorf("seed %d: %s carries %g N on no roller", seed, name, l.Radial)
			}
		}
	}
}

func TestTheStartDoesNotMatter(t *testing.T) {
	for _, play := range []float64{60e-6, -100e-6} {
		a := referenceAxle(t, "B")
		a.SidePreload, a.PinionPreload = play, play
		e, err := Prepare(a)
		if err != nil {
			t.Fatal(err)
		}
		for _, flank := range flanks {
			want, err := e.Solve(flank, 4000)
			if err != nil {
				t.Fatal(err)
			}
			rng := rand.New(rand.NewPCG(9, 9))
			for range 50 {
				i := flankIndex(flank)
				for _, s := range []*system{&e.wheel, &e.pinion} {
					for _, b := range []*before{&s.free[i], &s.pressed[i]} {
						b.torque = 4000
						for j := range s.nu {
							b.y[j] = 2e-3 * (2*rng.Float64() - 1)
						}
					}
				}
				e.wheel.memo.clear()
				e.pinion.memo.clear()
				got, err := e.Solve(flank, 4000)
				if err != nil {
					t.Fatal(err)
				}
				if d := apart(&got, &want); d > 1e-12 {
					t.Errorf("%s, %g: another start ends %g m away", flank, play, d)
				}
			}
		}
	}
}

// The other hand of spiral is the same axle in a mirror.
func TestTheOtherHandIsTheMirrorImage(t *testing.T) {
	a := referenceAxle(t, "B")
	a.Near.Count, a.Far.Count = 18, 18 // a set of rollers that is its own mirror image
	b := *a
	for _, v := range []*Vector{&b.Mesh.MeanPoint, &b.Mesh.Drive, &b.Mesh.Coast} {
		v.Z = -v.Z
	}
	b.Mesh.PinionAxisZ = -b.Mesh.PinionAxisZ
	peg := *a.Peg
	peg.Angle = -peg.Angle
	b.Peg = &peg
	for i := range b.Plate.Compliance { // the sense of turning about +y is mirrored
		if round := []int{meshTangential, meshAround}; !slices.Contains(round, i) {
			for _, r := range round {
				b.Plate.Compliance[i][r] = -b.Plate.Compliance[i][r]
				b.Plate.Compliance[r][i] = -b.Plate.Compliance[r][i]
			}
		}
	}
	const tolerance = 1e-9
	for _, flank := range flanks {
		s, m := solved(t, a, flank, 4000), solved(t, &b, flank, 4000)
		shift := m.Wheel.Shift
		shift.Z = -shift.Z
		if d := shift.minus(s.Wheel.Shift).norm(); d > tolerance*s.Wheel.Shift.norm() {
			t.Errorf("%s: wheel %v, mirrored %v", flank, s.Wheel.Shift, m.Wheel.Shift)
		}
		for _, c := range [][2]float64{
			{s.Mesh.WheelAxial, m.Mesh.WheelAxial}, {s.Mesh.PinionAxial, m.Mesh.PinionAxial},
			{s.Mesh.Offset, m.Mesh.Offset}, {0.1 * s.Mesh.ShaftAngle, 0.1 * m.Mesh.ShaftAngle}, {1e-8 * s.Peg.Load, 1e-8 * m.Peg.Load},
		} {
			if math.Abs(c[0]-c[1]) > 2*tolerance*s.Wheel.Shift.norm() {
				t.Errorf("%s: %+v, mirrored %+v", flank, s.Mesh, m.Mesh)
			}
		}
	}
}
