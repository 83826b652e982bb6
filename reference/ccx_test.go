//go:build reference

// Parts of an axle are solved twice here, by the formulas of calc and by solid
// finite elements in CalculiX (ccx), a general-purpose open-source solver, and
// compared. The decks are written by these tests. A machine without ccx fails
// them: a comparison that did not take place is not a success.

package reference_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// deck collects a model: nodes, elements by material, and what acts on them.
type deck struct {
	nodes     [][3]float64 // node n+1
	elements  map[string][][]int
	kind      string // element type of the solver
	materials map[string][2]float64
	extra     strings.Builder // cards before the step
	step      strings.Builder // cards in the step
	stops     int
}

func newDeck(kind string) *deck {
	return &deck{kind: kind, elements: map[string][][]int{}, materials: map[string][2]float64{}}
}

func (d *deck) node(x, y, z float64) int {
	d.nodes = append(d.nodes, [3]float64{x, y, z})
	return len(d.nodes)
}

func (d *deck) material(name string, modulus, poisson float64) {
	d.materials[name] = [2]float64{modulus, poisson}
}

// fix holds freedoms 1 to 3 of nodes, or only those named.
func (d *deck) fix(nodes []int, freedoms ...int) {
	if len(freedoms) == 0 {
		freedoms = []int{1, 2, 3}
	}
	d.extra.WriteString("*BOUNDARY\n")
	for _, n := range nodes {
		for _, f := range freedoms {
			fmt.Fprintf(&d.extra, "%d,%d,%d\n", n, f, f)
		}
	}
}

// force puts a force on a node.
func (d *deck) force(node, freedom int, value float64) {
	if value == 0 {
		return
	}
	fmt.Fprintf(&d.step, "*CLOAD\n%d,%d,%.12g\n", node, freedom, value)
}

// mean makes a node whose movement along a freedom is the weighted mean of
// others; a force on it is spread over them by the same weights.
func (d *deck) mean(weights map[int]float64, freedom int) int {
	var nodes []int
	total := 0.0
	for n, w := range weights {
		nodes = append(nodes, n)
		total += w
	}
	slices.Sort(nodes)
	m := d.node(0, 0, 0)
	fmt.Fprintf(&d.extra, "*EQUATION\n%d\n%d,%d,-1.\n", len(nodes)+1, m, freedom)
	for _, n := range nodes {
		fmt.Fprintf(&d.extra, "%d,%d,%.12g\n", n, freedom, weights[n]/total)
	}
	return m
}

// stop puts a spring to ground behind a gap along z: no force up to the gap,
// then stiffness times what is past it, and never a pull.
func (d *deck) stop(node int, gap, stiffness float64) {
	d.stops++
	const length, reach = 1, 0.1
	p := d.nodes[node-1]
	ground := d.node(p[0], p[1], p[2]+length)
	d.fix([]int{ground})
	d.fix([]int{node}, 1, 2)
	fmt.Fprintf(&d.extra, "*ELEMENT,TYPE=SPRINGA,ELSET=STOP%d\n%d,%d,%d\n*SPRING,ELSET=STOP%d,NONLINEAR\n\n", d.stops, 100000+d.stops, node, ground, d.stops)
	fmt.Fprintf(&d.extra, "%.12e,%.12e\n0.,%.12e\n0.,%.12e\n", -stiffness*reach, -gap-reach, -gap, reach)
}

func (d *deck) text() string {
	var b strings.Builder
	b.WriteString("*NODE,NSET=ALL\n")
	for i, p := range d.nodes {
		fmt.Fprintf(&b, "%d,%.12g,%.12g,%.12g\n", i+1, p[0], p[1], p[2])
	}
	count := 0
	var names []string
	for name := range d.elements {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		fmt.Fprintf(&b, "*ELEMENT,TYPE=%s,ELSET=%s\n", d.kind, name)
		for _, e := range d.elements[name] {
			count++
			fmt.Fprintf(&b, "%d", count)
			for i, n := range e {
				if i == 10 { // the solver reads sixteen entries a line
					b.WriteString(",\n")
				} else {
					b.WriteString(",")
				}
				fmt.Fprintf(&b, "%d", n)
			}
			b.WriteString("\n")
		}
		m := d.materials[name]
		fmt.Fprintf(&b, "*MATERIAL,NAME=%s\n*ELASTIC\n%.12g,%.12g\n*SOLID SECTION,ELSET=%s,MATERIAL=%s\n", name, m[0], m[1], name, name)
	}
	b.WriteString(d.extra.String())
	if d.stops > 0 { // a stop opens and closes: the solver must iterate
		b.WriteString("*STEP,NLGEOM\n*STATIC\n")
	} else {
		b.WriteString("*STEP\n*STATIC\n")
	}
	b.WriteString(d.step.String())
	b.WriteString("*NODE PRINT,NSET=ALL\nU\n*END STEP\n")
	return b.String()
}

// solve runs the solver and returns the movement of every node.
func (d *deck) solve(t *testing.T) map[int][3]float64 {
	t.Helper()
	ccx, err := exec.LookPath("ccx")
	if err != nil {
		t.Fatalf("the reference solver ccx is not on this machine (Debian: calculix-ccx): %v", err)
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "model.inp"), []byte(d.text()), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
	defer cancel()
	run := exec.CommandContext(ctx, ccx, "model")
	run.Dir = dir
	run.Env = append(os.Environ(), "OMP_NUM_THREADS=1")
	var said bytes.Buffer
	run.Stdout, run.Stderr = &said, &said
	start := time.Now()
	if err := run.Run(); err != nil {
		t.Fatalf("ccx: %v, %s\n%s", err, run.ProcessState, tail(said.String()))
	}
	t.Logf("%d nodes, %.1f s", len(d.nodes), time.Since(start).Seconds())
	data, err := os.ReadFile(filepath.Join(dir, "model.dat"))
	if err != nil {
		t.Fatalf("ccx wrote no results: %v\n%s", err, tail(said.String()))
	}
	moved := displacements(string(data))
	if len(moved) == 0 {
		t.Fatalf("ccx wrote no movements\n%s", tail(said.String()))
	}
	return moved
}

// displacements reads the last table of movements.
func displacements(text string) map[int][3]float64 {
	moved := map[int][3]float64{}
	inside := false
	for line := range strings.Lines(text) {
		if strings.Contains(line, "displacements (vx,vy,vz)") {
			inside = true
			continue
		}
		fields := strings.Fields(line)
		if !inside || len(fields) != 4 {
			inside = inside && len(fields) == 0
			continue
		}
		n, err := strconv.Atoi(fields[0])
		if err != nil {
			inside = false
			continue
		}
		var u [3]float64
		for i := range u {
			u[i], _ = strconv.ParseFloat(fields[i+1], 64)
		}
		moved[n] = u
	}
	return moved
}

func tail(s string) string { return s[max(0, len(s)-2000):] }

// compare prints one line of a case and fails it where the two are too far apart.
func compare(t *testing.T, what, unit string, ours, theirs, within float64) {
	t.Helper()
	fmt.Printf("%-64s ours %11.5g  ccx %11.5g %-5s ratio %.3f\n", what, ours, theirs, unit, ours/theirs)
	if !(math.Abs(ours/theirs-1) <= within) {
		t.Errorf("%s: ours %.5g, ccx %.5g %s: ratio %.3f is not within %g of one", what, ours, theirs, unit, ours/theirs, within)
	}
}
