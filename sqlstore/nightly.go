package sqlstore

import (
	"context"
	"path/filepath"
	"time"

	"axlewright/shop"
)

// A Nightly makes backups by itself while the program runs.
type Nightly struct {
	Store *Store
	Shop  *shop.Shop
	Dir   string // empty is the folder backups of the shop
	Keep  int    // how many; 0 is what the house card says, or 14
	Hour  int    // of the local clock
	Done  func(path string, err error)
	Every time.Duration // how often the clock is looked at; 0 is a minute
}

// Run makes a backup each night at the hour, and at once where the last one is
// more than a day old (the computer was off at night), until ctx ends.
func (n Nightly) Run(ctx context.Context) {
	every := n.Every
	if every <= 0 {
		every = time.Minute
	}
	tick := time.NewTicker(every)
	defer tick.Stop()
	for {
		if now := time.Now(); n.due(now) {
			path, err := n.Store.BackUpInto(ctx, n.Shop, n.dir(), n.keep(ctx), now)
			if ctx.Err() != nil {
				return
			}
			if n.Done != nil {
				n.Done(path, err)
			}
			if err != nil { // not again at once: the disk may be full
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

// due says whether the last backup is older than the last time the hour struck.
func (n Nightly) due(now time.Time) bool {
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

func (n Nightly) dir() string {
	if n.Dir != "" {
		return n.Dir
	}
	return n.Store.BackupDir()
}

func (n Nightly) keep(ctx context.Context) int {
	if n.Keep > 0 {
		return n.Keep
	}
	if house, err := shop.Get[shop.House](ctx, n.Shop, shop.HouseID); err == nil && house.KeepNightly > 0 {
		return house.KeepNightly
	}
	return 14
}
