//go:build reference

package reference

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"axlewright/drawing"
	"axlewright/kit"
	"axlewright/kit/outline"
)

// readers installs the independent readers of cut files once. Where one cannot
// be had the test fails: a check that was left out is no check.
var readers = sync.OnceValues(func() (string, error) {
	var complaint bytes.Buffer
	command := exec.Command("bash", "../.ci/readers")
	command.Stderr = &complaint
	folder, err := command.Output()
	if err != nil {
		return "", fmt.Errorf("%w\n%s", err, complaint.String())
	}
	return strings.TrimSpace(string(folder)), nil
})

// cutContents is what a reader found in a file, in millimetres.
type cutContents struct {
	Version string
	Units   int
	Faults  []string
	Paths   []struct {
		Layer        string
		Area, Length float64
		Closed       bool
	}
	Circles []struct {
		Layer          string
		X, Y, Diameter float64
	}
	Texts []string
}

// readCutFiles reads files with every reader; the answers come by reader.
func readCutFiles(t *testing.T, files []string) map[string][]cutContents {
	t.Helper()
	folder, err := readers()
	if err != nil {
		t.Fatalf("the independent readers cannot be had (.ci/readers): %v", err)
	}
	all := map[string][]cutContents{}
	for name, command := range map[string][]string{
		"ezdxf":      {python, "dxf_check.py"},
		"dxf-parser": {"node", "dxf_check.js", folder, "dxf-parser"},
		"dxf":        {"node", "dxf_check.js", folder, "dxf"},
	} {
		run := exec.Command(command[0], append(command[1:], files...)...)
		var complaint bytes.Buffer
		run.Stderr = &complaint
		output, err := run.Output()
		if err != nil {
			t.Fatalf("%s did not answer: %v\n%s", name, err, complaint.String())
		}
		var list []cutContents
		if err := json.Unmarshal(output, &list); err != nil || len(list) != len(files) {
			t.Fatalf("%s: %d answers for %d files, %v", name, len(list), len(files), err)
		}
		all[name] = list
	}
	return all
}

// micrometre is what readers and the program may differ by, in mm.
const micrometre = 1e-3

// sameShapes demands that a reader found exactly the shapes of a cut file.
func sameShapes(t *testing.T, name string, f drawing.CutFile, got cutContents) {
	t.Helper()
	paths, circles, texts := 0, 0, 0
	for _, s := range f.Shapes {
		switch s := s.(type) {
		case drawing.CutPath:
			paths++
			l := outline.Loop(s.Vertices)
			length, area := 0.0, math.NaN()
			for i := range l {
				if i < len(l)-1 || s.Closed {
					length += l.Edge(i).Length() * 1e3
				}
			}
			if s.Closed {
				area = l.Area() * 1e6
			}
			found := false
			for _, p := range got.Paths {
				found = found || p.Layer == string(s.Layer) && p.Closed == s.Closed && math.Abs(p.Length-length) < micrometre &&
					(!s.Closed || math.Abs(p.Area-area) < micrometre*length)
			}
			if !found {
				t.Errorf("%s: no path on %s of %.6f mm and %.6f mm²", name, s.Layer, length, area)
			}
		case drawing.CutCircle:
			circles++
			found := false
			for _, c := range got.Circles {
				found = found || c.Layer == string(s.Layer) && math.Abs(c.X-s.Centre.X*1e3) < micrometre &&
					math.Abs(c.Y-s.Centre.Y*1e3) < micrometre && math.Abs(c.Diameter-s.Radius*2e3) < micrometre
			}
			if !found {
				t.Errorf("%s: no circle on %s of %.6f mm at %.6f, %.6f", name, s.Layer, s.Radius*2e3, s.Centre.X*1e3, s.Centre.Y*1e3)
			}
		case drawing.CutText:
			texts++
		}
	}
	if len(got.Paths) != paths || len(got.Circles) != circles || len(got.Texts) != texts {
		t.Errorf("%s: read %d paths, %d circles, %d texts; written %d, %d, %d", name, len(got.Paths), len(got.Circles), len(got.Texts), paths, circles, texts)
	}
	if len(got.Faults) > 0 {
		t.Errorf("%s: %q", name, got.Faults)
	}
	if got.Units != 4 {
		t.Errorf("%s: units %d, not millimetres", name, got.Units)
	}
}

