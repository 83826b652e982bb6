package gear

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

const degree = math.Pi / 180

func mustCones(t testing.TB, c PitchCones, err error) PitchCones {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestStraightBevelForcesPublished(t *testing.T) {
	const source = "Jindal, Machine Design (2010), example 27-1, p. 712"
	// 8 kW at 400 rev/min, ratio 2, outer pitch radius of the pinion 200 mm, face 0.2 of the outer cone distance.
	pinionTorque := 8000 / (400 * 2 * math.Pi / 60)
	pinionMean := 0.200 * (1 - 0.2/2)
	cones, err := BevelPitchCones(20, 40, 0, 2*pinionMean)
	cones = mustCones(t, cones, err)
	f, err := MeshForces(MeshParams{Cones: cones, WheelTorque: 2 * pinionTorque, Flank: Drive, PinionHand: LeftHand,
		DrivePressureAngle: 20 * degree, CoastPressureAngle: 20 * degree})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "tangential", Got: f.Pinion.Tangential, Printed: "1061", Source: source},
		{Name: "separating, in the pitch cone's normal", Got: math.Hypot(f.Pinion.RadialApart, f.Pinion.AxialAway), Printed: "386.18", Source: source},
		{Name: "radial on the pinion", Got: f.Pinion.RadialApart, Printed: "345.41", Source: source},
		{Name: "axial on the pinion", Got: f.Pinion.AxialAway, Printed: "172.71", Source: source},
	})
}

func TestSpiralBevelPinionForcesPublished(t *testing.T) {
	const source = "table of spiral bevel forces, 20° and 35°, per 100 of tangential force, in an open technical reference on gears (from memory)"
	rows := []published.Row{}
	for _, c := range []struct {
		z1, z2  int
		printed [4]string // axial and radial on the concave flank of the pinion, then on the convex
	}{
		{20, 20, [4]string{"80.9", "-18.1", "-18.1", "80.9"}},
		{20, 40, [4]string{"82.5", "8.4", "-42.8", "71.1"}},
		{20, 50, [4]string{"81.5", "15.2", "-48.5", "67.3"}},
		{20, 60, [4]string{"80.5", "20.0", "-52.4", "64.3"}},
	} {
		drive := standardForces(t, c.z1, c.z2, Drive).Pinion
		coast := standardForces(t, c.z1, c.z2, Coast).Pinion
		for i, got := range []float64{drive.AxialAway, drive.RadialApart, coast.AxialAway, coast.RadialApart} {
			rows = append(rows, published.Row{Name: fmt.Sprintf("%d/%d component %d", c.z1, c.z2, i), Got: got, Printed: c.printed[i], Source: source})
		}
	}
	published.Check(t, rows)
}

