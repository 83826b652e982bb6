package kit

import (
	"errors"
	"os"
	"strings"
	"testing"

	"axlewright/axle"
)

// small is the least kit: one square plate with a hole.
const small = `kit: KIT-T31-B.1
casting: T31
title: a plate
drawn: 2026-03-02
reason: {why: a test}
sizes:
  long: 100 mm
frames:
  - name: wall
    origin: middle
    x: right
    up: up
    stations:
      - {number: 1, name: corner, at: [0, 0]}
drillings:
  - {name: screw, thread: M12x1.75, class: "8.8", metal: EN-GJL-200, wall: 30 mm ± 2 mm, behind: the bore}
pieces:
  - number: 1
    name: square
    thickness: 3 mm
    steel: S355
    frame: wall
    outline:
      - {from: [S1.x, S1.y], station: 1}
      - {to: [long, 0]}
      - {to: [long, long]}
      - {to: [0, long]}
      - {to: start}
    holes:
      - {label: A, at: [50, 50], diameter: 10 mm}
      - {label: G, kind: guide, drilling: screw, at: [20, 80]}
`

func TestTheLeastKit(t *testing.T) {
	k, err := Parse("small.yaml", []byte(small))
	if err != nil {
		t.Fatal(err)
	}
	d, err := k.Draw(Options{})
	if err != nil {
		t.Fatal(err)
	}
	p := d.plate(t, "1")
	near(t, "guide hole, mm", p.Holes[1].Diameter*1e3, 10.2-0.4, 1e-9)
	near(t, "long", p.Outline.Bounds().Width(), 0.1, 1e-15)
}

func TestKitsThatCannotBeDrawn(t *testing.T) {
	for name, c := range map[string]struct{ old, new, says, at string }{
		"unknown key":        {"title: a plate", "titel: a plate", "titel", ":3:1"},
		"key twice":          {"title: a plate", "title: a plate\ntitle: b", "title", ":4:"},
		"name":               {"KIT-T31-B.1", "KIT-T31-B", "name of a kit revision", ":1:6"},
		"other casting":      {"casting: T31", "casting: T24", "its name says T31", ":1:6"},
		"date":               {"2026-03-02", "2 March", "not a date", ":4:8"},
		"no reason":          {"{why: a test}", "{moved: []}", "says why", ""},
		"size":               {"long: 100 mm", "long: 100 nm", "not expected", ":7:9"},
		"size of a size":     {"long: 100 mm", "long: short + 1", "neither a size", ":7:9"},
		"nought":             {"long: 100 mm", "long: 0 mm", "no length", ":2"},
		"huge":               {"long: 100 mm", "long: 900 m", "more than", ":2"},
		"beyond all":         {"long: 100 mm", "long: 9" + strings.Repeat("0", 30), "it is 9e+27", ":25:15"},
		"station":            {"S1.x", "S2.x", "neither a size nor a station", ":24:17"},
		"station of none":    {"station: 1}\n      - {to: [long, 0]}", "station: 7}\n      - {to: [long, 0]}", "station 7", ""},
		"area as length":     {"[long, 0]", "[long*long, 0]", "an area", ":25:15"},
		"not a place":        {"[long, 0]", "[long, 0, 0]", "a place such as", ":25:14"},
		"crossed":            {"- {to: [long, long]}\n      - {to: [0, long]}", "- {to: [0, long]}\n      - {to: [long, long]}", "crosses itself", ""},
		"not closed":         {"- {to: start}\n    holes", "- {to: [0, 1]}\n    holes", "goes to: start", ""},
		"start too early":    {"- {to: [long, long]}", "- {to: start}", "goes to: start", ":26:14"},
		"bulge and centre":   {"{to: [long, long]}", "{to: [long, long], bulge: 1, centre: [0, 0]}", "leave one out", ":26:35"},
		"centre off":         {"{to: [long, long]}", "{to: [long, long], turn: left, centre: [0, 0]}", "from the start of the arc", ":26:"},
		"no turn":            {"{to: [long, long]}", "{to: [long, long], centre: [100, 50]}", "left or right", ":26:"},
		"seam":               {"{to: [long, long]}", "{to: [long, long], seam: glued}", "weld, open or vent", ":26:34"},
		"corner too large":   {"{to: [long, long]}", "{to: [long, long], corner: 101}", "too short", ":26:36"},
		"tab off its edge":   {"{to: [long, long]}", "{to: [long, long], tabs: [{at: 5, wide: 20, depth: 3}]}", "beyond its edge", ":26:"},
		"tab in a tab":       {"{to: [long, long]}", "{to: [long, long], vents: [{at: 50, wide: 20}, {at: 60, wide: 8}]}", "runs into", ":26:"},
		"steel":              {"steel: S355", "steel: S3555", "no metal called", ":21:12"},
		"thickness":          {"thickness: 3 mm", "thickness: 0.1 mm", "0.5 mm to 60 mm", ":20:16"},
		"thickness NaN":      {"thickness: 3 mm", "thickness: .nan", "expected a word, a number", ":20:16"},
		"infinite":           {"diameter: 10 mm", "diameter: .inf", "expected a word, a number", ":30:"},
		"frame":              {"frame: wall", "frame: floor", "no frame", ":22:12"},
		"hole small":         {"diameter: 10 mm", "diameter: 3.5 mm", "smaller than 3.6 mm", ":30:17"},
		"hole off":           {"at: [50, 50]", "at: [150, 50]", "off the plate", ":30:17"},
		"hole over the edge": {"at: [50, 50]", "at: [99, 50]", "to the edge", ":30:17"},
		"hole near the edge": {"at: [50, 50]", "at: [92.5, 50]", "leaves 2.5 mm to the edge; the least is 3 mm", ":30:17"},
		"holes meet":         {"at: [50, 50]", "at: [27, 73]", "between them", ""},
		"hole kind":          {"label: A,", "label: A, kind: square,", "plain, guide, pin or vent", ":30:26"},
		"hole label twice":   {"label: G", "label: A", "label of its own", ":31:17"},
		"guide of none":      {"drilling: screw, at", "drilling: bolt, at", "no drilling", ":31:"},
		"guide too large":    {"drilling: screw, at", "drilling: screw, diameter: 11 mm, at", "more than the drill", ":31:"},
		"thread":             {"thread: M12x1.75", "thread: M12x3", "M5 to M24", ":16:27"},
		"class":              {`class: "8.8"`, `class: "8.9"`, "4.6 to 12.9", ":16:"},
		"metal":              {"metal: EN-GJL-200", "metal: cheese", "no metal called", ":16:"},
		"wall":               {"wall: 30 mm ± 2 mm", "wall: 30 ± 2", "", ":16:"},
		"behind":             {", behind: the bore", ", behind: ''", "what lies behind", ":16:12"},
		"mark too small":     {"number: 1\n    name: square", "number: 1\n    mark: {size: 2 mm}\n    name: square", "2.5 mm to 4 mm", ":19:18"},
		"mark in the way":    {"number: 1\n    name: square", "number: 1\n    mark: {at: [5, 5]}\n    name: square", "no room there", ""},
		"mark on a hole":     {"number: 1\n    name: square", "number: 1\n    mark: {at: [50, 50]}\n    name: square", "no room there", ""},
		"piece number":       {"number: 1\n    name: square", "number: 0\n    name: square", "1 to 999", ":18:13"},
		"hand":               {"thickness: 3 mm", "thickness: 3 mm\n    hand: both", "pair, left, right or none", ":21:11"},
		"grain":              {"thickness: 3 mm", "thickness: 3 mm\n    grain: up", "along, across or any", ":21:12"},
		"tag":                {"title: a plate", "title: !", "", ""},
		"empty":              {small, "  \n", "empty", ""},
		"binary":             {"title: a plate", "title: \x00", "UTF-8", ""},
	} {
		t.Run(name, func(t *testing.T) {
			text := strings.Replace(small, c.old, c.new, 1)
			if text == small {
				t.Fatal("nothing was changed")
			}
			k, err := Parse("small.yaml", []byte(text))
			if err == nil {
				_, err = k.Draw(Options{})
			}
			var found axle.Findings
			if !errors.As(err, &found) || !strings.Contains(err.Error(), c.says) || !strings.Contains(err.Error(), "small.yaml"+c.at) {
				t.Errorf("%v\nexpected %q at %s", err, c.says, c.at)
			}
		})
	}
}

