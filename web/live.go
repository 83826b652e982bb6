package web

import (
	"encoding/json"
	"fmt"
	"net/http"
	"time"

	"axlewright/shop"
)

// beat is how often a quiet stream shows that it is alive.
const beat = 20 * time.Second

// live is a stream of what has changed: of one job where it is named, else of
// anything. A browser that lost the stream connects again by itself and then
// looks at everything, so nothing needs to be kept for it.
func live(v *visit) error {
	job := shop.ID(v.r.URL.Query().Get("job"))
	changes, err := v.shop.Watch(v.ctx())
	if err != nil {
		return err
	}
	out := http.NewResponseController(v.w)
	if err := out.SetWriteDeadline(time.Time{}); err != nil {
		return fmt.Errorf("a stream cannot be kept open: %w", err)
	}
	v.w.Header().Set("Content-Type", "text/event-stream")
	v.w.Header().Set("X-Accel-Buffering", "no")
	v.w.WriteHeader(http.StatusOK)
	tell := func(text string) bool {
		_, err := v.w.Write([]byte(text))
		return err == nil && out.Flush() == nil
	}
	if !tell("retry: 2000\nevent: hello\ndata: {}\n\n") {
		return nil
	}
	ticker := time.NewTicker(beat)
	defer ticker.Stop()
	for {
		select {
		case <-v.ended.Done():
			return nil
		case <-v.ctx().Done():
			return nil
		case <-ticker.C:
			// A session that has ended sees no more.
			if _, err := v.actor(v.r); err != nil || !tell(": alive\n\n") {
				return nil
			}
		case c, ok := <-changes:
			if !ok {
				return nil
			}
			if job != "" && c.Job != job && !c.Missed && c.Card == "" {
				continue
			}
			text, err := json.Marshal(c)
			if err != nil || !tell("event: change\ndata: "+string(text)+"\n\n") {
				return nil
			}
		}
	}
}
