package web

import (
	"context"
	"sync"

	"axlewright/shop"
)

// sums runs assessments one at a time beside the pages: they take a while and
// all the processors.
type sums struct {
	ctx  context.Context
	turn chan struct{}
	all  sync.WaitGroup

	mu   sync.Mutex
	jobs map[shop.ID]*running
}

// A running sum tells how far it is, or why it failed.
type running struct {
	Done, Total int
	Failed      string
}

func newSums(ctx context.Context) *sums {
	return &sums{ctx: ctx, turn: make(chan struct{}, 1), jobs: map[shop.ID]*running{}}
}

// start begins a sum for a job, unless one is under way for it.
func (s *sums) start(job shop.ID, work func(context.Context, func(done, total int)) error, failed func(error) string) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if r := s.jobs[job]; r != nil && r.Failed == "" || s.ctx.Err() != nil {
		return false
	}
	r := &running{}
	s.jobs[job] = r
	s.all.Add(1)
	go func() {
		defer s.all.Done()
		var err error
		select {
		case s.turn <- struct{}{}:
			err = work(s.ctx, func(done, total int) {
				s.mu.Lock()
				r.Done, r.Total = done, total
				s.mu.Unlock()
			})
			<-s.turn
		case <-s.ctx.Done():
			err = s.ctx.Err()
		}
		s.mu.Lock()
		defer s.mu.Unlock()
		if err == nil {
			delete(s.jobs, job)
			return
		}
		r.Failed = failed(err)
	}()
	return true
}

// of says how far the sum of a job is, nil where none is under way.
func (s *sums) of(job shop.ID) *running {
	s.mu.Lock()
	defer s.mu.Unlock()
	r := s.jobs[job]
	if r == nil {
		return nil
	}
	now := *r
	if r.Failed != "" {
		delete(s.jobs, job) // told once
	}
	return &now
}

func (s *sums) wait() { s.all.Wait() }
