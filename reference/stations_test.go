//go:build reference

package reference

import (
	"fmt"
	"math"
	"testing"

	"axlewright/axle"
	"axlewright/casting"
	"axlewright/internal/published"
)

// chartScript charts Michelson's readings of the speed of light (R's morley) with
// factors that R works out from its own distribution of the studentised range.
const chartScript = `
number <- function(x) cat(formatC(x, digits = 15, format = "g"), sep = "\n")
mean_range <- function(n) integrate(function(q) 1 - ptukey(q, n, Inf), 0, 20, rel.tol = 1e-9)$value
square_range <- function(n) integrate(function(q) 2 * q * (1 - ptukey(q, n, Inf)), 0, 20, rel.tol = 1e-9)$value
x <- morley$Speed
number(x)
moving <- mean(abs(diff(x)))
sigma <- moving / mean_range(2)
d3 <- sqrt(square_range(2) - mean_range(2)^2)
number(c(mean(x) - 3 * sigma, mean(x) + 3 * sigma, moving * (1 + 3 * d3 / mean_range(2))))
groups <- split(x, morley$Expt)
range <- mean(sapply(groups, function(g) diff(range(g))))
d2 <- mean_range(20)
d3 <- sqrt(square_range(20) - d2^2)
reach <- 3 * range / (d2 * sqrt(20))
number(c(mean(x) - reach, mean(x) + reach, range * (1 - 3 * d3 / d2), range * (1 + 3 * d3 / d2)))`

func TestControlLimitsAgainstR(t *testing.T) {
	answer := askR(t, chartScript)
	if len(answer) != 107 {
		t.Fatalf("R printed %d numbers", len(answer))
	}
	speed, single, batch := answer[:100], answer[100:103], answer[103:]
	c, err := casting.Individuals(speed)
	if err != nil {
		t.Fatal(err)
	}
	agree(t, "lower limit", c.Points[0].Low, single[0], 1e-6)
	agree(t, "upper limit", c.Points[0].High, single[1], 1e-6)
	agree(t, "upper limit of the moving range", c.Points[1].RangeHigh, single[2], 1e-6)
	var batches [][]float64
	for i := range 5 {
		batches = append(batches, speed[20*i:20*i+20])
	}
	if c, err = casting.Batches(batches); err != nil {
		t.Fatal(err)
	}
	agree(t, "lower limit of the mean", c.Points[0].Low, batch[0], 1e-6)
	agree(t, "upper limit of the mean", c.Points[0].High, batch[1], 1e-6)
	agree(t, "lower limit of the range", c.Points[0].RangeLow, batch[2], 1e-5)
	agree(t, "upper limit of the range", c.Points[0].RangeHigh, batch[3], 1e-5)
}

// driftScript takes the stopping distances of Ezekiel's cars of the 1920s in the
// order of their speed (R's cars), a foot standing for a millimetre: they grow,
// and some are alike. One car that stops badly is left out.
const driftScript = `
number <- function(x) cat(formatC(x, digits = 15, format = "g"), sep = "\n")
y <- cars$dist[c(1:22, 24:48)] / 1000
i <- seq_along(y) - 1
number(y)
k <- suppressWarnings(cor.test(i, y, method = "kendall", exact = FALSE, continuity = TRUE))
s <- outer(y, y, "-") / outer(i, i, "-")
number(c(k$p.value, median(s[lower.tri(s)])))
n <- length(y)
next_one <- predict(lm(y ~ i), data.frame(i = n), se.fit = TRUE)
scale <- sqrt(next_one$se.fit^2 + next_one$residual.scale^2)
number(c(next_one$fit, scale, next_one$df))
d <- function(clearance, fit = next_one$fit) pt((0.085 + clearance - 0.0004 - fit) / scale, next_one$df)
number(c(d(0.001) - d(0), d(0) - d(-0.0015), 1 - d(0.001) + d(-0.0015)))
trim <- integrate(function(x) pmax(0.085 - 0.0004 - x, 0) * dt((x - next_one$fit) / scale, next_one$df) / scale,
  -1, 0.0846, rel.tol = 1e-10, subdivisions = 1000)$value
number(c(trim, max(0.085 - 0.0004 - (next_one$fit + scale * qt(0.1, next_one$df)), 0)))`

func TestTrendAndForecastAgainstR(t *testing.T) {
	answer := askR(t, driftScript)
	if len(answer) != 47+2+3+3+2 {
		t.Fatalf("R printed %d numbers", len(answer))
	}
	distance, answer := answer[:47], answer[47:]
	trend := casting.TrendOf(distance)
	agree(t, "P of the trend", trend.P, answer[0], 1e-9)
	agree(t, "slope", trend.Slope, answer[1], 1e-9)

	g := casting.Gauging{Variant: "cars"}
	g.Kit.Revision = "1"
	g.Kit.Gap.Number = axle.Number{Value: 0.001, Origin: axle.Assumed}
	g.Kit.Trim.Number = axle.Number{Value: 0.0015, Origin: axle.Assumed}
	s := casting.Station{Number: 1, Name: "distance", Edge: "brake", More: casting.MoreGap}
	s.DrawnFor.Number = axle.Number{Value: 0.085, Origin: axle.Assumed}
	s.DrawnGap.Number = axle.Number{Value: 0.0004, Origin: axle.Assumed}
	g.Stations = []casting.Station{s}
	for i, y := range distance {
		g.History = append(g.History, casting.Measured{Casting: fmt.Sprint(i + 1), Readings: casting.Readings{{Station: 1, Value: y, Times: 1}}})
	}
	report, err := g.Report()
	if err != nil {
		t.Fatal(err)
	}
	h := report.History[0]
	if !h.Drifts {
		t.Fatalf("distances grow and no drift was seen: %+v", h.Trend)
	}
	if len(h.Outliers) > 0 { // R takes every car
		t.Fatalf("cars out of line: %+v", h.Outliers)
	}
	agree(t, "next distance", h.Next.Mean, answer[2], 1e-12)
	agree(t, "scale of its forecast", h.Next.Scale, answer[3], 1e-9)
	agree(t, "degrees of freedom", h.Next.DoF, answer[4], 1e-12)
	fit := report.Fit.Stations[0]
	for i, got := range []float64{fit.Chances.AsCut, fit.Chances.Trimmed, fit.Chances.Not} {
		agree(t, "chance of a fit", got, answer[5+i], 1e-7)
	}
	agree(t, "expected trim", fit.ExpectedTrim, answer[8], 1e-5)
	agree(t, "trim of one in ten", fit.OneInTen, answer[9], 1e-7)
}

