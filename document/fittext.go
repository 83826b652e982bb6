package document

import (
	"fmt"
	"io"

	"axlewright/assess"
	"axlewright/quantity"
)

// FitText writes a calibration for a terminal: readings, figures, and the
// builds before and after.
func FitText(out io.Writer, f *assess.Fit, before, after *assess.Advice) error {
	t := &text{out: out}
	t.line("%s   %s, casting %s", before.Enquiry, before.Customer, before.Casting)
	t.heading("Readings on the back face")
	t.line("  %-26s %-22s %-22s %s", "reading", "read", "as stated", "as fitted")
	for _, r := range f.Readings {
		t.line("  %-26s %-22s %-22s %s", r.Name, show(r.Read, quantity.Length), show(r.Before, quantity.Length), show(r.After, quantity.Length))
	}
	if len(f.Warnings) == 0 {
		t.line("✓ the readings agree with the model and with each other")
	}
	for _, w := range f.Warnings {
		t.wrap("✕ ", w)
	}
	t.heading("What they say of the casting")
	for _, x := range f.Figures {
		dim := quantity.Dimension(x.Unit)
		t.line("  %s", x.Figure)
		t.line("    now:    %s, %s to %s", first(show(x.After.Median, dim)), first(show(x.After.Low, dim)), first(show(x.After.High, dim)))
		t.line("    before: %s, %s to %s; %s of the doubt is left", first(show(x.Before.Median, dim)), first(show(x.Before.Low, dim)), first(show(x.Before.High, dim)), quantity.Percent(x.Left))
	}
	t.heading("The builds before and after")
	for i := range after.Builds {
		b := &after.Builds[i]
		if !b.Frontier && i != after.Best {
			continue
		}
		for j := range before.Builds {
			if was := &before.Builds[j]; was.Name == b.Name {
				t.wrap("  ", fmt.Sprintf("%s: carries %s (was %s); gives out at %s (was %s)",
					b.Label(), quantity.Chance(b.Carries.Value), quantity.Chance(was.Carries.Value), bandText(b.GiveOut), bandText(was.GiveOut)))
			}
		}
	}
	t.blank()
	t.wrap("", "A dial narrows movement and the peg's load. It says nothing of caps that walk or bolts that slip: there measure bolt stretch, and scribe marks across the joint.")
	return t.err
}
