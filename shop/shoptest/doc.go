// Package shoptest is what every shop.Store must pass. Call Run from a test of
// the store's package:
//
//	shoptest.Run(t, func(t *testing.T) shop.Store { return openEmpty(t) })
//
// It also has Fellgate, an invented workshop with cards and a job, for tests of
// whatever stands on a shop.
package shoptest

import (
	"testing"

	"axlewright/shop"
)

// Opener opens an empty store that is closed when the test ends.
type Opener func(t *testing.T) shop.Store

// Run runs the whole suite.
func Run(t *testing.T, open Opener) {
	for _, part := range []struct {
		name string
		test func(*testing.T, Opener)
	}{
		{"record", testRecord},
		{"chain", testChain},
		{"all or nothing", testAllOrNothing},
		{"snapshot", testSnapshot},
		{"conflict", testConflict},
		{"many at once", testManyAtOnce},
		{"find jobs", testFindJobs},
		{"pages of jobs", testPagesOfJobs},
		{"hostile names", testHostileNames},
		{"cards", testCards},
		{"lots", testLots},
		{"settings", testSettings},
		{"sessions", testSessions},
		{"files", testFiles},
		{"watch", testWatch},
		{"close", testClose},
		{"export and import", testExport},
		{"backup and restore", testBackup},
	} {
		t.Run(part.name, func(t *testing.T) {
			t.Parallel()
			part.test(t, open)
		})
	}
}
