package phones

import (
	"fmt"
	"net/http"
	"runtime"
	"slices"
	"sync"
	"testing"
	"time"
)

// BenchmarkUpdate300Phones is from a new state until a phone has it, for 300 phones at once, while 30 pages a
// second are loaded: a night of 60 people, all in one process with the phones. The median and the 99th of 100 are
// reported, and the memory that server and phones take together.
func BenchmarkUpdate300Phones(b *testing.B) {
	var memory runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&memory)
	before := memory.HeapAlloc + memory.StackInuse
	s := serving(b, open)
	s.Tell(big(15))
	const phones = 300
	client := &http.Client{Transport: &http.Transport{DisableKeepAlives: true}}
	all := make([]*follower, phones)
	for i := range all {
		all[i] = s.follow(b, client, keyOf(i%60))
		all[i].until(hall, "Person")
	}
	stop := make(chan struct{})
	var loading sync.WaitGroup
	loading.Go(func() {
		tick := time.NewTicker(time.Second / 30)
		defer tick.Stop()
		for {
			select {
			case <-stop:
				return
			case <-tick.C:
				if got, err := client.Get(s.URL() + "?me=" + keyOf(7)); err == nil {
					_ = got.Body.Close()
				}
			}
		}
	})
	var took []time.Duration
	var mu sync.Mutex
	for n := 1; b.Loop(); n++ {
		v := big(15)
		v.Courts[0].Score = []int{n, n}
		want := fmt.Sprintf("%d-%d", n, n)
		begin := time.Now()
		s.Tell(v)
		var reading sync.WaitGroup
		for _, f := range all {
			reading.Go(func() {
				f.until(hall, want)
				mu.Lock()
				took = append(took, time.Since(begin))
				mu.Unlock()
			})
		}
		reading.Wait()
	}
	runtime.ReadMemStats(&memory)
	close(stop)
	loading.Wait()
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "ms/median")
	b.ReportMetric(float64(took[len(took)*99/100].Microseconds())/1000, "ms/p99")
	b.ReportMetric(float64(memory.HeapAlloc+memory.StackInuse-before)/(1<<20), "MiB")
}

// BenchmarkPage is one page of a night of 60 people, for one of them.
func BenchmarkPage(b *testing.B) {
	s := newState(big(15), "")
	for b.Loop() {
		s.page(keyOf(7), false)
	}
}
