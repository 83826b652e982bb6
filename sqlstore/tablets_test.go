package sqlstore_test

import (
	"fmt"
	"slices"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

// BenchmarkTwentyTablets is twenty tablets on ten jobs, each writing a reading
// and then reading the job, with a breath between. It reports how long the
// slowest of a hundred takes; at the bench that should stay below 100 ms.
func BenchmarkTwentyTablets(b *testing.B) {
	f := shoptest.Fellgate(b, openSQLite(b, b.TempDir()))
	var jobs []shop.ID
	for range 10 {
		jobs = append(jobs, f.Open().ID)
	}
	var turn atomic.Int64
	var mu sync.Mutex
	var saves, reads []time.Duration
	b.ResetTimer()
	var wg sync.WaitGroup
	for range 20 {
		wg.Go(func() {
			for n := turn.Add(1); n <= int64(b.N); n = turn.Add(1) {
				time.Sleep(100 * time.Millisecond)
				job := jobs[n%10]
				began := time.Now()
				_, err := f.Shop.Record(f.Ctx, f.Builder, job, f.Set("stations", "gap", fmt.Sprint("piece ", n), shoptest.MM("0.5", 0.5)))
				saved := time.Now()
				if err == nil {
					_, err = f.Shop.Job(f.Ctx, job)
				}
				if err != nil {
					b.Error(err)
				}
				mu.Lock()
				saves, reads = append(saves, saved.Sub(began)), append(reads, time.Since(saved))
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	for name, all := range map[string][]time.Duration{"save": saves, "read": reads} {
		slices.Sort(all)
		b.ReportMetric(float64(all[len(all)*99/100].Microseconds())/1000, name+"-p99-ms")
		b.ReportMetric(float64(all[len(all)/2].Microseconds())/1000, name+"-p50-ms")
	}
}
