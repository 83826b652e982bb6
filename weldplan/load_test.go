package weldplan

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"axlewright/axle"
)

func TestExamplesLoadAndPlan(t *testing.T) {
	files, err := filepath.Glob("../examples/weld/*.yaml")
	if err != nil || len(files) < 4 {
		t.Fatalf("%d examples: %v", len(files), err)
	}
	for _, file := range files {
		if strings.Contains(file, "log") {
			if entries, err := LoadLog(file); err != nil || len(entries) < fewestEntries {
				t.Errorf("%s: %d entries, %v", file, len(entries), err)
			}
			continue
		}
		j, entries, err := LoadJob(file)
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		p, err := Make(&j, entries, Options{})
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		var page strings.Builder
		if err := p.Write(&page); err != nil {
			t.Error(err)
		}
		if strings.Contains(page.String(), "%!") || strings.Contains(page.String(), "NaN") {
			t.Errorf("%s: the page is broken", file)
		}
	}
}

// spoiled is the example with one text in place of another.
func spoiled(t *testing.T, old, replacement string) string {
	t.Helper()
	raw, err := os.ReadFile("../examples/weld/t31-steel.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(raw), "logs: [fellgate-log.yaml]\n", "", 1)
	if !strings.Contains(text, old) {
		t.Fatalf("%q is not in the example", old)
	}
	file := filepath.Join(t.TempDir(), "job.yaml")
	if err := os.WriteFile(file, []byte(strings.Replace(text, old, replacement, 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

func TestWrongDataIsRefusedInASentenceWithItsPlace(t *testing.T) {
	for _, c := range []struct{ old, replacement, says string }{
		{"metal: GE240", "metal: cheese", `"cheese" is no metal a nose is cast in`},
		{"metal: GE240", "metal: {cast steel: 0.9, ductile iron: 0.3}", "add up to 1.2"},
		{"metal: GE240", "metal: {bronze: 0.9}", `"bronze" is no family`},
		{"metal: GE240", "colour: red\n  metal: GE240", `unknown key; expected variant`},
		{"mass: 22 kg, measured", "mass: 22 mm", "22 mm"},
		{"mass: 22 kg, measured", "mass: 22 t", "more or less than can be"},
		{"mass: 22 kg, measured", "", "is missing; expected such as 14 kg"},
		{"skin: 0.30 m²", "skin: 0.30", "unit is missing"},
		{"width: 90 mm", "width: 9 km", "more or less than can be"},
		{"across: +z, wall: 14 mm}", "across: up, wall: 14 mm}", `"up" is no side`},
		{"across: +z, wall: 14 mm}", "across: +y, wall: 14 mm}", "runs along the limb"},
		{"across: +z, wall: 14 mm}", "across: +z, wall: 40 mm}", "twice is more than the limb has"},
		{"from: [60 mm, -90 mm, 0 mm], to: [-18 mm", "from: [55 mm, -90 mm, 0 mm], to: [-18 mm", "touches no other limb"},
		{"role: head", "role: middle", `"middle" is no role`},
		{"on: left leg}", "on: third leg}", `there is no limb "third leg"`},
		{"- {name: right side bore, role: side, at: [0 mm, 90 mm, 0 mm], on: right leg}", "", "1 side bores"},
		{"facing: -y", "facing: back", `"back" is no side`},
		{"process: MAG", "process: gas", `"gas" is no process`},
		{"hydrogen_scale: D", "hydrogen_scale: F", `"F" is no hydrogen scale`},
		{"air: 21 °C", "air: 21", "unit"},
		{"air: 21 °C", "air: 210 °C", "more or less than can be"},
		{"cleaned_with: aqueous", "cleaned_with: petrol", `"petrol" is no cleaning`},
		{"steel: S355", "steel: S3555", `"S3555" is not in the tables`},
		{"steel: S355", "steel: EN-GJL-200", "a kit is cut from steel"},
		{"thickness: 8 mm, maker", "thickness: 8 in, maker", "more or less than can be"},
		{"name: U back", "name: U front", `"U front" stands twice`},
		{"to: [38 mm, 70 mm, 45 mm]", "to: [38 mm, -70 mm, 45 mm]", "begins where it ends"},
		{"to: [38 mm, 70 mm, 45 mm]", "to: [38 mm, -66 mm, 45 mm]", "is a tack"},
		{"to: [38 mm, 70 mm, 45 mm]", "to: [38 mm, 70 mm]", "three lengths"},
		{"to: [38 mm, 70 mm, 45 mm]", "to: [38 mm, 70 mm, 45 m]", "another unit"},
		{"on: bridge, side: +z", "on: left leg, side: +z", "off the axis of left leg"},
		{"side: +z, wall: 14 mm", "side: +y, wall: 14 mm", "straight out of the face"},
		{"wall: 14 mm, joint: lap, leg: 5 mm", "wall: 14 mm, joint: glue, leg: 5 mm", `"glue" is no joint`},
		{"joint: lap, leg: 5 mm", "joint: lap, leg: 15 mm", "only distorts"},
		{"joint: lap, leg: 5 mm", "joint: lap, bead: +x, leg: 5 mm", "only a tee"},
		{"position: flat", "position: upside", `"upside" is no position`},
		{"on: peg plate, force: [0 kN, 16 kN, 0 kN]", "on: lid, force: [0 kN, 16 kN, 0 kN]", `"lid" is no bore`},
		{"force: [0 kN, 16 kN, 0 kN]", "force: [0 kN, 0 kN, 0 kN]", "is nothing"},
		{"force: [0 kN, 16 kN, 0 kN]", "force: [0 kN, 16 kg, 0 kN]", "kg"},
		{"held_at: [60 mm, 0 mm, 0 mm]", "note_: x", `unknown key; expected variant`},
		{"C: 0.24 % ± 0.02 %", "C: 2.4 %", "more or less than can be"},
		{"moved_over_planned: 0.7", "moved_over_planned: -0.7", "more or less than can be"},
		{"casting:", "casting: [", "YAML"},
	} {
		_, _, err := LoadJob(spoiled(t, c.old, c.replacement))
		var found axle.Findings
		if !errors.As(err, &found) {
			t.Errorf("%q: %v", c.replacement, err)
			continue
		}
		says := false
		for _, f := range found {
			if strings.Contains(f.Problem, c.says) {
				says = true
				if c.says != "YAML" && (f.Line == 0 || f.Column == 0 || !strings.Contains(f.Excerpt, "^")) {
					t.Errorf("%q: no place: %s", c.replacement, f)
				}
			}
		}
		if !says {
			t.Errorf("%q: want %q, got:\n%v", c.replacement, c.says, found)
		}
	}
}

// Several things wrong are told at once, each where it stands.
func TestAllFindingsAtOnce(t *testing.T) {
	file := spoiled(t, "mass: 22 kg, measured", "mass: 22 t")
	raw, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(raw), "air: 21 °C", "air: 99 °C", 1)
	text = strings.Replace(text, "steel: S355", "steel: S999", 1)
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	_, _, err = LoadJob(file)
	var found axle.Findings
	if !errors.As(err, &found) || len(found) != 3 {
		t.Fatalf("%d findings:\n%v", len(found), err)
	}
	lines := strings.Split(text, "\n")
	for _, f := range found {
		key := f.Field[strings.LastIndexByte(f.Field, '.')+1:]
		if !strings.Contains(lines[f.Line-1], key+":") {
			t.Errorf("%s is said to stand in line %d: %s", f.Field, f.Line, lines[f.Line-1])
		}
	}
}

func TestFilesThatAreNone(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{
		"empty": "", "blank": " \n\n", "comments": "# nothing\n", "binary": "a\x00b", "latin": "note: caf\xe9", "two": "job: a\n---\njob: b\n",
		"deep": strings.Repeat("[", 500), "steps": strings.Repeat("- ", 400) + "a", "list": "- a\n- b\n", "word": "hello", "anchor": "job: &a x\nnote: *a\n",
	} {
		file := filepath.Join(folder, name+".yaml")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, _, err := LoadJob(file); err == nil || !strings.Contains(err.Error(), name+".yaml") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, _, err := LoadJob(filepath.Join(folder, "none.yaml")); err == nil || !strings.Contains(err.Error(), "no such file") {
		t.Errorf("no file: %v", err)
	}
	if _, _, err := LoadJob(folder); err == nil {
		t.Error("a folder was read")
	}
}

func TestWrongLogIsRefused(t *testing.T) {
	for text, says := range map[string]string{
		"entries:\n  - {variant: T24, position: flat, process: TIG, thickness: 3 mm, length: 100 mm, amps: 105 V}\n":              "105 V",
		"entries:\n  - {variant: T24, position: flat, process: choose, thickness: 3 mm, length: 100 mm, amps: 105 A}\n":           "lacks process",
		"entries:\n  - {position: flat, process: TIG, thickness: 3 mm, length: 100 mm, amps: 105 A}\n":                            "lacks variant",
		"entries:\n  - {variant: T24, position: flat, process: TIG, thickness: 3 mm, length: 100 mm}\n":                           "amps",
		"entries:\n  - {variant: T24, position: flat, process: TIG, thickness: 3 mm, length: 100 mm, amps: 1050 A}\n":             "more or less",
		"entries:\n  - {variant: T24, position: flat, process: TIG, thickness: 3 mm, length: 100 mm, amps: 105 A, passes: 99}\n":  "passes",
		"entries:\n  - {variant: T24, position: flat, process: TIG, thickness: 3 mm, length: 100 mm, amps: 105 A, volts: 14 V}\n": "unknown key",
	} {
		file := filepath.Join(t.TempDir(), "log.yaml")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := LoadLog(file); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// Whatever is typed, the reader answers with a job or a sentence.
func FuzzParse(f *testing.F) {
	f.Add([]byte("job: a\nshop: {process: TIG, air: 20 °C, cleaned_with: aqueous}\nplates:\n  - {name: p, steel: S355, thickness: 3 mm}\n"))
	f.Add([]byte("casting:\n  limbs:\n    - {name: l, from: [0 mm, 1 mm, 2 mm], to: [9 mm, 1 mm, 2 mm], width: 4 mm ± 1 mm}\n"))
	f.Add([]byte("casting: {metal: {a: 1}}"))
	f.Fuzz(func(t *testing.T, raw []byte) {
		var j Job
		s, err := axle.DecodeSheet("fuzz.yaml", string(raw), &j)
		if err != nil {
			var found axle.Findings
			if !errors.As(err, &found) || len(found) == 0 || found[0].Problem == "" {
				t.Fatalf("no sentence: %v", err)
			}
			return
		}
		_ = j.check(s).Error()
	})
}