// standardForces are the forces of a 20° and 35° spiral bevel pair per 100 of tangential force.
func standardForces(t *testing.T, z1, z2 int, flank Flank) MeshForcesResult {
	t.Helper()
	cones, err := BevelPitchCones(z1, z2, 35*degree, 0.100)
	cones = mustCones(t, cones, err)
	f, err := MeshForces(MeshParams{Cones: cones, WheelTorque: 100 * 0.100, Flank: flank, PinionHand: LeftHand,
		DrivePressureAngle: 20 * degree, CoastPressureAngle: 20 * degree})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestToothLoadsOfTheTrade(t *testing.T) {
	const source = "common practice, no source: tooth loads as a multiple of T/r_mean, 20° and 35°, zero offset, worked from ANSI/AGMA 2005 forms"
	var rows []published.Row
	for _, c := range []struct {
		z1, z2  int
		printed [4]string // crown wheel drive and coast, pinion drive and coast (pulled in)
	}{
		{13, 46, [4]string{"0.24", "0.62", "0.79", "0.55"}},
		{9, 37, [4]string{"0.27", "0.60", "0.79", "0.58"}},
		{10, 47, [4]string{"0.29", "0.58", "0.78", "0.59"}},
		{7, 37, [4]string{"0.31", "0.57", "0.77", "0.61"}},
	} {
		drive, coast := standardForces(t, c.z1, c.z2, Drive), standardForces(t, c.z1, c.z2, Coast)
		for i, got := range []float64{drive.Wheel.AxialAway, coast.Wheel.AxialAway, drive.Pinion.AxialAway, -coast.Pinion.AxialAway} {
			rows = append(rows, published.Row{Name: fmt.Sprintf("%d/%d thrust %d", c.z2, c.z1, i), Got: got / 100, Printed: c.printed[i], Source: source})
		}
	}
	rows = append(rows,
		published.Row{Name: "46/13", Got: 46.0 / 13, Printed: "3.54", Source: "arithmetic"},
		published.Row{Name: "37/9", Got: 37.0 / 9, Printed: "4.11", Source: "arithmetic"},
		published.Row{Name: "47/10", Got: 47.0 / 10, Printed: "4.70", Source: "arithmetic"})
	// 5,175 N·m on a mean radius of 94 mm, 37/9.
	cones, err := BevelPitchCones(9, 37, 35*degree, 0.094)
	cones = mustCones(t, cones, err)
	p := MeshParams{Cones: cones, WheelTorque: 5175, Flank: Drive, PinionHand: LeftHand, DrivePressureAngle: 20 * degree, CoastPressureAngle: 20 * degree}
	drive, err := MeshForces(p)
	if err != nil {
		t.Fatal(err)
	}
	p.Flank = Coast
	coast, err := MeshForces(p)
	if err != nil {
		t.Fatal(err)
	}
	rows = append(rows,
		published.Row{Name: "tooth load, kN", Got: drive.Wheel.Tangential / 1e3, Printed: "55.1", Source: source},
		published.Row{Name: "crown wheel thrust on drive, kN", Got: drive.Wheel.AxialAway / 1e3, Printed: "14.7", Source: source},
		published.Row{Name: "crown wheel thrust on coast, kN", Got: coast.Wheel.AxialAway / 1e3, Printed: "32.9", Source: source})
	published.Check(t, rows)
}

// hypoidExample is a 10/39 pair with 32 mm offset, as a drawing would give it.
func hypoidExample(t testing.TB) PitchCones {
	c, err := HypoidPitchCones(HypoidConesParams{PinionTeeth: 10, WheelTeeth: 39, Offset: 0.032, PinionSpiral: 50 * degree,
		WheelPitchDiameter: 0.200, FaceWidth: 0.030, Condition: GivenWheelPitchAngle, WheelPitchAngle: 72 * degree})
	return mustCones(t, c, err)
}

func TestHypoidForcesDerived(t *testing.T) {
	const source = "derived from a force vector in three dimensions, apart from this code; forms of ISO 23509 and ANSI/AGMA 2005"
	p := MeshParams{Cones: hypoidExample(t), WheelTorque: 2000, Flank: Drive, PinionHand: LeftHand, DrivePressureAngle: 20 * degree, CoastPressureAngle: 20 * degree}
	drive, err := MeshForces(p)
	if err != nil {
		t.Fatal(err)
	}
	p.Flank = Coast
	coast, err := MeshForces(p)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "tangential, wheel", Got: drive.Wheel.Tangential, Printed: "23327.9", Source: source},
		{Name: "tangential, pinion", Got: drive.Pinion.Tangential, Printed: "17222.4", Source: source},
		{Name: "axial, pinion, drive", Got: drive.Pinion.AxialAway, Printed: "22474.8", Source: source},
		{Name: "radial, pinion, drive", Got: drive.Pinion.RadialApart, Printed: "3354.95", Source: source},
		{Name: "axial, wheel, drive", Got: drive.Wheel.AxialAway, Printed: "5202.09", Source: source},
		{Name: "radial, wheel, drive", Got: drive.Wheel.RadialApart, Printed: "15547.7", Source: source},
		{Name: "axial, pinion, coast", Got: coast.Pinion.AxialAway, Printed: "-16797.3", Source: source},
		{Name: "radial, pinion, coast", Got: coast.Pinion.RadialApart, Printed: "15304.4", Source: source},
		{Name: "axial, wheel, coast", Got: coast.Wheel.AxialAway, Printed: "13347.3", Source: source},
		{Name: "radial, wheel, coast", Got: coast.Wheel.RadialApart, Printed: "-9520.6", Source: source},
	})
}

