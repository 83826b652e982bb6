//go:build reference

package reference

import (
	"math"
	"testing"

	"axlewright/calc/bearing"
)

// The rollers of the reference axle's bearings, moved and tilted, by vectors in
// numpy: forces, moments, pressure, ratings and the life of ISO/TS 16281.
func TestTaperedRollersAgainstNumpy(t *testing.T) {
	const mm, degree = 1e-3, math.Pi / 180
	var problems []any
	type ours struct {
		reaction                        bearing.ReactionResult
		pressure, dynamic, static, life float64
	}
	var results []ours
	for _, r := range []bearing.Rollers{
		{Count: 17, Diameter: 11.6 * mm, Length: 18.5 * mm, PitchDiameter: 60 * mm, CupAngle: 15 * degree},
		{Count: 16, Diameter: 9.6 * mm, Length: 14.5 * mm, PitchDiameter: 50 * mm, CupAngle: 15 * degree},
		{Count: 19, Diameter: 10.4 * mm, Length: 16 * mm, PitchDiameter: 67 * mm, CupAngle: 15.5 * degree},
	} {
		for _, d := range []bearing.Displacement{
			{Axial: 20e-6, Radial1: 8e-6, Radial2: -5e-6},
			{Axial: 40e-6, Radial1: 60e-6, Radial2: 25e-6, Tilt1: 2e-4, Tilt2: -9e-4},
			{Axial: -5e-6, Radial1: -70e-6, Radial2: 40e-6, Tilt1: -7e-4, Tilt2: 3e-4},
		} {
			var o ours
			var err error
			must := func() {
				t.Helper()
				if err != nil {
					t.Fatal(err)
				}
			}
			o.reaction, err = bearing.TaperedReaction(r, 1, d)
			must()
			slices, err := bearing.LaminaLoads(bearing.LaminaParams{Rollers: r, Facing: 1, Displacement: d, Laminae: 31})
			must()
			rating, err := bearing.RatingFromRollers(bearing.RatingParams{Rollers: r, Rows: 1, MaterialFactor: bearing.TaperRollerMaterialFactor})
			must()
			life, err := bearing.ReferenceLife(bearing.ReferenceLifeParams{
				Bearing: bearing.ReferenceParams{Rating: rating.Dynamic, Rollers: r, Laminae: 31, Turning: bearing.Cone}, Loads: slices.Loads,
			})
			must()
			o.pressure, o.dynamic, o.static, o.life = slices.MaxPressure, rating.Dynamic, rating.Static, life.Life
			results = append(results, o)
			problems = append(problems, map[string]any{
				"count": r.Count, "diameter": r.Diameter / mm, "length": r.Length / mm, "pitch": r.PitchDiameter / mm, "angle": r.CupAngle,
				"shift": []float64{d.Axial / mm, d.Radial1 / mm, d.Radial2 / mm}, "turn": []float64{d.Tilt1, d.Tilt2}, "laminae": 31,
			})
		}
	}
	type theirs struct {
		Force, Moment                            []float64
		Hardest, Pressure, Dynamic, Static, Life float64
	}
	for i, want := range askSciPy[theirs](t, "bearing", problems...) {
		got := &results[i]
		size := math.Hypot(want.Force[0], math.Hypot(want.Force[1], want.Force[2]))
		for k, f := range []float64{got.reaction.Axial, got.reaction.Radial1, got.reaction.Radial2} {
			if math.Abs(f-want.Force[k]) > 1e-5*size {
				t.Errorf("%d: force %d is %g N, numpy says %g", i, k, f, want.Force[k])
			}
		}
		for k, m := range []float64{got.reaction.Moment1, got.reaction.Moment2} {
			if w := want.Moment[k+1] * mm; math.Abs(m-w) > 1e-5*size*0.03 {
				t.Errorf("%d: moment %d is %g N·m, numpy says %g", i, k+1, m, w)
			}
		}
		agree(t, "hardest roller", got.reaction.MaxRoller, want.Hardest, 1e-5)
		agree(t, "pressure", got.pressure, want.Pressure*1e6, 1e-9)
		agree(t, "C", got.dynamic, want.Dynamic, 1e-9)
		agree(t, "C_0", got.static, want.Static, 1e-9)
		agree(t, "life of ISO/TS 16281", got.life, want.Life*1e6, 1e-9)
	}
}
