package shop

import (
	"archive/zip"
	"bufio"
	"bytes"
	"errors"
	"io"
	"maps"
	"slices"
	"strings"
)

// What an archive from outside may hold. Names in it are only ever compared,
// never used as paths.
const (
	maxArchiveNames = 500_000
	maxMember       = 64 << 20 // unpacked, of a file, manifest or card list
	maxLine         = maxCard + maxCard/2
)

// archive reads our zip files and distrusts them.
type archive struct {
	members map[string]*zip.File
	read    map[string]bool // members that were asked for: their checksums are told as they are read to the end
}

func openArchive(r io.ReaderAt, size int64) (*archive, error) {
	z, err := zip.NewReader(r, size)
	if err != nil {
		return nil, Fault(Damaged, "This is not a whole zip file.").Because(err)
	}
	if len(z.File) > maxArchiveNames {
		return nil, Fault(TooLarge, "This zip file holds too many names.")
	}
	a := &archive{members: make(map[string]*zip.File, len(z.File)), read: map[string]bool{}}
	for _, f := range z.File {
		if _, twice := a.members[f.Name]; twice {
			return nil, Fault(Damaged, "The zip file holds %q twice.", printable(f.Name, 80))
		}
		a.members[f.Name] = f
	}
	return a, nil
}

func (a *archive) has(name string) bool { return a.members[name] != nil }

func (a *archive) open(name string) (io.ReadCloser, error) {
	f := a.members[name]
	if f == nil {
		return nil, Fault(Damaged, "The zip file lacks %s.", name)
	}
	a.read[name] = true
	r, err := f.Open()
	if err != nil {
		return nil, unreadable(name, err)
	}
	return r, nil
}

// content unpacks a member, at most so many bytes of it: what the archive says
// of its size is not believed.
func (a *archive) content(name string, most int64) ([]byte, error) {
	r, err := a.open(name)
	if err != nil {
		return nil, err
	}
	defer r.Close()
	content, err := io.ReadAll(io.LimitReader(r, most+1))
	if err != nil {
		return nil, unreadable(name, err)
	}
	if int64(len(content)) > most {
		return nil, Fault(TooLarge, "%s in the zip file is larger than it can rightly be.", name)
	}
	return content, nil
}

// lines calls each for every line of a member.
func (a *archive) lines(name string, each func([]byte) error) error {
	r, err := a.open(name)
	if err != nil {
		return err
	}
	defer r.Close()
	s := bufio.NewScanner(r)
	s.Buffer(make([]byte, 0, 64<<10), maxLine)
	s.Split(wholeLines)
	for s.Scan() {
		if err := each(bytes.Clone(s.Bytes())); err != nil {
			return err
		}
	}
	if errors.Is(s.Err(), bufio.ErrTooLong) {
		return Fault(TooLarge, "%s in the zip file has a line longer than it can rightly be.", name)
	}
	if s.Err() != nil {
		return unreadable(name, s.Err())
	}
	return nil
}

// rest reads the members that nobody asked for, such as the words for people, so
// that damage to them is found too.
func (a *archive) rest() error {
	for _, name := range slices.Sorted(maps.Keys(a.members)) {
		if a.read[name] {
			continue
		}
		r, err := a.open(name)
		if err != nil {
			return err
		}
		_, err = io.Copy(io.Discard, r)
		if err = errors.Join(err, r.Close()); err != nil {
			return unreadable(printable(name, 80), err)
		}
	}
	return nil
}

// wholeLines is bufio.ScanLines without mercy: a last line without its end was
// cut off, and carriage returns belong to the line.
func wholeLines(data []byte, atEnd bool) (int, []byte, error) {
	if i := bytes.IndexByte(data, '\n'); i >= 0 {
		return i + 1, data[:i], nil
	}
	if atEnd && len(data) > 0 {
		return 0, nil, errors.New("the last line was cut off")
	}
	return 0, nil, nil
}

func unreadable(name string, err error) error {
	return Fault(Damaged, "%s in the zip file cannot be read.", name).Because(err)
}

// file returns the content of a kept file, checked against its hash.
func (a *archive) file(f File) ([]byte, error) {
	content, err := a.content(memberOf(f), maxMember)
	if err == nil && hashOf(content) != f.SHA256 {
		err = Fault(Damaged, "The file %s… in the zip file is not what it was.", short(f.SHA256))
	}
	return content, err
}

// memberOf is the name of a kept file in an archive. The ending is for people.
func memberOf(f File) string {
	ending := ".bin"
	switch media, _, _ := strings.Cut(f.Media, ";"); media {
	case "image/jpeg":
		ending = ".jpg"
	case "application/pdf":
		ending = ".pdf"
	case "application/json":
		ending = ".json"
	}
	return "files/" + f.SHA256 + ending
}

// Files lists the files that an entry names.
func (e *Entry) Files() []File {
	var all []File
	for _, f := range []*File{e.Value.File, e.Value.Thumb} {
		if f != nil {
			all = append(all, *f)
		}
	}
	return all
}