// checkCutFiles writes cut files in both versions and reads them back.
func checkCutFiles(t *testing.T, cuts []drawing.CutFile) map[string][]cutContents {
	t.Helper()
	dir := t.TempDir()
	var files []string
	var written []drawing.CutFile
	var versions []drawing.DXFVersion
	for i, f := range cuts {
		for _, v := range []drawing.DXFVersion{drawing.R12, drawing.R2000} {
			var b bytes.Buffer
			if err := drawing.WriteDXF(&b, f, v); err != nil {
				t.Fatal(err)
			}
			file := filepath.Join(dir, fmt.Sprintf("%03d-%s.dxf", i, v))
			if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			files, written, versions = append(files, file), append(written, f), append(versions, v)
		}
	}
	all := readCutFiles(t, files)
	for reader, list := range all {
		for i, got := range list {
			name := fmt.Sprintf("%s of %s %s", reader, written[i].Name, versions[i])
			if got.Version != string(versions[i]) {
				t.Errorf("%s: version %q", name, got.Version)
			}
			sameShapes(t, name, written[i], got)
		}
	}
	return all
}

// exampleKits draws every kit of the examples.
func exampleKits(t *testing.T) []kit.Drawn {
	t.Helper()
	files, err := filepath.Glob("../examples/kits/KIT-*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d kits, %v", len(files), err)
	}
	var list []kit.Drawn
	for _, file := range files {
		k, err := kit.Load(file)
		if err != nil {
			t.Fatal(err)
		}
		d, err := k.Draw(kit.Options{Batch: "B0417"})
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, d)
	}
	return list
}

func TestEveryPlateIsReadByOthers(t *testing.T) {
	var cuts []drawing.CutFile
	var plates []kit.Plate
	for _, d := range exampleKits(t) {
		for i := range d.Plates {
			cuts, plates = append(cuts, drawing.PlateFile(&d.Plates[i])), append(plates, d.Plates[i])
		}
	}
	for reader, list := range checkCutFiles(t, cuts) {
		for i, got := range list {
			p := &plates[i/2]
			var area, cut float64
			outer := 0.0
			for _, l := range got.Paths {
				if l.Layer == "CUT" {
					if !l.Closed {
						t.Errorf("%s of %s: a cut that does not close", reader, p.File())
					}
					outer = math.Max(outer, math.Abs(l.Area))
					area -= math.Abs(l.Area)
					cut += l.Length
				}
			}
			for _, c := range got.Circles {
				area -= math.Pi / 4 * c.Diameter * c.Diameter
				cut += math.Pi * c.Diameter
			}
			area += 2 * outer
			// The bill's figures, from what another program read.
			if math.Abs(area-p.Area()*1e6) > micrometre*cut || math.Abs(cut-p.CutLength()*1e3) > micrometre {
				t.Errorf("%s of %s: %.6f mm² and %.6f mm, the bill says %.6f and %.6f", reader, p.File(), area, cut, p.Area()*1e6, p.CutLength()*1e3)
			}
		}
	}
}

func TestANestIsReadByOthers(t *testing.T) {
	j, err := kit.LoadJob("../examples/kits/nest-20.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j.Rules.Tries = 4
	cuttings, err := j.Run(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	var cuts []drawing.CutFile
	for i := range cuttings {
		for s := range cuttings[i].Plan.Sheets {
			cuts = append(cuts, drawing.NestFile(&cuttings[i], s))
		}
	}
	checkCutFiles(t, cuts)
}

// TestOddFilesAreReadByOthers: far coordinates, arcs of every sweep and words
// with the format's own signs.
func TestOddFilesAreReadByOthers(t *testing.T) {
	words := []string{"Ø 10.2 ± 0.1 at 90°", "100 % A\\B ^C", "%%d %%%", "Prüfung № 7", "\\U+0041", "a \t b"}
	f := drawing.CutFile{Name: "odd", Title: "odd"}
	for i, w := range words {
		f.Shapes = append(f.Shapes, drawing.CutText{Layer: drawing.GuideLine, At: outline.Point{X: float64(i), Y: -999}, Size: 0.003, Turn: 0.3, Words: w})
	}
	for _, bulge := range []float64{1e-4, 0.03, 0.4142, 0.999, 1, 1.001, 7, -0.2, -1, -3} {
		f.Shapes = append(f.Shapes, drawing.CutPath{Layer: drawing.CutLine, Closed: true,
			Vertices: []outline.Vertex{{At: outline.Point{X: 998, Y: bulge}, Bulge: bulge}, {At: outline.Point{X: 998.1, Y: bulge + 0.02}}, {At: outline.Point{X: 998.05, Y: bulge + 9}}}})
	}
	f.Shapes = append(f.Shapes, drawing.CutCircle{Layer: drawing.CutLine, Centre: outline.Point{X: -999.999999, Y: 1e-9}, Radius: 1e-4})
	all := checkCutFiles(t, []drawing.CutFile{f})
	for i := range all["ezdxf"] {
		got := all["ezdxf"][i].Texts
		for _, w := range words {
			if want := drawing.Clean(w); !slices.Contains(got, want) {
				t.Errorf("ezdxf read %q, written %q", got, want)
			}
		}
	}
}
