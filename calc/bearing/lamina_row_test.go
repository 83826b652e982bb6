package bearing

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
)

func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// random displacements that leave from none to all rollers loaded.
func randomDisplacement(rng *rand.Rand) [5]float64 {
	scale := math.Pow(10, -6+2*rng.Float64())
	s := func(k float64) float64 { return k * scale * (2*rng.Float64() - 1) }
	return [5]float64{s(3), s(1), s(1), s(30 * rng.Float64()), s(30)}
}

// The closed form along the roller must be what ever more slices tend to.
func TestRollerIntegralIsTheLimitOfManySlices(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	const h, slices = 8e-3, 200000
	for range 40 {
		a := 2e-5 * (rng.Float64() - 0.3)
		b := 4e-3 * (rng.Float64() - 0.5) * math.Pow(10, -3*rng.Float64())
		got := roller(a, b, h)
		if a+math.Abs(b)*h <= 0 {
			continue
		}
		var n, m, e float64
		for k := range slices {
			s := h * (2*(float64(k)+0.5)/slices - 1)
			if d := a + b*s; d > 0 {
				q := math.Pow(d, 10.0/9) * 2 * h / slices
				n, m, e = n+q, m+q*s, e+q*d*9/19
			}
		}
		scale := math.Abs(n)
		if math.Abs(got.n-n) > 1e-8*scale || math.Abs(got.m-m) > 1e-8*scale*h || math.Abs(got.energy-e) > 1e-8*e {
			t.Errorf("a=%g b=%g: got %v %v %v, slices %v %v %v", a, b, got.n, got.m, got.energy, n, m, e)
		}
	}
}

// Series and closed form must meet where one takes over from the other.
func TestRollerIsSmoothWhereTheSeriesTakesOver(t *testing.T) {
	const a, h = 1e-5, 8e-3
	for _, sign := range []float64{-1, 1} {
		b := sign * slightTilt * a / h
		below, above := roller(a, b*(1-1e-12), h), roller(a, b*(1+1e-12), h)
		for i, pair := range [][3]float64{
			{below.n, above.n, 1e-11}, {below.m, above.m, 1e-10}, {below.energy, above.energy, 1e-11},
			{below.naa, above.naa, 1e-9}, {below.nab, above.nab, 1e-8}, {below.nbb, above.nbb, 1e-8},
		} {
			if math.Abs(pair[0]/pair[1]-1) > pair[2] {
				t.Errorf("quantity %d jumps from %v to %v", i, pair[0], pair[1])
			}
		}
	}
}

// Force is the gradient of the energy and stiffness that of the force.
func TestReactionIsTheGradientOfItsEnergy(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for _, facing := range []float64{1, -1} {
		row, err := NewRow(sampleRollers, facing)
		if err != nil {
			t.Fatal(err)
		}
		for range 200 {
			u := randomDisplacement(rng)
			var f, f0, f1 [5]float64
			var k, unused [25]float64
			row.Reaction(&u, &f, &k)
			for i := range u {
				step := 1e-10
				if i > 2 {
					step = 1e-9
				}
				up, down := u, u
				up[i] += step
				down[i] -= step
				e1, e0 := row.Reaction(&up, &f1, &unused).Energy, row.Reaction(&down, &f0, &unused).Energy
				if got := (e1 - e0) / (2 * step); math.Abs(got-f[i]) > 1e-4*norm(f)+1e-3 {
					t.Fatalf("u=%v: force %d is %g, energy says %g", u, i, f[i], got)
				}
				for j := range f {
					got := (f1[j] - f0[j]) / (2 * step)
					// A roller that has just touched has no bounded second derivative.
					if math.Abs(got-k[5*j+i]) > 1e-2*math.Sqrt(k[6*i]*k[6*j])+1 {
						t.Fatalf("u=%v: stiffness %d,%d is %g, forces say %g", u, j, i, k[5*j+i], got)
					}
				}
			}
		}
	}
}

func norm(f [5]float64) float64 {
	s := 0.0
	for _, x := range f {
		s += x * x
	}
	return math.Sqrt(s)
}

func TestStiffnessIsSymmetricAndNeverNegative(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	row, err := NewRow(sampleRollers, -1)
	if err != nil {
		t.Fatal(err)
	}
	for range 2000 {
		u, v := randomDisplacement(rng), randomDisplacement(rng)
		var f [5]float64
		var k [25]float64
		energy := row.Reaction(&u, &f, &k).Energy
		if energy < 0 {
			t.Fatalf("energy %g at %v", energy, u)
		}
		work, size := 0.0, 0.0
		for i := range v {
			for j := range v {
				if k[5*i+j] != k[5*j+i] {
					t.Fatalf("stiffness %d,%d is not symmetric", i, j)
				}
				work += v[i] * k[5*i+j] * v[j]
				size += math.Abs(v[i] * k[5*i+j] * v[j])
			}
		}
		if work < -1e-12*size {
			t.Fatalf("stiffness at %v gives back work %g of %g", u, work, size)
		}
	}
}

