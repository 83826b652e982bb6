package web

import (
	"net/url"
	"os"
	"path/filepath"
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
	Kept   bool // it was filled before
}

// An enquiryField is one figure or word of the enquiry. Path is where it stands
// in the enquiry's YAML.
type enquiryField struct {
	Path, Title, Hint string
	Value             string
	Options           []string // one of these
	Several           bool     // any of these
	Optional          bool
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

// enquiryOf makes the form: what was kept with the vehicle, else what the first
// step of the job says.
func (v *visit) enquiryOf(j *shop.Job, c axle.Catalogue) (enquiryForm, error) {
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
		{Path: "mounting.position", Title: "Front or rear", Options: []string{string(axle.Rear), string(axle.Front)}, Value: j.Value("enquiry", "end").Word()},
		{Path: "mounting.forward", Title: "Flank that pulls forward", Hint: "drive is the convex side of the crown wheel’s teeth, as in most rear axles", Options: []string{"drive", "coast"}},
	}
	fields = append(fields, vehicleFields...)
	fields = append(fields,
		enquiryField{Path: "use", Title: "Use", Options: words([]axle.Use{axle.Road, axle.Farm, axle.Forest, axle.Towing, axle.Expedition, axle.Competition, axle.Rock, axle.Salt, axle.Original}), Several: true},
		enquiryField{Path: "duty", Title: "Duty", Options: names(len(c.Duties), func(i int) string { return c.Duties[i].Name })},
		enquiryField{Path: "history", Title: "What broke before", Options: words([]axle.Fault{axle.HeelBreaks, axle.ShockFracture, axle.PinionStem, axle.HeadBearing, axle.CapWalk, axle.OilStarved}), Several: true, Optional: true})

	kept := map[string]string{}
	f := enquiryForm{}
	if link := j.Value("enquiry", "vehicle").Link; link != nil {
		x, err := shop.Get[shop.Vehicle](v.ctx(), v.shop, link.ID)
		if err != nil && shop.CodeOf(err) != shop.NotFound {
			return f, err
		}
		if x.Enquiry != "" {
			kept, f.Kept = flatten(x.Enquiry), true
		} else if err == nil {
			kept["vehicle.name"] = x.Title
		}
	}
	for path, value := range fromJob(j, c) {
		if kept[path] == "" {
			kept[path] = value
		}
	}
	for i := range fields {
		if text := kept[fields[i].Path]; text != "" {
			fields[i].Value = text
		}
	}
	f.Fields = fields
	return f, nil
}

// fromJob is what the first step of the job already tells.
func fromJob(j *shop.Job, c axle.Catalogue) map[string]string {
	m := map[string]string{}
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

// readEnquiry makes the enquiry of the form, keeps it with the vehicle and
// returns it as YAML. Nothing but the known figures gets into it.
func (v *visit) readEnquiry() (string, error) {
	form, j, err := v.formOfJob()
	if err != nil {
		return "", err
	}
	text, err := enquiryYAML(j, form)
	if err != nil {
		return "", err
	}
	if link := j.Value("enquiry", "vehicle").Link; link != nil {
		x, err := shop.Get[shop.Vehicle](v.ctx(), v.shop, link.ID)
		if err != nil {
			return "", err
		}
		x.Enquiry = text
		if _, err := shop.Save(v.ctx(), v.shop, v.who, x); err != nil {
			return "", err
		}
	}
	return text, nil
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
	doc := yaml.MapSlice{{Key: "number", Value: j.NumberText()}, {Key: "customer", Value: j.Title()}, {Key: "casting", Value: get("casting")}, {Key: "gears", Value: get("gears")}}
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
	for _, f := range s.o.Catalogue {
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
