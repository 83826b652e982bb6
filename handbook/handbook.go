// Package handbook makes every formula of calc reachable by name: what it
// says, what it takes, its range and source come from the formula's own
// docstring, so that the bench shows just what the code documents.
package handbook

import (
	"fmt"
	"path"
	"reflect"
	"regexp"
	"runtime"
	"slices"
	"sort"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"axlewright/calc"
)

// A Formula is one published formula.
type Formula struct {
	Name    string   // "bolt.stress-area"
	Func    string   // "bolt.StressArea"
	Summary string   // one sentence
	Lines   []string // the formula as written in the source
	Inputs  []Symbol
	Results []Symbol
	Valid   string // range of validity
	Source  string // standard or book, edition, clause

	function reflect.Value
	inputs   []leaf
	results  []leaf
}

// A Symbol is one quantity a formula takes or gives.
type Symbol struct {
	Key      string `json:"key"`  // how the quantity is named on the command line: "d", "nominal-diameter"
	Sign     string `json:"sign"` // the letter of the source, may be empty
	Meaning  string `json:"meaning"`
	Unit     string `json:"unit"`              // coherent SI; "-" for a plain number, "name" for a word
	Written  string `json:"written,omitempty"` // how a list is typed
	Optional bool   `json:"optional,omitempty"`
}

// All returns every formula, sorted by name.
func All() []Formula { return slices.Clone(load()) }

// Find returns the formula of that name.
func Find(name string) (Formula, error) {
	formulas := load()
	i := sort.Search(len(formulas), func(i int) bool { return formulas[i].Name >= name })
	if i < len(formulas) && formulas[i].Name == name {
		return formulas[i], nil
	}
	var near []string
	for _, f := range formulas {
		if _, word, _ := strings.Cut(f.Name, "."); strings.Contains(f.Name, name) || strings.Contains(name, word) {
			near = append(near, f.Name)
		}
	}
	if len(near) == 0 {
		return Formula{}, fmt.Errorf("no formula is named %q: \"axlewright work\" lists them all", name)
	}
	return Formula{}, fmt.Errorf("no formula is named %q; near it: %s", name, strings.Join(near, ", "))
}

// Cite returns the source of a function of calc such as "bolt.StressArea".
func Cite(function string) string {
	i := slices.IndexFunc(load(), func(f Formula) bool { return f.Func == function })
	if i < 0 {
		return ""
	}
	return load()[i].Source
}

// load reads the docstrings once. A formula whose docstring does not describe
// it is a fault of this program, found by the tests: it panics.
var load = sync.OnceValue(func() []Formula {
	lib, err := readLibrary(calc.Source)
	if err != nil {
		panic(err)
	}
	var formulas []Formula
	for _, fn := range functions() {
		f, err := newFormula(lib, fn)
		if err != nil {
			panic(fmt.Errorf("handbook: %w", err))
		}
		formulas = append(formulas, f)
	}
	slices.SortFunc(formulas, func(a, b Formula) int { return strings.Compare(a.Name, b.Name) })
	return formulas
})

// functions joins the lists that stand in one file a subject.
func functions() []any {
	var all []any
	for _, subject := range subjects {
		all = append(all, subject...)
	}
	return all
}

func newFormula(lib library, fn any) (Formula, error) {
	value := reflect.ValueOf(fn)
	name := path.Base(runtime.FuncForPC(value.Pointer()).Name()) // "bolt.StressArea"
	doc, ok := lib.formulas[name]
	if !ok {
		return Formula{}, fmt.Errorf("%s has no docstring", name)
	}
	pkg, word, _ := strings.Cut(name, ".")
	f := Formula{
		Name: pkg + "." + kebab(word), Func: name,
		Summary: lib.asTyped(sentence(word, doc.summary)), Valid: lib.asTyped(doc.valid), Source: lib.asTyped(doc.source),
		function: value,
	}
	for _, line := range doc.lines {
		f.Lines = append(f.Lines, lib.asTyped(line))
	}
	var err error
	if f.inputs, err = lib.inputLeaves(doc, value.Type()); err != nil {
		return f, fmt.Errorf("%s: %w", name, err)
	}
	if f.results, err = lib.resultLeaves(doc, value.Type()); err != nil {
		return f, fmt.Errorf("%s: %w", name, err)
	}
	f.Inputs, f.Results = lib.symbolsOf(f.inputs), lib.symbolsOf(f.results)
	for i, l := range f.inputs {
		f.Inputs[i].Written = l.written()
	}
	return f, nil
}

func (lib library) symbolsOf(leaves []leaf) []Symbol {
	symbols := make([]Symbol, len(leaves))
	for i, l := range leaves {
		symbols[i] = l.Symbol
		symbols[i].Meaning = lib.asTyped(l.Meaning)
	}
	return symbols
}

// codeName is a name of Go that is no word: it has a capital inside.
var codeName = regexp.MustCompile(`\b[A-Z][a-z0-9]+[A-Z]\w*`)

// asTyped writes the names of formulas and inputs in a docstring as they are
// typed at the bench: "UnifiedStressArea" is "bolt.unified-stress-area".
func (lib library) asTyped(text string) string {
	return codeName.ReplaceAllStringFunc(text, func(name string) string {
		for function := range lib.formulas {
			if strings.HasSuffix(function, "."+name) {
				return NameOf(function)
			}
		}
		for field := range lib.fields {
			if strings.HasSuffix(field, "."+name) {
				return kebab(name)
			}
		}
		return name
	})
}

// sentence takes the function's name off its docstring: "StressArea returns the
// tensile stress area." is "The tensile stress area."
func sentence(name, summary string) string {
	rest, found := strings.CutPrefix(summary, name+" ")
	if !found {
		return summary
	}
	rest = strings.TrimPrefix(rest, "returns ")
	first, size := utf8.DecodeRuneInString(rest)
	return string(unicode.ToUpper(first)) + rest[size:]
}

// kebab writes a Go name as the trade types it: "StressArea" is "stress-area",
// "ISOGrade" is "iso-grade", "D2" is "d2".
func kebab(name string) string {
	var b strings.Builder
	runes := []rune(name)
	for i, r := range runes {
		startsWord := unicode.IsUpper(r) && i > 0 &&
			(unicode.IsLower(runes[i-1]) || unicode.IsDigit(runes[i-1]) || i+1 < len(runes) && unicode.IsLower(runes[i+1]))
		if startsWord {
			b.WriteByte('-')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

// NameOf returns the handbook's name of a function of calc: "bolt.StressArea"
// is "bolt.stress-area".
func NameOf(function string) string {
	pkg, word, _ := strings.Cut(function, ".")
	return pkg + "." + kebab(word)
}
