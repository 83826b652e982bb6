//go:build reference

package reference_test

import "math"

// grid is a block of twenty-node bricks between planes along three directions.
// The places of the planes are given; a node's own place follows from at.
type grid struct {
	d       *deck
	a, b, c []float64 // planes between elements: radius, angle, height, or x, y, z
	closed  bool      // the last plane of b is the first
	at      func(a, b, c float64) [3]float64
	nodes   map[[3]int]int
	used    func(i, j, k int) string // material of an element, "" for none
}

// ringPlace turns radius, angle and height into a place.
func ringPlace(r, theta, z float64) [3]float64 {
	return [3]float64{r * math.Cos(theta), r * math.Sin(theta), z}
}

func blockPlace(x, y, z float64) [3]float64 { return [3]float64{x, y, z} }

// between returns the place of half-plane i: planes at even, middles at odd numbers.
func between(planes []float64, i int) float64 {
	if i%2 == 0 {
		return planes[i/2]
	}
	return (planes[i/2] + planes[i/2+1]) / 2
}

func (g *grid) node(i, j, k int) int {
	if g.closed {
		j %= 2 * (len(g.b) - 1)
	}
	key := [3]int{i, j, k}
	if n, ok := g.nodes[key]; ok {
		return n
	}
	p := g.at(between(g.a, i), between(g.b, j), between(g.c, k))
	n := g.d.node(p[0], p[1], p[2])
	g.nodes[key] = n
	return n
}

// brick lists the corners and edge middles in the solver's order, in half
// planes from the element's first corner.
var brick = [20][3]int{
	{0, 0, 0}, {2, 0, 0}, {2, 2, 0}, {0, 2, 0}, {0, 0, 2}, {2, 0, 2}, {2, 2, 2}, {0, 2, 2},
	{1, 0, 0}, {2, 1, 0}, {1, 2, 0}, {0, 1, 0}, {1, 0, 2}, {2, 1, 2}, {1, 2, 2}, {0, 1, 2},
	{0, 0, 1}, {2, 0, 1}, {2, 2, 1}, {0, 2, 1},
}

func (g *grid) build() *grid {
	g.nodes = map[[3]int]int{}
	for i := range len(g.a) - 1 {
		for j := range len(g.b) - 1 {
			for k := range len(g.c) - 1 {
				name := g.used(i, j, k)
				if name == "" {
					continue
				}
				var e []int
				for _, o := range brick {
					e = append(e, g.node(2*i+o[0], 2*j+o[1], 2*k+o[2]))
				}
				g.d.elements[name] = append(g.d.elements[name], e)
			}
		}
	}
	return g
}

// where returns the nodes of which the places along the three directions pass.
func (g *grid) where(pass func(a, b, c float64) bool) []int {
	var found []int
	for i := range 2*len(g.a) - 1 {
		for j := range 2*len(g.b) - 1 {
			for k := range 2*len(g.c) - 1 {
				if n, ok := g.nodes[[3]int{i, j, k}]; ok && pass(between(g.a, i), between(g.b, j), between(g.c, k)) {
					found = append(found, n)
				}
			}
		}
	}
	return found
}

func same(x, y float64) bool { return math.Abs(x-y) < 1e-9 }

// spread joins planes that pass through all of the places given, no two
// further apart than step.
func spread(step float64, places ...float64) []float64 {
	planes := []float64{places[0]}
	for i, p := range places[1:] {
		last := places[i]
		n := math.Ceil((p-last)/step - 1e-9)
		for k := 1.0; k <= n; k++ {
			planes = append(planes, last+(p-last)*k/n)
		}
	}
	return planes
}

// simpson returns the weights of an even load along planes from low to high on
// quadratic edges, by half-plane number.
func simpson(planes []float64, low, high float64) map[int]float64 {
	w := map[int]float64{}
	for i := range len(planes) - 1 {
		if planes[i] >= low-1e-9 && planes[i+1] <= high+1e-9 {
			l := planes[i+1] - planes[i]
			w[2*i] += l / 6
			w[2*i+1] += 4 * l / 6
			w[2*i+2] += l / 6
		}
	}
	return w
}

// even returns the weights of an even load on the outer faces of bricks: their
// eight nodes take −1/12 of the face at a corner and 1/3 at the middle of an
// edge. Keys are half-plane numbers; the weights add up to one.
func even(first []float64, low, high float64, second []float64) map[[2]int]float64 {
	w := map[[2]int]float64{}
	total := (high - low) * (second[len(second)-1] - second[0])
	for i := range len(first) - 1 {
		if first[i] < low-1e-9 || first[i+1] > high+1e-9 {
			continue
		}
		for k := range len(second) - 1 {
			face := (first[i+1] - first[i]) * (second[k+1] - second[k]) / total
			for _, corner := range [4][2]int{{0, 0}, {2, 0}, {0, 2}, {2, 2}} {
				w[[2]int{2*i + corner[0], 2*k + corner[1]}] -= face / 12
			}
			for _, middle := range [4][2]int{{1, 0}, {0, 1}, {2, 1}, {1, 2}} {
				w[[2]int{2*i + middle[0], 2*k + middle[1]}] += face / 3
			}
		}
	}
	return w
}
