package axle

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/traction"
	"axlewright/internal/published"
)

func TestRecordsAreRead(t *testing.T) {
	for _, c := range []struct{ name, text string }{
		{"as documented", "time [s],torque [N·m],speed [km/h]\n0,100,36\n1,-200,18\n"},
		{"other units and columns", "speed [m/s],note,Time [min],torque [kN·m]\n10,x,0,0.1\n5,y,0.0166666666666667,-0.2\n"},
		{"decimal commas", "time [s];torque [N·m];speed [km/h]\n0,0;100,0;36,0\n1,0;-200;18\n"},
		{"comments, blanks, quotes", "\ufeff# log 7\ntime [s], torque [N·m], speed [km/h]\n\"0\", 100, 36\n\n1, -200, 18\n"},
	} {
		r, err := readRecord("log.csv", strings.NewReader(c.text))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		want := fmt.Sprint([]float64{0, 1, 100, -200, 10, 5})
		rounded := func(list ...float64) []float64 {
			for i := range list {
				list[i] = math.Round(list[i]*1e9) / 1e9
			}
			return list
		}
		if got := fmt.Sprint(rounded(r.Times[0], r.Times[1], r.Torques[0], r.Torques[1], r.Speeds[0], r.Speeds[1])); got != want || r.Propshaft {
			t.Errorf("%s is read as %s, want %s", c.name, got, want)
		}
	}
	r, err := readRecord("log.csv", strings.NewReader("time [s],propshaft torque [N·m],speed [km/h]\n0,1,1\n1,2,1\n"))
	if err != nil || !r.Propshaft {
		t.Errorf("propshaft torque: %+v, %v", r, err)
	}
}

func TestBrokenRecords(t *testing.T) {
	const heading = "time [s],torque [N·m],speed [km/h]\n"
	for _, c := range []struct {
		name, text string
		line       int
		says       string
	}{
		{"empty", "", 1, "has no heading; expected time [s],torque [N·m],speed [km/h]"},
		{"heading only", heading, 0, "0 samples; expected two or more"},
		{"one sample", heading + "0,1,2\n", 0, "1 samples"},
		{"no speed", "time [s],torque [N·m]\n0,1\n1,2\n", 1, `has no column "speed"`},
		{"no unit", "time,torque [N·m],speed [km/h]\n0,1,2\n", 1, `column "time" needs its unit in brackets`},
		{"wrong unit", "time [s],torque [kg],speed [km/h]\n0,1,2\n", 1, `column "torque" needs its unit`},
		{"twice", "time [s],torque [N·m],propshaft torque [N·m],speed [km/h]\n0,1,2,3\n", 1, "one too many"},
		{"a word", heading + "0,1,2\n1,high,2\n", 3, `"high" is no torque; expected a number`},
		{"not a number", heading + "0,1,2\n1,NaN,2\n", 3, `"NaN" is no torque`},
		{"endless", heading + "0,1,2\n1,1e400,2\n", 3, `"1e400" is no torque`},
		{"a short line", heading + "0,1,2\n1,2\n", 3, "this line has no speed: 2 columns instead of 3"},
		{"time stands still", heading + "0,1,2\n0,2,3\n", 3, "time does not go on: 0 s after 0 s"},
		{"time goes back", heading + "5,1,2\n3,2,3\n", 3, "time does not go on: 3 s after 5 s"},
		{"binary", "\x00\x01\x02\x03", 1, "has no column"},
	} {
		_, err := readRecord("log.csv", strings.NewReader(c.text))
		found := findings(t, err)
		ok := false
		for _, f := range found {
			ok = ok || strings.Contains(f.Problem, c.says) && f.Line == c.line && f.File == "log.csv"
		}
		if !ok {
			t.Errorf("%s: found %v, want %q in line %d", c.name, found, c.says, c.line)
		}
	}
	bad := heading + strings.Repeat("x,y,z\n", 1000)
	_, err := readRecord("log.csv", strings.NewReader(bad))
	if found := findings(t, err); len(found) != mostTold {
		t.Errorf("a thousand bad lines are told %d times", len(found))
	}
	for _, path := range []string{t.TempDir(), t.TempDir() + "/lost.csv"} {
		if _, err := ReadRecord(path); findings(t, err) == nil {
			t.Errorf("%s is read", path)
		}
	}
}

