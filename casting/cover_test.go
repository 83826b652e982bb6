package casting

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func setOf(n int, members ...int) set {
	s := newSet(n)
	for _, i := range members {
		s.add(i - 1)
	}
	return s
}

func TestCoverPublished(t *testing.T) {
	sets := []set{
		setOf(12, 1, 2, 3, 4, 5, 6), setOf(12, 5, 6, 8, 9), setOf(12, 1, 4, 7, 10),
		setOf(12, 2, 5, 7, 8, 11), setOf(12, 3, 6, 9, 12), setOf(12, 10, 11),
	}
	least := 0
	for k := 1; k <= 6 && least == 0; k++ {
		if c := bestCover(sets, 12, k, 1e6); c.count == 12 && c.proved {
			least = k
			if !slices.Equal(c.chosen, []int{2, 3, 4}) {
				t.Errorf("chosen %v, the book chooses S3, S4, S5", c.chosen)
			}
		}
	}
	greedy := 0
	for k := 1; k <= 6 && greedy == 0; k++ {
		if greedyCover(sets, 12, k).count == 12 {
			greedy = k
		}
	}
	const source = "Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, 3rd ed. (2009), figure 35.3 (from memory)"
	published.Check(t, []published.Row{
		{Name: "smallest cover", Got: float64(least), Printed: "3", Source: source},
		{Name: "greedy cover", Got: float64(greedy), Printed: "4", Source: source},
	})
}

func TestCliquesPublished(t *testing.T) {
	// n castings in threes that do not go together within a three: 3^(n/3) largest sets
	for n, want := range map[int]string{6: "9", 9: "27", 12: "81"} {
		together := make([]set, n)
		for i := range together {
			together[i] = newSet(n)
			for j := range n {
				if i/3 != j/3 {
					together[i].add(j)
				}
			}
		}
		list, complete := cliques(together, 1000)
		if !complete {
			t.Fatal("gave up")
		}
		published.Check(t, []published.Row{{Name: "largest sets", Got: float64(len(list)), Printed: want,
			Source: "Moon and Moser, On cliques in graphs (1965): 3^(n/3)"}})
	}
	if _, complete := cliques([]set{setOf(3), setOf(3), setOf(3)}, 2); complete {
		t.Error("three lonely castings fit into two sets")
	}
}

// gauging draws a small one with readings on a grid of a tenth of a millimetre.
func drawGauging(t *rapid.T, castings, stations int) *Gauging {
	g := &Gauging{Variant: "V"}
	g.Kit.Gap.Value, g.Kit.Trim.Value = 0.001, 0.0015
	g.Kit.Gap.Origin, g.Kit.Trim.Origin = "trade", "trade"
	for s := range stations {
		x := Station{Number: s + 1, Name: "s", Edge: "e", More: rapid.SampledFrom([]Sense{MoreGap, MoreTrim}).Draw(t, "more")}
		x.DrawnFor.Value, x.DrawnGap.Value = 0.02, 0.0004
		x.DrawnFor.Origin, x.DrawnGap.Origin = "assumed", "assumed"
		g.Stations = append(g.Stations, x)
	}
	for i := range castings {
		m := Measured{Casting: string(rune('a' + i))}
		for s := range stations {
			m.Readings = append(m.Readings, StationReading{Station: s + 1, Value: 0.02 + 1e-4*float64(rapid.IntRange(-30, 30).Draw(t, "x"))})
		}
		g.History = append(g.History, m)
	}
	return g
}

func readingsOf(g *Gauging) [][]float64 {
	var rows [][]float64
	for _, m := range g.History {
		var row []float64
		for _, x := range m.Readings {
			row = append(row, x.Value)
		}
		rows = append(rows, row)
	}
	return rows
}

// bruteMost is the most castings that k patterns can serve, by trying every way
// to share castings out among patterns.
func bruteMost(g *Gauging, rows [][]float64, k int) int {
	n := len(rows)
	fits := make([]bool, 1<<n) // can one pattern serve all of these?
	for m := range fits {
		fits[m] = true
		for s := range g.Stations {
			low, high := math.Inf(-1), math.Inf(1)
			for i := range n {
				if m>>i&1 == 1 {
					l, h := g.span(&g.Stations[s], rows[i][s])
					low, high = math.Max(low, l), math.Min(high, h)
				}
			}
			fits[m] = fits[m] && low <= high+1e-9
		}
	}
	reach := map[int]bool{0: true}
	best := 0
	for range k {
		next := map[int]bool{}
		for have := range reach {
			for m, ok := range fits {
				if ok {
					next[have|m] = true
				}
			}
		}
		reach = next
	}
	for have := range reach {
		n := 0
		for x := have; x != 0; x &= x - 1 {
			n++
		}
		best = max(best, n)
	}
	return best
}

func TestFewestPatternsAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGauging(t, rapid.IntRange(1, 7).Draw(t, "castings"), rapid.IntRange(1, 3).Draw(t, "stations"))
		rows := readingsOf(g)
		sets, complete := g.candidates(rows)
		if !complete {
			t.Fatal("gave up")
		}
		before := 0
		for k := 1; k <= 4; k++ {
			c := g.bestPatterns(sets, complete, rows, k)
			want := bruteMost(g, rows, k)
			if c.count != want || !c.proved || c.most != want {
				t.Fatalf("%d patterns serve %d (proved %v, most %d), brute force %d", k, c.count, c.proved, c.most, want)
			}
			if c.count < before {
				t.Fatal("a further pattern served fewer")
			}
			before = c.count
			for s := range g.Stations {
				column := make([]float64, len(rows))
				for i := range rows {
					column[i] = rows[i][s]
				}
				along := mostAlong(column, g.reach(), k)
				if along < want || len(g.Stations) == 1 && along != want {
					t.Fatalf("one station alone allows %d, all of them %d", along, want)
				}
			}
			// what is drawn must serve what is claimed
			names := make([]string, len(rows))
			for i := range names {
				names[i] = g.History[i].Casting
			}
			served := 0
			for _, p := range g.draw(sets, c, names, rows) {
				served += len(p.Serves)
				for _, s := range p.Stations {
					if !(s.Low <= s.High+1e-8 && s.DrawnFor >= s.Low-1e-9 && s.DrawnFor <= s.High+1e-8) {
						t.Fatalf("drawn for %g outside %g to %g", s.DrawnFor, s.Low, s.High)
					}
				}
				for _, name := range p.Serves {
					i := slices.Index(names, name)
					if _, ok := g.serves(p.Stations, rows[i]); !ok {
						t.Fatalf("pattern %s does not serve %s", p.Name, name)
					}
				}
			}
			if served != c.count {
				t.Fatalf("drawn patterns serve %d of %d", served, c.count)
			}
		}
	})
}

// A search that is cut short must say so and hold a bound that is one.
func TestUnprovedCoverIsBounded(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 2))
	unproved := 0
	for range 60 {
		const n = 14
		var sets []set
		for range 20 {
			s := newSet(n)
			for i := range n {
				if r.Float64() < 0.25 {
					s.add(i)
				}
			}
			sets = append(sets, s)
		}
		exact := bestCover(sets, n, 3, 1e6)
		short := bestCover(sets, n, 3, 2)
		if !exact.proved || exact.count != exact.most {
			t.Fatal("a million steps were not enough")
		}
		if short.count > exact.count || short.most < exact.count || short.proved && short.count != exact.count {
			t.Errorf("short search: %d, at most %d, proved %v; exact %d", short.count, short.most, short.proved, exact.count)
		}
		if float64(short.count) < 0.63*float64(exact.count) {
			t.Errorf("greedy got %d of %d, below its guarantee", short.count, exact.count)
		}
		if !short.proved {
			unproved++
		}
	}
	if unproved == 0 {
		t.Error("no search was cut short: nothing was tested")
	}
}

func TestMostAlong(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 9).Draw(t, "n")
		values := make([]float64, n)
		for i := range values {
			values[i] = float64(rapid.IntRange(0, 30).Draw(t, "x"))
		}
		reach, k := float64(rapid.IntRange(0, 9).Draw(t, "reach")), rapid.IntRange(1, 3).Draw(t, "k")
		best := 0
		var try func(k int, have map[int]bool)
		try = func(k int, have map[int]bool) {
			best = max(best, len(have))
			if k == 0 {
				return
			}
			for _, from := range values {
				more := map[int]bool{}
				for i := range have {
					more[i] = true
				}
				for i, x := range values {
					if x >= from && x <= from+reach {
						more[i] = true
					}
				}
				try(k-1, more)
			}
		}
		try(k, map[int]bool{})
		if got := mostAlong(values, reach, k); got != best {
			t.Fatalf("%d of %v in %d stretches of %g, expected %d", got, values, k, reach, best)
		}
	})
}
