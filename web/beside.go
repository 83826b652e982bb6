package web

import (
	"errors"
	"io"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"axlewright/shop"
)

// jobID is the job that an action writes to.
func (v *visit) jobID() shop.ID { return shop.ID(v.r.PathValue("job")) }

// backToStep leads back to the step that a form belongs to.
func (v *visit) backToStep(step string, part string) error {
	return v.see("/job/" + string(v.jobID()) + "/" + step + part)
}

// note keeps free words beside a step.
func note(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	step := form.Get("step")
	if _, err := v.shop.Note(v.ctx(), v.who, v.jobID(), shop.StepKey(step), strings.TrimSpace(form.Get("text")), form.Get("ticket")); err != nil {
		return err
	}
	if v.bare() {
		v.w.WriteHeader(http.StatusNoContent)
		return nil
	}
	return v.backToStep(step, "#beside")
}

// mark marks a step done or not needed, or takes the mark back.
func mark(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	step, word := form.Get("step"), form.Get("word")
	corrects, _ := strconv.ParseInt(form.Get("corrects"), 10, 64)
	if word == "" {
		_, err = v.shop.Record(v.ctx(), v.who, v.jobID(), shop.Set{Corrects: corrects, Value: shop.Withdrawn(),
			Slot: shop.Slot{Step: shop.StepKey(step), Item: shop.ItemMark}})
	} else {
		_, err = v.shop.Mark(v.ctx(), v.who, v.jobID(), shop.StepKey(step), word, corrects, form.Get("why"))
	}
	if err != nil {
		return err
	}
	return v.backToStep(step, "#mark")
}

// photo keeps a photograph beside a step.
func photo(v *visit) error {
	if err := v.r.ParseMultipartForm(4 << 20); err != nil {
		var large *http.MaxBytesError
		if errors.As(err, &large) {
			return shop.Fault(shop.TooLarge, "A photograph has at most 25 MB.")
		}
		return shop.Fault(shop.Invalid, "The form cannot be read.").Because(err)
	}
	defer func() { _ = v.r.MultipartForm.RemoveAll() }() // temporary files of the upload
	file, _, err := v.r.FormFile("photo")
	if err != nil {
		return shop.Fault(shop.Invalid, "Choose a photograph first.")
	}
	defer file.Close()
	upload, err := io.ReadAll(io.LimitReader(file, shop.MaxUpload+1))
	if err != nil {
		return shop.Fault(shop.Invalid, "The photograph did not arrive whole: send it again.").Because(err)
	}
	step := v.r.PostFormValue("step")
	if _, err := v.shop.AddPhoto(v.ctx(), v.who, v.jobID(), shop.StepKey(step), strings.TrimSpace(v.r.PostFormValue("caption")), upload); err != nil {
		return err
	}
	if v.bare() {
		v.w.WriteHeader(http.StatusNoContent)
		return nil
	}
	return v.backToStep(step, "#beside")
}

// setState moves the job on, or back.
func setState(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	corrects, _ := strconv.ParseInt(form.Get("corrects"), 10, 64)
	if _, err := v.shop.SetState(v.ctx(), v.who, v.jobID(), shop.State(form.Get("state")), corrects, form.Get("why")); err != nil {
		return err
	}
	return v.see("/job/" + string(v.jobID()))
}

// override lets a job go on over a stop, by name and with a reason.
func override(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	if _, err := v.shop.Override(v.ctx(), v.who, v.jobID(), form.Get("stop"), strings.TrimSpace(form.Get("why"))); err != nil {
		return err
	}
	return v.see(local(form.Get("next")))
}

// certify signs the record as it stands.
func certify(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	if _, err := v.shop.Certify(v.ctx(), v.who, v.jobID(), strings.TrimSpace(form.Get("why"))); err != nil {
		return err
	}
	return v.see("/job/" + string(v.jobID()) + "/certificate")
}

// mayOverride says whether the button is offered; the shop decides.
func mayOverride(stop shop.StandingStop, role shop.Role) bool {
	return role.May(shop.ActOverride) && slices.Contains(stop.May, role)
}
