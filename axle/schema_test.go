package axle

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// compiled compiles a schema by an independent library.
func compiled(t *testing.T, text []byte, err error) *jsonschema.Schema {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// valid checks YAML text against a schema, as an editor does.
func valid(t *testing.T, s *jsonschema.Schema, text string) error {
	t.Helper()
	asJSON, err := yaml.YAMLToJSON([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(asJSON))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(doc)
}

func schemas(t *testing.T) (catalogue, enquiry *jsonschema.Schema) {
	t.Helper()
	text, err := CatalogueSchema()
	catalogue = compiled(t, text, err)
	text, err = EnquirySchema()
	return catalogue, compiled(t, text, err)
}

func TestExamplesAreValidByTheSchema(t *testing.T) {
	catalogue, enquiry := schemas(t)
	for _, name := range append(exampleFiles, "quarry-log.yaml", "reference/catalogue.yaml", "matrix/casting.yaml") {
		text, err := os.ReadFile("../examples/" + name)
		if err != nil {
			t.Fatal(err)
		}
		if err := valid(t, catalogue, string(text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, path := range exampleEnquiries(t) {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := valid(t, enquiry, string(text)); err != nil {
			t.Errorf("%s: %v", path, err)
		}
		if valid(t, catalogue, string(text)) == nil {
			t.Errorf("%s passes as a catalogue", path)
		}
	}
}

func TestBrokenVariantsAreNotValidByTheSchema(t *testing.T) {
	catalogue, enquiry := schemas(t)
	for _, c := range []struct{ old, with string }{
		{"labour: 60", "labour: cheap"},
		{"labour: 60", "labor: 60"},
		{"maker: Tarnhow", "make: Tarnhow"},
		{"notches: 16", "notches: sixteen"},
		{"notches: 16", "notches: 1.5"},
		{"thickness: 15.5 mm, measured", "thickness: 15.5"},
		{"thickness: 15.5 mm, measured", "thickness: [15.5 mm]"},
		{"thickness: 15.5 mm, measured", "thickness: {value: 15.5 mm, spred: 1 mm}"},
		{"thickness: 15.5 mm, measured", "thickness: {spread: 1 mm}"},
		{"thickness: 15.5 mm, measured", "thickness: {value: 15.5 mm, spread: -1 mm}"},
		{"thickness: 15.5 mm, measured", "thickness: {value: 15.5 mm, origin: guessed}"},
		{"thickness: 15.5 mm, measured", "thickness: {one_of: [15 mm]}"},
		{"thickness: 15.5 mm, measured", "thick: 15.5 mm"},
		{"facing: away from the nose", "facing: up"},
		{"hand: left ", "hand: sinister "},
		{"locking: open", "locking: opened"},
		{"gear_sets: [20-3.54, 20-4.10, 20-4.70, 20-5.38]", "gear_sets: 20-3.54"},
		{"metal: EN-GJS-400-15", "metal:"},
	} {
		text, _ := changed(t, exampleText(t, "tarnhow.yaml"), c.old, c.with)
		if valid(t, catalogue, text) == nil {
			t.Errorf("%q passes", c.with)
		}
	}
	for _, c := range []struct{ old, with string }{
		{"casting: T24\n", ""}, {"tyre: 235/85R16", "tyre: 85"}, {"position: rear", "position: back"}, {"engine: 190 N·m ± 5 %, maker", "engine: 190"},
		{"use: [farm, towing]", "use: [tow]"}, {"duty: farm", "dutty: farm"}, {"catalogue: [../tarnhow.yaml,", "catalogue: [{a: 1},"},
	} {
		text, _ := changed(t, exampleText(t, enquiryFile), c.old, c.with)
		if valid(t, enquiry, text) == nil {
			t.Errorf("%q passes", c.with)
		}
	}
}

// What our reader takes for a figure, the schema takes too.
func TestFiguresOfTheReaderAreValidByTheSchema(t *testing.T) {
	catalogue, _ := schemas(t)
	for _, figure := range []string{
		"26 mm", "1 in", "7/16 in", "26 mm ± 0.5 mm, measured", "0.15..0.30 mm", "{value: 26 mm, spread: 2 %}", "8 thou", `1¼ in`, `1.5"`,
		"{low: 1 mm, high: 2 mm, shape: uniform, note: x}", "{one_of: [1 mm, 2 mm], weights: [1, 2.5]}", "{value: 26 mm, exact: x}",
	} {
		text := "half_shafts: [{name: a, yield: 500 MPa, diameter: " + figure + "}]"
		r := newReading()
		var c Catalogue
		r.text("x", text, &c)
		if ours, theirs := len(r.found) == 0, valid(t, catalogue, text) == nil; ours != theirs {
			t.Errorf("%s: we say %v, the schema %v", figure, ours, theirs)
		}
	}
}

func TestTheSchemaExplains(t *testing.T) {
	text, err := CatalogueSchema()
	if err != nil {
		t.Fatal(err)
	}
	var s struct {
		Schema      string `json:"$schema"`
		Definitions map[string]struct {
			Description string
			Properties  map[string]struct{ Description string }
		} `json:"$defs"`
	}
	if err := json.Unmarshal(text, &s); err != nil {
		t.Fatal(err)
	}
	if s.Schema != "https://json-schema.org/draft/2020-12/schema" {
		t.Errorf("the schema is of %s", s.Schema)
	}
	if got := s.Definitions["Cap"].Properties["thickness"].Description; got != "radial, at the crown of the arch" {
		t.Errorf("the cap's thickness is explained as %q", got)
	}
	if got := s.Definitions["Casting"].Description; !strings.HasPrefix(got, "A Casting is one variant of nose casting") {
		t.Errorf("a casting is explained as %q", got)
	}
}
