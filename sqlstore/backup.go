package sqlstore

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"axlewright/shop"
)

// BackUpFile writes the whole shop with its photographs into one zip file,
// while the shop goes on working, then reads it again from end to end. A file
// of that name is replaced only by a whole new one.
func (s *Store) BackUpFile(ctx context.Context, sh *shop.Shop, path string) (shop.Backup, error) {
	return s.backUp(ctx, sh, path, true, nil)
}

// backUp writes beside the name, checks, flushes, and renames last.
func (s *Store) backUp(ctx context.Context, sh *shop.Shop, path string, files bool, beside shop.FilesBeside) (shop.Backup, error) {
	var b shop.Backup
	sick := s.IntegrityCheck(ctx) // told at the end: what can still be read is saved first
	f, err := os.CreateTemp(filepath.Dir(path), ".axlewright-*.part")
	if err != nil {
		return b, fileFault(err, "A backup cannot be written into %s.", filepath.Dir(path))
	}
	defer os.Remove(f.Name())
	defer f.Close()
	if b, err = sh.BackUp(ctx, shop.Program, f, files); err != nil {
		return b, backupFault(err)
	}
	if err := f.Sync(); err != nil {
		return b, fileFault(err, "The backup cannot be flushed.")
	}
	if _, err := checkFile(f, beside); err != nil {
		return b, err
	}
	if err := errors.Join(f.Close(), os.Rename(f.Name(), path), syncFolder(filepath.Dir(path))); err != nil {
		return b, fileFault(err, "The backup cannot be given its name %s.", path)
	}
	if sick != nil {
		return b, sick
	}
	if len(b.Damaged)+len(b.Lost) > 0 {
		return b, shop.Fault(shop.Damaged, "The backup is made, but %d records are damaged and %d files lost: %s",
			len(b.Damaged), len(b.Lost), strings.Join(append(b.Damaged, b.Lost...), "; "))
	}
	return b, nil
}

// backupFault tells a full disk from other faults.
func backupFault(err error) error {
	if diskFull(err) {
		return shop.Fault(shop.Full, "The disk is full: no backup was made. Make room, then try again.").Because(err)
	}
	return err
}

func checkFile(f *os.File, beside shop.FilesBeside) (shop.Backup, error) {
	info, err := f.Stat()
	if err != nil {
		return shop.Backup{}, fileFault(err, "The backup cannot be read.")
	}
	return shop.CheckBackup(f, info.Size(), beside)
}

// CheckFile reads a backup from end to end. Photographs that are not in it are
// looked for in the folder files beside it.
func CheckFile(path string) (shop.Backup, error) {
	f, err := os.Open(path)
	if err != nil {
		return shop.Backup{}, noBackup(err, path)
	}
	defer f.Close()
	b, err := checkFile(f, besideOf(path))
	return b, InFile(path, err)
}

// RestoreFile puts a backup into this store, which must be empty: all of it or
// nothing.
func (s *Store) RestoreFile(ctx context.Context, path string) (shop.Backup, error) {
	f, err := os.Open(path)
	if err != nil {
		return shop.Backup{}, noBackup(err, path)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return shop.Backup{}, fileFault(err, "The backup cannot be read.")
	}
	b, err := shop.Restore(ctx, s, f, info.Size(), besideOf(path))
	return b, InFile(path, err)
}

// InFile adds to an error which file is not as it should be.
func InFile(path string, err error) error {
	var e *shop.Error
	if errors.As(err, &e) && e.Field == "" && (e.Code == shop.Damaged || e.Code == shop.TooLarge || e.Code == shop.Invalid) {
		return e.At(path)
	}
	return err
}

func noBackup(err error, path string) error {
	if errors.Is(err, fs.ErrNotExist) {
		return shop.Fault(shop.NotFound, "There is no backup %s.", path)
	}
	return fileFault(err, "The backup %s cannot be read.", path)
}

// besideOf reads files from the folder beside a backup.
func besideOf(path string) shop.FilesBeside {
	return func(hash string) ([]byte, error) {
		if !validHash(hash) {
			return nil, fs.ErrNotExist
		}
		return os.ReadFile(filepath.Join(filepath.Dir(path), "files", hash[:2], hash))
	}
}

const (
	nightlyStart = "shop-"
	nightlyForm  = nightlyStart + "20060102-150405.zip"
)

// BackUpInto makes one of the nightly backups: a zip file with all but the
// photographs, and beside it, in files, every photograph that is not there yet.
// All of it is read again. Then only the newest backups are kept; photographs
// stay. It returns the path of the new one.
func (s *Store) BackUpInto(ctx context.Context, sh *shop.Shop, dir string, keep int, now time.Time) (string, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", fileFault(err, "The folder %s for backups cannot be made.", dir)
	}
	path := filepath.Join(dir, now.UTC().Format(nightlyForm))
	if err := s.copyFiles(ctx, filepath.Join(dir, "files")); err != nil {
		return "", err
	}
	_, err := s.backUp(ctx, sh, path, false, func(hash string) ([]byte, error) {
		content, err := besideOf(path)(hash)
		if errors.Is(err, fs.ErrNotExist) { // it came after the copying
			if content, err = s.File(ctx, hash); err == nil {
				err = writeDurably(filepath.Join(dir, "files", hash[:2], hash), content)
			}
		}
		return content, err
	})
	if err != nil {
		return path, err
	}
	return path, dropOld(dir, max(keep, 1))
}

// copyFiles copies what is not there yet. A damaged file is not copied over a
// good one, because a good one is there.
func (s *Store) copyFiles(ctx context.Context, to string) error {
	from := filepath.Join(s.dir, "files")
	return filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !validHash(d.Name()) {
			return err
		}
		if err := ctx.Err(); err != nil {
			return fault(err)
		}
		target := filepath.Join(to, d.Name()[:2], d.Name())
		if _, err := os.Stat(target); err == nil {
			return nil
		}
		content, err := os.ReadFile(path)
		if err == nil {
			err = writeDurably(target, content)
		}
		if err != nil {
			return fileFault(err, "A photograph cannot be copied into the backup.")
		}
		return nil
	})
}

// Nightlies returns the paths of the nightly backups in a folder, oldest first.
func Nightlies(dir string) ([]string, error) {
	names, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fileFault(err, "The folder %s of backups cannot be read.", dir)
	}
	var paths []string
	for _, n := range names { // in the order of their names, which is that of time
		if _, err := time.Parse(nightlyForm, n.Name()); err == nil {
			paths = append(paths, filepath.Join(dir, n.Name()))
		}
	}
	return paths, nil
}

func dropOld(dir string, keep int) error {
	paths, err := Nightlies(dir)
	if err != nil {
		return err
	}
	for len(paths) > keep {
		if err := os.Remove(paths[0]); err != nil {
			return fileFault(err, "An old backup cannot be removed.")
		}
		paths = paths[1:]
	}
	return nil
}
