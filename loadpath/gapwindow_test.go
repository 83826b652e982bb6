package loadpath

import (
	"math"
	"testing"

	"axlewright/internal/published"
)

// windowed is the reference axle with a peg that runs out and warms, and what
// its gap has to please.
func windowed(t *testing.T) (*Elastic, *Axle, GapParams) {
	t.Helper()
	a := referenceAxle(t, "B")
	a.Peg.RunOut, a.Peg.Closing = 0.08e-3, 0.02e-3
	e, err := Prepare(a)
	if err != nil {
		t.Fatal(err)
	}
	return e, a, GapParams{
		Running:   []Running{{Drive, 700}, {Coast, 250}},
		Demands:   []Demand{{Flank: Coast, Torque: 4000, Speed: 3, Movement: 0.35e-3, Lasts: true, PadHeat: 5e3}},
		Clearance: 0.03e-3, Pitch: 1.5e-3,
		Capacity: 60e3, PadDiameter: 22e-3, PadPressure: 140e6, PadPV: 60e6,
	}
}

func TestWindowKeepsItsPromises(t *testing.T) {
	e, a, p := windowed(t)
	w, err := e.GapWindow(p)
	if err != nil {
		t.Fatal(err)
	}
	if w.Verdict != WindowOpen || !(w.Least.Gap <= w.Aim.Gap && w.Aim.Gap <= w.Most.Gap) {
		t.Fatalf("verdict %s, %g to %g, aim %g: %+v", w.Verdict, w.Least.Gap, w.Most.Gap, w.Aim.Gap, w.Bounds)
	}
	// What the window says must hold on axles with their peg set so.
	at := func(gap float64, hot bool, d Demand) State {
		b := *a
		peg := *a.Peg
		peg.Gap, peg.Spot = gap, Middle
		if !hot {
			peg.Closing = 0
		}
		b.Peg = &peg
		return solved(t, &b, d.Flank, d.Torque)
	}
	const slip = 1e-6
	d := p.Demands[0]
	tight := func(gap float64) float64 { return at(gap, true, d).Peg.Load }
	slack := func(gap float64) float64 { return at(gap+a.Peg.RunOut, false, d).Wheel.Shift.Y }
	if m := slack(w.Most.Gap); math.Abs(m-d.Movement) > 1e-3*d.Movement {
		t.Errorf("at the most gap the wheel moves %g m of %g m", m, d.Movement)
	}
	if slack(w.Most.Gap+slip) <= slack(w.Most.Gap-slip) {
		t.Error("a wider gap lets the wheel move less")
	}
	if l := tight(w.Least.Gap); l > p.Capacity {
		t.Errorf("at the least gap the peg carries %g N of %g N", l, p.Capacity)
	}
	for _, r := range p.Running {
		s := at(w.Least.Gap, true, Demand{Flank: r.Flank, Torque: r.Torque})
		if s.Peg.Load != 0 || w.Lower.Kind == ByRoad && s.Peg.Gap-s.Peg.Movement < p.Clearance-1e-12 {
			t.Errorf("running on the %s flank leaves %g m of air, load %g N", r.Flank, s.Peg.Gap-s.Peg.Movement, s.Peg.Load)
		}
	}
	if u := w.Uses[0]; !u.Touches || !(u.Movement < u.FreeMovement) || math.Abs(u.Load-tight(w.Aim.Gap)) > 1e-3*u.Load {
		t.Errorf("use %+v, load %g N", u, tight(w.Aim.Gap))
	}
	if w.Least.Gap < 0.05e-3 || w.Most.Gap > 1e-3 {
		t.Errorf("window %g to %g m is out of all proportion", w.Least.Gap, w.Most.Gap)
	}
}

func TestEveryLimitDrawsItsBound(t *testing.T) {
	e, _, p := windowed(t)
	tight := p
	tight.Capacity, tight.PadPressure, tight.PadPV = 3e3, 8e6, 2e6
	tight.Demands = []Demand{p.Demands[0]}
	tight.Demands[0].PadHeat = 100
	w, err := e.GapWindow(tight)
	if err != nil {
		t.Fatal(err)
	}
	found := map[BoundKind]float64{}
	for _, b := range w.Bounds {
		found[b.Kind] = max(found[b.Kind], b.Gap)
	}
	for _, kind := range []BoundKind{ByRoad, ByCapacity, ByPressure, ByPV, ByHeat, ByMovement} {
		if !(found[kind] > 0) {
			t.Errorf("no bound by %s: %+v", kind, w.Bounds)
		}
	}
	// A looser limit never narrows the window.
	loose := tight
	loose.Capacity *= 2
	v, err := e.GapWindow(loose)
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range v.Bounds {
		if b.Kind == ByCapacity && b.Gap >= found[ByCapacity] {
			t.Errorf("twice the capacity: %g m, before %g m", b.Gap, found[ByCapacity])
		}
	}
}

// A peak is over before pad and oil warm: only what the pad stands for moments
// counts then, and under work that lasts the rest as well.
func TestOnlyWorkThatLastsWearsThePad(t *testing.T) {
	e, _, p := windowed(t)
	p.PadPressure, p.PadSteady, p.PadPV = 140e6, 4e6, 3e6
	p.Demands[0].PadHeat = 0
	kinds := func(lasts bool) map[BoundKind]float64 {
		p.Demands[0].Lasts = lasts
		w, err := e.GapWindow(p)
		if err != nil {
			t.Fatal(err)
		}
		found := map[BoundKind]float64{}
		for _, b := range w.Bounds {
			found[b.Kind] = max(found[b.Kind], b.Gap)
		}
		return found
	}
	peak, work := kinds(false), kinds(true)
	if peak[ByPressure] > 0 || peak[ByPV] > 0 || !(work[ByPressure] > 0) || !(work[ByPV] > 0) {
		t.Errorf("peak %v, work %v", peak, work)
	}
}

