package web

import (
	"slices"
	"strings"

	"axlewright/handbook"
	"axlewright/quantity"
	"axlewright/shop"
)

// A subject is the formulas of one subject of the handbook.
type subject struct {
	Name     string
	Formulas []handbook.Formula
}

// handbookPage lists every formula, or those that hold all the words.
func handbookPage(v *visit) error {
	text := strings.TrimSpace(v.r.URL.Query().Get("q"))
	asked := strings.Fields(strings.ToLower(text))
	var all []subject
	for _, f := range handbook.All() {
		if !holds(strings.ToLower(f.Name+" "+f.Summary+" "+f.Source), asked) {
			continue
		}
		name, _, _ := strings.Cut(f.Name, ".")
		if len(all) == 0 || all[len(all)-1].Name != name {
			all = append(all, subject{Name: name})
		}
		last := &all[len(all)-1]
		last.Formulas = append(last.Formulas, f)
	}
	return v.show(handbookSheet(v.frame("Handbook").at("handbook"), all, text))
}

func holds(text string, asked []string) bool {
	return !slices.ContainsFunc(asked, func(w string) bool { return !strings.Contains(text, w) })
}

// A formulaShow is a formula with what was put in and what came out.
type formulaShow struct {
	Formula handbook.Formula
	In      map[string]string
	Working *handbook.Working
	Refused []string
}

// formulaPage shows a formula as a form, and computes it where it was filled.
func formulaPage(v *visit) error {
	f, err := handbook.Find(v.r.PathValue("formula"))
	if err != nil {
		return shop.Fault(shop.NotFound, "There is no such formula.")
	}
	show := formulaShow{Formula: f, In: map[string]string{}}
	given := map[string]string{}
	for _, s := range f.Inputs {
		text := strings.TrimSpace(v.r.URL.Query().Get(s.Key))
		show.In[s.Key] = text
		if text != "" {
			given[s.Key] = text
		}
	}
	if len(given) > 0 || len(f.Inputs) == 0 {
		w, err := f.Compute(given)
		if err != nil {
			show.Refused = strings.Split(err.Error(), "\n")
		} else {
			show.Working = &w
		}
	}
	return v.show(formulaSheet(v.frame(nameOfFormula(f.Name)).at("handbook"), show))
}

// nameOfFormula is the last part of its name in words: "stress area".
func nameOfFormula(name string) string {
	_, last, _ := strings.Cut(name, ".")
	return titleCase(strings.ReplaceAll(last, "-", " "))
}

// exampleOf shows how an input is typed.
func exampleOf(s handbook.Symbol) string {
	if s.Written != "" {
		return s.Written
	}
	dim, ok := quantity.ByMeaning(s.Unit, s.Meaning)
	if !ok {
		return ""
	}
	return "such as " + dim.Example()
}
