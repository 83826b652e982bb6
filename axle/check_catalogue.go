package axle

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"axlewright/calc/material"
	"axlewright/quantity"
)

// checkCatalogue finds what is wrong with a whole catalogue beyond its single
// figures: names that stand for nothing, parts that do not go together. A part
// with a finding already is not looked at again: one fault would be told twice.
func (r *reading) checkCatalogue(c *Catalogue) {
	r.checkDefaults(c.DefaultDoubts)
	if c.WantedChance < 0 || c.WantedChance >= 1 {
		r.about("wanted_chance", "%g is not a chance; expected 0 to below 1, such as 0.95", c.WantedChance)
	}
	for i := range c.Bearings {
		r.checkBearing(&c.Bearings[i])
	}
	for i := range c.GearSets {
		r.checkGears(&c.GearSets[i])
	}
	for i := range c.DiffCentres {
		r.checkCentre(&c.DiffCentres[i])
	}
	for i := range c.Castings {
		r.checkCasting(c, &c.Castings[i])
	}
	for i := range c.Upgrades {
		r.checkUpgrade(c, &c.Upgrades[i])
	}
	for i := range c.Castings {
		r.checkCount(c, &c.Castings[i])
	}
	for i := range c.Duties {
		r.checkDuty(&c.Duties[i])
	}
	for i, m := range c.Measurements {
		r.checkMeasurement(m, fmt.Sprintf("measurements[%d]", i+1))
	}
}

func (r *reading) checkDefaults(defaults []DefaultDoubt) {
	seen := map[string]string{}
	for i, d := range defaults {
		field := fmt.Sprintf("default_doubts[%d]", i+1)
		if !r.clean(field) {
			continue
		}
		known := make([]string, len(figureKinds))
		for k, kind := range figureKinds {
			known[k] = string(kind)
		}
		switch {
		case !slices.Contains(known, d.Kind):
			r.about(field+".kind", "%q is no kind of figure; expected %s", d.Kind, quoted(known))
		case seen[d.Kind] != "":
			first := r.where(seen[d.Kind])
			r.about(field+".kind", "%q has a default doubt already, at %s:%d; leave one out", d.Kind, first.source.file, first.line)
			continue
		case d.Percent <= 0 || d.Percent > mostPercent:
			r.about(field+".percent", "%g is no doubt in percent; expected above 0 to %d", d.Percent, mostPercent)
		}
		seen[d.Kind] = field
	}
}

// checkCount finds a casting with more builds than can be compared.
func (r *reading) checkCount(c *Catalogue, k *Casting) {
	if !r.clean("") {
		return
	}
	if _, err := c.Builds(k.Name, k.GearSets[0], nil); err != nil {
		r.about("castings["+k.Name+"]", "%v", err)
	}
}

func (r *reading) checkDuty(d *Duty) {
	field := "duties[" + d.Name + "]"
	switch {
	case !r.clean(field):
		return
	case d.Record != "" && len(d.Blocks) > 0:
		r.about(field+".record", "a duty has blocks or a record; leave one out")
		return
	case d.Record != "":
		return
	case len(d.Blocks) == 0:
		r.about(field, "says nothing; expected blocks, or a record such as record: log.csv")
		return
	}
	sum := 0.0
	for _, b := range d.Blocks {
		sum += b.Share.Value
		inner := field + ".blocks[" + b.Name + "]"
		switch {
		case b.Torque.Given() == b.AxleTorque.Given():
			r.about(inner, "states its torque by one of torque (a share of what the vehicle can do) and axle_torque (N·m)")
		case b.Speed.Value == 0 && b.Share.Value > 0:
			r.about(inner+".speed", "a share of the distance is covered at some speed, not at none")
		}
	}
	if math.Abs(sum-1) > 0.005 {
		r.about(field+".blocks", "the shares of the blocks add up to %.4g; expected 1", sum)
	}
}

func (r *reading) checkMeasurement(m Measurement, field string) {
	if !r.clean(field) {
		return
	}
	if m.Leaves >= 1 {
		r.about(field+".leaves", "leaves %g of the doubt; expected 0 to below 1", m.Leaves)
	}
	if len(m.Figures) == 0 {
		r.about(field+".figures", "names no figure that it narrows")
	}
	for _, f := range m.Figures {
		if known := figurePlaces(); !slices.Contains(known, f) && !strings.HasPrefix(f, "Duty.") && !strings.HasPrefix(f, "Model.") {
			hint := "expected such as Casting.CapBolts.Nut or Vehicle.AxleLoad"
			if near := nearest(f, known); near != "" {
				hint = fmt.Sprintf("is %s meant?", near)
			}
			r.about(field+".figures", "%q is no figure of a build or a vehicle; %s", f, hint)
		}
	}
}

// figurePlaces lists the places of all figures of a build with every part in it,
// and of a vehicle.
func figurePlaces() []string {
	full := Assembly{Casting: Casting{Compliance: &Compliance{}}, Overlay: &Overlay{}, RingDowel: &RingDowel{}, Peg: &Peg{}}
	var places []string
	note := func(place string, _ *Number) { places = append(places, place) }
	EachFigure(&full, "", note)
	EachFigure(&Vehicle{}, "Vehicle", note)
	return places
}

// checkMetal finds a metal that is not in the tables.
func (r *reading) checkMetal(name, field string) (material.Metal, bool) {
	metal, err := material.Lookup(name)
	if err == nil {
		return metal, true
	}
	known := material.Names()
	near := slices.DeleteFunc(slices.Clone(known), func(k string) bool {
		return !strings.HasPrefix(strings.ToLower(k), strings.ToLower(name))
	})
	if one := nearest(name, known); len(near) == 0 && one != "" {
		near = []string{one}
	}
	hint := "expected a grade as its standard writes it, such as EN-GJS-400-15 or S355J2"
	if len(near) > 0 {
		hint = "is " + quoted(near) + " meant?"
	}
	r.about(field, "there is no metal %q in the tables; %s", name, hint)
	return metal, false
}

// say prints a value of a dimension for a sentence.
func say(value float64, dim quantity.Dimension) string { return quantity.Format(value, dim) }

// sentence drops the name of a function from the front of an error of calc.
func sentence(err error) string {
	text := err.Error()
	if at := strings.Index(text, ": "); at > 0 && !strings.Contains(text[:at], " ") {
		return text[at+2:]
	}
	return text
}

// numberType is the type of every figure, whatever its dimension.
var numberType = reflect.TypeFor[Number]()
