package casting

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"axlewright/axle"
)

// foundry makes castings of known variant: its own arithmetic, that of the
// package is not used. It knows the true shares and sizes; the catalogue only
// learns of them from confirmed castings.
type foundry struct {
	r        *rand.Rand
	features []Feature
	share    []float64     // of each variant in what comes in
	answers  [][][]float64 // true chance of each answer, [variant][feature][answer]
	mean, sd [][]float64   // true sizes, [variant][feature]
	fresh    float64       // share of castings that are no known variant
	modified float64
}

const (
	madeVariants = 8
	madeSeen     = 8 // features that are seen; as many are measured
)

func newFoundry(seed uint64) *foundry {
	m := &foundry{r: rand.New(rand.NewPCG(seed, 99)), fresh: 0.05, modified: 0.08}
	trust := []float64{0.9, 0.85, 0.9, 0.5, 0.7, 0.4, 0.85, 0.1}
	for k := range madeSeen {
		f := Feature{Name: fmt.Sprintf("seen %d", k), Sort: Rib, Ask: "?", Reliability: trust[k]}
		for a := range 2 + k%4 {
			f.Answers = append(f.Answers, fmt.Sprintf("answer %d", a))
		}
		if k == 0 {
			f.Answers = append(f.Answers, "mended")
			f.Repair = &RepairSigns{Signs: []string{"mended"}, Shown: 0.7}
		}
		m.features = append(m.features, f)
	}
	for k := range madeSeen {
		f := Feature{Name: fmt.Sprintf("size %d", k), Sort: Bore, Ask: "?", Reliability: 0.9}
		f.Span = axle.Length{Number: axle.Number{Value: 0.07, Low: 0.06, High: 0.08, Shape: axle.Uniform, Origin: axle.Trade, Text: "60..80 mm"}}
		f.Instrument = axle.Length{Number: axle.Number{Value: 0.0001, Low: 0.0001, High: 0.0001, Origin: axle.Trade, Text: "0.1 mm"}}
		if k%2 == 0 {
			f.Repair = &RepairSigns{Altered: true}
		}
		m.features = append(m.features, f)
	}
	total := 0.0
	for range madeVariants {
		m.share = append(m.share, 0.3+m.r.Float64())
		total += m.share[len(m.share)-1]
		answers, mean, sd := m.design()
		m.answers, m.mean, m.sd = append(m.answers, answers), append(m.mean, mean), append(m.sd, sd)
	}
	for v := range m.share {
		m.share[v] /= total
	}
	return m
}

// design draws what a variant shows: mostly one answer, sizes in few steps, so
// that variants are alike in much.
func (m *foundry) design() (answers [][]float64, mean, sd []float64) {
	for k := range m.features {
		f := &m.features[k]
		n := int(f.ordinary())
		row := make([]float64, len(f.Answers))
		if !f.Measured() {
			for a := range n {
				row[a] = 0.06 / float64(n)
			}
			row[m.r.IntN(n)] += 0.94
		}
		answers = append(answers, row)
		mean = append(mean, 0.066+0.002*float64(m.r.IntN(4)))
		sd = append(sd, 0.0002+0.0004*m.r.Float64())
	}
	return answers, mean, sd
}

// cast makes one casting and reads the wanted features of it.
func (m *foundry) cast(wanted []int) (truth int, modified bool, e Evidence) {
	truth = madeVariants
	v := m.pick(m.share)
	sister, stranger := false, false
	switch {
	case m.r.Float64() >= m.fresh:
		truth = v
	case m.r.Float64() < 0.8:
		sister = true
	default:
		stranger = true
	}
	modified = m.r.Float64() < m.modified
	for _, k := range wanted {
		f := &m.features[k]
		foreign := stranger || sister && m.r.Float64() > 0.85
		misread := m.r.Float64() > f.Reliability
		item := Item{Feature: f.Name}
		if f.Measured() {
			altered := modified && f.Repair != nil && m.r.Float64() < 0.5
			item.Value = m.mean[v][k] + math.Hypot(m.sd[v][k], 0.00005)*m.r.NormFloat64()
			if foreign || misread || altered || item.Value < 0.06 || item.Value > 0.08 {
				item.Value = 0.06 + 0.02*m.r.Float64()
			}
		} else {
			a := m.pick(m.answers[v][k])
			if foreign {
				a = m.r.IntN(int(f.ordinary()))
			}
			if modified && f.Repair != nil && m.r.Float64() < 0.7 {
				a = len(f.Answers) - 1
			}
			if misread {
				a = m.r.IntN(len(f.Answers))
			}
			item.Answer = f.Answers[a]
		}
		e = append(e, item)
	}
	return truth, modified, e
}

