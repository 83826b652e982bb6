package shop

import (
	"math"
	"strings"
	"testing"

	"axlewright/casting"
	"axlewright/examples"
)

// The stations follow a later revision's drawing: as its kit file says, station 2 is
// 0.9 mm nearer, 3 is 0.7 mm nearer, 4 is 1.0 mm lower. An edge drawn another way is
// not followed.
func TestStationsFollowTheRevision(t *testing.T) {
	read := func(name string) string {
		text, err := examples.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	g, err := casting.LoadGauging("../examples/stations/t24.yaml")
	if err != nil {
		t.Fatal(err)
	}
	one, two := &KitRevision{Drawing: read("kits/KIT-T24-A.1.yaml")}, &KitRevision{Drawing: read("kits/KIT-T24-A.2.yaml")}
	moved, ok := redrawn(g, one, two)
	if !ok {
		t.Fatal("not followed")
	}
	for i, nearer := range []float64{0, 0.9e-3, 0.7e-3, 1e-3, 0, 0, 0} {
		if got := g.Stations[i].DrawnFor.Value - moved.Stations[i].DrawnFor.Value; math.Abs(got-nearer) > 1e-9 {
			t.Errorf("station %d: nearer by %g, want %g", i+1, got, nearer)
		}
	}
	wider := &KitRevision{Drawing: strings.Replace(two.Drawing, "gap: 0.5 mm", "gap: 0.7 mm", 1)}
	if _, ok := redrawn(g, one, wider); ok {
		t.Error("edges with another gap are followed")
	}
	kits := []Kit{{Name: "KIT-T24-A", Revisions: []KitRevision{{Name: "1", Closed: true}, {Name: "2"}}}}
	fits := func(*KitRevision) bool { return true }
	if got := newestOpen(kits, "KIT-T24-A.1", fits); got != "KIT-T24-A.2" {
		t.Errorf("take %s", got)
	}
	kits[0].Revisions[1].Closed = true
	if got := newestOpen(kits, "KIT-T24-A.1", fits); got != "KIT-T24-A.1" {
		t.Errorf("of closed ones only: %s", got)
	}
}
