package web

import (
	"errors"
	"net/http"

	"axlewright/shop"
)

// importJob takes in a job that this shop or another exported, and leads to it.
func importJob(v *visit) error {
	if err := v.who.Must(shop.ActSettings); err != nil {
		return err
	}
	if err := v.r.ParseMultipartForm(4 << 20); err != nil {
		var large *http.MaxBytesError
		if errors.As(err, &large) {
			return shop.Fault(shop.TooLarge, "An exported job has at most %d MB here: take it in with \"axlewright record import\".", maxJob>>20)
		}
		return shop.Fault(shop.Invalid, "The form cannot be read.").Because(err)
	}
	defer func() { _ = v.r.MultipartForm.RemoveAll() }() // temporary files of the upload
	file, head, err := v.r.FormFile("job")
	if err != nil {
		return shop.Fault(shop.Invalid, "Choose the file of an exported job first.")
	}
	defer file.Close()
	got, err := v.shop.Import(v.ctx(), v.who, file, head.Size)
	if err != nil {
		return err
	}
	return v.see("/job/" + string(got.Job.ID) + "/record")
}