func (m *foundry) pick(share []float64) int {
	x := m.r.Float64()
	for i, p := range share {
		if x -= p; x < 0 {
			return i
		}
	}
	return len(share) - 1
}

func (m *foundry) all() []int {
	list := make([]int, len(m.features))
	for i := range list {
		list[i] = i
	}
	return list
}

func (m *foundry) some() []int {
	list := m.all()
	m.r.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	return list[:1+m.r.IntN(7)]
}

// learnt is a catalogue that begins knowing only which features there are, and
// learns from castings that were confirmed.
func (m *foundry) learnt(t testing.TB, castings int) *Catalogue {
	t.Helper()
	c := Catalogue{Features: m.features}
	for v := range madeVariants {
		c.Variants = append(c.Variants, Variant{Name: fmt.Sprint("V", v)})
	}
	var confirmed []Confirmed
	for range castings {
		truth, modified, e := m.cast(m.all())
		one := Confirmed{Bench: Bench{Evidence: e}, Modified: modified}
		if truth < madeVariants {
			one.Variant = c.Variants[truth].Name
		}
		confirmed = append(confirmed, one)
	}
	next, _, err := c.Learn(confirmed)
	if err != nil {
		t.Fatal(err)
	}
	if found := next.Check(); len(found) > 0 {
		t.Fatal(found)
	}
	return &next
}

// Of the castings called 90 %, 90 ± 3 % must be right, and so for every other
// chance: over foundries, evidence of one to seven readings, misread ones, new
// variants and repairs among them.
func TestChancesAreCalibrated(t *testing.T) {
	const foundries, castings = 12, 2500
	type bin struct {
		n, called, right float64
	}
	var bins [10]bin
	var around, modifiedBin bin // called 85 to 95 %; called modified 30 to 70 %
	brier, always := 0.0, 0.0
	for seed := range uint64(foundries) {
		made := newFoundry(seed)
		m := NewMatcher(made.learnt(t, 500))
		for range castings {
			truth, modified, e := made.cast(made.some())
			w := m.weigh(e, nil)
			leader := argmax(w.id)
			called, right := w.id[leader], 0.0
			if leader == truth {
				right = 1
			}
			tally := func(b *bin, p, hit float64) { b.n++; b.called += p; b.right += hit }
			tally(&bins[min(int(called*10), 9)], called, right)
			if called >= 0.85 && called < 0.95 {
				tally(&around, called, right)
			}
			if p := w.chanceOfModified(); p > 0.3 && p < 0.7 {
				hit := 0.0
				if modified {
					hit = 1
				}
				tally(&modifiedBin, p, hit)
			}
			brier += (called - right) * (called - right)
			always += right
		}
	}
	t.Log("   called        castings   said    right")
	for i, b := range bins {
		if b.n == 0 {
			continue
		}
		said, right := b.called/b.n, b.right/b.n
		t.Logf("%3d to %3d %%  %9.0f  %5.1f %%  %5.1f %%", 10*i, 10*i+10, b.n, 100*said, 100*right)
		if b.n >= 800 && math.Abs(said-right) > 0.03 {
			t.Errorf("of %.0f castings called %.1f %%, %.1f %% are right", b.n, 100*said, 100*right)
		}
	}
	said, right := around.called/around.n, around.right/around.n
	t.Logf("called about 90 %%: %.0f castings, said %.1f %%, right %.1f %%", around.n, 100*said, 100*right)
	if around.n < 1000 || math.Abs(said-right) > 0.03 {
		t.Errorf("of %.0f castings called about 90 %% (%.1f %%), %.1f %% are right", around.n, 100*said, 100*right)
	}
	said, right = modifiedBin.called/modifiedBin.n, modifiedBin.right/modifiedBin.n
	t.Logf("called modified with about a half: %.0f castings, said %.1f %%, right %.1f %%", modifiedBin.n, 100*said, 100*right)
	if modifiedBin.n < 200 || math.Abs(said-right) > 3*math.Sqrt(0.25/modifiedBin.n)+0.03 {
		t.Errorf("modified: %.0f castings said %.1f %%, right %.1f %%", modifiedBin.n, 100*said, 100*right)
	}
	n := float64(foundries * castings)
	t.Logf("Brier score of the leader %.4f, right %.1f %%", brier/n, 100*always/n)
}