// A record that holds one torque at one speed is one block.
func TestASteadyRecordIsOneBlock(t *testing.T) {
	r := Record{Times: []float64{0, 10, 30}, Torques: []float64{800, 800, 800}, Speeds: []float64{10, 10, 10}}
	blocks, err := r.Blocks(1600)
	if err != nil || len(blocks) != 1 {
		t.Fatalf("%+v, %v", blocks, err)
	}
	b := blocks[0]
	if b.Share.Value != 1 || math.Abs(b.Torque.Value-0.5) > 1e-12 || math.Abs(b.Speed.Value-10) > 1e-12 || b.Going != Forward {
		t.Errorf("%+v", b)
	}
}

// Worked by hand: 20 s at 1000 N·m forward at 10 m/s, 20 s at −500 N·m at
// 10 m/s (overrun), 10 s at −500 N·m at −2 m/s (reverse), joined by jumps of a
// microsecond. Of 420 m, 200 are forward, 200 overrun, 20 reverse.
func TestBlocksByWayOfGoing(t *testing.T) {
	const jump = 1e-6
	r := Record{
		Times:   []float64{0, 20, 20 + jump, 40, 40 + jump, 50},
		Torques: []float64{1000, 1000, -500, -500, -500, -500},
		Speeds:  []float64{10, 10, 10, 10, -2, -2},
	}
	blocks, err := r.Blocks(2000)
	if err != nil {
		t.Fatal(err)
	}
	share := map[Going]float64{}
	top := map[Going]float64{}
	for _, b := range blocks {
		share[b.Going] += b.Share.Value
		top[b.Going] = math.Max(top[b.Going], b.Torque.Value)
	}
	for going, want := range map[Going][2]float64{Forward: {200. / 420, 0.5}, Overrun: {200. / 420, 0.25}, Reverse: {20. / 420, 0.25}} {
		if math.Abs(share[going]-want[0]) > 1e-6 || math.Abs(top[going]-want[1]) > 1e-9 {
			t.Errorf("%s: share %g, torque %g, want %v", going, share[going], top[going], want)
		}
	}
}

// Shares add up to one, the peak is kept, and each block lies above what was
// logged by less than a level.
func TestBlocksOfAnyRecord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 40).Draw(t, "samples")
		var r Record
		at := 0.0
		for range n {
			at += rapid.Float64Range(0.01, 2).Draw(t, "step")
			r.Times = append(r.Times, at)
			r.Torques = append(r.Torques, rapid.Float64Range(-3000, 5000).Draw(t, "torque"))
			r.Speeds = append(r.Speeds, rapid.Float64Range(-3, 20).Draw(t, "speed"))
		}
		blocks, err := r.Blocks(4000)
		if err != nil {
			return // no torque or no distance
		}
		sum, mean, highest, top := 0.0, 0.0, 0.0, 0.0
		for _, b := range blocks {
			sum += b.Share.Value
			top = math.Max(top, b.AxleTorque.Value)
			if b.Torque.Value != b.AxleTorque.Value/4000 || b.Speed.Value < 0 {
				t.Fatalf("%+v", b)
			}
			if b.Speed.Value > 0 {
				mean += b.Share.Value * b.AxleTorque.Value
			}
		}
		// Compare with a direct sum over fine steps.
		direct, way := 0.0, 0.0
		for i := 1; i < n; i++ {
			highest = math.Max(highest, math.Max(math.Abs(r.Torques[i-1]), math.Abs(r.Torques[i])))
			const fine = 400
			for k := range fine {
				x := (float64(k) + 0.5) / fine
				v := math.Abs(r.Speeds[i-1]) + x*(math.Abs(r.Speeds[i])-math.Abs(r.Speeds[i-1]))
				s := v * (r.Times[i] - r.Times[i-1]) / fine
				way += s
				direct += s * math.Abs(r.Torques[i-1]+x*(r.Torques[i]-r.Torques[i-1]))
			}
		}
		if math.Abs(sum-1) > 1e-9 || math.Abs(top-highest) > 1e-9*highest {
			t.Fatalf("shares add up to %g, the peak is %g of %g", sum, top, highest)
		}
		if over := mean - direct/way; over < -0.01*highest || over > highest/recordBands*1.01 {
			t.Fatalf("the mean torque is %g above the record's, a level is %g", over, highest/recordBands)
		}
	})
}