// irisScript identifies Anderson's irises (R's iris, Fisher 1936): each odd flower
// was learnt from, each even one is to be told. The whole model, written again:
// t densities, misread readings, sisters, a stranger. A length in cm stands for
// a hundredth of a metre.
const irisScript = `
number <- function(x) cat(formatC(x, digits = 15, format = "g"), sep = "\n")
odd <- seq(1, 150, 2)
x <- as.matrix(iris[, 1:4]) / 100
kind <- as.integer(iris$Species)
m <- sapply(1:3, function(v) colMeans(x[odd, ][kind[odd] == v, ]))
s <- sapply(1:3, function(v) apply(x[odd, ][kind[odd] == v, ], 2, sd))
number(t(x))
number(kind)
number(m)
number(s)
instrument <- 0.0005
width <- 0.1
trust <- 0.9
prior <- (25 + 0.5) / (3 * 25.5)
new <- 1 / (75 + 20)
for (i in seq(2, 150, 2)) {
  known <- prior * (1 - new)
  like <- sapply(1:3, function(v) {
    scale <- sqrt((s[, v]^2 + instrument^2) * (1 + 1 / 25))
    trust * dt((x[i, ] - m[, v]) / scale, 25) / scale + (1 - trust) / width
  })
  known <- prior * (1 - new) * apply(like, 2, prod)
  sister <- prior * new * 0.8 * apply(0.85 * like + 0.15 / width, 2, prod)
  stranger <- new * 0.2 / width^4
  all <- c(known, sum(sister) + stranger)
  number(all / sum(all))
}`

func TestIdentificationAgainstR(t *testing.T) {
	answer := askR(t, irisScript)
	if len(answer) != 600+150+12+12+75*4 {
		t.Fatalf("R printed %d numbers", len(answer))
	}
	x, kind, mean, sd, want := answer[:600], answer[600:750], answer[750:762], answer[762:774], answer[774:]
	c := casting.Catalogue{}
	for _, name := range []string{"sepal length", "sepal width", "petal length", "petal width"} {
		f := casting.Feature{Name: name, Sort: casting.Width, Ask: "?"}
		f.Span = axle.Length{Number: axle.Number{Value: 0.05, Low: 0, High: 0.1, Shape: axle.Uniform, Origin: axle.Trade, Text: "0..100 mm"}}
		f.Instrument = axle.Length{Number: axle.Number{Value: 0.001, Low: 0.001, High: 0.001, Origin: axle.Trade, Text: "1 mm"}}
		c.Features = append(c.Features, f)
	}
	for v := range 3 {
		variant := casting.Variant{Name: []string{"setosa", "versicolor", "virginica"}[v], Seen: 25}
		for k, f := range c.Features {
			variant.Shows = append(variant.Shows, casting.Trait{Feature: f.Name, Size: casting.Size{
				Mean: mean[4*v+k], SD: math.Hypot(sd[4*v+k], 0.0005), Instrument: 0.0005, Castings: 25, SpreadFrom: 25, Origin: axle.Measured,
			}})
		}
		c.Variants = append(c.Variants, variant)
	}
	if found := c.Check(); len(found) > 0 {
		t.Fatal(found)
	}
	m := casting.NewMatcher(&c)
	right := 0.0
	for n := range 75 {
		i := 2*n + 1
		var e casting.Evidence
		for k, f := range c.Features {
			e = append(e, casting.Item{Feature: f.Name, Value: x[4*i+k]})
		}
		id, err := m.Identify(casting.Bench{Evidence: e})
		if err != nil {
			t.Fatal(err)
		}
		for _, candidate := range id.Ranked {
			at := 3
			for v := range c.Variants {
				if c.Variants[v].Name == candidate.Variant {
					at = v
				}
			}
			agree(t, fmt.Sprintf("flower %d, %s", i+1, candidate.Variant), candidate.Chance, want[4*n+at], 1e-8)
		}
		if id.Ranked[0].Variant == c.Variants[int(kind[i])-1].Name {
			right++
		}
	}
	published.Check(t, []published.Row{{
		Name: "share of irises told rightly", Got: right / 75, Printed: "0.96",
		Source: "naive Bayes on Fisher's irises, about 0.96 wherever it is printed (from memory)", Within: 0.04,
		Why: "half of the flowers were learnt from, the other half told",
	}})
}
