// Package bolt holds the published formulas of threads and bolted joints:
// thread geometry, strength classes, tightening, joint stiffness, slip and
// thread stripping.
package bolt
