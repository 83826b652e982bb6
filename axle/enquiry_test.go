package axle

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Only the tyre's name is known: everything else is asked for, each with a
// reason, and nothing more than once.
func TestOnlyATyreIsKnown(t *testing.T) {
	path := write(t, t.TempDir(), "ringing.yaml", "vehicle:\n  tyre: 235/85R16\n")
	_, _, err := LoadEnquiry(path)
	found := findings(t, err)
	want := []string{
		"number", "customer", "catalogue", "casting", "gears", "mounting.position", "mounting.forward", "use", "duty",
		"vehicle.name", "vehicle.engine", "vehicle.first_gear", "vehicle.low_range", "vehicle.efficiency", "vehicle.shock",
		"vehicle.axle_share", "vehicle.axle_load", "vehicle.friction",
	}
	var fields []string
	for _, f := range found {
		fields = append(fields, f.Field)
		why, said := strings.CutPrefix(f.Problem, "is not told yet. ")
		if !said || why != asked[f.Field] || !strings.HasSuffix(why, ".") || f.Line == 0 {
			t.Errorf("%s: %q", f.Field, f.Problem)
		}
	}
	slices.Sort(want)
	slices.Sort(fields)
	if !slices.Equal(fields, want) {
		t.Errorf("asked for %v\nwant      %v", fields, want)
	}
}

// Every question that can be asked is one that an enquiry must answer.
func TestWhatIsAskedIsNeeded(t *testing.T) {
	r := newReading()
	var e Enquiry
	r.text("x.yaml", "note: x\n", &e)
	told := map[string]bool{}
	for _, f := range r.found {
		told[f.Field] = true
	}
	for field := range asked {
		if !told[field] {
			t.Errorf("%s has a reason, but is not asked for", field)
		}
	}
	for _, f := range r.found {
		if strings.Contains(f.Problem, "lacks") {
			t.Errorf("asked for without a reason: %v", f)
		}
	}
}

func TestBrokenEnquiries(t *testing.T) {
	for _, c := range []struct{ old, with, field, says string }{
		{"casting: T24", "casting: T2O", "casting", `the catalogue has no casting "T2O"; is "T20" meant?`},
		{"gears: 24-3.54", "gears: 20-3.54", "gears", `gear set "20-3.54" does not fit casting "T24"; it takes 24-3.54, 24-4.11`},
		{"duty: farm", "duty: farming", "duty", `is "farm" meant?`},
		{"duty: farm", "duty: farm\nwanted_chance: 95", "wanted_chance", "95 is not a chance"},
		{"duty: farm", "duty: farm\nfitted: [peg-20]", "", ""},
		{"position: rear", "position: back", "mounting.position", `"back" is not known here; expected "front" or "rear"`},
		{"forward: drive ", "forward: convex ", "mounting.forward", `expected "drive" or "coast"`},
		{"use: [farm, towing]", "use: [farm, tow]", "use[2]", `"tow" is not known here; expected "road", "farm"`},
		{"history: [heel breaks]", "history: [noise]", "history[1]", `"noise" is not known here`},
		{"tyre: 235/85R16", "tyre: large", "vehicle.tyre", "expected a tyre size such as 235/85R16"},
		{"axle_load: 1450 kg ± 6 %", "axle_load: 1450", "vehicle.axle_load", "the unit is missing"},
		{"axle_load: 1450 kg ± 6 %", "axle_load: 1.45 m", "vehicle.axle_load", "expected a mass such as 1450 kg, got a length"},
		{"friction: 0.7 ± 12 %\n\n", "friction: 0.7 ± -12 %\n\n", "vehicle.friction", "a spread is not negative"},
		{"shock: 1.05..1.4  ", "shock: 0.5  ", "vehicle.shock", `"0.5" is not 1 or more`},
		{"efficiency: 0.9 ± 4 %", "efficiency: 90", "vehicle.efficiency", "is not within 0 and 1"},
		{"customer: Hill farm", "customer:", "customer", "there is no value here"},
		{"catalogue: [tarnhow.yaml, upgrades.yaml, duties.yaml]", "catalogue: tarnhow.yaml", "catalogue", "expected a list, such as [tarnhow.yaml]"},
		{"gears: 24-3.54", "gears: 24-3.54\ndiff_centre: 24-XX", "diff_centre", "the catalogue has no diff centre"},
	} {
		t.Run(c.with, func(t *testing.T) {
			found, line := brokenEnquiry(t, c.old, c.with)
			if c.says == "" {
				c.field, c.says = "fitted[1]", `upgrade "peg-20", said to be fitted already, does not fit casting "T24"; it fits T20`
			}
			if strings.Contains(c.with, "\n") {
				line = 0
			}
			expect(t, found, line, c.field, c.says)
			if len(found) != 1 {
				t.Errorf("found %v", found)
			}
		})
	}
}

// Faults of the enquiry and of its catalogue are told together.
func TestEnquiryAndCatalogueAreJoined(t *testing.T) {
	folder := t.TempDir()
	text, _ := changed(t, exampleText(t, "tarnhow.yaml"), "notches: 16", "notches: 0")
	write(t, folder, "tarnhow.yaml", text)
	enquiry, _ := changed(t, exampleText(t, enquiryFile), "[../tarnhow.yaml, ../upgrades.yaml, ../duties.yaml]", "[tarnhow.yaml]")
	_, _, err := LoadEnquiry(write(t, folder, "e.yaml", enquiry))
	found := findings(t, err)
	expect(t, found, 0, "castings[T20].adjuster.notches", "needs one notch or more")
	expect(t, found, 0, "duty", "the catalogue has no duty \"farm\", nor any other")
	if found[0].File != filepath.Join(folder, "e.yaml") {
		t.Errorf("the enquiry's own come first: %v", found)
	}
	enquiry, _ = changed(t, enquiry, "[tarnhow.yaml]", "[tarnhow.yaml, lost.yaml]")
	_, _, err = LoadEnquiry(write(t, folder, "e.yaml", enquiry))
	if found = findings(t, err); len(found) != 1 || !strings.HasSuffix(found[0].File, "lost.yaml") {
		t.Errorf("a catalogue file that is not there: %v", found)
	}
}

func TestWhichFilesAreEnquiries(t *testing.T) {
	for _, path := range exampleEnquiries(t) {
		if !IsEnquiry(path) {
			t.Errorf("%s does not pass as an enquiry", path)
		}
	}
	for _, name := range append(exampleFiles, "reference/catalogue.yaml", "matrix/casting.yaml") {
		if IsEnquiry("../examples/" + name) {
			t.Errorf("%s passes as an enquiry", name)
		}
	}
	if IsEnquiry("../examples") || IsEnquiry("../examples/lost.yaml") {
		t.Error("what cannot be read passes as an enquiry")
	}
}

func TestFlankOfAWayOfGoing(t *testing.T) {
	front := Mounting{Position: Front, Forward: CoastFlank}
	if front.FlankOf(Forward) != CoastFlank || front.FlankOf(Overrun) != DriveFlank || front.FlankOf(Reverse) != DriveFlank {
		t.Error("overrun and reverse load the flank opposite to pulling forward")
	}
	rear := Mounting{Position: Rear, Forward: DriveFlank}
	if rear.FlankOf(Forward) != DriveFlank || rear.FlankOf(Reverse) != CoastFlank {
		t.Error("an ordinary rear axle pulls on its drive flank")
	}
}
