package setup

import (
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

func peg(t testing.TB, in PegSetting) PegResult {
	t.Helper()
	return must[PegResult](t)(SetPeg(in))
}

func pegSet(angle float64) PegSetting {
	return PegSetting{Spec: light, Pitch: 1.5 * mm, Angle: Read(angle), RunOut: Read(0.08 * mm), Spot: SlackSpot, SidePreload: true}
}

func TestPegGapsPublished(t *testing.T) {
	flat := peg(t, pegSet(60*degree))
	inch := pegSet(90 * degree)
	inch.Pitch = 25.4 * mm / 20
	quarter := peg(t, inch)
	aim := pegSet(0)
	aim.Angle, aim.RunOut = Reading{}, Read(0)
	for pitch, want := range map[float64]float64{1.5: 60, 1.75: 51.43, 1.25: 72} { // 24°, 20.6° and 28.8° for 0.10 mm
		aim.Pitch = pitch * mm
		if r := peg(t, aim); !near(r.AimAngle/degree, want, 0.01) {
			t.Errorf("pitch %g mm: %g° for 0.25 mm, want %g", pitch, r.AimAngle/degree, want)
		}
	}
	const manual = "TM 10-3930-643-34, p. 16-30: 0.010 to 0.015 in, lock nut 140 to 170 lb·ft"
	spec := light.With(Maker(PegGap, 0.010*0.0254, 0.015*0.0254, "16-30"), Maker(PegLockTorque, 140*12*poundInch, 170*12*poundInch, "16-30"))
	published.Check(t, []published.Row{
		{Name: "M12x1.5, 60° back, mm", Got: flat.Gap / mm, Printed: "0.250", Source: sheetSource},
		{Name: "less 0.08 run-out, mm", Got: flat.Tight / mm, Printed: "0.17", Source: sheetSource},
		{Name: "7/16-20, quarter turn, mm", Got: quarter.Gap / mm, Printed: "0.318", Source: sheetSource},
		{Name: "7/16-20, quarter turn, thou", Got: quarter.Gap / 25.4e-6, Printed: "12.5", Source: sheetSource},
		{Name: "thrust screw from, mm", Got: spec.Limit(PegGap).Low / mm, Printed: "0.254", Source: manual},
		{Name: "thrust screw to, mm", Got: spec.Limit(PegGap).High / mm, Printed: "0.381", Source: manual},
		{Name: "lock nut from, N·m", Got: spec.Limit(PegLockTorque).Low, Printed: "189.8", Source: manual + ", converted"},
		{Name: "lock nut to, N·m", Got: spec.Limit(PegLockTorque).High, Printed: "230.5", Source: manual + ", converted"},
	})
	inch.Spec, inch.RunOut = spec, Read(0.05*mm)
	wantState(t, peg(t, inch).Answer, NotYet, "190 to 230 N·m", "lbf·foot")
}

func TestPegIsNotFineBeforeItIsLocked(t *testing.T) {
	in := pegSet(60 * degree)
	wantState(t, peg(t, in).Answer, NotYet, "the gap after locking, which moves the peg by 0.03 to 0.08 mm")
	in.Locked = []Reading{Read(0.17 * mm), Read(0.20 * mm), Read(0.24 * mm), Read(0.21 * mm)}
	wantState(t, peg(t, in).Answer, Fine)
	in.Locked = in.Locked[:2]
	wantState(t, peg(t, in).Answer, NotYet, "four places")
	in.Locked = []Reading{Read(0.30 * mm), Read(0.33 * mm), Read(0.38 * mm), Read(0.34 * mm)}
	wantState(t, peg(t, in).Answer, Look, "the screw turned with the nut")
	in.Locked = []Reading{Read(0.10 * mm), Read(0.12 * mm), Read(0.18 * mm), Read(0.14 * mm)}
	wantState(t, peg(t, in).Answer, Look, "under 0.15 to 0.40 mm", "then turn it back 60°")
}

func TestTouchingIsAStop(t *testing.T) {
	in := pegSet(60 * degree)
	in.Touching = true
	wantState(t, peg(t, in).Answer, Stop, "it would burn")
	in.Touching = false
	in.Locked = []Reading{Read(0.1 * mm), Read(0), Read(0.1 * mm), Read(0.2 * mm)}
	wantState(t, peg(t, in).Answer, Stop, "Back the peg off", "rubs at 8.4 m/s")
	in.Locked = nil
	in.Angle = Read(15 * degree) // 0.06 mm against a run-out of 0.08
	wantState(t, peg(t, in).Answer, Stop, "would touch the peg unloaded")
	wantState(t, peg(t, PegSetting{Spec: light, Pitch: 1.5 * mm, Touching: true}).Answer, Stop) // a stop does not wait for the rest
}

func TestPegAgainstTheWindowOfTheLoadPath(t *testing.T) {
	in := pegSet(60 * degree)
	in.Spot = TightSpot
	in.Window = Window{Low: 0.30 * mm, High: 0.45 * mm, Reason: "the pad must not touch in towing"}
	r := peg(t, in)
	wantState(t, r.Answer, Look, "the pad must not touch in towing", "gap 0.38 mm")
	if !near(r.AimAngle, 90*degree, 1e-9) { // 0.375 of 1.5 mm
		t.Errorf("aim %g°, want 90", r.AimAngle/degree)
	}
	in.Angle = Read(90 * degree)
	wantState(t, peg(t, in).Answer, NotYet, "custom of the trade is another") // 0.455 at the slack spot
	in.Window = Window{Low: 0.2 * mm, Shut: true, Reason: "what road and pad ask for is more than the movement allows"}
	wantState(t, peg(t, in).Answer, Look, "No gap pleases everything: what road and pad ask")
}

func TestPegNeedsSidePreloadAndLittleRunOut(t *testing.T) {
	in := pegSet(60 * degree)
	in.SidePreload = false
	wantState(t, peg(t, in).Answer, Look, "Set side preload first")
	in = pegSet(60 * degree)
	in.RunOut = Read(0.15 * mm)
	wantState(t, peg(t, in).Answer, Look, "Bring down the run-out")
}

func TestPegLaws(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := pegSet(rapid.Float64Range(0, 2).Draw(rt, "angle"))
		in.Pitch = rapid.Float64Range(1, 2).Draw(rt, "pitch") * mm
		in.RunOut = Read(rapid.Float64Range(0, 0.15).Draw(rt, "run-out") * mm)
		in.Spot = rapid.SampledFrom([]Spot{TightSpot, SlackSpot, UnknownSpot}).Draw(rt, "spot")
		r := peg(t, in)
		if r.Tight > r.Gap+1e-15 || r.Slack < r.Gap-1e-15 {
			rt.Errorf("tight %g, set %g, slack %g", r.Tight, r.Gap, r.Slack)
		}
		if r.State == Fine {
			rt.Errorf("fine before it was locked")
		}
		if (r.Tight <= 0) != (r.State == Stop) {
			rt.Errorf("tight spot %g is %s", r.Tight, r.State)
		}
		// Set as the answer says, the tight spot keeps its least.
		in.Angle = Read(r.AimAngle)
		if q := peg(t, in); q.Tight < light.Limit(PegTight).Low-1e-12 {
			rt.Errorf("turned back as said, %g is left at the tight spot", q.Tight)
		}
	})
}

