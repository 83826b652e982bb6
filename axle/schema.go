package axle

import (
	"encoding/json"
	"reflect"
	"strings"

	"github.com/invopop/jsonschema"

	"axlewright/quantity"
)

// CatalogueSchema returns the JSON Schema (draft 2020-12) of a catalogue file,
// for editors that complete and check as one types.
func CatalogueSchema() ([]byte, error) {
	return schemaOf(&Catalogue{}, "Axlewright catalogue", "Castings, gears, parts, upgrades and duties of a shop.")
}

// EnquirySchema returns the JSON Schema (draft 2020-12) of an enquiry file.
func EnquirySchema() ([]byte, error) {
	return schemaOf(&Enquiry{}, "Axlewright enquiry", "What a customer asks, with all that was found out on the telephone.")
}

func schemaOf(v any, title, description string) ([]byte, error) {
	comments, err := readComments()
	if err != nil {
		return nil, err
	}
	r := jsonschema.Reflector{
		FieldNameTag: "yaml", Anonymous: true, ExpandedStruct: true,
		Mapper: schemaOfWord, Namer: schemaName,
		LookupComment: func(t reflect.Type, field string) string {
			return withoutUnit(comments[t.Name()+"."+field], t, field)
		},
	}
	s := r.Reflect(v)
	s.Title, s.Description = title, description
	return json.MarshalIndent(s, "", "  ")
}

// withoutUnit drops the SI unit that a figure's comment begins with: in a file
// any unit will do.
func withoutUnit(comment string, t reflect.Type, field string) string {
	if t.Kind() != reflect.Struct {
		return comment
	}
	f, known := t.FieldByName(field)
	if !known {
		return comment
	}
	figure := f.Type
	if figure.Kind() == reflect.Pointer {
		figure = figure.Elem()
	}
	dim, is := dimensionOf(figure)
	if !is {
		return comment
	}
	rest := strings.TrimPrefix(comment, dim.Unit())
	if rest == comment || rest != "" && rest[0] != ',' && rest[0] != ' ' {
		return comment
	}
	return strings.TrimLeft(rest, ", ")
}

// schemaName names a definition: a kind of figure goes by its dimension.
func schemaName(t reflect.Type) string {
	if dim, is := dimensionOf(t); is {
		return strings.ReplaceAll(string(dim), " ", "-")
	}
	return t.Name()
}

// dimensionOf returns the dimension of a figure's type.
func dimensionOf(t reflect.Type) (quantity.Dimension, bool) {
	if t.Kind() != reflect.Struct || t.NumField() != 1 || t.Field(0).Type != numberType {
		return "", false
	}
	d, is := reflect.Zero(t).Interface().(interface{ dimension() quantity.Dimension })
	if !is {
		return "", false
	}
	return d.dimension(), true
}

// dimension is that of the marker.
func (Of[D]) dimension() quantity.Dimension {
	var marker D
	return marker.dimension()
}

// schemaOfWord gives the schema of a word out of a list, a count and an amount.
func schemaOfWord(t reflect.Type) *jsonschema.Schema {
	if list := words[t]; list != nil {
		s := &jsonschema.Schema{Type: "string"}
		for _, word := range list {
			s.Enum = append(s.Enum, word)
		}
		return s
	}
	if t == reflect.TypeFor[Entry]() {
		return &jsonschema.Schema{Type: "number"}
	}
	switch t.Kind() {
	case reflect.Int:
		return &jsonschema.Schema{Type: "integer", Minimum: "0"}
	case reflect.Float64:
		return &jsonschema.Schema{Type: "number", Minimum: "0"}
	case reflect.String:
		// A grade or a note may look like a number.
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "string", Pattern: `\S`}, {Type: "number"}}}
	}
	return nil
}

// withUnit is a text with a number and, after it, a unit.
const withUnit = `[0-9].*[A-Za-zµ°'"′″]`

// JSONSchema is the schema of a figure, on one line or as a mapping.
func (q Of[D]) JSONSchema() *jsonschema.Schema {
	dim := q.dimension()
	example := dim.Example()
	plain := dim == quantity.Number
	one := &jsonschema.Schema{Type: "string", Pattern: withUnit, Examples: []any{
		example, example + " ± 5 %", example + ", measured", example + ", maker, exact",
	}}
	if plain {
		one.Pattern = "[0-9]"
	}
	forms := func(s *jsonschema.Schema) *jsonschema.Schema {
		if plain {
			return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{s, {Type: "number"}}}
		}
		return s
	}
	bare := forms(&jsonschema.Schema{Type: "string", Pattern: one.Pattern})
	positive := &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "string", Pattern: "[0-9]"}, {Type: "number", ExclusiveMinimum: "0"}}}
	two := uint64(2)
	properties := jsonschema.NewProperties()
	properties.Set("value", bare)
	properties.Set("spread", &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "string", Pattern: "^[^-]*[0-9]"}, {Type: "number", Minimum: "0"}}, Description: "half of the doubt, two standard deviations: " + example + " or 5 %"})
	properties.Set("low", bare)
	properties.Set("high", bare)
	properties.Set("shape", &jsonschema.Schema{Enum: []any{string(Normal), string(Lognormal), string(Uniform), string(Triangular), string(Discrete)}})
	properties.Set("one_of", &jsonschema.Schema{Type: "array", Items: bare, MinItems: &two})
	properties.Set("weights", &jsonschema.Schema{Type: "array", Items: positive, MinItems: &two})
	origin := &jsonschema.Schema{Description: "where the figure is from; assumed where nothing is said"}
	for _, o := range origins {
		origin.Enum = append(origin.Enum, string(o))
	}
	properties.Set("origin", origin)
	properties.Set("note", &jsonschema.Schema{Type: "string"})
	mapping := &jsonschema.Schema{
		Type: "object", Properties: properties, AdditionalProperties: jsonschema.FalseSchema,
		AnyOf: []*jsonschema.Schema{{Required: []string{"value"}}, {Required: []string{"low", "high"}}, {Required: []string{"one_of"}}},
	}
	return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{forms(one), mapping}}
}

// JSONSchema is the schema of a tyre: its size, or a loaded radius.
func (Tyre) JSONSchema() *jsonschema.Schema {
	radius := Length{}.JSONSchema()
	size := &jsonschema.Schema{Type: "string", Pattern: `[0-9].*[0-9]{2}`, Examples: []any{"235/85R16", "33x12.50R15", "7.50R16"}}
	return &jsonschema.Schema{AnyOf: append([]*jsonschema.Schema{size}, radius.AnyOf...)}
}
