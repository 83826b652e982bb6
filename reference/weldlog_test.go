//go:build reference

package reference

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"axlewright/weldplan"
)

// rWeldLog works out the prediction of the next current from past ones the other
// way round than the program: with the whole covariance V of the readings, its
// inverse and its determinant, λ by R's own optimizer, instead of sums by group and
// Henderson's equations. y and x are logarithms, g the group of each reading; the
// last line asks at x0 for group g0, or for a new one where g0 is 0.
//
// It prints the ends and the middle of the range that holds 80 % of the next ones.
const rWeldLog = `
n <- length(y)
X <- if (length(unique(x)) > 1) cbind(1, x) else matrix(1, n, 1)
Z <- outer(g, sort(unique(g)), "==") * 1
p <- ncol(X)
restricted <- function(lambda) {
  V <- diag(n) + lambda * Z %*% t(Z)
  Vi <- solve(V)
  A <- t(X) %*% Vi %*% X
  b <- solve(A, t(X) %*% Vi %*% y)
  r <- y - X %*% b
  s2 <- as.numeric(t(r) %*% Vi %*% r) / (n - p)
  -0.5 * ((n - p) * log(s2) + as.numeric(determinant(V)$modulus) + as.numeric(determinant(A)$modulus))
}
lambda <- 0
if (length(unique(g)) > 1 && max(table(g)) > 1) {
  grid <- seq(-12, 12, length.out = 49)
  start <- grid[which.max(sapply(grid, function(l) restricted(exp(l))))]
  best <- optimize(function(l) restricted(exp(l)), start + c(-0.5, 0.5), maximum = TRUE, tol = 1e-12)
  if (best$objective > restricted(0)) lambda <- exp(best$maximum)
}
V <- diag(n) + lambda * Z %*% t(Z)
Vi <- solve(V)
A <- t(X) %*% Vi %*% X
b <- solve(A, t(X) %*% Vi %*% y)
r <- y - X %*% b
s2 <- as.numeric(t(r) %*% Vi %*% r) / (n - p)
x1 <- if (p == 2) c(1, x0) else 1
cov0 <- if (g0 > 0) lambda * (g == g0) else rep(0, n)
mean <- sum(x1 * b) + as.numeric(t(cov0) %*% Vi %*% r)
w <- x1 - t(X) %*% Vi %*% cov0
own <- lambda * 1
variance <- s2 * (1 + own - as.numeric(t(cov0) %*% Vi %*% cov0) + as.numeric(t(w) %*% solve(A) %*% w))
freedom <- n - p - (if (lambda > 0) length(unique(g)) - 1 else 0)
half <- qt(0.9, freedom) * sqrt(variance)
cat(formatC(exp(c(mean - half, mean, mean + half)), digits = 15, format = "g"), sep = "\n")
`

// askWeldLog has R predict what the program predicts.
func askWeldLog(t *testing.T, entries []weldplan.Entry, q weldplan.Question, value func(*weldplan.Entry) float64) []float64 {
	t.Helper()
	groups := map[string]int{}
	var x, y, g []string
	for i := range entries {
		e := &entries[i]
		if e.Process != q.Process {
			continue
		}
		name := e.Variant + "/" + string(e.Position)
		if groups[name] == 0 {
			groups[name] = len(groups) + 1
		}
		x = append(x, fmt.Sprintf("%.17g", math.Log(e.Thickness.Value/3e-3)))
		y = append(y, fmt.Sprintf("%.17g", math.Log(value(e))))
		g = append(g, fmt.Sprint(groups[name]))
	}
	script := fmt.Sprintf("x <- c(%s)\ny <- c(%s)\ng <- c(%s)\nx0 <- %.17g\ng0 <- %d\n", strings.Join(x, ","), strings.Join(y, ","), strings.Join(g, ","),
		math.Log(q.Thickness/3e-3), groups[q.Variant+"/"+string(q.Position)])
	return askR(t, script+rWeldLog)
}

func TestLearnedBandsAgainstR(t *testing.T) {
	entries, err := weldplan.LoadLog("../examples/weld/fellgate-log.yaml")
	if err != nil {
		t.Fatal(err)
	}
	amps := func(e *weldplan.Entry) float64 { return e.Amps.Value }
	pace := func(e *weldplan.Entry) float64 { return e.Time.Value / e.Length.Value }
	for _, q := range []weldplan.Question{
		{Variant: "T24", Position: weldplan.Flat, Process: weldplan.TIG, Thickness: 3e-3},
		{Variant: "T20", Position: weldplan.Vertical, Process: weldplan.TIG, Thickness: 5e-3},
		{Variant: "T99", Position: weldplan.Horizontal, Process: weldplan.TIG, Thickness: 4e-3}, // none yet
		{Variant: "T31", Position: weldplan.Horizontal, Process: weldplan.MAG, Thickness: 8e-3},
		{Variant: "T31", Position: weldplan.Overhead, Process: weldplan.MAG, Thickness: 6e-3}, // none yet
	} {
		for name, c := range map[string]struct {
			ours  weldplan.Learned
			value func(*weldplan.Entry) float64
		}{
			"amps": {weldplan.LearnAmps(entries, q), amps},
			"pace": {weldplan.LearnPace(entries, q), pace},
		} {
			if !c.ours.Enough {
				t.Fatalf("%s of %+v: %s", name, q, c.ours.Text)
			}
			answer := askWeldLog(t, entries, q, c.value)
			if len(answer) != 3 {
				t.Fatalf("R printed %v", answer)
			}
			for i, ours := range []float64{c.ours.Low, c.ours.Middle, c.ours.High} {
				if math.Abs(ours-answer[i]) > 1e-5*answer[i] {
					t.Errorf("%s of %s, %s, %g m, number %d: here %.8g, R %.8g", name, q.Variant, q.Position, q.Thickness, i, ours, answer[i])
				}
			}
		}
	}
}

// Of a single group the band is what R's own lm predicts.
func TestBandOfOneGroupIsWhatLmPredicts(t *testing.T) {
	all, err := weldplan.LoadLog("../examples/weld/fellgate-log.yaml")
	if err != nil {
		t.Fatal(err)
	}
	q := weldplan.Question{Variant: "T24", Position: weldplan.Horizontal, Process: weldplan.TIG, Thickness: 4e-3}
	var own []weldplan.Entry
	var x, y []string
	for _, e := range all {
		if e.Variant == q.Variant && e.Position == q.Position {
			own = append(own, e)
			x = append(x, fmt.Sprintf("%.17g", e.Thickness.Value))
			y = append(y, fmt.Sprintf("%.17g", e.Amps.Value))
		}
	}
	ours := weldplan.LearnAmps(own, q)
	if !ours.Enough {
		t.Fatal(ours.Text)
	}
	answer := askR(t, fmt.Sprintf(`
d <- data.frame(t = c(%s), a = c(%s))
p <- exp(predict(lm(log(a) ~ log(t), d), data.frame(t = 4e-3), interval = "prediction", level = 0.8))
cat(formatC(c(p[2], p[1], p[3]), digits = 15, format = "g"), sep = "\n")
`, strings.Join(x, ","), strings.Join(y, ",")))
	if len(answer) != 3 {
		t.Fatalf("R printed %v", answer)
	}
	for i, v := range []float64{ours.Low, ours.Middle, ours.High} {
		if math.Abs(v-answer[i]) > 1e-9*answer[i] {
			t.Errorf("number %d: here %.10g, R %.10g", i, v, answer[i])
		}
	}
}
