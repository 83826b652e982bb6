package web

import (
	"os"
	"strconv"

	"axlewright/shop"
)

// exportJob hands a job over as one file that can be read without the program.
// It is written to the disk first, so that a fault on the way is told and not
// sent as half a file.
func exportJob(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	file, err := os.CreateTemp("", "axlewright-*.zip")
	if err != nil {
		return shop.Fault(shop.Internal, "No file can be made.").Because(err)
	}
	defer os.Remove(file.Name())
	defer file.Close()
	if err := v.shop.Export(v.ctx(), v.who, j.ID, file); err != nil {
		return err
	}
	size, err := file.Seek(0, 1)
	if err == nil {
		_, err = file.Seek(0, 0)
	}
	if err != nil {
		return shop.Fault(shop.Internal, "The file cannot be read back.").Because(err)
	}
	h := v.w.Header()
	h.Set("Content-Type", "application/zip")
	h.Set("Content-Length", strconv.FormatInt(size, 10))
	h.Set("Content-Disposition", `attachment; filename="job-`+j.NumberText()+`.zip"`)
	_, err = file.WriteTo(v.w)
	return err
}
