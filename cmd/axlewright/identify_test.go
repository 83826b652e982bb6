package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"axlewright/casting"
)

// say runs a command and returns what it prints.
func say(cmd *cobra.Command, args ...string) (string, error) {
	var out bytes.Buffer
	cmd.SetOut(&out)
	cmd.SetErr(&out)
	cmd.SetArgs(args)
	cmd.SilenceErrors, cmd.SilenceUsage = true, true
	err := cmd.Execute()
	return out.String(), err
}

func TestIdentifyPrintsTheCard(t *testing.T) {
	for file, wants := range map[string][]string{
		"same-number":       {"△ open", "→ How many ribs run down the nose", "rules out T24", "cannot be seen: date", "1.50 mm (59 thou) more in boss height"},
		"same-number-ribs":  {"✓ sure enough", "Take kit KIT-T20K-A.2", "✕ STOP  Blackheart malleable iron: weld only where no load passes.", "May be overruled by: A welding engineer"},
		"number-ground-off": {"△ likely", "cap seat", "59.48 to 60.52 mm (2.342 to 2.383 in)", "head bore: 72.00 ± 0.02 mm (2.8346 ± 0.0008 in), measured", "(believed only 10 %)"},
		"modified-before":   {"✕ modified before", "Dye penetrant", "No standard kit"},
		"grey-replacement":  {"✕ STOP  Grey iron: do not weld plates to it", "Nobody at the bench", "The shape says T24"},
		"new-variant":       {"△ none of these", "but for ribs, web, head bore", "make it a new variant"},
		"wrong-end":         {"lies the other way round"},
	} {
		out, err := say(newIdentify(), "../../examples/identify/"+file+".yaml")
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range append(wants, "It may be", "Metal", "it rates nothing") {
			if !strings.Contains(out, want) {
				t.Errorf("%s: no %q in\n%s", file, want, out)
			}
		}
		checkUnits(t, file, out)
	}
}

// checkUnits fails where a length is told in one system only.
func checkUnits(t *testing.T, file, out string) {
	t.Helper()
	metric := regexp.MustCompile(`\d mm\b`)
	both := regexp.MustCompile(`\d mm \([^)]*(thou|in)\)`)
	for _, line := range strings.Split(out, "\n") {
		if strings.Contains(line, "1.5 mm;") || strings.Contains(line, "Drill 5 mm") || strings.Contains(line, "shows 1.5 mm") || strings.Contains(line, "test piece of 12 or 15 mm") {
			continue // a thread's name, a rough depth, a standard's words
		}
		if a, b := len(metric.FindAllString(line, -1)), len(both.FindAllString(line, -1)); a != b {
			t.Errorf("%s: %d lengths in mm, %d in both systems: %s", file, a, b, line)
		}
	}
}

func TestIdentifyJSON(t *testing.T) {
	out, err := say(newIdentify(), "--json", "../../examples/identify/same-number-ribs.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var id casting.Identification
	decoder := json.NewDecoder(strings.NewReader(out))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&id); err != nil {
		t.Fatal(err)
	}
	if id.Ranked[0].Variant != "T20K" || id.Ranked[0].Chance < 0.95 || !id.Enough {
		t.Errorf("%+v", id.Ranked[0])
	}
}

func TestIdentifyAndStationsRefuse(t *testing.T) {
	bad := filepath.Join(t.TempDir(), "bad.yaml")
	if err := os.WriteFile(bad, []byte("casting: F-1\nevidense: {}\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, build := range map[string]func() *cobra.Command{"identify": newIdentify, "stations": newStations} {
		var usage usageError
		if _, err := say(build()); !errors.As(err, &usage) {
			t.Errorf("%s without a file: %v, expected a usage error", name, err)
		}
		_, err := say(build(), bad)
		if err == nil || errors.As(err, &usage) || !strings.Contains(err.Error(), bad+":") || !strings.Contains(err.Error(), "^") {
			t.Errorf("%s: %v, expected the place with a caret", name, err)
		}
		if _, err := say(build(), "nowhere.yaml"); err == nil || !strings.Contains(err.Error(), "no such file") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
