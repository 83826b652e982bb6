package web

import (
	"cmp"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml"

	"axlewright/axle"
	"axlewright/quantity"
	"axlewright/shop"
)

// An enquiryForm is the enquiry as the sums take it, ready to be filled.
type enquiryForm struct {
	Fields []enquiryField
	Wrong  []string // what is wrong and belongs to no field of the form
}

// An enquiryField is one figure or word of the enquiry. Path is where it stands
// in the enquiry's YAML.
type enquiryField struct {
	Path, Title, Hint string
	Value             string
	Options           []string // one of these
	Several           bool     // any of these
	Optional          bool
	Wrong             string // why the sums cannot take what is in it
	Confirm           string // what confirms it where it is only unusual
	Confirmed         bool
}

// ID of the field in the page.
func (x enquiryField) ID() string { return "ask-" + strings.ReplaceAll(x.Path, ".", "-") }

// wrong counts what the sums cannot take.
func (f enquiryForm) wrong() int {
	n := len(f.Wrong)
	for _, x := range f.Fields {
		if x.Wrong != "" {
			n++
		}
	}
	return n
}

// vehicleFields are the figures of the vehicle, with what the trade assumes
// where nobody knows.
var vehicleFields = []enquiryField{
	{Path: "vehicle.name", Title: "Vehicle", Hint: "farm truck with trailer"},
	{Path: "vehicle.engine", Title: "Engine torque", Hint: "190 N·m ± 5 %, maker"},
	{Path: "vehicle.first_gear", Title: "Lowest gear", Hint: "3.6, exact"},
	{Path: "vehicle.low_range", Title: "Low range; 1 where there is none", Hint: "3.3, exact"},
	{Path: "vehicle.axle_load", Title: "Laden weight on this axle", Hint: "1450 kg ± 6 %"},
	{Path: "vehicle.tyre", Title: "Tyre planned, or loaded radius", Hint: "235/85R16"},
	{Path: "vehicle.axle_share", Title: "Share of the torque that can reach this axle", Hint: "1 where the centre locks", Value: "1, exact"},
	{Path: "vehicle.friction", Title: "Grip, tyre on ground", Hint: "0.7 ± 12 %", Value: "0.7 ± 12 %"},
	{Path: "vehicle.efficiency", Title: "Efficiency of the drive", Value: "0.9 ± 4 %"},
	{Path: "vehicle.shock", Title: "Shock: a landed wheel, a dropped clutch", Value: "1.1..1.6"},
}

// enquiryOf makes the form: what was kept with the vehicle or last asked, else
// what the first step of the job says.
func (v *visit) enquiryOf(j *shop.Job, c axle.Catalogue) (enquiryForm, error) {
	kept, err := v.keptEnquiry(j)
	if err != nil {
		return enquiryForm{}, err
	}
	values := flatten(kept)
	for path, value := range fromJob(j, c) {
		if values[path] == "" {
			values[path] = value
		}
	}
	f := enquiryForm{Fields: enquiryFields(c)}
	for i := range f.Fields {
		if text := values[f.Fields[i].Path]; text != "" {
			f.Fields[i].Value = text
		}
	}
	return f, nil
}

// keptEnquiry is the enquiry kept with the job's vehicle, "" where there is none.
func (v *visit) keptEnquiry(j *shop.Job) (string, error) {
	link := j.Value("enquiry", "vehicle").Link
	if link == nil {
		return "", nil
	}
	x, err := shop.Get[shop.Vehicle](v.ctx(), v.shop, link.ID)
	if shop.CodeOf(err) == shop.NotFound { // of an imported job
		return "", nil
	}
	return x.Enquiry, err
}

// askedAgain is the form as it was sent, with what is wrong beside its fields.
func askedAgain(form url.Values, c axle.Catalogue, found axle.Findings) enquiryForm {
	f := enquiryForm{Fields: enquiryFields(c)}
	for i := range f.Fields {
		x := &f.Fields[i]
		x.Value = strings.Join(form[x.Path], "\n")
		for _, one := range found {
			if field, _, _ := strings.Cut(one.Field, "["); field != x.Path || x.Wrong != "" {
				continue
			}
			x.Wrong = one.Problem
			if strings.TrimSpace(x.Value) == "" {
				x.Wrong = "the sums cannot do without this"
			}
		}
	}
	for _, one := range found {
		field, _, _ := strings.Cut(one.Field, "[")
		if !slices.ContainsFunc(f.Fields, func(x enquiryField) bool { return x.Path == field }) {
			f.Wrong = append(f.Wrong, strings.TrimPrefix(one.Field+": "+one.Problem, ": "))
		}
	}
	return f
}

