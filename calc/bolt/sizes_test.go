package bolt

import (
	"testing"

	"axlewright/internal/published"
)

func TestTappingDrillsPublished(t *testing.T) {
	const source = "tapping drills in common workshop use, common practice, no source"
	var rows []published.Row
	for designation, printed := range map[Designation]string{
		"M5x0.8": "4.2", "M6x1": "5.0", "M8x1.25": "6.8", "M10x1.5": "8.5", "3/8-16 UNC": "8.0",
		"7/16-14 UNC": "9.3", "7/16-20 UNF": "9.9", "M12x1.75": "10.2", "M12x1.5": "10.5", "M12x1.25": "10.8",
		"M14x1.5": "12.5", "M16x1.5": "14.5", "1/2-13 UNC": "10.8", "1/2-20 UNF": "11.5",
	} {
		size := must(StandardThread(designation))
		rows = append(rows, published.Row{Name: string(designation) + " drill = d − P, mm", Got: (size.Diameter - size.Pitch) * 1e3,
			Printed: printed, Source: source, Within: 0.008, Why: "drills come in steps of 0.1 mm, rounded up"})
	}
	published.Check(t, rows)
}

func TestEverySizeIsSound(t *testing.T) {
	for designation := range standardSizes {
		size := must(StandardThread(designation))
		share := must(ThreadShare(ThreadShareParams{size.Form, size.Diameter, size.Pitch, size.Drill}))
		if share < 0.65 || share > 1 {
			t.Errorf("%s: drill %.1f mm leaves %.0f %% of the thread", designation, size.Drill*1e3, share*100)
		}
	}
	_, err := StandardThread("M13x1")
	refuses(t, "designation", err)
}

func TestHexHeadsStandOnTheirHoles(t *testing.T) {
	for d := range hexHeads {
		h := must(HexHead(d * mm))
		if !(h.Hole > d*mm && h.Bearing > h.Hole && h.AcrossFlats > h.Bearing) {
			t.Errorf("M%g: hole %g, bearing %g, flats %g", d, h.Hole, h.Bearing, h.AcrossFlats)
		}
	}
	var rows []published.Row
	for d, printed := range map[float64][2]string{8: {"11.63", "9"}, 10: {"14.63", "11"}, 12: {"16.63", "13.5"}, 16: {"22.49", "17.5"}} {
		h := must(HexHead(d * mm))
		rows = append(rows,
			published.Row{Name: "least bearing diameter, mm", Got: h.Bearing / mm, Printed: printed[0], Source: "ISO 4014:2011, table 1, grade A (from memory)"},
			published.Row{Name: "clearance hole, mm", Got: h.Hole / mm, Printed: printed[1], Source: "ISO 273:1979, medium (from memory)"})
	}
	published.Check(t, rows)
	_, err := HexHead(13 * mm)
	refuses(t, "d", err)
}