func TestALoggedDutyIsWorkedOutForItsVehicle(t *testing.T) {
	e, c, err := LoadEnquiry("../examples/enquiries/09-quarry-logged.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := c.Duty(e.Duty)
	if err != nil || len(d.Blocks) < 20 {
		t.Fatal(len(d.Blocks), err)
	}
	g, err := c.GearSet(e.Gears)
	if err != nil {
		t.Fatal(err)
	}
	demand, err := e.Vehicle.Demand(&g, e.Mounting.Position)
	if err != nil {
		t.Fatal(err)
	}
	top, sum := 0.0, 0.0
	for _, b := range d.Blocks {
		sum += b.Share.Value
		top = math.Max(top, b.Torque.Value)
		if b.AxleTorque.Origin != Measured || !b.Share.Certain {
			t.Errorf("%+v", b)
		}
	}
	if math.Abs(top-5600/demand.Governing) > 1e-12 || math.Abs(sum-1) > 1e-9 {
		t.Errorf("peak %g of the governing torque %g; shares %g", top, demand.Governing, sum)
	}
	r, err := ReadRecord("../examples/quarry-log.csv")
	if err != nil {
		t.Fatal(err)
	}
	cycles, err := r.Cycles()
	if err != nil {
		t.Fatal(err)
	}
	widest := 0.0
	for _, cycle := range cycles {
		widest = math.Max(widest, cycle.Range)
	}
	if lowest := -2362.; math.Abs(widest-(5600-lowest)) > 1 {
		t.Errorf("the widest cycle is %g N·m", widest)
	}
}

func TestADutyThatStatesTorques(t *testing.T) {
	e, c, err := LoadEnquiry("../examples/reference/build-a.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, _ := c.Duty(e.Duty)
	g, _ := c.GearSet(e.Gears)
	demand, err := e.Vehicle.Demand(&g, e.Mounting.Position)
	if err != nil || demand.Governs != traction.Grip {
		t.Fatal(demand, err)
	}
	b := d.Blocks[0].Torque
	if math.Abs(b.Value-260/demand.Governing) > 1e-12 || b.Kind != "plain number" || math.Abs(b.High/b.Value-1.06) > 1e-12 {
		t.Errorf("260 N·m are %+v", b)
	}
	if a := d.Blocks[0].AxleTorque; !a.ByDefault || a.Shape != Lognormal {
		t.Errorf("the torque itself has the catalogue's doubt: %+v", a)
	}
}

// The history of the standard's own example, driven at a metre a second.
func TestTorqueCyclesPublished(t *testing.T) {
	r := Record{Torques: []float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}}
	for i := range r.Torques {
		r.Times, r.Speeds = append(r.Times, float64(i)), append(r.Speeds, 1)
	}
	const governing = 10
	cycles, err := r.TorqueCycles(governing)
	if err != nil {
		t.Fatal(err)
	}
	const source = "ASTM E1049-85 (2017), figure 6 and its table (from memory)"
	near := func(span float64) (count float64) {
		for _, c := range cycles {
			if x := (c.High - c.Low) * governing; x >= span-1e-9 && x < span+9./cycleSteps {
				count += c.PerMetre * 8
			}
		}
		return count
	}
	published.Check(t, []published.Row{
		{Name: "range 3", Got: near(3), Printed: "0.5", Source: source},
		{Name: "range 4", Got: near(4), Printed: "1.5", Source: source},
		{Name: "range 6", Got: near(6), Printed: "0.5", Source: source},
		{Name: "range 8", Got: near(8), Printed: "1.0", Source: source},
		{Name: "range 9", Got: near(9), Printed: "0.5", Source: source},
	})
	if _, err := (Record{Times: []float64{0, 1}, Torques: []float64{1, 1}, Speeds: []float64{1, 1}}).TorqueCycles(1); err == nil {
		t.Error("a record without a cycle")
	}
}

// A logged duty brings its cycles, fewer kinds than the record has samples.
func TestLoggedDutyHasItsCycles(t *testing.T) {
	_, c, err := LoadEnquiry("../examples/enquiries/09-quarry-logged.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := c.Duty("quarry log")
	if err != nil {
		t.Fatal(err)
	}
	back := 0
	for _, x := range d.Cycles {
		if !(x.High > x.Low && x.PerMetre > 0) {
			t.Errorf("%+v", x)
		}
		if x.Low < 0 {
			back++
		}
	}
	if len(d.Cycles) < 10 || len(d.Cycles) > 300 || back == 0 {
		t.Errorf("%d kinds of cycle, %d of them reach the other flank", len(d.Cycles), back)
	}
}
