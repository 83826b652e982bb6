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
	Instead     bool // of an earlier asking, which was stopped
	Failed      string

	stop context.CancelFunc
}

func newSums(ctx context.Context) *sums {
	return &sums{ctx: ctx, turn: make(chan struct{}, 1), jobs: map[shop.ID]*running{}}
}

// start begins a sum for a job, unless one is under way for it.
func (s *sums) start(job shop.ID, work func(context.Context, func(done, total int)) error, failed func(error) string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if !s.underWay(job) {
		s.begin(job, &running{}, work, failed)
	}
}

// anew begins a sum for a job with other figures: the newest asking wins, and
// one that is still under way is stopped.
func (s *sums) anew(job shop.ID, work func(context.Context, func(done, total int)) error, failed func(error) string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	r := &running{}
	if s.underWay(job) {
		s.jobs[job].stop()
		r.Instead = true
	}
	s.begin(job, r, work, failed)
}

func (s *sums) underWay(job shop.ID) bool {
	r := s.jobs[job]
	return r != nil && r.Failed == ""
}

func (s *sums) begin(job shop.ID, r *running, work func(context.Context, func(done, total int)) error, failed func(error) string) {
	ctx, stop := context.WithCancel(s.ctx)
	r.stop = stop
	s.jobs[job] = r
	s.all.Add(1)
	go func() {
		defer s.all.Done()
		defer stop()
		var err error
		select {
		case s.turn <- struct{}{}:
			err = work(ctx, func(done, total int) {
				s.mu.Lock()
				r.Done, r.Total = done, total
				s.mu.Unlock()
			})
			<-s.turn
		case <-ctx.Done():
			err = ctx.Err()
		}
		s.mu.Lock()
		defer s.mu.Unlock()
		switch {
		case s.jobs[job] != r: // a newer asking took its place
		case err == nil:
			delete(s.jobs, job)
		default:
			r.Failed = failed(err)
		}
	}()
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