// confirmation is what a form says of an unusual figure that is right: it holds
// for that figure alone, and another is asked after again.
func confirmation(path string, form url.Values) string { return path + "=" + form.Get(path) }

// unconfirmed are the unusual figures that the form does not confirm.
func unconfirmed(asks axle.Findings, form url.Values) axle.Findings {
	return slices.DeleteFunc(slices.Clone(asks), func(f axle.Finding) bool {
		return slices.Contains(form["right"], confirmation(f.Field, form))
	})
}

// askedAfter is the form as it was sent, with its unusual figures to be changed
// or confirmed.
func askedAfter(form url.Values, c axle.Catalogue, asks axle.Findings) enquiryForm {
	f := askedAgain(form, c, asks)
	for i := range f.Fields {
		x := &f.Fields[i]
		says := confirmation(x.Path, form)
		x.Confirmed = slices.Contains(form["right"], says)
		if x.Wrong != "" || x.Confirmed {
			x.Confirm = says
		}
	}
	return f
}

// enquiryFields are the fields of the form; their words come from the catalogue.
func enquiryFields(c axle.Catalogue) []enquiryField {
	names := func(n int, name func(int) string) []string {
		var all []string
		for i := range n {
			all = append(all, name(i))
		}
		return all
	}
	fields := []enquiryField{
		{Path: "casting", Title: "Casting", Options: names(len(c.Castings), func(i int) string { return c.Castings[i].Name })},
		{Path: "gears", Title: "Gear set", Options: names(len(c.GearSets), func(i int) string { return c.GearSets[i].Name })},
		{Path: "diff_centre", Title: "Diff centre, where not the casting’s own", Options: names(len(c.DiffCentres), func(i int) string { return c.DiffCentres[i].Name }), Optional: true},
		{Path: "mounting.position", Title: "Front or rear", Options: []string{string(axle.Rear), string(axle.Front)}},
		{Path: "mounting.forward", Title: "Flank that pulls forward", Hint: "drive is the convex side of the crown wheel’s teeth, as in most rear axles", Options: []string{"drive", "coast"}},
	}
	fields = append(fields, vehicleFields...)
	return append(fields,
		enquiryField{Path: "use", Title: "Use", Options: words([]axle.Use{axle.Road, axle.Farm, axle.Forest, axle.Towing, axle.Expedition, axle.Competition, axle.Rock, axle.Salt, axle.Original}), Several: true},
		enquiryField{Path: "duty", Title: "Duty", Hint: "how its days are shared between roads, fields and loads", Options: names(len(c.Duties), func(i int) string { return c.Duties[i].Name })},
		enquiryField{Path: "history", Title: "What broke before", Options: words([]axle.Fault{axle.HeelBreaks, axle.ShockFracture, axle.PinionStem, axle.HeadBearing, axle.CapWalk, axle.OilStarved}), Several: true, Optional: true})
}

// fromJob is what the first step of the job already tells.
func fromJob(j *shop.Job, c axle.Catalogue) map[string]string {
	m := map[string]string{"mounting.position": j.Value("enquiry", "end").Word()}
	if l := j.Value("enquiry", "vehicle").Link; l != nil {
		m["vehicle.name"] = l.Label
	}
	if e := j.Value("enquiry", "engine"); e.SI != nil {
		m["vehicle.engine"] = quantity.Exact(*e.SI, quantity.Torque)
	}
	if e := j.Value("enquiry", "axle_load"); e.SI != nil {
		m["vehicle.axle_load"] = quantity.Exact(*e.SI, quantity.Mass)
	}
	for _, item := range []string{"tyre_planned", "tyre_fitted"} {
		if t := j.Value("enquiry", item).Text; t != "" && m["vehicle.tyre"] == "" {
			m["vehicle.tyre"] = t
		}
	}
	if first, low, ok := strings.Cut(j.Value("enquiry", "gears").Text, "×"); ok {
		m["vehicle.first_gear"], m["vehicle.low_range"] = strings.TrimSpace(first), strings.TrimSpace(low)
	}
	if l := j.Casting(); l != nil {
		for _, k := range c.Castings {
			if k.Name == l.Label {
				m["casting"] = k.Name
			}
		}
	}
	m["use"] = strings.Join(j.Value("enquiry", "use").Words, "\n")
	return m
}

