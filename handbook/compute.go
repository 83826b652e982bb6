package handbook

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"axlewright/quantity"
)

// A Working is one computed formula: what was put in, what came out, and why
// to believe it.
type Working struct {
	Name    string   `json:"name"`
	Summary string   `json:"summary"`
	Formula []string `json:"formula"`
	Inputs  []Value  `json:"inputs"`
	Results []Value  `json:"results"`
	Valid   string   `json:"valid"`
	Source  string   `json:"source"`
}

// A Value is one quantity of a working. Word holds it when it is not a number.
type Value struct {
	Key     string  `json:"key"`
	Symbol  string  `json:"symbol"`
	Meaning string  `json:"meaning"`
	SI      float64 `json:"value"` // coherent SI
	Unit    string  `json:"unit"`  // of SI
	Text    string  `json:"text"`  // as the trade reads it, both unit systems
	Typed   string  `json:"typed,omitempty"`
}

// Compute reads the inputs, each typed with its unit, and computes the formula.
// Every fault of the inputs is named at once.
func (f Formula) Compute(inputs map[string]string) (Working, error) {
	w := Working{Name: f.Name, Summary: f.Summary, Formula: f.Lines, Valid: f.Valid, Source: f.Source}
	args := make([]reflect.Value, f.function.Type().NumIn())
	for i := range args {
		args[i] = reflect.New(f.function.Type().In(i)).Elem()
	}
	var faults []string
	for _, l := range f.inputs {
		text, given := inputs[l.Key]
		if !given {
			if !l.Optional {
				faults = append(faults, fmt.Sprintf("%s is missing: %s", l.Key, l.describe()))
			}
			continue
		}
		target := args[l.arg]
		if l.path != nil {
			target = target.FieldByIndex(l.path)
		}
		if err := l.set(target, text); err != nil {
			faults = append(faults, fmt.Sprintf("%s: %v", l.Key, err))
			continue
		}
		for _, v := range l.values(target) {
			v.Typed = text
			w.Inputs = append(w.Inputs, v)
		}
	}
	for key := range inputs {
		if !slices.ContainsFunc(f.inputs, func(l leaf) bool { return l.Key == key }) {
			faults = append(faults, fmt.Sprintf("%s is not an input; it takes %s", key, f.takes()))
		}
	}
	if len(faults) > 0 {
		slices.Sort(faults)
		return w, fmt.Errorf("%s: %s", f.Name, strings.Join(faults, "; "))
	}
	out := f.function.Call(args)
	if len(out) == 2 && !out[1].IsNil() {
		return w, f.outside(out[1].Interface().(error), inputs)
	}
	for _, l := range f.results {
		target := out[0]
		if l.path != nil {
			target = target.FieldByIndex(l.path)
		}
		w.Results = append(w.Results, l.values(target)...)
	}
	return w, nil
}

// takes names the inputs.
func (f Formula) takes() string {
	if len(f.inputs) == 0 {
		return "none"
	}
	keys := make([]string, len(f.inputs))
	for i, l := range f.inputs {
		keys[i] = l.Key
	}
	return strings.Join(keys, ", ")
}

// describe says what an input is and how it may be written.
func (l leaf) describe() string {
	words := l.Meaning
	if l.Unit != "-" && l.Unit != "" && l.Unit != "name" {
		words += ", " + l.Unit
	}
	if how := l.written(); how != "" {
		words += ", " + how
	}
	return words
}

// written says how a word, a list or an answer is typed; figures need no words.
func (l leaf) written() string {
	switch {
	case l.item != nil:
		var keys []string
		for _, inner := range l.item {
			keys = append(keys, inner.Key+"=…")
		}
		return fmt.Sprintf("records %s apart by semicolons", strings.Join(keys, ","))
	case l.typ.Kind() == reflect.Slice:
		return "values apart by semicolons"
	case len(l.words) > 0:
		return "a word: " + listed(l.words)
	case l.typ.Kind() == reflect.String:
		return "a word"
	case l.typ.Kind() == reflect.Bool:
		return "yes or no"
	}
	return ""
}

// listed names words, in quotation marks where a space or comma would part them.
func listed(words []string) string {
	if strings.ContainsAny(strings.Join(words, ""), " ,") {
		return `"` + strings.Join(words, `", "`) + `"`
	}
	return strings.Join(words, ", ")
}

