//go:build linux

package phones

import (
	"fmt"
	"os"
	"runtime"
	"strings"
	"testing"
	"time"

	"club/quadrille/cmd/quadrille/phones/crowd"
	"club/quadrille/session/public"
)

// told is a night of 60 people in which a number has been told, which stands at the end of the hall.
func told(n int) (*public.View, string) {
	v := big(15)
	v.Courts[0].Score = []int{n, n}
	text := fmt.Sprintf("told %d", n)
	v.Standings[len(v.Standings)-1].Names = []string{text}
	return v, text
}

// inUse is the memory that the process has from the system, in MiB.
func inUse() float64 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return float64(m.Sys-m.HeapReleased) / (1 << 20)
}

// Three hundred phones in a process of their own, each with an address of its own and under the usual limits, get
// every update while pages are loaded, and take little memory: for two seconds, or with QUADRILLE_LONG=1 for a
// minute, in which 99 of 100 updates are there within 50 ms on a machine that does nothing else.
func TestACrowdGetsEveryUpdate(t *testing.T) {
	long := os.Getenv("QUADRILLE_LONG") == "1"
	updates, pause := 10, 200*time.Millisecond
	if long {
		updates = 300
	}
	s := serving(t, UsualLimits)
	view, _ := told(0)
	s.Tell(view)
	runtime.GC()
	before, most := inUse(), 0.0
	o := crowd.Order{Host: s.host, Streams: UsualLimits.Streams, Loads: 30, Marker: "told "}
	for i := range 60 {
		o.Keys = append(o.Keys, keyOf(i))
	}
	c, err := crowd.Start(o)
	if err != nil {
		t.Fatal(err)
	}
	var sent []crowd.Update
	tick := time.NewTicker(pause)
	defer tick.Stop()
	for n := 1; n <= updates; n++ {
		view, text := told(n)
		sent = append(sent, crowd.Update{Text: text, At: time.Now()})
		s.Tell(view)
		<-tick.C
		most = max(most, inUse()-before)
	}
	if n := s.open(); n != o.Streams {
		t.Errorf("%d streams are open, want %d", n, o.Streams)
	}
	r, err := c.End(sent[len(sent)-1].Text)
	if err != nil {
		t.Fatal(err)
	}
	took, missed := r.Took(sent, o.Streams)
	ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
	load, _ := os.ReadFile("/proc/loadavg")
	t.Logf("%d updates to %d streams, %d pages: %.1f ms in the median, %.1f ms for 99 of 100, %.1f ms at most; %d overtaken; %.1f MiB more; load %s",
		updates, o.Streams, r.Loaded, ms(crowd.Part(took, 0.5)), ms(crowd.Part(took, 0.99)), ms(crowd.Part(took, 1)), missed, most, strings.TrimSpace(string(load)))
	if r.Failed > 0 || r.Loaded == 0 {
		t.Errorf("%d of %d pages did not come", r.Failed, r.Loaded)
	}
	if most > 64 {
		t.Errorf("%.1f MiB are taken, want at most 64", most)
	}
	if long && (missed > 0 || crowd.Part(took, 0.99) > 50*time.Millisecond) {
		t.Error("updates are late: see above, and whether the machine does other work")
	}
	last := map[int]string{}
	for _, a := range r.Arrivals {
		last[a.Stream] = a.Text
	}
	for i := range o.Streams {
		if last[i] != sent[len(sent)-1].Text {
			t.Errorf("stream %d has %q last", i, last[i])
		}
	}
}
