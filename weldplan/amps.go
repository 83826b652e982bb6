package weldplan

import (
	"fmt"
	"math"
)

// A Band is a range with a first guess in it.
type Band struct {
	Low   float64 `json:"low"`
	First float64 `json:"first"`
	High  float64 `json:"high"`
}

func (b Band) times(low, high float64) Band {
	return Band{b.Low * low, b.First * (low + high) / 2, b.High * high}
}

// Amps is the current for a run, before anything was learned.
type Amps struct {
	Band
	Table   Band     `json:"table"` // for two plates of that thickness
	Rule    float64  `json:"rule"`  // A, "1 amp per thou", for comparison
	Reasons []string `json:"reasons"`
	Source  string   `json:"source"`
	Learned *Learned `json:"learned,omitempty"`
	Used    Band     `json:"used"`               // what the plan goes on with: learned where there is enough, else the first guess
	NoTable bool     `json:"no_table,omitempty"` // the plate is outside the table: first run on scrap

}

// A row of a table of currents for fillets by plate thickness.
type ampsRow struct{ thickness, low, high float64 }

var ampsTables = map[Process]struct {
	rows   []ampsRow
	source string
}{
	TIG: {
		[]ampsRow{{1.6e-3, 50, 70}, {3.2e-3, 90, 120}, {4.8e-3, 135, 175}, {6.0e-3, 170, 200}},
		"handbook figures for TIG fillets in carbon steel, read for one product",
	},
	MAG: {
		[]ampsRow{{2e-3, 80, 110}, {3e-3, 110, 145}, {5e-3, 150, 195}, {6e-3, 170, 220}, {10e-3, 200, 260}},
		"common practice for 1.0 mm wire, no source",
	},
	Stick: {
		[]ampsRow{{2e-3, 55, 80}, {3e-3, 60, 90}, {4e-3, 90, 125}, {6e-3, 95, 135}, {10e-3, 100, 140}},
		"common practice for electrodes of 2.5 and 3.2 mm, no source",
	},
}

// thou is a thousandth of an inch.
const thou = 25.4e-6 // m

// ampsFor is a first guess from thickness, casting and heat sink. The casting's
// share of the table, and the heat sinks', are trade custom without a source; a
// first run on a scrap of the same variant is the only reliable guide.
func ampsFor(process Process, plate, wall float64, cold, ironCasting, sink bool, position Position) Amps {
	table := ampsTables[process]
	a := Amps{Rule: plate / thou, Source: table.source}
	first, last := table.rows[0], table.rows[len(table.rows)-1]
	if plate < 0.9*first.thickness || plate > 1.1*last.thickness {
		a.NoTable = true
		a.Reasons = append(a.Reasons, fmt.Sprintf("the table goes from %s to %s: the nearest row stands here; begin on a scrap of the same variant", mm(first.thickness), mm(last.thickness)))
	}
	a.Table = interpolate(table.rows, plate)
	a.Band = a.Table
	factor := func(low, high float64, why string) {
		a.Band = a.times(low, high)
		a.Reasons = append(a.Reasons, why)
	}
	switch ratio := wall / plate; {
	case ratio <= 2:
		factor(0.75, 0.90, "thin casting wall: 10 to 25 % less, arc on the plate (trade custom)")
	case ratio <= 4:
		factor(0.90, 1.00, "casting wall of two to four plates: up to 10 % less, arc on the plate (trade custom)")
	default:
		factor(1.00, 1.10, "heavy casting wall drinks heat: up to 10 % more, arc on the plate (trade custom)")
	}
	if sink {
		factor(1.00, 1.05, "bar or mandrel close by: up to 5 % more (trade custom)")
	}
	if ironCasting && cold {
		factor(0.90, 1.00, "cold practice on iron: up to 10 % less, the least that still fuses (trade custom)")
	}
	switch position {
	case Vertical:
		factor(0.85, 0.95, "vertical: 5 to 15 % less (trade custom)")
	case Overhead:
		factor(0.85, 0.95, "overhead: 5 to 15 % less (trade custom)")
	}
	return a
}

func interpolate(rows []ampsRow, thickness float64) Band {
	i := 1
	for i < len(rows)-1 && thickness > rows[i].thickness {
		i++
	}
	a, b := rows[i-1], rows[i]
	share := math.Min(1, math.Max(0, (thickness-a.thickness)/(b.thickness-a.thickness)))
	low, high := a.low+share*(b.low-a.low), a.high+share*(b.high-a.high)
	return Band{low, (low + high) / 2, high}
}
