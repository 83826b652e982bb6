package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"axlewright/kit"
	"axlewright/kit/outline"
)

func kitDrawn(t testing.TB, name string) kit.Drawn {
	t.Helper()
	k, err := kit.Load("../examples/kits/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := k.Draw(kit.Options{Batch: "B0417"})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func everyKit(t testing.TB) []kit.Drawn {
	t.Helper()
	files, err := filepath.Glob("../examples/kits/KIT-*.yaml")
	if err != nil || len(files) < 2 {
		t.Fatalf("%d kits, %v", len(files), err)
	}
	var list []kit.Drawn
	for _, file := range files {
		list = append(list, kitDrawn(t, strings.TrimSuffix(filepath.Base(file), ".yaml")))
	}
	return list
}

// dxfPairs reads group codes and values, and demands CR LF and plain ASCII.
func dxfPairs(t testing.TB, text []byte) [][2]string {
	t.Helper()
	if bytes.Count(text, []byte("\n")) != bytes.Count(text, []byte("\r\n")) || bytes.Count(text, []byte("\r")) != bytes.Count(text, []byte("\n")) {
		t.Fatal("a line does not end in CR LF")
	}
	for _, b := range text {
		if b > '~' {
			t.Fatalf("byte %x is not ASCII", b)
		}
	}
	lines := strings.Split(strings.TrimSuffix(string(text), "\r\n"), "\r\n")
	if len(lines)%2 != 0 {
		t.Fatalf("%d lines are no pairs", len(lines))
	}
	var pairs [][2]string
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil {
			t.Fatalf("line %d: %v", i+1, err)
		}
		if code >= 10 && code < 60 || code >= 40 && code < 60 {
			if x, err := strconv.ParseFloat(lines[i+1], 64); err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("line %d: group %d is %q", i+2, code, lines[i+1])
			}
		}
		pairs = append(pairs, [2]string{strconv.Itoa(code), lines[i+1]})
	}
	if last := pairs[len(pairs)-1]; last != [2]string{"0", "EOF"} {
		t.Fatalf("it ends in %v", last)
	}
	return pairs
}

func writeDXF(t testing.TB, f CutFile, v DXFVersion) [][2]string {
	t.Helper()
	var b bytes.Buffer
	if err := WriteDXF(&b, f, v); err != nil {
		t.Fatal(err)
	}
	return dxfPairs(t, b.Bytes())
}

func TestHandlesAndOwners(t *testing.T) {
	for _, d := range everyKit(t) {
		for i := range d.Plates {
			owned := map[string]bool{"0": true}
			var owners []string
			seed := int64(0)
			for k, p := range writeDXF(t, PlateFile(&d.Plates[i]), R2000) {
				switch p[0] {
				case "5", "105":
					if k > 0 && owned[p[1]] {
						t.Errorf("handle %s stands twice", p[1])
					}
					n, err := strconv.ParseInt(p[1], 16, 64)
					if err != nil {
						t.Fatal(err)
					}
					if seed == 0 { // the first is the seed itself
						seed = n
						continue
					}
					if n >= seed {
						t.Errorf("handle %s is not below the seed %X", p[1], seed)
					}
					owned[p[1]] = true
				case "330", "350":
					owners = append(owners, p[1])
				}
			}
			for _, o := range owners {
				if !owned[o] {
					t.Errorf("owner %s does not exist", o)
				}
			}
		}
	}
}

func TestSameFileSameBytes(t *testing.T) {
	d := kitDrawn(t, "KIT-T24-A.1")
	for _, v := range []DXFVersion{R12, R2000} {
		var a, b bytes.Buffer
		if err := WriteDXF(&a, PlateFile(&d.Plates[0]), v); err != nil {
			t.Fatal(err)
		}
		if err := WriteDXF(&b, PlateFile(&d.Plates[0]), v); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("%s: two files, %v", v, err)
		}
	}
}

func TestMarksComeBeforeCuts(t *testing.T) {
	d := kitDrawn(t, "KIT-T24-A.1")
	f := PlateFile(&d.Plates[0])
	lastMark, firstCut, outer := 0, 0, 0
	pairs := writeDXF(t, f, R2000)
	entities := 0
	for i, p := range pairs {
		if p == [2]string{"2", "ENTITIES"} {
			entities = i
		}
		if entities == 0 || p[0] != "8" {
			continue
		}
		switch p[1] {
		case "MARK":
			lastMark = i
		case "CUT":
			if firstCut == 0 {
				firstCut = i
			}
			outer = i
		}
	}
	if lastMark == 0 || lastMark > firstCut {
		t.Errorf("marks end at %d, cuts begin at %d", lastMark, firstCut)
	}
	// The last cut is the outline: it has as many vertices.
	for i, p := range pairs {
		if i > outer && p[0] == "90" {
			if p[1] != strconv.Itoa(len(d.Plates[0].Outline)) {
				t.Errorf("the last cut has %s vertices", p[1])
			}
			break
		}
	}
}