// drawPair is any pair a shop may meet: hypoid of either sign of offset, or spiral bevel.
func drawPair(rt *rapid.T) MeshParams {
	z1 := rapid.IntRange(5, 20).Draw(rt, "z1")
	z2 := rapid.IntRange(2*z1, 6*z1).Draw(rt, "z2")
	r2 := rapid.Float64Range(0.04, 0.2).Draw(rt, "r2")
	offset := r2 * rapid.Float64Range(-0.08, 0.4).Draw(rt, "offset/r2")
	cones, err := HypoidPitchCones(HypoidConesParams{PinionTeeth: z1, WheelTeeth: z2, Offset: offset,
		PinionSpiral: rapid.Float64Range(35, 52).Draw(rt, "spiral") * degree, WheelMeanRadius: r2, Condition: ApexAtCrossing})
	if err != nil {
		rt.Fatal(err)
	}
	angle := func(name string) float64 { return rapid.Float64Range(14, 30).Draw(rt, name) * degree }
	return MeshParams{Cones: cones, WheelTorque: rapid.Float64Range(10, 20000).Draw(rt, "torque"),
		Flank:              rapid.SampledFrom([]Flank{Drive, Coast}).Draw(rt, "flank"),
		PinionHand:         rapid.SampledFrom([]Hand{LeftHand, RightHand}).Draw(rt, "hand"),
		DrivePressureAngle: angle("drive angle"), CoastPressureAngle: angle("coast angle")}
}

// The components come from the standard's forms, the vectors from the geometry
// of the flank: two routes to the same force.
func TestComponentsAgreeWithTheVector(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := drawPair(rt)
		f, err := MeshForces(p)
		if err != nil {
			rt.Fatal(err)
		}
		v, err := MeshForceVectors(p)
		if err != nil {
			rt.Fatal(err)
		}
		near := func(name string, got, want, scale float64) {
			if !(math.Abs(got-want) <= 1e-9*scale) {
				rt.Errorf("%s: %.12g, want %.12g", name, got, want)
			}
		}
		mean, onW, onP := vector(v.MeanPoint), vector(v.OnWheel), vector(v.OnPinion)
		toWheelAxis := vector{-mean.X, 0, -mean.Z}.times(1 / math.Hypot(mean.X, mean.Z))
		toPinionAxis := vector{0, -mean.Y, v.PinionAxisZ - mean.Z}.times(1 / math.Hypot(mean.Y, v.PinionAxisZ-mean.Z))
		near("normal", math.Sqrt(onW.dot(onW)), f.Normal, f.Normal)
		near("axial, pinion", onP.X, f.Pinion.AxialAway, f.Normal)
		near("axial, wheel", onW.Y, f.Wheel.AxialAway, f.Normal)
		near("radial, pinion", onP.dot(toPinionAxis), f.Pinion.RadialApart, f.Normal)
		near("radial, wheel", onW.dot(toWheelAxis), f.Wheel.RadialApart, f.Normal)
		near("radius of the wheel", math.Hypot(mean.X, mean.Z), p.Cones.WheelMeanRadius, p.Cones.WheelMeanRadius)
		near("radius of the pinion", math.Hypot(mean.Y, mean.Z-v.PinionAxisZ), p.Cones.PinionMeanRadius, p.Cones.WheelMeanRadius)
		near("wheel torque", math.Abs(v.WheelTorqueY), p.WheelTorque, p.WheelTorque)
		near("pinion torque", math.Abs(v.PinionTorqueX), f.PinionTorque, p.WheelTorque)
		near("ratio of torques", f.PinionTorque*float64(p.Cones.WheelTeeth), p.WheelTorque*float64(p.Cones.PinionTeeth), p.WheelTorque*float64(p.Cones.WheelTeeth))
		sum := onP.plus(onW)
		near("force balance", math.Sqrt(sum.dot(sum)), 0, f.Normal)
		// The tooth's direction bisects nothing by accident: it makes each spiral angle with its own generator.
		near("pinion spiral", vector(v.ToothDirection).dot(vector(v.PinionGenerator)), math.Cos(p.Cones.PinionSpiral), 1)
		near("wheel spiral", vector(v.ToothDirection).dot(vector(v.WheelGenerator)), math.Cos(p.Cones.WheelSpiral), 1)
		near("flank holds the tooth's direction", vector(v.FlankNormal).dot(vector(v.ToothDirection)), 0, 1)
		near("pitch normal square to the pinion's cone", vector(v.PitchNormal).dot(vector(v.PinionGenerator)), 0, 1)
	})
}

