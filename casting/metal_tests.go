package casting

import "axlewright/calc/material"

// A MetalTest is a way to find out what a casting is made of. Chance holds, for
// each answer, how often castings of each castable family give it, in the order
// of castable: cast steel, ductile, whiteheart, blackheart, grey.
type MetalTest struct {
	Name     string
	Ask      string
	Answers  []string
	Chance   [][]float64
	Trust    float64 // as of a Feature
	Cost     float64 // as of a Tool
	Property string  // tests that see the same property do not count twice in full
	Source   string
	Caution  string
}

const (
	trade    = "common practice, no source; the shares are assumed"
	wholly   = "the whole analysis"
	brittle  = "how the metal breaks"
	ironDust = "Goggles, and a mask for iron dust. Hold the casting down."
)

// MetalTests are the tests of the bench that are read in words. Ring cannot
// tell ductile iron from steel, nor a spark whiteheart from blackheart: the
// shares say so.
//
// Castings that were tested so are few and the trade keeps no count: every
// share here is assumed, and tests that see the same property count half from
// the second on, so that three shop tests never pass for an analysis.
var MetalTests = []MetalTest{
	{
		"ring", "Hang it up and strike it: does it ring or thud?",
		[]string{"rings", "short ring", "thuds"},
		[][]float64{{0.80, 0.72, 0.60, 0.55, 0.08}, {0.15, 0.22, 0.30, 0.33, 0.27}, {0.05, 0.06, 0.10, 0.12, 0.65}},
		0.7, 0, "ring", trade, "Hang it safely: 12 to 20 kg falls on feet.",
	},
	{
		"swarf", "Drill 5 mm deep where it does not matter: what comes out?",
		[]string{"curls", "short chips", "powder"},
		[][]float64{{0.88, 0.45, 0.40, 0.30, 0.01}, {0.11, 0.50, 0.50, 0.60, 0.14}, {0.01, 0.05, 0.10, 0.10, 0.85}},
		0.85, 1, brittle, trade, ironDust,
	},
	{
		"chip", "Chisel a thin chip off an edge: does it hold together?",
		[]string{"continuous", "breaks short", "crumbles"},
		[][]float64{{0.90, 0.65, 0.55, 0.50, 0.02}, {0.08, 0.28, 0.35, 0.38, 0.18}, {0.02, 0.07, 0.10, 0.12, 0.80}},
		0.8, 1, brittle, trade, "Goggles: the chip flies.",
	},
	{
		"spark", "Hold it to the wheel beside a known piece of steel and one of grey iron: which is it like?",
		[]string{"like steel", "between", "like grey iron"},
		[][]float64{{0.85, 0.08, 0.30, 0.15, 0.03}, {0.13, 0.57, 0.55, 0.60, 0.27}, {0.02, 0.35, 0.15, 0.25, 0.70}},
		0.6, 1, "spark", trade, "Face shield; nothing that burns within 10 m; right wheel for iron.",
	},
	{
		"tab", "Weld a 6 mm tag on where it does not matter, let it cool, knock it off from the weld side: what broke?",
		[]string{"tag bent or bead broke", "tore out bright", "tore out grey"},
		[][]float64{{0.93, 0.35, 0.40, 0.20, 0.02}, {0.05, 0.45, 0.50, 0.50, 0.13}, {0.02, 0.20, 0.10, 0.30, 0.85}},
		0.9, 5, brittle, trade, "Extract the fume. No chlorinated cleaner on the part: arc heat turns it to phosgene.",
	},
}

// What the laboratory finds in each family, mass fractions: low and high ends
// that most castings lie between, taken as two standard deviations. Carbon and
// silicon alone do not tell grey from ductile iron: magnesium does.
//
// Source: cast irons after Iron Castings Handbook (Walton and Opar, 1981),
// range of compositions for typical unalloyed cast irons (carbon and silicon of
// grey and ductile read in a copy, the rest from memory); whiteheart and
// magnesium common practice; cast steel EN 10293 (from memory).
var composition = map[material.Family]struct{ carbon, silicon, magnesium [2]float64 }{
	material.CastSteel:      {carbon: [2]float64{0.0010, 0.0045}, silicon: [2]float64{0.0020, 0.0065}, magnesium: [2]float64{0, 0.00004}},
	material.DuctileIron:    {carbon: [2]float64{0.030, 0.040}, silicon: [2]float64{0.018, 0.028}, magnesium: [2]float64{0.00020, 0.00070}},
	material.WhiteheartIron: {carbon: [2]float64{0.005, 0.033}, silicon: [2]float64{0.004, 0.009}, magnesium: [2]float64{0, 0.00004}},
	material.BlackheartIron: {carbon: [2]float64{0.022, 0.029}, silicon: [2]float64{0.009, 0.019}, magnesium: [2]float64{0, 0.00004}},
	material.GreyIron:       {carbon: [2]float64{0.025, 0.040}, silicon: [2]float64{0.010, 0.030}, magnesium: [2]float64{0, 0.00004}},
}

// generalMetals is the chance of each castable family in a nose of which
// nothing is known. Assumed.
func generalMetals() []float64 { return []float64{0.12, 0.45, 0.03, 0.25, 0.15} }
