package material

import (
	"fmt"
	"strings"
)

// Family is a family of metals that behave alike when loaded, tested and welded.
type Family string

// Families, from the most to the least forgiving beside a weld; bronze is for pads.
const (
	StructuralSteel   Family = "structural steel"
	FormedSteel       Family = "high-strength formed steel"
	TreatedSteel      Family = "heat-treated steel"
	CaseHardenedSteel Family = "case-hardened steel"
	CastSteel         Family = "cast steel"
	DuctileIron       Family = "ductile iron"
	BlackheartIron    Family = "blackheart malleable iron"
	WhiteheartIron    Family = "whiteheart malleable iron"
	GreyIron          Family = "grey iron"
	Bronze            Family = "bronze"
)

// Weldability tells what may be done with a family.
type Weldability string

// Degrees of weldability.
const (
	WeldFreely      Weldability = "weldable"
	WeldByProcedure Weldability = "weldable by a tried procedure"
	WeldUnloaded    Weldability = "weld only where no load passes"
	DoNotWeld       Weldability = "do not weld structurally"
)

// FamilyInfo is what holds for a whole family.
type FamilyInfo struct {
	Family       Family      // name, family
	Weldability  Weldability // name, what may be done
	Weld         string      // name, how, in a sentence
	Toe          float64     // -, typical share of the parent strength left at a weld toe
	ToeLow       float64     // -, low end of a triangular spread
	ToeHigh      float64     // -, high end of a triangular spread
	ToeSource    string      // name, where the share is from
	FromHardness bool        // -, tensile strength may be told from hardness by ISO 18265
	TensileCoV   float64     // -, coefficient of variation of the tensile strength
	YieldCoV     float64     // -, coefficient of variation of the yield strength
	CoVSource    string      // name, where the coefficients are from
}

const (
	jcss    = "JCSS Probabilistic Model Code, part 3.2, 2001: lognormal, 0.04 and 0.07, stated for steels up to 380 MPa yield"
	assumed = "common practice, no source"
)

var families = []FamilyInfo{
	{
		StructuralSteel, WeldFreely, "Any arc process with matching filler; low hydrogen and preheat above 25 mm or CE 0.43 %.",
		1, 1, 1, "EN 1993-1-8:2005 takes no cut up to S460 (from memory)", true, 0.04, 0.07, jcss,
	},
	{
		FormedSteel, WeldByProcedure, "Low heat input, interpass below 100 °C, no preheat on thin plate: slow cooling softens it beside the weld.",
		0.85, 0.80, 0.95, "trade custom: 10 to 20 % softening beside the weld", true, 0.04, 0.05, assumed,
	},
	{
		TreatedSteel, WeldUnloaded, "Hardens and cracks beside the weld, and the rest is tempered: preheat, low hydrogen, slow cooling, temper; better not.",
		0.60, 0.40, 0.80, "trade custom, no source", true, 0.04, 0.05, assumed,
	},
	{
		CaseHardenedSteel, DoNotWeld, "The skin cracks and the heat treatment is lost.",
		0.30, 0, 0.50, "trade custom, no source", true, 0.05, 0.07, assumed,
	},
	{
		CastSteel, WeldByProcedure, "Weldable up to about 0.30 % C with low hydrogen; preheat by EN 1011-2 method B; relieve walls above 20 mm.",
		0.95, 0.85, 1, "trade custom, no source", true, 0.06, 0.08, assumed,
	},
	{
		DuctileIron, WeldByProcedure, "Nickel-iron filler, 150 to 300 °C or short cold runs; a white edge of 500 to 700 HV forms; little fatigue credit.",
		0.75, 0.60, 0.90, "trade custom: 70 to 90 % of the static strength with nickel-iron filler", false, 0.07, 0.07, assumed,
	},
	{
		BlackheartIron, WeldUnloaded, "Melted blackheart turns white and brittle again: bronze or nickel, and off the loaded ligaments.",
		0.55, 0.35, 0.75, "trade custom, no source", false, 0.07, 0.07, assumed,
	},
	{
		WhiteheartIron, WeldByProcedure, "Only the weldable grade in thin, decarburised walls; the core of a thick wall behaves as blackheart.",
		0.85, 0.65, 1, "trade custom; EN 1562 names one grade as suited to welding (from memory)", false, 0.08, 0.08, assumed,
	},
	{
		GreyIron, DoNotWeld, "No structural credit: full heat of 500 to 650 °C, or short cold nickel runs, for closing cracks only.",
		0.40, 0, 0.60, "trade custom, no source", false, 0.10, 0.10, assumed,
	},
	{
		Bronze, WeldUnloaded, "TIG with matching bronze; leaded bronzes do not weld.",
		0.60, 0.40, 0.80, "trade custom, no source", false, 0.10, 0.10, assumed,
	},
}

// Families returns what holds for each family, from the most to the least forgiving beside a weld.
//
//	families = table of this package
//
//	families  what holds for each family, name
//
// Valid for advice on welding and for spreads; a grade's own figures come first.
// Errors: none.
// Source: the sources named in each row.
func Families() []FamilyInfo { return append([]FamilyInfo(nil), families...) }

// FamilyOf returns what holds for one family.
//
//	family = row of the table with that name
//
//	family  family of metals, name
//
// Valid for the families that Families lists.
// Errors: an error that lists the known families.
// Source: the sources named in the row.
func FamilyOf(family Family) (FamilyInfo, error) {
	names := make([]string, len(families))
	for i, f := range families {
		if f.Family == family {
			return f, nil
		}
		names[i] = string(f.Family)
	}
	return FamilyInfo{}, fmt.Errorf("material: no family called %q; known are %s", family, strings.Join(names, ", "))
}
