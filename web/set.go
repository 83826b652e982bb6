package web

import (
	"errors"
	"net/http"
	"net/url"
	"strconv"
	"time"

	"axlewright/shop"
)

// set writes one box of a job. Scripts get the box back, whatever became of it;
// without scripts the browser goes back to the step.
func set(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	slot := slotOf(form)
	field, ok := shop.FieldOf(slot.Step, slot.Item)
	beside := slot.Beside()
	if !ok && !beside {
		return shop.Fault(shop.NotFound, "There is no such box.")
	}
	j, err := v.write(slot, field, form)
	if err == nil && !v.bare() {
		return v.see(backTo(form, j.ID, slot))
	}
	code := codeOf(err)
	if err != nil && (code == shop.SignIn || code == shop.NotFound || beside || statusOf[code] >= 500) {
		return err
	}
	if err != nil && !v.bare() {
		return err
	}
	return v.showBox(j, slot, form, err)
}

// slotOf is the place of a record that a form or an address names.
func slotOf(form url.Values) shop.Slot {
	return shop.Slot{Step: shop.StepKey(form.Get("step")), Item: form.Get("item"), Place: form.Get("place")}
}

// write does what the form asks for and returns the job as it then is.
func (v *visit) write(slot shop.Slot, field shop.Field, form url.Values) (*shop.Job, error) {
	want := shop.Set{Slot: slot, Why: form.Get("why"), Ticket: form.Get("ticket")}
	var err error
	switch {
	case form.Get("withdraw") != "":
		want.Value = shop.Withdrawn()
	case slot.Beside():
		want.Value = shop.Text(form.Get("value"))
	default:
		want.Value, err = valueOf(field, form)
	}
	if err != nil {
		return nil, err
	}
	if want.Corrects, err = strconv.ParseInt(form.Get("corrects"), 10, 64); err != nil && form.Get("corrects") != "" {
		return nil, shop.Fault(shop.Invalid, "The form does not say what it follows: load the page again.")
	}
	if field.Kind == shop.FieldFigure {
		want.Instrument = form.Get("instrument")
	}
	// The time at which it was typed is kept where it was sent much later.
	if taken, err := time.Parse(time.RFC3339, form.Get("taken")); err == nil && v.o.Now().Sub(taken) > time.Minute {
		want.Taken = taken
	}
	return v.shop.Record(v.ctx(), v.who, v.jobID(), want)
}

// showBox answers with the box after writing, or with why nothing was written.
func (v *visit) showBox(j *shop.Job, slot shop.Slot, form url.Values, failed error) error {
	var err error
	if j == nil {
		if j, err = v.job(); err != nil {
			return err
		}
	}
	step, ok := j.Step(slot.Step)
	if !ok {
		return shop.Fault(shop.NotFound, "There is no such step.")
	}
	b, err := v.bounds(v.ctx(), j)
	if err != nil {
		return err
	}
	for _, f := range step.Fields {
		if f.Field.Key != slot.Item {
			continue
		}
		p, ok := placeOf(f, slot)
		if !ok {
			p = shop.PlaceView{Slot: slot}
		}
		x := v.boxOf(j, b, slot.Step, f, p)
		status := http.StatusOK
		if failed != nil {
			fault := faultOf(failed)
			status = fault.Status
			var e *shop.Error
			if errors.As(failed, &e) && e.Clash != nil && e.Clash.Stands != nil && e.Clash.Refused != nil {
				x.Clash = e.Clash
			} else {
				x.Refused = fault.Says
				if errors.As(failed, &e) && e.Stop != nil {
					x.Refused += " " + e.Stop.Why + " May be overridden by: " + rolesText(e.Stop.May) + "."
				}
			}
			x.Typed, x.Unit = form.Get("value"), form.Get("unit")
		}
		return v.showAs(status, boxForm(x))
	}
	return shop.Fault(shop.NotFound, "There is no such box.")
}

func placeOf(f shop.FieldView, slot shop.Slot) (shop.PlaceView, bool) {
	for _, p := range f.Places {
		if p.Slot == slot {
			return p, true
		}
	}
	return shop.PlaceView{}, false
}

// backTo is where a form without scripts leads.
func backTo(form url.Values, job shop.ID, slot shop.Slot) string {
	if next := form.Get("next"); next != "" {
		return local(next)
	}
	return "/job/" + string(job) + "/" + string(slot.Step) + "#" + boxID(slot)
}

// formOf is a value as the fields of the form that writes it.
func formOf(v shop.Value) [][2]string {
	switch {
	case v.Withdrawn:
		return [][2]string{{"withdraw", "1"}}
	case v.Typed != "":
		return [][2]string{{"value", v.Typed}}
	case len(v.Words) > 0:
		var all [][2]string
		for _, w := range v.Words {
			all = append(all, [2]string{"value", w})
		}
		return all
	case v.Day != "":
		return [][2]string{{"value", v.Day}}
	case v.Sum != nil:
		return [][2]string{{"value", strconv.FormatFloat(v.Sum.Units(), 'f', 2, 64)}}
	case v.Link != nil && v.Quantity != nil:
		all := [][2]string{{"card", string(v.Link.ID)}, {"quantity", amount(*v.Quantity)}}
		if v.Reserved {
			all = append(all, [2]string{"reserved", "1"})
		}
		return all
	case v.Link != nil:
		return [][2]string{{"card", string(v.Link.ID)}}
	}
	return [][2]string{{"value", v.Text}}
}
