package handbook

import (
	"errors"
	"regexp"
	"strings"
	"testing"

	"axlewright/calc/check"
)

func TestRangeErrorsSpeakAsTyped(t *testing.T) {
	for _, c := range []struct{ formula, inputs, want string }{
		{"bolt.stress-area", "d=12mm pitch=8mm", "bolt.stress-area: pitch is 8mm, expected 0 < pitch < d/2"},
		{"bolt.stress-area", "d=-12mm pitch=1.75mm", "bolt.stress-area: d is -12mm, expected > 0"},
		{"survival.clopper-pearson", "cases=3 trials=5 confidence=1.2", "survival.clopper-pearson: confidence is 1.2, expected 0 < confidence < 1"},
		{"survival.bayes-update", "hypotheses=prior=0.5,likelihood=0.2;prior=-0.5,likelihood=0.1", "survival.bayes-update: hypotheses[2].prior is -0.5, expected 0 to 1"},
		{"gear.case-hardened-limits", "grade=MX", `gear.case-hardened-limits: grade is "MX", expected ML, MQ, ME`},
		{"gear.bevel-size-factor", "module=80mm", "gear.bevel-size-factor: module is 80mm, expected 0.508 mm to 50.8 mm"},
	} {
		f, err := Find(c.formula)
		if err != nil {
			t.Fatal(err)
		}
		inputs := map[string]string{}
		for _, pair := range strings.Fields(c.inputs) {
			key, value, _ := strings.Cut(pair, "=")
			inputs[key] = value
		}
		_, err = f.Compute(inputs)
		var r *check.RangeError
		if err == nil || err.Error() != c.want || !errors.As(err, &r) {
			t.Errorf("%s %s:\n got %v\nwant %s", c.formula, c.inputs, err, c.want)
		}
	}
}

// TestNoFormulaSpeaksCode puts the same senseless figure into every input of
// every formula and reads what it says.
func TestNoFormulaSpeaksCode(t *testing.T) {
	code := regexp.MustCompile(`\b[a-z]+\.[A-Z]\w|\b[A-Z][a-z]+[A-Z]\w*|len\(|e-\d\d\b`)
	refused := 0
	for _, f := range All() {
		for _, figure := range []string{"-1", "1000000"} {
			inputs := map[string]string{}
			for _, l := range f.inputs {
				inputs[l.Key] = l.senseless(figure)
			}
			_, err := f.Compute(inputs)
			if err == nil {
				continue
			}
			refused++
			t.Log(err)
			if found := code.FindString(err.Error()); found != "" || !strings.HasPrefix(err.Error(), f.Name) {
				t.Errorf("%s: %q in %q", f.Name, found, err)
			}
		}
	}
	if refused < len(All()) {
		t.Errorf("only %d refusals", refused)
	}
}

// senseless writes a figure as the input wants it.
func (l leaf) senseless(figure string) string {
	if l.item != nil {
		var parts []string
		for _, inner := range l.item {
			parts = append(parts, inner.Key+"="+inner.senseless(figure))
		}
		return strings.Join(parts, ",")
	}
	switch l.Unit {
	case "name":
		return "nonsense"
	case "-":
		if l.typ.Kind().String() == "bool" {
			return "yes"
		}
		return figure
	}
	return figure + " " + l.dimension.Unit()
}