// readEnquiry makes the enquiry of the form and keeps it with the vehicle, as it
// was typed. It returns it as YAML: nothing but the known figures gets into it.
func (v *visit) readEnquiry() (string, *shop.Job, url.Values, error) {
	form, j, err := v.formOfJob()
	if err != nil {
		return "", nil, nil, err
	}
	text, err := enquiryYAML(j, form)
	if err != nil {
		return "", nil, nil, err
	}
	j, err = v.shop.KeepEnquiry(v.ctx(), v.who, j.ID, form.Get("vehicle.name"), text)
	return text, j, form, err
}

func enquiryYAML(j *shop.Job, form url.Values) (string, error) {
	get := func(path string) string { return strings.TrimSpace(form.Get(path)) }
	vehicle, mounting := yaml.MapSlice{}, yaml.MapSlice{}
	for _, f := range vehicleFields {
		if text := get(f.Path); text != "" {
			vehicle = append(vehicle, yaml.MapItem{Key: strings.TrimPrefix(f.Path, "vehicle."), Value: figureYAML(text)})
		}
	}
	for _, p := range []string{"position", "forward"} {
		mounting = append(mounting, yaml.MapItem{Key: p, Value: get("mounting." + p)})
	}
	doc := yaml.MapSlice{{Key: "number", Value: j.NumberText()}, {Key: "customer", Value: cmp.Or(j.Title(), "job "+j.NumberText())}, {Key: "casting", Value: get("casting")}, {Key: "gears", Value: get("gears")}}
	if c := get("diff_centre"); c != "" {
		doc = append(doc, yaml.MapItem{Key: "diff_centre", Value: c})
	}
	doc = append(doc, yaml.MapItem{Key: "mounting", Value: mounting}, yaml.MapItem{Key: "vehicle", Value: vehicle},
		yaml.MapItem{Key: "use", Value: form["use"]}, yaml.MapItem{Key: "duty", Value: get("duty")})
	if len(form["history"]) > 0 {
		doc = append(doc, yaml.MapItem{Key: "history", Value: form["history"]})
	}
	text, err := yaml.Marshal(doc)
	if err != nil {
		return "", shop.Fault(shop.Internal, "The enquiry cannot be written.").Because(err)
	}
	return string(text), nil
}

// figureYAML keeps a plain number a number, so that it is not taken for a word.
func figureYAML(text string) any {
	if x, err := strconv.ParseFloat(text, 64); err == nil {
		return x
	}
	return text
}

// flatten reads a kept enquiry back into the fields of the form.
func flatten(text string) map[string]string {
	var doc map[string]any
	if yaml.Unmarshal([]byte(text), &doc) != nil {
		return map[string]string{}
	}
	m := map[string]string{}
	var walk func(prefix string, value any)
	walk = func(prefix string, value any) {
		switch x := value.(type) {
		case map[string]any:
			for k, sub := range x {
				walk(prefix+"."+k, sub)
			}
		case []any:
			var all []string
			for _, e := range x {
				if s, ok := e.(string); ok {
					all = append(all, s)
				}
			}
			m[prefix[1:]] = strings.Join(all, "\n")
		case string:
			m[prefix[1:]] = x
		case float64:
			m[prefix[1:]] = amount(x)
		case int64:
			m[prefix[1:]] = strconv.FormatInt(x, 10)
		case uint64:
			m[prefix[1:]] = strconv.FormatUint(x, 10)
		}
	}
	walk("", doc)
	return m
}

// loadEnquiry reads an enquiry with the shop's own catalogue and no other file.
func (s *Server) loadEnquiry(text string) (axle.Enquiry, axle.Catalogue, error) {
	dir, err := os.MkdirTemp("", "axlewright-enquiry-*")
	if err != nil {
		return axle.Enquiry{}, axle.Catalogue{}, err
	}
	defer os.RemoveAll(dir)
	var files []string
	for _, f := range s.catalogue() {
		abs, err := filepath.Abs(f)
		if err != nil {
			return axle.Enquiry{}, axle.Catalogue{}, err
		}
		files = append(files, abs)
	}
	names, err := yaml.Marshal(map[string]any{"catalogue": files})
	if err != nil {
		return axle.Enquiry{}, axle.Catalogue{}, err
	}
	path := filepath.Join(dir, "enquiry.yaml")
	if err := os.WriteFile(path, []byte(text+string(names)), 0o600); err != nil {
		return axle.Enquiry{}, axle.Catalogue{}, err
	}
	e, c, err := axle.LoadEnquiry(path)
	if findings, ok := err.(axle.Findings); ok {
		// Where the file lies is nobody's business.
		for i := range findings {
			findings[i].File, findings[i].Line = filepath.Base(findings[i].File), 0
		}
		return e, c, findings
	}
	return e, c, err
}
