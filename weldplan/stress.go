package weldplan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/calc/material"
	"axlewright/calc/weld"
)

// A Stress is how much of a run's strength one load uses, in the weld and in the
// casting beside it.
type Stress struct {
	Load    string      `json:"load"`
	Run     string      `json:"run"`
	Model   string      `json:"model"` // line method or skeleton
	Along   float64     `json:"along"` // N/m
	Across  float64     `json:"across"`
	Upright float64     `json:"upright"`
	Throat  *ThroatUse  `json:"throat,omitempty"`
	Toe     *ToeUse     `json:"toe,omitempty"`
	Fatigue *FatigueUse `json:"fatigue,omitempty"`
	Note    string      `json:"note,omitempty"`
}

// A ThroatUse is the check of the throat by EN 1993-1-8.
type ThroatUse struct {
	Equivalent float64 `json:"equivalent"` // Pa
	Limit      float64 `json:"limit"`      // Pa
	Use        float64 `json:"use"`        // -
	Source     string  `json:"source"`
}

// A ToeUse is the stress in the casting at the toe against what is left there.
type ToeUse struct {
	Stress   float64 `json:"stress"`   // Pa, nominal
	Strength float64 `json:"strength"` // Pa, typical
	Low      float64 `json:"low"`      // Pa, strength, low end
	High     float64 `json:"high"`     // Pa, high end
	Use      float64 `json:"use"`      // -, typical
	UseWorst float64 `json:"use_worst"`
	Source   string  `json:"source"`
}

// A FatigueUse is the life of a steel joint under a load that comes and goes.
type FatigueUse struct {
	Cycles   float64 `json:"cycles"` // asked for
	Life     float64 `json:"life"`   // 0 where endless
	Endless  bool    `json:"endless"`
	Detail   string  `json:"detail"`
	Category float64 `json:"category"` // Pa
	Range    float64 `json:"range"`    // Pa
	Source   string  `json:"source"`
	Note     string  `json:"note,omitempty"`
}

const (
	partialM2 = 1.25 // γ_M2 of EN 1993-1-8
	partialMf = 1.35 // γ_Mf, high consequence, safe life (EN 1993-1-9, table 3.1, from memory)
)

// parts are the three components of a line force: along the run, across it away
// from the bead, and off the wall.
func parts(w r3.Vec, l line, share float64, side, outwards r3.Vec) weld.ThroatForces {
	along := l.along(share)
	up := squareTo(side, along)
	across := r3.Cross(up, along)
	if r3.Dot(across, outwards) > 0 { // positive pulls the plate away from its bead, which lies outside
		across = r3.Scale(-1, across)
	}
	return weld.ThroatForces{Along: r3.Dot(w, along), Across: r3.Dot(w, across), Upright: r3.Dot(w, up)}
}

// worstOn finds the point of a run where the throat is used most.
func worstOn(l line, pull func(r3.Vec) r3.Vec, side, outwards r3.Vec, throat float64) (worst weld.ThroatForces) {
	const stations = 32
	most := -1.0
	for i := range stations + 1 {
		share := float64(i) / stations
		f := parts(pull(l.at(share)), l, share, side, outwards)
		f.Throat = throat
		s, err := weld.ThroatStresses(f)
		if err != nil {
			continue
		}
		e := math.Sqrt(s.Normal*s.Normal + 3*(s.ShearAcross*s.ShearAcross+s.ShearAlong*s.ShearAlong))
		if e > most {
			most, worst = e, f
		}
	}
	return worst
}

// throatUse sets a line force against EN 1993-1-8, directional. The weaker of
// plate, casting and filler counts.
func throatUse(f weld.ThroatForces, plate, casting material.Metal, filler Filler) (*ThroatUse, weld.ThroatStressesResult, error) {
	s, err := weld.ThroatStresses(f)
	if err != nil {
		return nil, s, err
	}
	tensile := math.Min(math.Min(plate.Tensile, casting.Tensile), filler.Tensile)
	correlation := 1.0
	if b, err := weld.CorrelationFactor(weld.SteelGrade(plate.Name)); err == nil {
		correlation = b
	}
	r, err := weld.DirectionalCheck(weld.DirectionalParams{Stress: s, Strength: weld.FilletStrengthParams{Tensile: tensile, Correlation: correlation, PartialFactor: partialM2}})
	if err != nil {
		return nil, s, err
	}
	return &ThroatUse{
		Equivalent: r.Equivalent, Limit: r.EquivalentLimit, Use: r.Use,
		Source: "EN 1993-1-8:2005, 4.5.3.2 (from memory), with the least of plate, casting and filler",
	}, s, nil
}