func TestAFileBearsTheNameOfItsKit(t *testing.T) {
	path := t.TempDir() + "/KIT-T31-B.2.yaml"
	if err := os.WriteFile(path, []byte(small), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := Load(path); err == nil || !strings.Contains(err.Error(), "bears the name") {
		t.Errorf("%v", err)
	}
	if _, err := Load(t.TempDir() + "/KIT-T31-B.1.yaml"); err == nil || !strings.Contains(err.Error(), "no such file") {
		t.Errorf("%v", err)
	}
}

func TestALaterRevisionSaysWhatMoved(t *testing.T) {
	k, err := Parse("small.yaml", []byte(strings.Replace(small, "B.1", "B.2", 1)))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := k.Draw(Options{}); err == nil || !strings.Contains(err.Error(), "what moved since revision 1") {
		t.Errorf("%v", err)
	}
}

func TestTabsFitTheirSlots(t *testing.T) {
	k := load(t, "KIT-T24-A.1")
	for _, c := range []struct {
		change func(*Slot)
		says   string
	}{
		{func(s *Slot) { s.Long.Text = "tab + 0.5" }, "less wide"},
		{func(s *Slot) { s.Wide.Text = "sheet" }, "a slot for it is 0.2 to 0.3 mm wider"},
		{func(s *Slot) { s.Tab.Text = "9" }, "no piece"},
		{func(s *Slot) { s.Tab.Text = "4" }, ""},
	} {
		bad := k
		bad.Pieces = append([]Piece(nil), k.Pieces...)
		bad.Pieces[0].Slots = append([]Slot(nil), k.Pieces[0].Slots...)
		c.change(&bad.Pieces[0].Slots[0])
		if _, err := bad.Draw(Options{}); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v, expected %q", err, c.says)
		}
	}
}

func FuzzKit(f *testing.F) {
	f.Add(small)
	f.Add(strings.Replace(small, "{to: [long, long]}", "{to: [long, long], bulge: -0.3, corner: 4, vents: [{at: 30, wide: 7}]}", 1))
	f.Fuzz(func(t *testing.T, text string) {
		k, err := Parse("fuzz.yaml", []byte(text))
		if err != nil {
			return
		}
		d, err := k.Draw(Options{Batch: "B1"})
		if err != nil {
			return
		}
		for i := range d.Plates {
			if p := &d.Plates[i]; p.Outline.Check() != nil || !(p.Area() > 0) || !(p.CutLength() > 0) {
				t.Errorf("%s was drawn with area %g", p.Key(), p.Area())
			}
		}
	})
}
