package gear

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"

	"pgregory.net/rapid"
)

// Whatever is typed in, the way from the bench to stresses, lash and losses ends
// in numbers or in a refusal that names the input; never in NaN, never in a panic.
func TestWholeWayFromBenchToStress(t *testing.T) {
	answered, refused := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		odd := func(name string, low, high float64) float64 {
			if rapid.IntRange(0, 40).Draw(rt, name+" odd") == 0 {
				return rapid.SampledFrom([]float64{0, -1, math.NaN(), math.Inf(1), 1e9}).Draw(rt, name)
			}
			return rapid.Float64Range(low, high).Draw(rt, name)
		}
		m := PairMeasurements{
			PinionTeeth: rapid.IntRange(5, 20).Draw(rt, "z1"), WheelTeeth: rapid.IntRange(10, 60).Draw(rt, "z2"),
			WheelOutsideDiameter: odd("d", 0.1, 0.45), Offset: odd("a", -0.01, 0.06),
			PinionSpiral: odd("β1", 20, 55) * degree, PressureAngle: odd("α", 15, 26) * degree,
		}
		m.FaceWidth = m.WheelOutsideDiameter * odd("b", 0.05, 0.18)
		if rapid.Bool().Draw(rt, "cutter known") {
			m.CutterRadius = m.WheelOutsideDiameter * odd("r_c", 0.2, 0.6)
		}
		if err := throughAll(m); err != nil {
			var r *check.RangeError
			if !errors.As(err, &r) || r.Param == "" {
				rt.Fatalf("%+v: %v", m, err)
			}
			refused++
			return
		}
		answered++
	})
	t.Logf("%d answered, %d refused", answered, refused)
	if answered == 0 || refused == 0 {
		t.Errorf("%d answered, %d refused: the test reaches one side only", answered, refused)
	}
}

// throughAll sends a pair through every sum that takes one.
func throughAll(m PairMeasurements) error {
	p, err := PairAsMeasured(m)
	if err != nil {
		return err
	}
	results := []any{p}
	for _, flank := range []Flank{Drive, Coast} {
		virtual, effective, generated := p.Drive, p.Angles.EffectiveDrive, p.Angles.GeneratedDrive
		if flank == Coast {
			virtual, effective, generated = p.Coast, p.Angles.EffectiveCoast, p.Angles.GeneratedCoast
		}
		forces, err := MeshForceVectors(MeshParams{p.Cones, 2000, flank, LeftHand, p.Angles.GeneratedDrive, p.Angles.GeneratedCoast})
		if err != nil {
			return err
		}
		root, err := RootStress(RootStressParams{Cones: p.Cones, Depths: p.Depths, Virtual: virtual, WheelTorque: 2000, PressureAngle: effective})
		if err != nil {
			return err
		}
		contact, err := FlankStress(FlankStressParams{Cones: p.Cones, Angles: p.Angles, Virtual: virtual, WheelTorque: 2000, Flank: flank})
		if err != nil {
			return err
		}
		loss, err := MeshLoss(MeshLossParams{Cones: p.Cones, Virtual: virtual, PressureAngle: generated, WheelTorque: 2000, WheelSpeed: 30, Friction: 0.05, Driver: PinionDrives})
		if err != nil {
			return err
		}
		results = append(results, forces, root, contact, loss)
	}
	_, err = json.Marshal(results) // refuses NaN and infinity anywhere inside
	return err
}