func TestShapesThatNoMachineMayGet(t *testing.T) {
	at := func(x, y float64) outline.Vertex { return outline.Vertex{At: outline.Point{X: x, Y: y}} }
	nan, inf := math.NaN(), math.Inf(1)
	for name, s := range map[string]CutShape{
		"NaN in a path":   CutPath{CutLine, []outline.Vertex{at(0, 0), at(nan, 0)}, false},
		"infinite":        CutPath{CutLine, []outline.Vertex{at(0, 0), at(inf, 0)}, false},
		"huge":            CutPath{CutLine, []outline.Vertex{at(0, 0), at(1e7, 0)}, false},
		"NaN bulge":       CutPath{CutLine, []outline.Vertex{{Bulge: nan}, at(1, 0)}, false},
		"huge bulge":      CutPath{CutLine, []outline.Vertex{{Bulge: 1e9}, at(1, 0)}, false},
		"one place":       CutPath{CutLine, []outline.Vertex{at(0, 0)}, false},
		"no length":       CutPath{CutLine, []outline.Vertex{at(0, 0), at(0, 0)}, false},
		"closes on start": CutPath{CutLine, []outline.Vertex{at(0, 0), at(1, 0), at(0, 0)}, true},
		"NaN circle":      CutCircle{CutLine, outline.Point{X: nan}, 1},
		"no radius":       CutCircle{CutLine, outline.Point{}, 0},
		"NaN radius":      CutCircle{CutLine, outline.Point{}, nan},
		"negative radius": CutCircle{CutLine, outline.Point{}, -1},
		"unknown layer":   CutCircle{"OTHER", outline.Point{}, 1},
		"text to cut":     CutText{CutLine, outline.Point{}, 0.003, 0, "A"},
		"no words":        CutText{MarkLine, outline.Point{}, 0.003, 0, " \n "},
		"text NaN":        CutText{MarkLine, outline.Point{}, nan, 0, "A"},
		"turn NaN":        CutText{MarkLine, outline.Point{}, 0.003, nan, "A"},
		"long text":       CutText{MarkLine, outline.Point{}, 0.003, 0, strings.Repeat("№", 50)},
		"nothing":         nil,
	} {
		for _, v := range []DXFVersion{R12, R2000} {
			if err := WriteDXF(io.Discard, CutFile{Name: name, Shapes: []CutShape{s}}, v); err == nil {
				t.Errorf("%s was written as %s", name, v)
			}
		}
		if err := WriteCutSVG(io.Discard, CutFile{Name: name, Shapes: []CutShape{s}}); err == nil {
			t.Errorf("%s was written as SVG", name)
		}
	}
	if WriteDXF(io.Discard, CutFile{}, R12) == nil {
		t.Error("an empty file was written")
	}
	if WriteDXF(io.Discard, CutFile{Shapes: []CutShape{CutCircle{CutLine, outline.Point{}, 1}}}, "AC9999") == nil {
		t.Error("an unknown version was written")
	}
}

func TestWordsInCutFiles(t *testing.T) {
	for words, want := range map[string]string{
		"Ø 10.2 ± 0.1": "%%c 10.2 %%p 0.1", "90°": "90%%d", "100 %": "100 %", "%%d": `\U+0025\U+0025d`,
		"№ 7": `\U+2116 7`, `A\B`: `A\B`, `\U+0041`: `\U+005CU+0041`, "a\r\nb\x00": "a b", "^I": `\U+005EI`, "😀": "?",
	} {
		if got := dxfText(words); got != want {
			t.Errorf("%q is %q, expected %q", words, got, want)
		}
	}
}

