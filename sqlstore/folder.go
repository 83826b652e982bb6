package sqlstore

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"axlewright/shop"
)

// openFolder makes the shop's folder and takes its lock.
func openFolder(dir string) (*os.File, error) {
	for _, d := range []string{dir, filepath.Join(dir, "files")} {
		if err := os.MkdirAll(d, 0o700); err != nil {
			return nil, fileFault(err, "The shop's folder %s cannot be made.", dir)
		}
	}
	f, err := os.OpenFile(filepath.Join(dir, "shop.lock"), os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, fileFault(err, "The shop's folder %s cannot be written to.", dir)
	}
	held, err := lockFile(f)
	if err != nil || held {
		who, _ := io.ReadAll(io.LimitReader(f, 100))
		f.Close()
		if err != nil {
			return nil, fileFault(err, "The shop in %s cannot be locked.", dir)
		}
		return nil, shop.Fault(shop.InUse, "Another program has the shop in %s open (%s). Close that one first.", dir, holder(string(who)))
	}
	// For the sentence above only; the lock itself does not need it.
	_ = f.Truncate(0)
	_, _ = f.WriteAt(fmt.Appendf(nil, "process %d\n", os.Getpid()), 0)
	return f, nil
}

func holder(text string) string {
	if text = strings.TrimSpace(text); text != "" {
		return text
	}
	return "process not known"
}
