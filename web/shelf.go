package web

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"axlewright/casting"
	"axlewright/shop"
)

// A shelf is what the shop's files say of castings. A file is read again when
// it has changed.
type shelf struct {
	sync.Mutex
	stamp     string // of the files that were read; never empty once they were
	catalogue casting.Catalogue
	gaugings  []casting.Gauging
	err       error
}

// variantFiles are the files that castings are told apart by: those of the
// folder identify that tell of variants and not of one casting.
func (s *Server) variantFiles() []string {
	return slices.DeleteFunc(s.filesIn("identify"), casting.IsBench)
}

// filesIn lists the YAML files of one of the shop's folders.
func (s *Server) filesIn(folder string) []string {
	if s.o.Folder == "" {
		return nil
	}
	return yamlIn(filepath.Join(s.o.Folder, folder))
}

// files reads the catalogue of variants and the stations, unless both are as
// they were.
func (s *Server) files() (casting.Catalogue, []casting.Gauging, error) {
	s.shelf.Lock()
	defer s.shelf.Unlock()
	stations := s.filesIn("stations")
	stamp := stampOf(append(s.filesIn("identify"), stations...))
	if stamp == s.shelf.stamp {
		return s.shelf.catalogue, s.shelf.gaugings, s.shelf.err
	}
	s.shelf.stamp, s.shelf.gaugings = stamp, nil
	s.shelf.catalogue, s.shelf.err = casting.Catalogue{}, shop.Fault(shop.NotFound, "The shop has no files of variants in its folder identify.")
	if variants := s.variantFiles(); len(variants) > 0 {
		s.shelf.catalogue, s.shelf.err = casting.LoadCatalogue(variants...)
	}
	for _, path := range stations {
		g, err := casting.LoadGauging(path)
		if err != nil && s.shelf.err == nil {
			s.shelf.err = err
		}
		s.shelf.gaugings = append(s.shelf.gaugings, g)
	}
	return s.shelf.catalogue, s.shelf.gaugings, s.shelf.err
}

// stampOf changes whenever one of the files does.
func stampOf(paths []string) string {
	var b strings.Builder
	b.WriteString("files\n")
	for _, path := range paths {
		about, err := os.Stat(path)
		if err != nil {
			fmt.Fprintf(&b, "%s: %v\n", path, err)
			continue
		}
		fmt.Fprintf(&b, "%s %d %d\n", path, about.Size(), about.ModTime().UnixNano())
	}
	return b.String()
}

// A knowledge is what the shop knows of castings, with the sums made ready.
type knowledge struct {
	*shop.Variants
	*casting.Matcher
	Gaugings []casting.Gauging
}

// know joins files, cards and confirmed castings for the job in hand.
func (v *visit) know(j *shop.Job) (*knowledge, error) {
	files, gaugings, err := v.files()
	if err != nil {
		return nil, err
	}
	known, err := v.shop.Variants(v.ctx(), files, j.ID)
	if err != nil {
		return nil, err
	}
	return &knowledge{known, casting.NewMatcher(&known.Catalogue), gaugings}, nil
}
