package gear

import (
	"errors"
	"fmt"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func TestToothFormPublished(t *testing.T) {
	const source = "Pu, Ji (eds.), Mechanical Design, table 10-5, form and stress correction factors of the 20° rack with ρ = 0.38 m; read in a copy of the table"
	var rows []published.Row
	for _, c := range []struct {
		z           float64
		form, notch string
	}{
		{18, "2.91", "1.53"}, {20, "2.80", "1.55"}, {22, "2.72", "1.57"}, {25, "2.62", "1.59"},
		{30, "2.52", "1.625"}, {35, "2.45", "1.65"}, {40, "2.40", "1.67"}, {50, "2.32", "1.70"},
		{60, "2.28", "1.73"}, {80, "2.22", "1.77"}, {100, "2.18", "1.79"}, {150, "2.14", "1.83"},
		{1e5, "2.06", "1.97"},
	} {
		r, err := ToothForm30(FormParams{NormalTeeth: c.z, PressureAngle: 20 * degree, Addendum: 1, ToolAddendum: 1.25, ToolTipRadius: 0.38})
		if err != nil {
			t.Fatal(err)
		}
		const why = "the table is read off curves"
		rows = append(rows,
			published.Row{Name: fmt.Sprintf("Y_Fa, %g teeth", c.z), Got: r.Form, Printed: c.form, Source: source, Within: 0.01, Why: why},
			published.Row{Name: fmt.Sprintf("Y_Sa, %g teeth", c.z), Got: r.Notch, Printed: c.notch, Source: source, Within: 0.012, Why: why})
	}
	published.Check(t, rows)
}

func TestToothFormLaws(t *testing.T) {
	base := FormParams{NormalTeeth: 20, PressureAngle: 20 * degree, Addendum: 1, ToolAddendum: 1.25, ToolTipRadius: 0.3}
	of := func(change func(*FormParams)) FormResult {
		p := base
		change(&p)
		r, err := ToothForm30(p)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	b := of(func(*FormParams) {})
	if r := of(func(p *FormParams) { p.Thickness = 0.1 }); r.Form >= b.Form {
		t.Errorf("a thicker tooth bends more: %g, %g", r.Form, b.Form)
	}
	if r := of(func(p *FormParams) { p.Shift, p.Addendum = 0.3, 1.3 }); r.Form >= b.Form {
		t.Errorf("profile shift bends more: %g, %g", r.Form, b.Form)
	}
	if r := of(func(p *FormParams) { p.ToolTipRadius = 0.2 }); r.Notch <= b.Notch {
		t.Errorf("a sharper fillet raises the stress less: %g, %g", r.Notch, b.Notch)
	}
	if r := of(func(p *FormParams) { p.PressureAngle = 25 * degree }); r.Form >= b.Form {
		t.Errorf("a greater pressure angle bends more: %g, %g", r.Form, b.Form)
	}
}

func TestToothFormRefuses(t *testing.T) {
	base := FormParams{NormalTeeth: 20, PressureAngle: 20 * degree, Addendum: 1, ToolAddendum: 1.25, ToolTipRadius: 0.3}
	for param, change := range map[string]func(*FormParams){
		"NormalTeeth":   func(p *FormParams) { p.NormalTeeth = 3 },
		"PressureAngle": func(p *FormParams) { p.PressureAngle = 20 },
		"Addendum":      func(p *FormParams) { p.Addendum, p.Shift = 2.2, 0.9 },
		"ToolAddendum":  func(p *FormParams) { p.ToolAddendum = 0 },
		"ToolTipRadius": func(p *FormParams) { p.ToolTipRadius = 0 },
		"Shift":         func(p *FormParams) { p.Shift = 2 },
		"Thickness":     func(p *FormParams) { p.Thickness = 0.5 },
	} {
		p := base
		change(&p)
		var r *check.RangeError
		if _, err := ToothForm30(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s: got %v", param, err)
		}
	}
}