// toeUse sets the nominal stress in the wall beside the run against what the
// family keeps there.
func toeUse(stress float64, casting material.Metal) (*ToeUse, error) {
	info, err := material.FamilyOf(casting.Family)
	if err != nil {
		return nil, err
	}
	t := &ToeUse{
		Stress: stress, Strength: casting.Tensile * info.Toe, Low: casting.Tensile * info.ToeLow, High: casting.Tensile * info.ToeHigh,
		Source: "share of the tensile strength left beside a weld: " + info.ToeSource,
	}
	t.Use = math.Abs(stress) / t.Strength
	if t.Low > 0 {
		t.UseWorst = math.Abs(stress) / t.Low
	}
	return t, nil
}

// fatigueUse is the life of weld and toe in steel. No category is published for
// welds on iron, and none is made up here.
func fatigueUse(l *Load, s weld.ThroatStressesResult, toe float64, wall float64, casting material.Metal) *FatigueUse {
	if !l.Cycles.Given() {
		return nil
	}
	if iron(casting.Family) || casting.Family == "" {
		return &FatigueUse{Cycles: l.Cycles.Value, Note: "no fatigue category is published for welds on iron: keep stresses low, look for cracks, and claim no life"}
	}
	worst := &FatigueUse{Cycles: l.Cycles.Value, Endless: true, Source: "EN 1993-1-9:2005, load from nothing to full and back, partial factor 1.35 (from memory)"}
	ranges, err := weld.ThroatRanges(s)
	if err != nil {
		return nil
	}
	for _, c := range []struct {
		detail weld.Detail
		value  float64
	}{
		{weld.RootOfFillet, ranges.Direct}, {weld.ShearAlongFillet, ranges.Shear}, {weld.ToeOfLoadCarryingFillet, math.Abs(toe)},
	} {
		d, err := weld.DetailCategory(weld.DetailParams{Detail: c.detail, Length: 50e-3, Thickness: wall})
		if err != nil || c.value == 0 {
			continue
		}
		r, err := weld.FatigueLife(weld.FatigueLifeParams{
			Range: c.value, Course: weld.ConstantAmplitude,
			Curve: weld.CategoryParams{Category: d.Category, PartialFactor: partialMf, Kind: weld.StressKind(d.Kind)},
		})
		switch {
		case err != nil: // above the curve's beginning: a matter of strength
			return &FatigueUse{Cycles: l.Cycles.Value, Detail: string(c.detail), Category: d.Category, Range: c.value, Source: worst.Source, Note: "the range is beyond the fatigue curve: it breaks within ten thousand cycles"}
		case worst.Detail == "" || !r.Endless && (worst.Endless || r.Cycles < worst.Life):
			worst.Detail, worst.Category, worst.Range = string(c.detail), d.Category, c.value
			worst.Endless, worst.Life = r.Endless, r.Cycles
		}
	}
	return worst
}

// judge sets a line force and a toe stress against weld, casting and life.
func (w *work) judge(s *Stress, l *Load, f weld.ThroatForces, toe float64, plate int, wall float64) error {
	steel := steelFigures(w.job.Plates[plate].Steel)
	use, stresses, err := throatUse(f, steel, w.casting, w.filler)
	if err != nil {
		return err
	}
	s.Throat = use
	if iron(w.family) {
		s.Throat.Source += "; the standard is for steel: on iron it says what the bead bears, the toe governs"
	}
	if s.Toe, err = toeUse(toe, w.casting); err != nil {
		return err
	}
	s.Fatigue = fatigueUse(l, stresses, toe, wall, w.casting)
	return nil
}

func abs(x float64) float64 { return math.Abs(x) }
