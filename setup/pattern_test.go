package setup

import (
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

func seen(a Along, h Height) Seen { return Seen{Along: a, Height: h, Shape: EvenShape} }

var middle = seen(MidLength, MidHeight)

func pattern(drive, coast Seen, depth Depth) Pattern {
	return Pattern{Spec: light, Drive: drive, Coast: coast, Depth: depth, Gears: NewGears, Lash: Read(0.125 * mm), ThickerPushes: TowardsWheel, Load: "brake held"}
}

func read(t testing.TB, in Pattern) PatternResult {
	t.Helper()
	return must[PatternResult](t)(ReadPattern(in))
}

// What public manuals print, as text: which member moves which way.
func TestPatternRulesOfPublicManuals(t *testing.T) {
	const (
		a = "TM 10-3930-638-24&P, p. 4-246" // toe: wheel away; heel: toward; low on gear: pinion away; high: in
		b = "TM 10-3930-653-14&P, p. 4-181" // the same, and lash won back with the other member
		c = "TM 10-3930-660-34, p. 9-29"    // cage shims: high thinner, low thicker; less lash moves the mark to the toe
		d = "TM 5-3810-306-34, p. 8-42"     // thinner under the retainer moves the pinion toward the bevel gear
	)
	for _, row := range []struct {
		source       string
		drive, coast Seen
		push         Push
		pinion       int // +1 towards the crown wheel
		wheel        int // +1 towards the pinion
		shim         int // +1 thicker; 0 where the wheel moves
	}{
		{a, seen(AtToe, MidHeight), seen(AtToe, MidHeight), TowardsWheel, 0, -1, 0},
		{a, seen(AtHeel, MidHeight), seen(AtHeel, MidHeight), TowardsWheel, 0, 1, 0},
		{a, seen(MidLength, AtRoot), seen(MidLength, AtRoot), AwayFromWheel, -1, 0, 1},
		{a, seen(MidLength, AtTip), seen(MidLength, AtTip), AwayFromWheel, 1, 0, -1},
		{b, seen(AtToe, MidHeight), seen(AtToe, MidHeight), TowardsWheel, 0, -1, 0},
		{b, seen(AtHeel, MidHeight), seen(AtHeel, MidHeight), TowardsWheel, 0, 1, 0},
		{b, seen(MidLength, AtTip), seen(MidLength, AtTip), TowardsWheel, 1, 0, 1},
		{b, seen(MidLength, AtRoot), seen(MidLength, AtRoot), TowardsWheel, -1, 0, -1},
		{c, seen(MidLength, TowardsTip), seen(MidLength, TowardsTip), AwayFromWheel, 1, 0, -1},
		{c, seen(MidLength, TowardsRoot), seen(MidLength, TowardsRoot), AwayFromWheel, -1, 0, 1},
		{c, seen(TowardsHeel, MidHeight), seen(TowardsHeel, MidHeight), TowardsWheel, 0, 1, 0},
		{d, seen(MidLength, AtTip), seen(MidLength, AtTip), AwayFromWheel, 1, 0, -1},
		{d, seen(MidLength, AtRoot), seen(MidLength, AtRoot), AwayFromWheel, -1, 0, 1},
		{d, seen(AtToe, MidHeight), seen(AtToe, MidHeight), AwayFromWheel, 0, -1, 0},
	} {
		in := pattern(row.drive, row.coast, TaperedDepth)
		in.ThickerPushes = row.push
		r := read(t, in)
		if sign(r.PinionIn) != row.pinion || sign(r.WheelIn) != row.wheel || sign(r.Shim) != row.shim {
			t.Errorf("%s, drive %s %s: pinion in %g, wheel in %g, shim %g", row.source, row.drive.Along, row.drive.Height, r.PinionIn, r.WheelIn, r.Shim)
		}
	}
	// TM 10-3930-643-34, p. 16-30, and TM 10-3930-638-24&P: cross bearing, reject.
	cross := read(t, pattern(seen(AtHeel, MidHeight), seen(AtToe, MidHeight), TaperedDepth))
	wantState(t, cross.Answer, Look, "some manuals reject a set with crossed marks")
}

func sign(x float64) int {
	switch {
	case x > 1e-12:
		return 1
	case x < -1e-12:
		return -1
	}
	return 0
}

// The trade's own table.
func TestPatternTableOfTheTrade(t *testing.T) {
	for _, row := range []struct {
		drive, coast Seen
		depth        Depth
		want         Correction
		words        string
	}{
		{middle, middle, TaperedDepth, NoCorrection, "marked where they should be"},
		{Seen{MidLength, MidHeight, NarrowBand, false}, middle, TaperedDepth, NoCorrection, "right for a light load"},
		{seen(TowardsToe, MidHeight), seen(TowardsToe, MidHeight), TaperedDepth, NoCorrection, "marked where they should be"},
		{seen(MidLength, AtTip), middle, UnknownDepth, MovePinion, "shim 0.10 mm (4 thou) thicker"},
		{seen(MidLength, TowardsRoot), middle, UnknownDepth, MovePinion, "shim 0.05 mm (2 thou) thinner"},
		{middle, seen(MidLength, AtRoot), TaperedDepth, MovePinion, "thinner"},
		{seen(AtHeel, AtTip), seen(AtToe, AtTip), TaperedDepth, MovePinion, "thicker"}, // height goes before length
		{seen(AtHeel, MidHeight), seen(AtToe, MidHeight), TaperedDepth, MovePinion, "thicker"},
		{seen(AtToe, MidHeight), seen(AtHeel, MidHeight), TaperedDepth, MovePinion, "thinner"},
		{seen(AtHeel, MidHeight), seen(AtToe, MidHeight), ParallelDepth, MoveWheel, "Crown wheel in, towards the pinion"},
		{seen(AtToe, MidHeight), seen(AtHeel, MidHeight), ParallelDepth, MoveWheel, "Crown wheel out, away from the pinion"},
		{seen(AtToe, MidHeight), seen(AtHeel, MidHeight), UnknownDepth, AskDepth, "as tall at the toe as at the heel"},
		{seen(AtHeel, MidHeight), seen(AtHeel, MidHeight), ParallelDepth, CheckBores, "Check bores and axes"},
		{seen(MidLength, AtTip), seen(MidLength, AtRoot), TaperedDepth, CheckBores, "neither depth nor lash"},
		{Seen{MidLength, AtTip, PatchyShape, false}, middle, TaperedDepth, LookAtRunOut, "Leave shim and adjusters alone"},
		{middle, Seen{MidLength, MidHeight, Wandering, false}, TaperedDepth, LookAtRunOut, "burr"},
	} {
		r := read(t, pattern(row.drive, row.coast, row.depth))
		if r.Correction != row.want || !r.Has(row.words) {
			t.Errorf("drive %s %s, coast %s %s, %s depth: %q\n%s", row.drive.Along, row.drive.Height, row.coast.Along, row.coast.Height, row.depth, r.Correction, told(r.Answer))
		}
	}
}

func TestDriveBeforeCoast(t *testing.T) {
	in := pattern(Seen{}, middle, TaperedDepth)
	wantState(t, read(t, in).Answer, NotYet, "the convex one, which is read first")
	in = pattern(middle, Seen{}, TaperedDepth)
	wantState(t, read(t, in).Answer, NotYet, "coast flank")
	in = pattern(seen(MidLength, AtTip), Seen{}, TaperedDepth)
	wantState(t, read(t, in).Answer, Look, "read it before the next correction", "One change at a time")
}

func TestLashRangeGoesFirst(t *testing.T) {
	in := pattern(seen(MidLength, AtTip), middle, TaperedDepth)
	in.Lash = Read(0.30 * mm)
	if r := read(t, in); r.Correction != SetLash || r.PinionIn != 0 {
		t.Errorf("lash out of range: %q, pinion %g", r.Correction, r.PinionIn)
	}
	in = pattern(seen(AtHeel, MidHeight), seen(AtHeel, MidHeight), TaperedDepth)
	in.Lash = Read(0.078 * mm)
	r := read(t, in)
	wantState(t, r.Answer, Look, "Pattern and lash disagree", "The range of the lash goes first")
	if r.WheelIn != 0 {
		t.Errorf("the wheel is moved by %g although lash has no room", r.WheelIn)
	}
	in.Lash = Read(0.10 * mm) // room for 0.024 only
	in.Mesh = pair354(t, 0)
	r = read(t, in)
	published.Check(t, []published.Row{
		{Name: "lash may fall by, mm", Got: -r.LashChange / mm, Printed: "0.024", Source: "by hand: 0.100 − 0.076"},
		{Name: "so the wheel comes in by, mm", Got: r.WheelIn / mm, Printed: "0.028", Source: "by hand: 0.024 over 0.0855 per 0.10"},
	})
}

func TestUsedGearsKeepTheirPattern(t *testing.T) {
	in := pattern(seen(AtHeel, AtTip), seen(AtToe, MidHeight), TaperedDepth)
	in.Gears = UsedGears
	wantState(t, read(t, in).Answer, Look, "do not chase a new one", "old shim and the old lash")
	in.AsFoundLash = Read(0.13 * mm)
	r := read(t, in)
	wantState(t, r.Answer, Fine, "as found")
	if r.Correction != RestoreOld || r.PinionIn != 0 || r.WheelIn != 0 {
		t.Errorf("a used set is moved: %+v", r)
	}
	in.Lash = Read(0.25 * mm)
	wantState(t, read(t, in).Answer, Look, "Bring lash back to 0.13 mm")
}

// The pinion moved a step changes lash, and the wheel's movement told beside it
// undoes that.
func TestDepthKeepsTheLash(t *testing.T) {
	mesh := pair354(t, 0)
	s := must[Sensitivity](t)(mesh.Sensitivity())
	in := pattern(seen(MidLength, AtTip), middle, TaperedDepth)
	in.Mesh = mesh
	r := read(t, in)
	if left := r.LashChange - r.KeepLash*s.Wheel.Likely; !near(left, 0, 1e-15) || r.LashChange >= 0 || r.KeepLash >= 0 {
		t.Errorf("lash changes by %g, wheel in by %g leaves %g", r.LashChange, r.KeepLash, left)
	}
	in.Adjusters = sixteen
	if r := read(t, in); !r.Has("Leave the adjusters: lash changes by 0.024 mm") {
		t.Errorf("less than a notch\n%s", told(r.Answer))
	}
	in.Adjusters.Notches = 60
	if r := read(t, in); !r.Has("crown wheel out, away from the pinion, both adjusters 1 notch") {
		t.Errorf("finer notches\n%s", told(r.Answer))
	}
}

func TestMarksForADrawing(t *testing.T) {
	r := read(t, pattern(seen(AtHeel, AtTip), seen(AtToe, AtRoot), TaperedDepth))
	if len(r.Marks) != 2 || r.Marks[0].Flank != "drive" || r.Marks[1].Flank != "coast" {
		t.Fatalf("marks %+v", r.Marks)
	}
	d, c := r.Marks[0], r.Marks[1]
	if !(d.Along > 0.7 && d.Height > 0.7 && c.Along < 0.3 && c.Height < 0.3) {
		t.Errorf("heel and tip at %g, %g; toe and root at %g, %g", d.Along, d.Height, c.Along, c.Height)
	}
	off := pattern(Seen{AtHeel, AtTip, EvenShape, true}, middle, TaperedDepth)
	if m := read(t, off).Marks[0]; m.Along+m.Length/2 < 1-1e-9 {
		t.Errorf("a mark that runs off ends at %g", m.Along+m.Length/2)
	}
}

// Turned inside out, a pattern asks for the reverse; and no pattern moves both
// members or none without saying why.
func TestPatternLaws(t *testing.T) {
	mirrorA := map[Along]Along{AtToe: AtHeel, AtHeel: AtToe, TowardsToe: TowardsHeel, TowardsHeel: TowardsToe, MidLength: MidLength}
	mirrorH := map[Height]Height{AtTip: AtRoot, AtRoot: AtTip, TowardsTip: TowardsRoot, TowardsRoot: TowardsTip, MidHeight: MidHeight}
	draw := func(rt *rapid.T, name string) Seen {
		return seen(rapid.SampledFrom([]Along{AtToe, TowardsToe, MidLength, TowardsHeel, AtHeel}).Draw(rt, name),
			rapid.SampledFrom([]Height{AtTip, TowardsTip, MidHeight, TowardsRoot, AtRoot}).Draw(rt, name))
	}
	rapid.Check(t, func(rt *rapid.T) {
		depth := rapid.SampledFrom([]Depth{TaperedDepth, ParallelDepth, UnknownDepth}).Draw(rt, "depth")
		d, c := draw(rt, "drive"), draw(rt, "coast")
		r := read(t, pattern(d, c, depth))
		if r.PinionIn != 0 && r.WheelIn != 0 {
			rt.Errorf("two corrections at once: %+v", r)
		}
		if r.Reason == "" || len(r.Say)+len(r.Ask) == 0 || r.State == Stop {
			rt.Errorf("%s\n%s", r.State, told(r.Answer))
		}
		q := read(t, pattern(Seen{mirrorA[d.Along], mirrorH[d.Height], EvenShape, false}, Seen{mirrorA[c.Along], mirrorH[c.Height], EvenShape, false}, depth))
		if sign(q.PinionIn) != -sign(r.PinionIn) {
			rt.Errorf("pinion %g, turned over %g", r.PinionIn, q.PinionIn)
		}
	})
}
