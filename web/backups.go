package web

import (
	"context"
	"sync"
	"time"

	"axlewright/shop"
)

// Backups makes the shop's backups beside the bench.
type Backups interface {
	// Last tells what became of the last one; At is zero where there was none.
	Last() (shop.LastBackup, error)
	// Make makes one now and reads it back from end to end.
	Make(ctx context.Context) error
}

// The names of what is done for the shop as a whole.
const (
	taskBackup shop.ID = "backup"
	taskVerify shop.ID = "verify"
)

// checkedRecords is what the last verifying of all records found.
type checkedRecords struct {
	sync.Mutex
	at    time.Time
	found shop.Checked
}

// A safeShow is how safe the shop's records are.
type safeShow struct {
	Has       bool // the program makes backups
	Last      shop.LastBackup
	Verdict   shop.Verdict
	Fault     string // why that cannot be told
	Making    *running
	Verifying *running
	Checked   shop.Checked
	CheckedAt time.Time
	May       bool
}

// busy says that the page should look again by itself.
func (s safeShow) busy() bool {
	return s.Making != nil && s.Making.Failed == "" || s.Verifying != nil && s.Verifying.Failed == ""
}

func (v *visit) safe() safeShow {
	s := safeShow{Has: v.o.Backups != nil, May: v.who.Role.May(shop.ActSettings), Making: v.tasks.of(taskBackup), Verifying: v.tasks.of(taskVerify)}
	if s.Has {
		var err error
		if s.Last, err = v.o.Backups.Last(); err != nil {
			s.Fault = faultOf(err).Says
		}
		s.Verdict = s.Last.Verdict(v.o.Now())
	}
	v.checked.Lock()
	defer v.checked.Unlock()
	s.Checked, s.CheckedAt = v.checked.found, v.checked.at
	return s
}

// unsafe says that the last backup failed or is too long ago.
func (s *Server) unsafe() bool {
	if s.o.Backups == nil {
		return false
	}
	last, err := s.o.Backups.Last()
	verdict := last.Verdict(s.o.Now())
	return err != nil || verdict == shop.Halt || verdict == shop.Look
}

// backUpNow makes a backup while the bench goes on.
func backUpNow(v *visit) error {
	if err := v.who.Must(shop.ActSettings); err != nil {
		return err
	}
	if v.o.Backups == nil {
		return shop.Fault(shop.NotFound, "This bench makes no backups.")
	}
	v.tasks.start(taskBackup, func(ctx context.Context, _ func(int, int)) error { return v.o.Backups.Make(ctx) }, v.taskFailed)
	return v.see("/settings#safe")
}

// verifyRecords verifies every record while the bench goes on.
func verifyRecords(v *visit) error {
	if err := v.who.Must(shop.ActSettings); err != nil {
		return err
	}
	v.tasks.start(taskVerify, func(ctx context.Context, _ func(int, int)) error {
		found, err := v.shop.VerifyAll(ctx, nil)
		if err != nil {
			return err
		}
		v.checked.Lock()
		defer v.checked.Unlock()
		v.checked.found, v.checked.at = found, v.o.Now()
		return nil
	}, v.taskFailed)
	return v.see("/settings#safe")
}

// taskFailed puts into words why something done for the shop failed.
func (s *Server) taskFailed(err error) string {
	s.log.Error("looking after the shop failed", "error", err)
	return faultOf(err).Says
}
