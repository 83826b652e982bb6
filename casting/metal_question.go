package casting

import (
	"math"
	"slices"
)

// Costs of the two tests that are read in numbers.
const (
	hardnessCost   = 2
	laboratoryCost = 20
)

// nextMetalTest is the test not made yet that would tell most about the metal
// for its trouble, or nil where none would tell anything.
func nextMetalTest(made []metalResult, chance []float64) *MetalQuestion {
	var best *MetalQuestion
	value := 0.0
	offer := func(q MetalQuestion) {
		if v := q.Bits / (q.Cost + moment); v > value && q.Bits >= leastMetalBits {
			best, value = &q, v
		}
	}
	for i := range MetalTests {
		t := &MetalTests[i]
		if slices.ContainsFunc(made, func(r metalResult) bool { return r.test == t.Name }) {
			continue
		}
		bits := t.bits(chance)
		if slices.ContainsFunc(made, func(r metalResult) bool { return r.property == t.Property }) {
			bits /= 2 // it would count half
		}
		offer(MetalQuestion{t.Name, t.Ask, t.Cost, bits, t.Caution, t.Source})
	}
	done := func(test string) bool {
		return slices.ContainsFunc(made, func(r metalResult) bool { return r.test == test })
	}
	if !done("hardness") {
		offer(MetalQuestion{"hardness", "Grind a spot bright and take the hardness, Brinell for choice.", hardnessCost, hardnessBits(chance), "Goggles; grind away from the bores.", "EN 1561, EN 1563, EN 1562, EN 10293: usual bands of the grades (from memory)"})
	}
	if !done("laboratory") {
		offer(MetalQuestion{"laboratory", "Send 10 g of drillings for carbon, silicon and magnesium: once for each variant.", laboratoryCost, entropy(chance) * 0.9, ironDust, "an analysis with magnesium tells the families apart in nine cases of ten: assumed"})
	}
	return best
}

// leastMetalBits is the least that a test must be expected to tell to be offered.
const leastMetalBits = 0.02

// bits is the information that a test is expected to give about the metal.
func (t *MetalTest) bits(chance []float64) float64 {
	rows := make([][]float64, len(t.Answers))
	for a := range t.Answers {
		rows[a] = t.result(a).like
	}
	return information(chance, rows)
}

// hardnessBits is bits for a hardness, read to 5 HBW.
func hardnessBits(chance []float64) float64 {
	const step = 5.0
	var rows [][]float64
	for hb := softest + step/2; hb < hardest; hb += step {
		like := hardnessLike(Hardness{hb, "HBW"})
		for i := range like {
			like[i] *= step
		}
		rows = append(rows, like)
	}
	return information(chance, rows)
}

// information is that between what is so, with its chances, and what is
// answered: rows holds the chance of each answer for each that may be so.
func information(chance []float64, rows [][]float64) float64 {
	bits := 0.0
	for _, like := range rows {
		total := 0.0
		for i, p := range chance {
			total += p * like[i]
		}
		for i, p := range chance {
			if j := p * like[i]; j > 0 {
				bits += j * math.Log2(like[i]/total)
			}
		}
	}
	return math.Max(bits, 0)
}

func entropy(chance []float64) float64 {
	bits := 0.0
	for _, p := range chance {
		bits -= xlogx(p) / math.Ln2
	}
	return bits
}
