// Package fatigue holds the published formulas of parts that break by
// repetition: counting the cycles of a record, stress-life lines, mean stress,
// and the damage of a duty.
package fatigue
