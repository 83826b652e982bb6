package weldplan

import (
	"fmt"
	"testing"
)

// manyRuns is a job of the T24 with so many runs, four to a plate, spread over
// both legs and the bridge.
func manyRuns(tb testing.TB, runs int) *Job {
	tb.Helper()
	j, _, err := LoadJob("../examples/weld/t24-cheeks.yaml")
	if err != nil {
		tb.Fatal(err)
	}
	j.Plates, j.Cavities, j.Loads, j.HeatSinks = nil, nil, nil, nil
	for count := 0; count < runs; {
		i := len(j.Plates)
		side := float64(1 - 2*(i%2)) // left and right in turn
		x, z := float64(2*i-12), 20.0-2*float64(i)
		p := Plate{Name: fmt.Sprintf("plate %d", i+1), Steel: "S355", Thickness: length(3)}
		limb, face := "left leg", MinusY
		if side > 0 {
			limb, face = "right leg", PlusY
		}
		corner := [][2]float64{{x, -z}, {x + 48 - 3*float64(i), -z}, {x + 48 - 3*float64(i), z}, {x, z}}
		for k := range corner {
			if count == runs {
				break
			}
			a, b := corner[k], corner[(k+1)%4]
			p.Runs = append(p.Runs, Run{
				Name: fmt.Sprintf("%d.%d", i+1, k+1), From: at(a[0], side*95, a[1]), To: at(b[0], side*95, b[1]),
				On: limb, Side: face, Wall: length(13), Joint: Lap, Position: Flat,
			})
			count++
		}
		j.Plates = append(j.Plates, p)
	}
	return &j
}

func BenchmarkSequenceOf24Runs(b *testing.B) { benchmarkPlan(b, 24) }
func BenchmarkSequenceOf10Runs(b *testing.B) { benchmarkPlan(b, 10) }

func benchmarkPlan(b *testing.B, runs int) {
	j := manyRuns(b, runs)
	for b.Loop() {
		p, err := Make(j, nil, Options{})
		if err != nil {
			b.Fatal(err)
		}
		if len(p.Sequence.Steps) != runs {
			b.Fatal("runs are missing")
		}
	}
}
