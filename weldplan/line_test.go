package weldplan

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func arcThrough(from, through, to Place) (line, bool) {
	return lineOf(&Run{From: from, Through: through, To: to})
}

func TestArcThroughThreePoints(t *testing.T) {
	// A half circle of 20 mm in the plane x = 33, the long way and the short way.
	half, ok := arcThrough(at(33, -20, 0), at(33, 0, 20), at(33, 20, 0))
	if !ok {
		t.Fatal("no arc")
	}
	near(t, "half circle", half.length, math.Pi*20e-3, 1e-12)
	near(t, "radius", half.radius, 20e-3, 1e-12)
	long, _ := arcThrough(at(33, 20, 0), at(33, -20, 0), at(33, 0, 20))
	near(t, "three quarters", long.length, 1.5*math.Pi*20e-3, 1e-12)
	short, _ := arcThrough(at(33, 20, 0), at(33, 20/math.Sqrt2, 20/math.Sqrt2), at(33, 0, 20))
	near(t, "a quarter", short.length, 0.5*math.Pi*20e-3, 1e-9)
	if _, ok := arcThrough(at(0, 0, 0), at(10, 0, 0), at(20, 0, 0)); ok {
		t.Error("three points on one line are no arc")
	}
	if _, ok := lineOf(&Run{From: at(1, 2, 3), To: at(1, 2, 3)}); ok {
		t.Error("a point is no run")
	}
}

func TestLinesGoWhereTheyAreDrawn(t *testing.T) {
	coordinate := rapid.Float64Range(-200, 200)
	point := func(t *rapid.T, name string) Place {
		return at(coordinate.Draw(t, name+"x"), coordinate.Draw(t, name+"y"), coordinate.Draw(t, name+"z"))
	}
	rapid.Check(t, func(t *rapid.T) {
		r := Run{From: point(t, "a"), To: point(t, "b"), Through: point(t, "c")}
		r.Through.Given = rapid.Bool().Draw(t, "arc")
		l, ok := lineOf(&r)
		if !ok {
			t.Skip("no line")
		}
		if l.arc && l.radius > 50 { // as good as straight: the centre is lost in rounding
			t.Skip("almost straight")
		}
		close := func(p, q r3.Vec) bool { return r3.Norm(r3.Sub(p, q)) < 1e-7 }
		if !close(l.at(0), r.From.At) || !close(l.at(1), r.To.At) {
			t.Fatalf("from %v to %v, not %v to %v", l.at(0), l.at(1), r.From.At, r.To.At)
		}
		sum := 0.0
		through := math.Inf(1)
		const n = 2000
		for i := range n {
			p, q := l.at(float64(i)/n), l.at(float64(i+1)/n)
			sum += r3.Norm(r3.Sub(q, p))
			through = math.Min(through, r3.Norm(r3.Sub(p, r.Through.At)))
			if d := r3.Dot(r3.Unit(r3.Sub(q, p)), l.along((float64(i)+0.5)/n)); d < 1-1e-6 {
				t.Fatalf("along is off by %g at %d", 1-d, i)
			}
		}
		if math.Abs(sum-l.length) > 1e-5*l.length {
			t.Fatalf("length %g, chords %g", l.length, sum)
		}
		if l.arc && through > l.length/n {
			t.Fatalf("the arc misses its middle point by %g", through)
		}
	})
}
