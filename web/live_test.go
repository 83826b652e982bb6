package web_test

import (
	"bufio"
	"context"
	"fmt"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

// stream reads the events of a stream until it ends.
func (b *bench) stream(ctx context.Context, path string) (<-chan string, error) {
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, b.url+path, nil)
	if err != nil {
		return nil, err
	}
	resp, err := http.DefaultClient.Do(r)
	if err != nil {
		return nil, err
	}
	if resp.StatusCode != http.StatusOK || resp.Header.Get("Content-Type") != "text/event-stream" {
		resp.Body.Close()
		return nil, fmt.Errorf("%d %s", resp.StatusCode, resp.Header.Get("Content-Type"))
	}
	lines := make(chan string, 100)
	go func() {
		defer resp.Body.Close()
		defer close(lines)
		for s := bufio.NewScanner(resp.Body); s.Scan(); {
			if text, ok := strings.CutPrefix(s.Text(), "data: "); ok {
				lines <- text
			}
		}
	}()
	return lines, nil
}

func next(t *testing.T, lines <-chan string) string {
	t.Helper()
	select {
	case l, ok := <-lines:
		if !ok {
			t.Fatal("the stream has ended")
		}
		return l
	case <-time.After(10 * time.Second):
		t.Fatal("nothing came")
	}
	return ""
}

// Ten tablets look at a job, five write into it: everyone is told of every job
// that is theirs, and of no other.
func TestTabletsSeeEachOther(t *testing.T) {
	b := openBench(t)
	j, other := b.Open(), b.Open()
	var streams []<-chan string
	for range 10 {
		s, err := b.stream(t.Context(), "/live?job="+string(j.ID))
		if err != nil {
			t.Fatal(err)
		}
		if got := next(t, s); got != "{}" {
			t.Fatalf("the stream begins with %s", got)
		}
		streams = append(streams, s)
	}
	var all sync.WaitGroup
	for i := range 5 {
		all.Add(1)
		go func() {
			defer all.Done()
			b.script("/job/"+string(j.ID)+"/set", "step", "lash", "item", "lash", "place", fmt.Sprint(i+1), "corrects", "0", "value", "0.15 mm", "ticket", fmt.Sprint("t", i))
			b.script("/job/"+string(other.ID)+"/set", "step", "lash", "item", "lash", "place", fmt.Sprint(i+1), "corrects", "0", "value", "0.15 mm", "ticket", fmt.Sprint("t", i))
		}()
	}
	all.Wait()
	now, err := b.shop.Job(t.Context(), j.ID)
	if err != nil {
		t.Fatal(err)
	}
	last := fmt.Sprintf(`"seq":%d`, now.Head.Seq)
	for i, s := range streams {
		for {
			line := next(t, s)
			if strings.Contains(line, string(other.ID)) {
				t.Errorf("tablet %d is told of another job: %s", i, line)
			}
			if strings.Contains(line, last) {
				break
			}
		}
	}
}

func TestStreamsEndWithTheProgram(t *testing.T) {
	b := openBench(t)
	s, err := b.stream(t.Context(), "/live")
	if err != nil {
		t.Fatal(err)
	}
	next(t, s)
	b.web.Close()
	select {
	case _, open := <-s:
		if open {
			t.Error("something came after the end")
		}
	case <-time.After(5 * time.Second):
		t.Error("the stream goes on")
	}
}

// Nobody's reading is lost where two write into the same box at once: one is
// told of the other.
func TestTwoTabletsOneBox(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	var all sync.WaitGroup
	status := make([]int, 8)
	for i := range status {
		all.Add(1)
		go func() {
			defer all.Done()
			status[i] = b.script("/job/"+string(j.ID)+"/set", "step", "lash", "item", "lash", "place", "1", "corrects", "0", "value", fmt.Sprintf("0.1%d mm", i), "ticket", fmt.Sprint("t", i)).status
		}()
	}
	all.Wait()
	saved := 0
	for i, s := range status {
		switch s {
		case http.StatusOK:
			saved++
		case http.StatusConflict:
		default:
			t.Errorf("tablet %d: %d", i, s)
		}
	}
	now, err := b.shop.Job(t.Context(), j.ID)
	if err != nil || saved != 1 || len(now.History(shop.Slot{Step: "lash", Item: "lash", Place: "1"})) != 1 {
		t.Errorf("%d were told that it is saved, %v", saved, err)
	}
	b.Write(j.ID, "lash", "lash", "2", shoptest.MM("0.15 mm", 0.15))
}