// set reads text into target.
func (l leaf) set(target reflect.Value, text string) error {
	switch {
	case l.item != nil:
		return l.setRecords(target, text)
	case l.typ.Kind() == reflect.Slice:
		one := leaf{Symbol: l.Symbol, typ: l.typ.Elem(), dimension: l.dimension, words: l.words}
		for _, part := range splitList(text, l.Unit) {
			v := reflect.New(one.typ).Elem()
			if err := one.set(v, part); err != nil {
				return err
			}
			target.Set(reflect.Append(target, v))
		}
		return nil
	}
	switch l.typ.Kind() {
	case reflect.String:
		target.SetString(strings.TrimSpace(text))
	case reflect.Bool:
		switch strings.TrimSpace(text) {
		case "yes", "true":
			target.SetBool(true)
		case "no", "false":
		default:
			return fmt.Errorf("expected yes or no, got %q", text)
		}
	case reflect.Int:
		n, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil {
			return fmt.Errorf("expected a whole number, got %q", text)
		}
		target.SetInt(int64(n))
	default:
		q, err := quantity.Parse(text, l.dimension)
		if err != nil {
			return err
		}
		if q.Spread != quantity.NoSpread {
			return fmt.Errorf("%q has a doubt; a formula takes one value, such as %s", text, l.dimension.Example())
		}
		target.SetFloat(q.SI)
	}
	return nil
}

// setRecords reads "x=1mm,y=2mm; x=3mm,y=4mm".
func (l leaf) setRecords(target reflect.Value, text string) error {
	for n, record := range strings.Split(text, ";") {
		if strings.TrimSpace(record) == "" {
			continue
		}
		v := reflect.New(l.typ.Elem()).Elem()
		given := map[string]bool{}
		for pair := range strings.SplitSeq(record, ",") {
			key, value, found := strings.Cut(pair, "=")
			key = strings.TrimSpace(key)
			i := slices.IndexFunc(l.item, func(inner leaf) bool { return inner.Key == key })
			if !found || i < 0 {
				return fmt.Errorf("record %d: %q is not understood; expected %s", n+1, pair, l.describe())
			}
			if err := l.item[i].set(v.FieldByIndex(l.item[i].path), value); err != nil {
				return fmt.Errorf("record %d: %s: %w", n+1, key, err)
			}
			given[key] = true
		}
		for _, inner := range l.item {
			if !inner.Optional && !given[inner.Key] {
				return fmt.Errorf("record %d: %s is missing", n+1, inner.Key)
			}
		}
		target.Set(reflect.Append(target, v))
	}
	return nil
}

// values reads what stands in v, one Value a number.
func (l leaf) values(v reflect.Value) []Value {
	if kind := v.Kind(); kind == reflect.Slice || kind == reflect.Array {
		var all []Value
		for i := range v.Len() {
			inner := []leaf{{Symbol: l.Symbol, typ: v.Type().Elem(), dimension: l.dimension}}
			if l.item != nil {
				inner = l.item
			}
			for _, one := range inner {
				element := v.Index(i)
				if l.item != nil {
					element = element.FieldByIndex(one.path)
				}
				for _, value := range one.values(element) {
					if l.item != nil {
						value.Key = fmt.Sprintf("%s[%d].%s", l.Key, i+1, value.Key)
					} else {
						value.Key = fmt.Sprintf("%s[%d]", value.Key, i+1)
					}
					all = append(all, value)
				}
			}
		}
		return all
	}
	value := Value{Key: l.Key, Symbol: l.Sign, Meaning: l.Meaning, Unit: l.Unit}
	if value.Symbol == "" {
		value.Symbol = l.Key
	}
	switch v.Kind() {
	case reflect.String:
		value.Text = v.String()
	case reflect.Bool:
		value.Text = "no"
		if v.Bool() {
			value.SI, value.Text = 1, "yes"
		}
	case reflect.Int:
		value.SI, value.Text = float64(v.Int()), strconv.FormatInt(v.Int(), 10)
	default:
		value.SI, value.Text = v.Float(), quantity.Format(v.Float(), l.dimension)
	}
	return []Value{value}
}

// splitList cuts at semicolons; plain numbers may also stand apart by spaces.
func splitList(text, unit string) []string {
	if unit == "-" && !strings.Contains(text, ";") {
		return strings.Fields(text)
	}
	var parts []string
	for part := range strings.SplitSeq(text, ";") {
		if part = strings.TrimSpace(part); part != "" {
			parts = append(parts, part)
		}
	}
	return parts
}
