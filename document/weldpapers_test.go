package document

import (
	"strings"
	"testing"

	"axlewright/document/paper"
	"axlewright/drawing"
	"axlewright/weldplan"
)

// wordsOf are all texts of a paper.
func wordsOf(p paper.Paper) string {
	var b strings.Builder
	for _, d := range p.Pages() {
		for _, l := range d.Layers {
			for _, s := range l.Shapes {
				if t, ok := s.(drawing.Text); ok {
					b.WriteString(t.Words + " ")
				}
			}
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

func TestWeldPlanGoesOnOnePage(t *testing.T) {
	for _, name := range []string{"t24-cheeks", "t31-steel", "unknown-metal"} {
		job, past, err := weldplan.LoadJob("../examples/weld/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		plan, err := weldplan.Make(&job, past, weldplan.Options{})
		if err != nil {
			t.Fatal(err)
		}
		var order drawing.Drawing
		if plan.Sequence != nil {
			order = drawing.WeldOrder(&job, plan.Sequence, WeldOrderWidth)
		}
		p := WeldPlan(&plan, order, paper.Head{Number: plan.Job, Subject: "Bracken of Scar End, hill-farm pick-up, rear\nvariant T24", Shop: "Fellgate Axle Works"}, []string{"Metal: ductile iron (Wren, 2 March 2026)", "Washed with: hot aqueous wash (Wren, 2 March 2026)", "Vents: every cavity has its vent (Wren, 2 March 2026)"},
			[]string{"gaps at the weld: none measured", "air and casting at 18 °C, as the weld file says"})
		if n := len(p.Pages()); n != 1 {
			t.Errorf("%s: %d pages", name, n)
		}
		said := wordsOf(p)
		want := []string{"approves nothing", "Check before", "Check after", "□ Cool in the jig", "phosgene", "△ Assumed: gaps", "From the record: Metal"}
		for _, s := range plan.Stops {
			want = append(want, "STOP: "+s.What)
		}
		for i := range plan.Runs {
			want = append(want, plan.Runs[i].Run)
		}
		for _, v := range plan.Vents {
			want = append(want, "Vent "+v.Cavity)
		}
		for _, w := range want {
			if !strings.Contains(said, w) {
				t.Errorf("%s: no %q in %s", name, w, said)
			}
		}
	}
}

func TestWeldLogLeavesRoomForThePencil(t *testing.T) {
	runs := []LoggedRun{{Turn: "1", Run: "LC top", Planned: "1L: 3 × 17 mm", Amps: "99 A", Minutes: "2.5 min", Who: "Wren"}, {Turn: "2", Run: "LC end"}}
	p := WeldLog(runs, paper.Head{Number: "job 0117"}, []string{"Extraction at the arc."})
	if n := len(p.Pages()); n != 1 {
		t.Errorf("%d pages", n)
	}
	said := wordsOf(p)
	for _, w := range []string{"job 0117", "LC top", "99 A", "2.5 min", "Wren", "LC end", "Extraction at the arc.", "filler lot", "Welded by"} {
		if !strings.Contains(said, w) {
			t.Errorf("no %q in %s", w, said)
		}
	}
}
