package sqlstore

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"axlewright/shop"
)

// filePath is where a content is kept: files/ab/abcd…
func (s *Store) filePath(hash string) string {
	return filepath.Join(s.dir, "files", hash[:2], hash)
}

func validHash(hash string) bool {
	if len(hash) != 64 {
		return false
	}
	for _, c := range hash {
		if (c < '0' || c > '9') && (c < 'a' || c > 'f') {
			return false
		}
	}
	return true
}

// PutFile keeps content under its hash, flushed before it returns.
func (s *Store) PutFile(ctx context.Context, content []byte) (string, error) {
	done, err := s.enter()
	if err != nil {
		return "", err
	}
	defer done()
	if err := s.mayWrite(); err != nil {
		return "", err
	}
	if err := ctx.Err(); err != nil {
		return "", shop.Fault(shop.Closed, "Broken off.").Because(err)
	}
	sum := sha256.Sum256(content)
	hash := hex.EncodeToString(sum[:])
	if have, err := os.ReadFile(s.filePath(hash)); err == nil && sha256.Sum256(have) == sum {
		return hash, nil
	}
	if err := writeDurably(s.filePath(hash), content); err != nil {
		return "", fileFault(err, "A file of the shop cannot be written.")
	}
	return hash, nil
}

// writeDurably writes beside the name and then renames, so that the name never
// stands for half a content, and flushes content and folders.
func writeDurably(path string, content []byte) error {
	folder := filepath.Dir(path)
	if _, err := os.Stat(folder); errors.Is(err, fs.ErrNotExist) {
		if err := os.MkdirAll(folder, 0o700); err != nil {
			return err
		}
		if err := syncFolder(filepath.Dir(folder)); err != nil {
			return err
		}
	}
	f, err := os.CreateTemp(folder, "new-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // fails once it is renamed
	_, err = f.Write(content)
	if err == nil {
		err = f.Sync()
	}
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err == nil {
		err = syncFolder(folder)
	}
	return err
}

// File reads content and checks that it still has its hash.
func (s *Store) File(ctx context.Context, hash string) ([]byte, error) {
	done, err := s.enter()
	if err != nil {
		return nil, err
	}
	defer done()
	if !validHash(hash) {
		return nil, shop.Fault(shop.NotFound, "There is no such file.")
	}
	content, err := os.ReadFile(s.filePath(hash))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, shop.Fault(shop.NotFound, "The file %s… is not in the shop's folder.", hash[:12])
	}
	if err != nil {
		return nil, fileFault(err, "A file of the shop cannot be read.")
	}
	if sum := sha256.Sum256(content); hex.EncodeToString(sum[:]) != hash {
		return nil, shop.Fault(shop.Damaged, "The file %s… is not what it was when it was written.", hash[:12])
	}
	return content, nil
}
