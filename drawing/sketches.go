package drawing

import (
	"strings"

	"axlewright/calc/gear"
	"axlewright/setup"
)

// Sketch returns the line drawing of that key: that of a step, or that of a word
// to choose, "drive: at the toe".
func Sketch(key string) (Drawing, bool) {
	if draw, ok := sketches[key]; ok {
		return draw(), true
	}
	of, word, _ := strings.Cut(key, ": ")
	name := "choice-" + strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' {
			return r
		}
		return '-'
	}, key)
	switch of {
	case "drive", "coast":
		flank := gear.Flank(of)
		for _, seen := range choices {
			if word == string(seen.Along) || word == string(seen.Height) || word == string(seen.Shape) {
				return ToothFlank(name, word, seen.fill().Mark(flank)), true
			}
		}
	case "teeth":
		for _, d := range setup.Depths {
			if word == string(d) {
				return ToothDepth(name, d), true
			}
		}
	}
	return Drawing{}, false
}

// A choice is one thing said of a mark, the rest being as it should be.
type choice setup.Seen

var choices = func() []choice {
	var all []choice
	for _, a := range setup.Alongs {
		all = append(all, choice{Along: a})
	}
	for _, h := range setup.Heights {
		all = append(all, choice{Height: h})
	}
	for _, s := range setup.Shapes {
		all = append(all, choice{Shape: s})
	}
	return all
}()

func (c choice) fill() setup.Seen {
	seen := setup.Seen(c)
	if seen.Along == "" {
		seen.Along = setup.MidLength
	}
	if seen.Height == "" {
		seen.Height = setup.MidHeight
	}
	if seen.Shape == "" {
		seen.Shape = setup.EvenShape
	}
	return seen
}

var sketches = map[string]func() Drawing{
	"pinion-shim":     func() Drawing { return PinionShim(setup.TowardsWheel) },
	"pinion-shim-out": func() Drawing { return PinionShim(setup.AwayFromWheel) },
	"turning-torque":  turningTorque,
	"adjusters":       adjustersSketch,
	"adjuster-lock":   adjusterLock,
	"dial-at-heel":    dialAtHeel,
	"tooth-four-ends": toothEnds,
	"peg-gap":         pegGap,
	"back-face":       backFace,
	"bore-gauge":      boreGauge,
	"mandrel":         mandrelSketch,
	"cap-register":    capRegister,
	"bearing-stack":   bearingStack,
	"peg-hole":        pegHole,
	"donor-views":     donorViews,
	"crack-places":    crackPlaces,
	"swarf":           swarfSketch,
	"weld-turns":      weldTurns,
	"flange-flat":     flangeFlat,
	"resin-fill":      resinFill,
	"leak-test":       leakSketch,
	"guide-hole":      guideHole,
	"cap-marks":       capMarks,
	"bore-depths":     boreDepths,
	"stamp-place":     stampPlace,
}
