package sqlstore

import (
	"context"
	"sync"

	"axlewright/shop"
)

// hub hands changes to all who watch. Nobody who watches can hold up a writer.
type hub struct {
	mu      sync.Mutex
	closed  bool
	watched map[*watcher]bool
}

type watcher struct {
	changes chan shop.Change
	missed  bool
}

// watchRoom is how many changes may wait for a slow reader.
const watchRoom = 256

func (h *hub) watch(ctx context.Context) <-chan shop.Change {
	w := &watcher{changes: make(chan shop.Change, watchRoom)}
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.closed {
		close(w.changes)
		return w.changes
	}
	if h.watched == nil {
		h.watched = map[*watcher]bool{}
	}
	h.watched[w] = true
	context.AfterFunc(ctx, func() { h.drop(w) })
	return w.changes
}

func (h *hub) drop(w *watcher) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.watched[w] {
		delete(h.watched, w)
		close(w.changes)
	}
}

func (h *hub) publish(changes []shop.Change) {
	h.mu.Lock()
	defer h.mu.Unlock()
	for w := range h.watched {
		for _, c := range changes {
			w.send(c)
		}
	}
}

// send keeps the last place for the word that something was missed.
func (w *watcher) send(c shop.Change) {
	room := cap(w.changes) - len(w.changes)
	switch {
	case room > 1:
		if w.missed {
			w.missed = false
		}
		w.changes <- c
	case room == 1 && !w.missed:
		w.missed = true
		w.changes <- shop.Change{Missed: true}
	}
}

func (h *hub) close() {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.closed = true
	for w := range h.watched {
		delete(h.watched, w)
		close(w.changes)
	}
}
