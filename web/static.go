package web

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"io/fs"
	"net/http"

	"axlewright/shop"
)

//go:embed static
var embedded embed.FS

// version changes with any of the static files, so that no tablet keeps an old one.
var version = func() string {
	sum := sha256.New()
	_ = fs.WalkDir(embedded, "static", func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			text, _ := embedded.ReadFile(path)
			sum.Write(text)
		}
		return err
	})
	return hex.EncodeToString(sum.Sum(nil))[:8]
}()

// staticFiles answers with the style sheet and the scripts.
func staticFiles() http.Handler {
	files := http.FileServerFS(embedded)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/static/" {
			http.NotFound(w, r)
			return
		}
		// The scripts import each other by plain names, so they are asked for
		// again each time and answered with "not changed".
		w.Header().Set("Cache-Control", "no-cache")
		w.Header().Set("ETag", `"`+version+`"`)
		if r.URL.Path == "/static/keep.js" {
			w.Header().Set("Service-Worker-Allowed", "/") // it keeps pages of the whole bench
		}
		files.ServeHTTP(w, r)
	})
}

func nothingHere(*visit) error { return shop.Fault(shop.NotFound, "There is no such page.") }
