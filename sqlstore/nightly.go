package sqlstore

import (
	"context"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"

	"axlewright/shop"
)

// A Nightly makes backups by itself while the program runs, and at once when it
// is told to. It remembers, beside the backups, what became of the last one.
type Nightly struct {
	Store *Store
	Shop  *shop.Shop
	Dir   string // empty is the folder backups of the shop
	Keep  int    // how many; 0 is what the house card says, or 14
	Hour  int    // of the local clock
	Done  func(path string, err error)
	Every time.Duration // how often the clock is looked at; 0 is a minute

	turn sync.Mutex // one backup at a time
}

// Run makes a backup each night at the hour, and at once where the last one is
// more than a day old (the computer was off at night), until ctx ends.
func (n *Nightly) Run(ctx context.Context) {
	every := n.Every
	if every <= 0 {
		every = time.Minute
	}
	tick := time.NewTicker(every)
	defer tick.Stop()
	for {
		if n.due(time.Now()) {
			if err := n.Make(ctx); ctx.Err() != nil {
				return
			} else if err != nil { // not again at once: the disk may be full
				select {
				case <-ctx.Done():
					return
				case <-time.After(time.Hour):
				}
			}
		}
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
	}
}

// Make makes a backup now and reads it back from end to end.
func (n *Nightly) Make(ctx context.Context) error {
	n.turn.Lock()
	defer n.turn.Unlock()
	now := time.Now()
	path, err := n.Store.BackUpInto(ctx, n.Shop, n.dir(), n.keep(ctx), now)
	if ctx.Err() != nil {
		return err
	}
	last := shop.LastBackup{At: now, Path: path}
	if err != nil {
		last.Fault = err.Error()
	} else if info, e := os.Stat(path); e == nil {
		last.Bytes = info.Size()
	}
	err = errors.Join(err, n.remember(last))
	if n.Done != nil {
		n.Done(path, err)
	}
	return err
}

// lastFile is where a folder of backups says what became of the last one.
const lastFile = "last.json"

func (n *Nightly) remember(last shop.LastBackup) error {
	text, err := json.Marshal(last)
	if err == nil {
		if err = os.MkdirAll(n.dir(), 0o700); err == nil {
			err = os.WriteFile(filepath.Join(n.dir(), lastFile), text, 0o600)
		}
	}
	if err != nil {
		return fileFault(err, "What became of the backup cannot be noted in %s.", n.dir())
	}
	return nil
}

// Last tells what became of the last backup; At is zero where there was none.
func (n *Nightly) Last() (shop.LastBackup, error) {
	var last shop.LastBackup
	text, err := os.ReadFile(filepath.Join(n.dir(), lastFile))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return last, nil
	case err == nil:
		err = json.Unmarshal(text, &last)
	}
	if err != nil {
		return last, fileFault(err, "What became of the last backup cannot be read in %s.", n.dir())
	}
	return last, nil
}

// due says whether the last backup is older than the last time the hour struck.
func (n *Nightly) due(now time.Time) bool {
	struck := time.Date(now.Year(), now.Month(), now.Day(), n.Hour, 0, 0, 0, now.Location())
	if struck.After(now) {
		struck = struck.AddDate(0, 0, -1)
	}
	paths, err := Nightlies(n.dir())
	if err != nil || len(paths) == 0 {
		return true
	}
	last, err := time.Parse(nightlyForm, filepath.Base(paths[len(paths)-1]))
	return err != nil || last.Before(struck.Truncate(time.Second))
}

func (n *Nightly) dir() string {
	if n.Dir != "" {
		return n.Dir
	}
	return n.Store.BackupDir()
}

func (n *Nightly) keep(ctx context.Context) int {
	if n.Keep > 0 {
		return n.Keep
	}
	if house, err := shop.Get[shop.House](ctx, n.Shop, shop.HouseID); err == nil && house.KeepNightly > 0 {
		return house.KeepNightly
	}
	return 14
}
