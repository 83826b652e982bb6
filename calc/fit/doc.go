// Package fit holds the published formulas and tables of tolerances: stacks of
// parts, ISO limits and fits, press fits, casting tolerances, and small
// geometry of gaps.
package fit