func TestShutWindowSaysWhatOpensIt(t *testing.T) {
	e, a, p := windowed(t)
	open, err := e.GapWindow(p)
	if err != nil {
		t.Fatal(err)
	}
	// A limit that only a back face running truer can keep.
	a.Peg.RunOut = 0.06e-3 + (open.Most.Gap - open.Least.Gap) + 0.08e-3
	if e, err = Prepare(a); err != nil {
		t.Fatal(err)
	}
	w, err := e.GapWindow(p)
	if err != nil {
		t.Fatal(err)
	}
	if w.Verdict != WindowShut || w.Lower.Kind != ByRoad || w.Upper.Kind != ByMovement {
		t.Fatalf("verdict %s between %s and %s", w.Verdict, w.Lower.Kind, w.Upper.Kind)
	}
	opened := 0
	for _, c := range w.Changes {
		b := *a
		peg := *a.Peg
		b.Peg = &peg
		q := p
		switch c.Kind {
		case TrueBackFace:
			peg.RunOut = c.Value - 1e-9
		case StiffenPeg:
			peg.Stiffness = c.Value * (1 + 1e-6)
		case CloserRunning:
			q.Clearance = c.Value - 1e-9
		case CarryMore:
			q.Capacity = c.Value
		default:
			continue
		}
		e, err := Prepare(&b)
		if err != nil {
			t.Fatal(err)
		}
		v, err := e.GapWindow(q)
		if err != nil {
			t.Fatal(err)
		}
		if v.Verdict != WindowOpen {
			t.Errorf("%s to %g leaves the window %s, %g to %g m", c.Kind, c.Value, v.Verdict, v.Least.Gap, v.Most.Gap)
		}
		opened++
	}
	if opened == 0 {
		t.Errorf("no change is offered: %+v", w.Changes)
	}
}

func TestWeakPegAsksForMore(t *testing.T) {
	e, a, p := windowed(t)
	p.Capacity = 500
	p.Demands[0].Movement = 0.32e-3
	w, err := e.GapWindow(p)
	if err != nil {
		t.Fatal(err)
	}
	if w.Verdict != WindowShut || w.Lower.Kind != ByCapacity {
		t.Fatalf("verdict %s, lower bound by %s", w.Verdict, w.Lower.Kind)
	}
	for _, c := range w.Changes {
		if c.Kind != CarryMore {
			continue
		}
		p.Capacity = c.Value * (1 + 1e-6)
		e, err := Prepare(a)
		if err != nil {
			t.Fatal(err)
		}
		if w, err = e.GapWindow(p); err != nil || w.Verdict != WindowOpen {
			t.Errorf("with %g N the window is %s: %v", c.Value, w.Verdict, err)
		}
		return
	}
	t.Errorf("changes %+v", w.Changes)
}

// On the flank with little thrust the wheel never comes as far as the peg must
// stay away on the road.
func TestPegBringsNothingOnTheDriveFlank(t *testing.T) {
	e, _, p := windowed(t)
	p.Demands = []Demand{{Flank: Drive, Torque: 3000, Speed: 3}}
	p.Running = []Running{{Drive, 700}, {Coast, 700}}
	w, err := e.GapWindow(p)
	if err != nil {
		t.Fatal(err)
	}
	if w.Verdict != BringsNought || w.Uses[0].Touches || w.Uses[0].Approach >= w.Least.Gap || w.Uses[0].Thrust <= 0 {
		t.Errorf("verdict %s: %+v", w.Verdict, w.Uses)
	}
	// The same torque on the other flank is another matter.
	p.Demands[0].Flank = Coast
	if w, err = e.GapWindow(p); err != nil || w.Verdict != NotNeeded || !w.Uses[0].Touches {
		t.Errorf("coast: verdict %s, %+v, %v", w.Verdict, w.Uses, err)
	}
}

func TestGapsInTurnsOfTheScrewPublished(t *testing.T) {
	const source = "common practice, no source: a flat of a hexagon on M12×1.5 is 0.25 mm, a quarter turn of 7/16-20 is 0.318 mm"
	flat, quarter := turned(0.25e-3, 1.5e-3), turned(0.318e-3, 25.4e-3/20)
	published.Check(t, []published.Row{
		{Name: "M12×1.5, degrees for 0.25 mm", Got: flat.Angle / degree, Printed: "60", Source: source},
		{Name: "M12×1.5, flats for 0.25 mm", Got: flat.Flats, Printed: "1", Source: source},
		{Name: "7/16-20, turns for 0.318 mm", Got: quarter.Turns, Printed: "0.25", Source: source},
	})
}

func TestGapWindowRefuses(t *testing.T) {
	e, a, p := windowed(t)
	p.Pitch = 0
	if _, err := e.GapWindow(p); err == nil {
		t.Error("a screw without pitch")
	}
	a.Peg = nil
	e, err := Prepare(a)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := e.GapWindow(p); err == nil {
		t.Error("an axle without peg")
	}
}
