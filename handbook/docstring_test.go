package handbook

import (
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
)

const sample = `package bolt

// Clamp returns the force that is left in a joint.
//
//	F_K = F_V − (1 − Φ)·F_A
//	Φ as given
//
//	preload  assembly preload F_V, N
//	F_K      residual clamp force
//	         in the joint, N
//
// Valid for 0 ≤ Φ ≤ 1
// and tension only.
// Errors: *check.RangeError outside that range.
// Source: VDI 2230-1:2015, 5.3
// (from memory).
func Clamp(preload float64, p JointParams) (float64, error) { return 0, nil }

// JointParams is a joint.
type JointParams struct {
	Factor float64 // -, Φ: load factor
	Force  float64 // N, working load; optional
}
`

func TestDocstringGivesFormulaSymbolsRangeAndSource(t *testing.T) {
	lib, err := readLibrary(fstest.MapFS{"bolt/clamp.go": {Data: []byte(sample)}})
	if err != nil {
		t.Fatal(err)
	}
	want := docstring{
		summary: "Clamp returns the force that is left in a joint.",
		lines:   []string{"F_K = F_V − (1 − Φ)·F_A", "Φ as given"},
		symbols: map[string]symbol{
			"preload": {meaning: "assembly preload F_V", unit: "N"},
			"F_K":     {meaning: "residual clamp force in the joint", unit: "N"},
		},
		valid:  "Valid for 0 ≤ Φ ≤ 1 and tension only.",
		source: "VDI 2230-1:2015, 5.3 (from memory).",
		params: []string{"preload", "p"},
	}
	if diff := cmp.Diff(want, lib.formulas["bolt.Clamp"], cmp.AllowUnexported(docstring{}, symbol{})); diff != "" {
		t.Errorf("docstring (-want +got):\n%s", diff)
	}
	wantFields := map[string]symbol{
		"bolt.JointParams.Factor": {sign: "Φ", meaning: "load factor", unit: "-"},
		"bolt.JointParams.Force":  {meaning: "working load", unit: "N", optional: true},
	}
	if diff := cmp.Diff(wantFields, lib.fields, cmp.AllowUnexported(symbol{})); diff != "" {
		t.Errorf("fields (-want +got):\n%s", diff)
	}
}
