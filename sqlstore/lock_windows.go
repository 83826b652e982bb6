//go:build windows

package sqlstore

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// lockFile takes the lock, or says that another program has it. The lock goes
// with the program, however that ends.
func lockFile(f *os.File) (held bool, err error) {
	const flags = windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY
	// A byte far behind the text in the file, which can then still be read.
	err = windows.LockFileEx(windows.Handle(f.Fd()), flags, 0, 1, 0, &windows.Overlapped{Offset: 1 << 30})
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return true, nil
	}
	return false, err
}

// syncFolder does nothing: Windows writes names at once.
func syncFolder(string) error { return nil }

func diskFull(err error) bool {
	return errors.Is(err, windows.ERROR_DISK_FULL) || errors.Is(err, windows.ERROR_HANDLE_DISK_FULL)
}
