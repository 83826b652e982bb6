package material

import (
	"fmt"
	"sort"
	"strings"
)

// Metal is a grade with the figures a sum needs.
type Metal struct {
	Name     string   // name, as the standard writes it
	Other    []string // name, other names it goes by; optional
	Family   Family   // name, family
	Standard string   // name, where the strengths stand
	Section  string   // name, thickness or condition the strengths hold for

	Tensile     float64 // Pa, R_m: least tensile strength by the standard
	TensileMean float64 // Pa, estimated mean of a normal spread
	TensileSD   float64 // Pa, estimated standard deviation
	Yield       float64 // Pa, R_e or R_p: least yield or proof strength, 0 where the standard gives none
	YieldMean   float64 // Pa, estimated mean of a normal spread
	YieldSD     float64 // Pa, estimated standard deviation
	YieldKind   string  // name, yield, 0.2 % proof, 0.1 % proof or none
	Shear       float64 // Pa, τ_u: ultimate shear strength at the least tensile strength
	Compression float64 // Pa, σ_d: compressive strength, 0 where it is not given
	Elongation  float64 // -, A: least elongation, 0 where it is not given

	HardnessLow  float64 // HBW, least of the usual band, 0 where it is not given
	HardnessHigh float64 // HBW, greatest of the usual band
	SkinLow      float64 // HRC, least of a hardened skin, 0 without one
	SkinHigh     float64 // HRC, greatest of a hardened skin

	Modulus     float64 // Pa, E: typical Young's modulus
	ModulusLow  float64 // Pa, low end of a triangular spread
	ModulusHigh float64 // Pa, high end of a triangular spread
	Poisson     float64 // -, ν: Poisson's ratio
	Density     float64 // kg/m³, ρ: density
	Expansion   float64 // 1/K, α: linear expansion, 20 °C to about 200 °C

	BendingFatigue float64 // -, endurance in rotating bending of a polished bar over R_m
	PullFatigue    float64 // -, endurance in push-pull of a polished bar over R_m
	FatigueSource  string  // name, where the two ratios stand
	Note           string  // name, what else to know; optional
}

// ShearModulus returns the shear modulus that belongs to the typical Young's modulus.
func (m Metal) ShearModulus() float64 { return m.Modulus / (2 * (1 + m.Poisson)) }

// UnknownError says that a grade is not in the tables, and which are.
type UnknownError struct {
	Name  string   // name, grade asked for
	Known []string // name, grades in the tables
}

func (e *UnknownError) Error() string {
	return fmt.Sprintf("material: no metal called %q; known are %s", e.Name, strings.Join(e.Known, ", "))
}

// Lookup returns the metal of a grade's name.
//
//	metal = row of the tables with that name or one of its other names
//
//	name  grade as the standard writes it or an older name, name
//
// Upper and lower case and blanks make no difference.
// Valid for the grades that Names lists.
// Errors: *UnknownError, which lists the known names.
// Source: the standard named in each row.
func Lookup(name string) (Metal, error) {
	if i, ok := byName[plain(name)]; ok {
		m := metals[i]
		m.Other = append([]string(nil), m.Other...)
		return m, nil
	}
	return Metal{}, &UnknownError{name, Names()}
}

// Names returns the names of all grades, by family and in the order of strength.
//
//	names = all rows of the tables
//
//	names  grades as the standards write them, name
//
// Valid for use in lists and messages.
// Errors: none.
// Source: the tables of this package.
func Names() []string {
	names := make([]string, len(metals))
	for i, m := range metals {
		names[i] = m.Name
	}
	return names
}

// InFamily returns the grades of one family.
//
//	metals = rows of the tables of that family
//
//	family  family of metals, name
//	metals  the grades with their figures, name
//
// Valid for the families that Families lists; another gives none.
// Errors: none.
// Source: the tables of this package.
func InFamily(family Family) []Metal {
	var found []Metal
	for _, m := range metals {
		if m.Family == family {
			m.Other = append([]string(nil), m.Other...)
			found = append(found, m)
		}
	}
	return found
}

var (
	metals = grades()
	byName = index(metals)
)

func grades() []Metal {
	var all []Metal
	for _, table := range [][]grade{structuralSteels, formedSteels, treatedSteels, caseSteels, castSteels, ductileIrons, blackheartIrons, whiteheartIrons, greyIrons, bronzes} {
		for _, g := range table {
			all = append(all, g.metal())
		}
	}
	return all
}

func index(all []Metal) map[string]int {
	at := map[string]int{}
	var twice []string
	for i, m := range all {
		for _, name := range append([]string{m.Name}, m.Other...) {
			if _, taken := at[plain(name)]; taken {
				twice = append(twice, name)
			}
			at[plain(name)] = i
		}
	}
	if len(twice) > 0 { // a fault of the tables, found by the first test that runs
		sort.Strings(twice)
		panic("material: names given twice: " + strings.Join(twice, ", "))
	}
	return at
}

func plain(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), "")) }