// The forces of all rollers meet in the pressure centre: an even approach along
// each roller has no moment about it.
func TestEvenApproachActsAtThePressureCentre(t *testing.T) {
	for _, facing := range []float64{1, -1} {
		got, err := TaperedReaction(sampleRollers, facing, Displacement{Axial: facing * 30e-6, Radial1: 20e-6, Radial2: -7e-6})
		if err != nil {
			t.Fatal(err)
		}
		centre, err := LoadCentre(sampleRollers.PitchDiameter, sampleRollers.CupAngle)
		if err != nil {
			t.Fatal(err)
		}
		// The pressure centre lies against the facing, on the side of the large ends.
		x := -facing * centre
		if want := -x * got.Radial2; math.Abs(got.Moment1-want) > 1e-9*math.Abs(want) {
			t.Errorf("facing %g: M_1 = %g, forces at the pressure centre give %g", facing, got.Moment1, want)
		}
		if want := x * got.Radial1; math.Abs(got.Moment2-want) > 1e-9*math.Abs(want) {
			t.Errorf("facing %g: M_2 = %g, forces at the pressure centre give %g", facing, got.Moment2, want)
		}
	}
}

func TestBearingWithPlayCarriesNothing(t *testing.T) {
	got, err := TaperedReaction(sampleRollers, 1, Displacement{Axial: -50e-6, Radial1: 10e-6, Tilt2: 1e-4})
	if err != nil {
		t.Fatal(err)
	}
	if got.Loaded != 0 || got.Axial != 0 || got.Radial1 != 0 || got.MaxRoller != 0 {
		t.Errorf("got %+v", got)
	}
}

// Slices sum to the exact integral and do so better the more there are.
func TestSlicesAgreeWithTheExactIntegral(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for range 50 {
		u := randomDisplacement(rng)
		d := Displacement{u[0], u[1], u[2], u[3], u[4]}
		exact, err := TaperedReaction(sampleRollers, 1, d)
		if err != nil {
			t.Fatal(err)
		}
		slices, err := LaminaLoads(LaminaParams{Rollers: sampleRollers, Facing: 1, Displacement: d, Laminae: 301})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(slices.Axial-exact.Axial) > 1e-3*exact.Axial || math.Abs(slices.MaxRoller-exact.MaxRoller) > 1e-3*exact.MaxRoller {
			t.Errorf("at %v: slices %g N and %g N, integral %g N and %g N", u, slices.Axial, slices.MaxRoller, exact.Axial, exact.MaxRoller)
		}
	}
}

func TestReactionAllocatesNothing(t *testing.T) {
	row, err := NewRow(sampleRollers, 1)
	if err != nil {
		t.Fatal(err)
	}
	u := [5]float64{30e-6, 10e-6, 5e-6, 1e-4, -2e-4}
	var f [5]float64
	var k [25]float64
	if n := testing.AllocsPerRun(100, func() { row.Reaction(&u, &f, &k) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkReaction(b *testing.B) {
	row, err := NewRow(sampleRollers, 1)
	if err != nil {
		b.Fatal(err)
	}
	u := [5]float64{30e-6, 10e-6, 5e-6, 1e-4, -2e-4}
	var f [5]float64
	var k [25]float64
	for b.Loop() {
		row.Reaction(&u, &f, &k)
	}
}

func TestNinthRoot(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	for range 200000 {
		x := math.Pow(2, 600*(rng.Float64()-0.5)) * (1 + rng.Float64())
		if got, want := ninthRoot(x), math.Cbrt(math.Cbrt(x)); math.Abs(got/want-1) > 1e-15 {
			t.Fatalf("ninth root of %g: %v, want %v", x, got, want)
		}
	}
	for _, x := range []float64{0, 5e-324, 1e-310, 2.2250738585072014e-308, 1, 512, math.Nextafter(2, 1), math.MaxFloat64, math.Inf(1)} {
		if got, want := ninthRoot(x), math.Cbrt(math.Cbrt(x)); !(got == want || math.Abs(got/want-1) < 1e-15) {
			t.Errorf("ninth root of %g: %v, want %v", x, got, want)
		}
	}
	if !math.IsNaN(ninthRoot(math.NaN())) {
		t.Error("a root of no number")
	}
}