// What counts as touching is decided here for all: an hour of the wheel on the
// pad burns it. 60° on 1.5 mm is 0.25 mm by geometry.
func TestPegTouches(t *testing.T) {
	set := PegSetting{Pitch: 1.5 * mm, Angle: Read(60 * degree), RunOut: Read(0.08 * mm), Spot: SlackSpot}
	for name, c := range map[string]struct {
		change func(*PegSetting)
		want   bool
	}{
		"as set":                       {func(*PegSetting) {}, false},
		"seen":                         {func(p *PegSetting) { p.Touching = true }, true},
		"run-out eats the gap":         {func(p *PegSetting) { p.RunOut = Read(0.26 * mm) }, true},
		"set at the tight spot":        {func(p *PegSetting) { p.RunOut, p.Spot = Read(0.26*mm), TightSpot }, false},
		"nobody said at which spot":    {func(p *PegSetting) { p.RunOut, p.Spot = Read(0.26*mm), "" }, false},
		"read clear in spite of it":    {func(p *PegSetting) { p.RunOut, p.Locked = Read(0.26*mm), []Reading{Read(0.05 * mm)} }, false},
		"a gap of none at one place":   {func(p *PegSetting) { p.Locked = []Reading{Read(0.2 * mm), {}, Read(0)} }, true},
		"not turned back":              {func(p *PegSetting) { p.Angle = Read(0) }, true},
		"nothing but a place not read": {func(p *PegSetting) { *p = PegSetting{Locked: []Reading{{}}} }, false},
	} {
		p := set
		c.change(&p)
		if got := p.Touches(); got != c.want {
			t.Errorf("%s: %v", name, got)
		}
	}
}
