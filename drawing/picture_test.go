package drawing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/drawing/sample"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

// samples are the advices that every picture is drawn of.
var samples = map[string]func() *assess.Advice{
	"plain": sample.Advice, "hopeless": sample.Hopeless, "single": sample.Single, "full": sample.Full, "wild": sample.Wild,
	"empty": func() *assess.Advice { return &assess.Advice{Best: -1, Recommended: -1, NextUp: -1} },
}

func pictures(a *assess.Advice) []Drawing {
	return []Drawing{Ladder(a), LadderSized(a, 190, 70), LadderSized(a, 160, 130), PegCurve(a), DoubtBars(a)}
}

func TestPicturesAreSound(t *testing.T) {
	if err := sound(BenchSet()); err != nil {
		t.Errorf("bench: %v", err)
	}
	for name, advice := range samples {
		for i, d := range pictures(advice()) {
			if err := sound(d); err != nil {
				t.Errorf("%s, picture %d (%s): %v", name, i, d.Name, err)
			}
		}
	}
}

// Pictures must stand any words and any figures.
func TestPicturesOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for i, d := range pictures(anyAdvice(t)) {
			if err := sound(d); err != nil {
				t.Fatalf("picture %d (%s): %v", i, d.Name, err)
			}
		}
	})
}

func anyAdvice(t *rapid.T) *assess.Advice {
	a := sample.Full()
	figure := rapid.OneOf(rapid.Float64Range(0, 40000), rapid.SampledFrom([]float64{0, -1, 1e-300, 1e12, 1e300, math.Inf(1), math.NaN()}))
	words := rapid.OneOf(rapid.String(), rapid.StringMatching(`[a-zA-Z]{1,60}( [a-zØ漢-]{0,40}){0,6}`))
	band := func() assess.Band {
		return assess.Band{Median: figure.Draw(t, "median"), Low: figure.Draw(t, "low"), High: figure.Draw(t, "high")}
	}
	if rapid.Bool().Draw(t, "demand") {
		a.Demand.Peak = band()
	}
	a.Builds = a.Builds[:rapid.IntRange(0, len(a.Builds)).Draw(t, "builds")]
	a.Best = rapid.IntRange(-1, 7).Draw(t, "best")
	a.Recommended = rapid.IntRange(-1, len(a.Builds)-1).Draw(t, "recommended")
	a.NextUp = rapid.IntRange(-1, len(a.Builds)-1).Draw(t, "next")
	a.Wanted = rapid.Float64Range(-1, 2).Draw(t, "wanted")
	for i := range a.Builds {
		b := &a.Builds[i]
		b.Price, b.Carries.Value = figure.Draw(t, "price"), figure.Draw(t, "chance")
		for k := range b.Links {
			if rapid.IntRange(0, 2).Draw(t, "change") == 0 {
				b.Links[k].Name, b.Links[k].GiveOut = words.Draw(t, "name"), band()
			}
		}
		if len(b.Links) > 0 {
			b.Weak = rapid.IntRange(0, len(b.Links)-1).Draw(t, "weak")
			b.RunnerUp = rapid.IntRange(0, len(b.Links)-1).Draw(t, "runner-up")
		}
	}
	for i := range a.Peg.Curve {
		p := &a.Peg.Curve[i]
		switch rapid.IntRange(0, 3).Draw(t, "point") {
		case 0:
			p.Load, p.With = figure.Draw(t, "load"), figure.Draw(t, "with")*1e-8
		case 1:
			p.Without = -figure.Draw(t, "without") * 1e-8
		}
	}
	for i := range a.Shares {
		a.Shares[i] = assess.Share{Figure: words.Draw(t, "figure"), Origin: axle.Origin(words.Draw(t, "origin")), Share: figure.Draw(t, "share") / 20000}
	}
	return a
}

// sound checks a picture as every picture must be.
func sound(d Drawing) error {
	var b bytes.Buffer
	if err := WriteSVG(&b, d); err != nil {
		return err
	}
	if err := wellFormed(b.Bytes()); err != nil {
		return err
	}
	paper := Box{0, 0, d.Width, d.Height}
	var all []Text
	for _, t := range texts(d) {
		if t.Words != Clean(t.Words) {
			return fmt.Errorf("%q is not clean", t.Words)
		}
		if !paper.Holds(t.Box()) {
			return fmt.Errorf("%q leaves the paper: %v", t.Words, t.Box())
		}
		if t.Tone == Pale || t.Size < 7.5*25.4/72 {
			return fmt.Errorf("%q is too pale or too small to read", t.Words)
		}
		for _, other := range all {
			if t.Box().Overlaps(other.Box()) {
				return fmt.Errorf("%q lies on %q", t.Words, other.Words)
			}
		}
		if t.Words != "" {
			all = append(all, t)
		}
	}
	if d.Title == "" || d.Desc == "" || len(all) == 0 {
		return errors.New("nothing to read in it")
	}
	return nil
}

// texts are all words of a picture.
func texts(d Drawing) []Text {
	var list []Text
	for _, layer := range d.Layers {
		for _, s := range layer.Shapes {
			switch f := s.(type) {
			case Text:
				list = append(list, f)
			case Dimension:
				for _, part := range f.Parts() {
					if t, is := part.(Text); is {
						list = append(list, t)
					}
				}
			}
		}
	}
	return list
}

// wellFormed reads an SVG file with a reader of XML and looks for what a screen
// reader needs.
func wellFormed(file []byte) error {
	decoder := xml.NewDecoder(bytes.NewReader(file))
	ids, labelled, role := map[string]bool{}, "", ""
	for {
		token, err := decoder.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			return err
		}
		e, is := token.(xml.StartElement)
		if !is {
			continue
		}
		for _, a := range e.Attr {
			switch {
			case a.Name.Local == "id":
				if ids[a.Value] {
					return fmt.Errorf("id %s twice", a.Value)
				}
				ids[a.Value] = true
			case a.Name.Local == "role":
				role = a.Value
			case a.Name.Local == "aria-labelledby":
				labelled = a.Value
			case strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "href":
				return fmt.Errorf("attribute %s", a.Name.Local)
			}
			if strings.Contains(a.Value, "NaN") || strings.Contains(a.Value, "Inf") {
				return fmt.Errorf("%s=%q", a.Name.Local, a.Value)
			}
		}
	}
	for _, id := range strings.Fields(labelled) {
		if !ids[id] {
			return fmt.Errorf("no element has the id %s", id)
		}
	}
	if role != "img" || labelled == "" {
		return errors.New("not named for a screen reader")
	}
	return nil
}

func TestGoldenPictures(t *testing.T) {
	for name, d := range map[string]Drawing{
		"ladder": Ladder(sample.Advice()), "ladder-hopeless": Ladder(sample.Hopeless()), "ladder-full": Ladder(sample.Full()),
		"peg": PegCurve(sample.Advice()), "bench": BenchSet(), "doubt": DoubtBars(sample.Advice()),
	} {
		var b bytes.Buffer
		if err := WriteSVG(&b, d); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join("testdata", name+".svg")
		if *update {
			if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(want, b.Bytes()) {
			t.Errorf("%s has changed: look at the new picture, then run with -update", file)
		}
	}
}
