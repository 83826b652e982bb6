// Package survival holds the published statistics of what lasts and what comes
// back: lives with and without failure, chances from few cases, control charts
// of station readings, lines through readings.
package survival
