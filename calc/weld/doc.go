// Package weld holds the published formulas of fillet welds: throat and length,
// static strength (EN 1993-1-8, AWS), elastic weld groups, fatigue (EN 1993-1-9),
// the heat of welding and what it does to the metal (EN 1011-2), distortion, and
// the metal that is laid down.
//
// Nothing here approves a weld. The formulas suit wrought and cast steel; an iron
// casting needs its own procedure trial, whatever a formula says. Local codes and
// licensed practice come first.
package weld
