// Package published checks computed values against values as printed in a
// source: a standard, a handbook table, a worked example.
package published

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// Row is one published value and what our code makes of the same inputs.
type Row struct {
	Name    string  // what is computed, with its inputs
	Got     float64 // our value in the unit of the print
	Printed string  // the value as printed, "84.3"
	Source  string  // standard, book with edition and example; "from memory" where it is
	Within  float64 // relative tolerance; zero means half a unit of the last printed digit
	Why     string  // why Within is wider than the print, needed with Within
}

// Check fails the test for every row whose value disagrees with its print or
// that does not say where the print is from.
func Check(t *testing.T, rows []Row) {
	t.Helper()
	if len(rows) == 0 {
		t.Fatal("no rows to check")
	}
	for _, r := range rows {
		if r.Source == "" {
			t.Errorf("%s: no source named", r.Name)
		}
		if r.Within != 0 && r.Why == "" {
			t.Errorf("%s: tolerance %g without a reason", r.Name, r.Within)
		}
		want, half, err := parse(r.Printed)
		if err != nil {
			t.Errorf("%s: printed value %q: %v", r.Name, r.Printed, err)
			continue
		}
		tolerance := half
		if r.Within != 0 {
			tolerance = r.Within * math.Abs(want)
		}
		if !(math.Abs(r.Got-want) <= tolerance*(1+1e-9)) { // negated so that NaN fails
			t.Errorf("%s: got %.8g, printed %s ± %.3g (%s)", r.Name, r.Got, r.Printed, tolerance, r.Source)
		}
	}
}

// parse reads a printed number and half a unit of its last digit.
func parse(printed string) (value, half float64, err error) {
	value, err = strconv.ParseFloat(printed, 64)
	if err != nil {
		return 0, 0, err
	}
	mantissa, exponent := strings.ToLower(printed), 0
	if i := strings.IndexByte(mantissa, 'e'); i >= 0 {
		if exponent, err = strconv.Atoi(mantissa[i+1:]); err != nil {
			return 0, 0, err
		}
		mantissa = mantissa[:i]
	}
	decimals := 0
	if i := strings.IndexByte(mantissa, '.'); i >= 0 {
		decimals = len(mantissa) - i - 1
	}
	return value, 0.5 * math.Pow10(exponent-decimals), nil
}
