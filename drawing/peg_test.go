package drawing

import (
	"strings"
	"testing"

	"axlewright/assess"
	"axlewright/drawing/sample"
)

func TestFirstTouch(t *testing.T) {
	point := func(torque, load float64) assess.PegPoint { return assess.PegPoint{Torque: torque, Load: load} }
	for name, c := range map[string]struct {
		curve   []assess.PegPoint
		want    float64
		touches bool
	}{
		"between two points":         {[]assess.PegPoint{point(0, 0), point(1000, 0), point(2000, 600), point(3000, 1600)}, 1400, true},
		"not past the last unloaded": {[]assess.PegPoint{point(0, 0), point(1000, 0), point(2000, 900), point(3000, 1000)}, 1000, true},
		"at once":                    {[]assess.PegPoint{point(0, 10), point(1000, 500)}, 0, true},
		"last point only":            {[]assess.PegPoint{point(0, 0), point(1000, 5)}, 0, true},
		"never":                      {[]assess.PegPoint{point(0, 0), point(1000, 0)}, 0, false},
	} {
		p := pegPicture{curve: c.curve}
		if got, touches := p.firstTouch(); !near(got, c.want) || touches != c.touches {
			t.Errorf("%s: %v, %v, want %v, %v", name, got, touches, c.want, c.touches)
		}
	}
}

func TestPegCurveSays(t *testing.T) {
	a := sample.Advice()
	for _, want := range []string{"load on the peg", "with the peg", "without the peg", "first touched at 4,300 N·m (3,200 lbf·ft)",
		"demand on this flank, peak: 4,980 N·m (3,670 lbf·ft)", "on the coast side", "kN", "lbf", "mm", "thou", "the peg takes off"} {
		if !strings.Contains(said(PegCurve(a)), want) {
			t.Errorf("no %q in %q", want, said(PegCurve(a)))
		}
	}
	for i := range a.Peg.Curve { // too little for a figure
		a.Peg.Curve[i].With = a.Peg.Curve[i].Without - 0.0001e-3
	}
	if s := said(PegCurve(a)); !strings.Contains(s, "the peg takes off nothing") {
		t.Errorf("a peg that takes off a ten-thousandth: %q", s)
	}
	for i := range a.Peg.Curve {
		a.Peg.Curve[i].Load = 0
	}
	if s := said(PegCurve(a)); !strings.Contains(s, "the peg is not touched up to") {
		t.Errorf("a peg that never touches: %q", s)
	}
	if s := said(PegCurve(sample.Hopeless())); s != "No peg is offered for this casting." {
		t.Errorf("without a peg: %q", s)
	}
}

func TestDoubtBarsSay(t *testing.T) {
	a := sample.Advice()
	d := DoubtBars(a)
	for _, want := range []string{"shock factor", "41 %", "assumed", "trade", "all else, and figures that act together", "12 %"} {
		if !strings.Contains(said(d), want) {
			t.Errorf("no %q in %q", want, said(d))
		}
	}
	// Bars are as long as their shares.
	var widths []float64
	for _, s := range d.Layers[0].Shapes {
		if r, is := s.(Rect); is && r.Ink.Width > 0 {
			widths = append(widths, r.Box.Width())
		}
	}
	if len(widths) != 7 || !near(widths[1]/widths[0], 0.22/0.41) {
		t.Errorf("bars of %v", widths)
	}
	a.Shares = nil
	if s := said(DoubtBars(a)); !strings.Contains(s, "No single figure") {
		t.Errorf("without shares: %q", s)
	}
}