// The side of the frame on which each flank and hand pushes, as the package says it.
// TM 10-3930-638-24&P, p. 4-246: a crown wheel of right-hand spiral drives on its
// convex side. That is with its left-hand pinion turning clockwise, seen from the flange.
func TestSidesByFlankAndHand(t *testing.T) {
	cones := hypoidExample(t)
	for _, c := range []struct {
		hand        Hand
		flank       Flank
		wheelTorque float64 // sign about +y
		axisZ       float64
	}{
		{LeftHand, Drive, +1, -0.032},
		{LeftHand, Coast, -1, -0.032},
		{RightHand, Drive, -1, +0.032},
		{RightHand, Coast, +1, +0.032},
	} {
		v, err := MeshForceVectors(MeshParams{Cones: cones, WheelTorque: 1000, Flank: c.flank, PinionHand: c.hand, DrivePressureAngle: 20 * degree, CoastPressureAngle: 20 * degree})
		if err != nil {
			t.Fatal(err)
		}
		if v.WheelTorqueY*c.wheelTorque <= 0 || v.PinionAxisZ != c.axisZ || v.OnWheel.Z*c.wheelTorque >= 0 {
			t.Errorf("%s %s: wheel torque %g, axis %g, force %+v", c.hand, c.flank, v.WheelTorqueY, v.PinionAxisZ, v.OnWheel)
		}
		if (v.OnPinion.X > 0) != (c.flank == Drive) {
			t.Errorf("%s %s: the pinion is pushed along x by %g; drive pushes it out, coast pulls it in", c.hand, c.flank, v.OnPinion.X)
		}
		// A tooth curves to the side it leans to on its way outward, so its convex flank
		// faces away from there, and a load on that flank pushes towards the lean.
		tooth, generator := vector(v.ToothDirection), vector(v.WheelGenerator)
		lean := tooth.plus(generator.times(-tooth.dot(generator)))
		if onConvex := vector(v.FlankNormal).dot(lean) > 0; onConvex != (c.flank == Drive) {
			t.Errorf("%s %s: on the convex flank of the wheel: %v", c.hand, c.flank, onConvex)
		}
		// The engine turns against the tooth force: clockwise seen from the flange is about −x.
		if clockwise := v.PinionTorqueX > 0; clockwise != ((c.hand == LeftHand) == (c.flank == Drive)) {
			t.Errorf("%s %s: pinion driven clockwise: %v", c.hand, c.flank, clockwise)
		}
	}
}

func TestHandMirrorsTheForce(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := drawPair(rt)
		a, err := MeshForceVectors(p)
		if err != nil {
			rt.Fatal(err)
		}
		p.PinionHand = map[Hand]Hand{LeftHand: RightHand, RightHand: LeftHand}[p.PinionHand]
		b, err := MeshForceVectors(p)
		if err != nil {
			rt.Fatal(err)
		}
		if vector(a.OnWheel).mirrored() != vector(b.OnWheel) || vector(a.MeanPoint).mirrored() != vector(b.MeanPoint) {
			rt.Errorf("%+v is not the mirror of %+v", a, b)
		}
	})
}

func TestMeshForcesRefuses(t *testing.T) {
	good := MeshParams{Cones: hypoidExample(t), WheelTorque: 1000, Flank: Drive, PinionHand: LeftHand, DrivePressureAngle: 20 * degree, CoastPressureAngle: 22 * degree}
	for param, change := range map[string]func(*MeshParams){
		"WheelTorque":        func(p *MeshParams) { p.WheelTorque = -1 },
		"Flank":              func(p *MeshParams) { p.Flank = "convex" },
		"PinionHand":         func(p *MeshParams) { p.PinionHand = "" },
		"DrivePressureAngle": func(p *MeshParams) { p.DrivePressureAngle = 20 },
		"CoastPressureAngle": func(p *MeshParams) { p.CoastPressureAngle = math.NaN() },
		"OffsetAngle":        func(p *MeshParams) { p.Cones.WheelPitchAngle += 0.001 },
		"Offset":             func(p *MeshParams) { p.Cones.Offset = 0 },
		"WheelSpiral":        func(p *MeshParams) { p.Cones.WheelSpiral += 0.01 },
		"PinionMeanRadius":   func(p *MeshParams) { p.Cones.WheelTeeth++ },
	} {
		p := good
		change(&p)
		var r *check.RangeError
		if _, err := MeshForces(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s: got %v", param, err)
		}
		if _, err := MeshForceVectors(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s, vectors: got %v", param, err)
		}
	}
}

func BenchmarkMeshForceVectors(b *testing.B) {
	p := MeshParams{Cones: hypoidExample(b), WheelTorque: 1000, Flank: Drive, PinionHand: LeftHand, DrivePressureAngle: 20 * degree, CoastPressureAngle: 22 * degree}
	for b.Loop() {
		if _, err := MeshForceVectors(p); err != nil {
			b.Fatal(err)
		}
	}
}
