package main

import (
	"encoding/json"
	"strings"
	"testing"

	"axlewright/casting"
)

func TestStationsPrintTheSheet(t *testing.T) {
	for file, wants := range map[string][]string{
		"t24": {
			"kit KIT-T24-A.1", "every ten castings: moulds wear", "F-2120: 170.80 mm", "F-2207  △ with trimming",
			"take 1.50 mm (59 thou) off nose side plate at root of the lower rib", "face shield",
			"Revision KIT-T24-A.1 on the next casting: as cut", "Draw it anew?", "2 patterns; fewer cannot do it", "Left out, not measured everywhere: F-2064",
		},
		"t31-too-few": {"too few yet: 3 of the 5 castings", "take 0.60 mm (24 thou) off nose band", "Too few castings yet"},
	} {
		out, err := say(newStations(), "../../examples/stations/"+file+".yaml")
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range wants {
			if !strings.Contains(out, want) {
				t.Errorf("%s: no %q in\n%s", file, want, out)
			}
		}
		checkUnits(t, file, out)
	}
}

func TestStationsJSON(t *testing.T) {
	out, err := say(newStations(), "--json", "../../examples/stations/t24.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var r casting.StationReport
	decoder := json.NewDecoder(strings.NewReader(out))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&r); err != nil {
		t.Fatal(err)
	}
	if len(r.History) != 7 || !r.Patterns.Proved || len(r.Patterns.Patterns) != 2 {
		t.Errorf("%d stations, %s", len(r.History), r.Patterns.Sentence)
	}
}