func FuzzDXF(f *testing.F) {
	f.Add("Ø 10 №", "name", 0.1, -0.2, 0.4, 0.01)
	f.Add("\r\n 0\r\nEOF", "0\r\n", 1e9, math.Inf(1), math.NaN(), -1.0)
	f.Fuzz(func(t *testing.T, words, name string, x, y, bulge, radius float64) {
		file := CutFile{Name: name, Title: words, Shapes: []CutShape{
			CutText{GuideLine, outline.Point{X: x, Y: y}, math.Abs(radius), bulge, words},
			CutPath{CutLine, []outline.Vertex{{At: outline.Point{X: x, Y: y}, Bulge: bulge}, {At: outline.Point{X: y, Y: radius}}, {At: outline.Point{X: radius, Y: x}, Bulge: -bulge}}, true},
			CutCircle{MarkLine, outline.Point{X: y, Y: x}, radius},
		}}
		var svg bytes.Buffer
		svgErr := WriteCutSVG(&svg, file)
		for _, v := range []DXFVersion{R12, R2000} {
			var b bytes.Buffer
			err := WriteDXF(&b, file, v)
			if (err == nil) != (svgErr == nil) {
				t.Fatalf("%s: %v, SVG: %v", v, err, svgErr)
			}
			if err != nil {
				continue
			}
			ends := 0
			for _, p := range dxfPairs(t, b.Bytes()) {
				if p == [2]string{"0", "EOF"} {
					ends++
				}
			}
			if ends != 1 {
				t.Fatalf("%d ends", ends)
			}
		}
		if svgErr == nil {
			validXML(t, svg.Bytes())
		}
	})
}

func validXML(t testing.TB, text []byte) {
	t.Helper()
	for d := xml.NewDecoder(bytes.NewReader(text)); ; {
		if _, err := d.Token(); err == io.EOF {
			return
		} else if err != nil {
			t.Fatalf("%v in\n%s", err, text)
		}
	}
}

// TestCutSVGDrawsTheSameOutline measures the path of an SVG file again.
func TestCutSVGDrawsTheSameOutline(t *testing.T) {
	l := outline.Loop{{At: outline.Point{X: 0.01, Y: 0.02}, Bulge: 0.4}, {At: outline.Point{X: 0.11, Y: 0.02}}, {At: outline.Point{X: 0.11, Y: 0.09}, Bulge: -2.5}, {At: outline.Point{X: 0.05, Y: 0.09}}}
	var b bytes.Buffer
	if err := WriteCutSVG(&b, CutFile{Name: "x", Shapes: []CutShape{CutPath{CutLine, l, true}}}); err != nil {
		t.Fatal(err)
	}
	_, path, _ := strings.Cut(b.String(), ` d="`)
	path, _, _ = strings.Cut(path, `"`)
	for _, c := range "MLAZ" {
		path = strings.ReplaceAll(path, string(c), " "+string(c)+" ")
	}
	words := strings.Fields(path)
	number := func(i int) float64 {
		x, err := strconv.ParseFloat(words[i], 64)
		if err != nil {
			t.Fatal(err)
		}
		return x * 1e-3
	}
	var back outline.Loop
	for i := 0; i < len(words); {
		switch words[i] {
		case "M", "L":
			back = append(back, outline.Vertex{At: outline.Point{X: number(i + 1), Y: -number(i + 2)}})
			i += 3
		case "A":
			to := outline.Point{X: number(i + 6), Y: -number(i + 7)}
			from := back[len(back)-1].At
			half := from.To(to) / 2 / number(i+1)
			bulge := math.Tan(math.Asin(half) / 2)
			if words[i+5] == "1" {
				bulge = -bulge
			}
			back[len(back)-1].Bulge = bulge
			back = append(back, outline.Vertex{At: to})
			i += 8
		case "Z":
			i++
		default:
			t.Fatalf("%q in a path", words[i])
		}
	}
	back = back[:len(back)-1]
	if got := back.Area(); math.Abs(got-l.Area()) > 1e-7 {
		t.Errorf("area %g, expected %g", got, l.Area())
	}
	if got := back.Length(); math.Abs(got-l.Length()) > 1e-6 {
		t.Errorf("length %g, expected %g", got, l.Length())
	}
}

func ExampleWriteDXF() {
	var b bytes.Buffer
	hole := CutCircle{CutLine, outline.Point{X: 0.05, Y: 0.02}, 0.004}
	if err := WriteDXF(&b, CutFile{Name: "hole", Shapes: []CutShape{hole}}, R12); err != nil {
		fmt.Println(err)
	}
	_, entities, _ := strings.Cut(b.String(), "ENTITIES\r\n")
	fmt.Println(strings.Join(strings.Fields(entities), " "))
	// Output: 0 CIRCLE 8 CUT 10 50.0 20 20.0 30 0.0 40 4.0 0 ENDSEC 0 EOF
}
