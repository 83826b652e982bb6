package axle

import (
	"slices"
	"strings"
	"testing"
)

func TestPlacesOfFigures(t *testing.T) {
	places := figurePlaces()
	for _, want := range []string{
		"Casting.CapBolts.Nut", "Casting.Seats.Side.Leg", "Gears.Plate.Bond", "Head.CupAngle", "HalfShafts.Yield",
		"Overlay.Bond", "Peg.Plate.Fixity", "Vehicle.AxleLoad", "Vehicle.Tyre.LoadedRadius",
	} {
		if !slices.Contains(places, want) {
			t.Errorf("there is no figure %s", want)
		}
	}
	if slices.ContainsFunc(places, func(p string) bool { return strings.Contains(p, "Number") || strings.HasPrefix(p, ".") }) {
		t.Errorf("places are not those of the fields: %v", places)
	}
}

func TestASamplerDrawsItsOwnCopy(t *testing.T) {
	c := exampleCatalogue(t)
	builds, err := c.Builds("T24", "24-4.11", []string{"peg-24"})
	if err != nil {
		t.Fatal(err)
	}
	columns := map[string]int{}
	column := func(place string) int {
		if _, known := columns[place]; !known {
			columns[place] = len(columns)
		}
		return columns[place]
	}
	was := builds[0].Peg.Gap.Value
	s := NewSampler(builds[0], "", column)
	other := NewSampler(builds[0], "", column)
	if len(columns) < 50 || !slices.Contains(places(columns), "Peg.Gap") {
		t.Fatalf("%d doubtful figures: %v", len(columns), places(columns))
	}
	p, z := make([]float64, len(columns)), make([]float64, len(columns))
	for i := range p {
		p[i], z[i] = 0.9, 1.2815515655446004
	}
	s.Draw(p, z)
	if s.Drawn.Peg.Gap.Value <= was || s.Drawn.Casting.CapBolts.Nut.Value <= builds[0].Casting.CapBolts.Nut.Value {
		t.Error("a draw high up leaves figures as they were")
	}
	if builds[0].Peg.Gap.Value != was || other.Drawn.Peg.Gap.Value != was {
		t.Error("a draw reached into what it was copied from")
	}
	for i := range p {
		p[i], z[i] = 0.5, 0
	}
	s.Draw(p, z)
	again := s.Drawn.Casting.Cap.Friction.Value
	s.Draw(p, z)
	if s.Drawn.Casting.Cap.Friction.Value != again || again != builds[0].Casting.Cap.Friction.Value {
		t.Error("the middle of a lognormal doubt is not its value")
	}
}

func places(columns map[string]int) []string {
	var list []string
	for place := range columns {
		list = append(list, place)
	}
	return list
}
