//go:build linux

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"club/quadrille/cmd/quadrille/phones"
	"club/quadrille/cmd/quadrille/phones/crowd"
)

// shareAtDesk opens a desk whose page this computer can ask, shares, and gives the page's address.
func shareAtDesk(t *testing.T, path string, width, height int) (*terminal, string) {
	t.Helper()
	own, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(t.TempDir(), sharesWithItself)
	if err := os.Symlink(own, link); err != nil {
		t.Fatal(err)
	}
	desk := program(link).open(t, width, height, nil, "--data", path).Shows("q quit")
	desk.Press("o").Shows("share with phones").Press("p").Shows("at 127.0.0.1 (itself)").Press("1").Shows("http://127.0.0.1:")
	host := regexp.MustCompile(`http://(127\.0\.0\.1:\d+)/`).FindStringSubmatch(desk.Screen())[1]
	desk.Press("esc").Hides("http://127.0.0.1:")
	return desk, host
}

// residentMiB is the memory of a process, of its parts in VmRSS and VmHWM of /proc.
func residentMiB(t *testing.T, pid int, which string) float64 {
	t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile(which + `:\s+(\d+) kB`).FindSubmatch(text)
	if m == nil {
		t.Fatalf("no %s in\n%s", which, text)
	}
	kib, _ := strconv.Atoi(string(m[1]))
	return float64(kib) / 1024
}

// keyToFrame presses keys that move the choice of a court and gives how long each took until the terminal had drawn
// the answer, shortest first.
func (s *terminal) keyToFrame(n int) (took []time.Duration) {
	s.t.Helper()
	for i := range n {
		time.Sleep(time.Duration(10+i%7) * time.Millisecond) // between keys, as a hand does, and in no step with the frames
		s.mu.Lock()
		fresh := s.fresh
		s.mu.Unlock()
		begin := time.Now()
		s.Press([]string{"right", "left"}[i%2])
		s.wait(fresh, "an answer to an arrow")
		took = append(took, time.Since(begin))
	}
	slices.Sort(took)
	return took
}

// The desk itself serves 300 phones, a process of their own, and 30 pages a second: it goes on drawing, each phone
// hears of each score, and no phone is cut off. For a moment, or with QUADRILLE_LONG=1 for a minute, in which a key
// takes at most half as much again as without phones, and memory stays below 64 MiB more.
func TestADeskWithAFullHallOfPhones(t *testing.T) {
	long := os.Getenv("QUADRILLE_LONG") == "1"
	scores, keys, streams := 3, 5, 40
	if long {
		scores, keys, streams = 60, 40, phones.UsualLimits.Streams
	}
	desk, host := shareAtDesk(t, fullHall(t, 12), 200, 60)
	pid := desk.cmd.Process.Pid
	desk.Type("11 0\r").Shows("Saved: court 1: 11-0").Press("home").quiet()
	alone := desk.keyToFrame(scores * keys / 2)
	before := residentMiB(t, pid, "VmRSS")
	choices := regexp.MustCompile(`<option value="([0-9a-f]{16})">`).FindAllStringSubmatch(fetch(t, "http://"+host+"/"), -1)
	o := crowd.Order{Host: host, Streams: streams, Loads: 30, Marker: "over 11-"}
	for _, c := range choices {
		o.Keys = append(o.Keys, c[1])
	}
	if len(o.Keys) != 48 {
		t.Fatalf("%d people can be chosen, want 48", len(o.Keys))
	}
	c, err := crowd.Start(o)
	if err != nil {
		t.Fatal(err)
	}
	var sent []crowd.Update
	var loaded []time.Duration
	for i := range scores {
		points := 1 + i%9
		desk.Press("home").quiet()
		sent = append(sent, crowd.Update{Text: fmt.Sprintf("over 11-%d", points), At: time.Now()})
		desk.Type(fmt.Sprintf("11 %d\r", points)).Shows(fmt.Sprintf("11-%d Person A1 & Person B1 v", points))
		desk.Press("home").quiet()
		loaded = append(loaded, desk.keyToFrame(keys)...)
	}
	slices.Sort(loaded)
	r, err := c.End(sent[len(sent)-1].Text)
	if err != nil {
		t.Fatal(err)
	}
	took, missed := r.Took(sent, streams)
	more := residentMiB(t, pid, "VmHWM") - before
	ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
	busy, _ := os.ReadFile("/proc/loadavg")
	t.Logf("a key to its frame: %.1f ms in the median, %.1f ms for 99 of 100; with %d streams and %d pages %.1f and %.1f ms; "+
		"from a typed score to a phone %.1f ms in the median, %.1f ms for 99 of 100, %d overtaken; %.1f MiB more; load %s",
		ms(crowd.Part(alone, 0.5)), ms(crowd.Part(alone, 0.99)), streams, r.Loaded, ms(crowd.Part(loaded, 0.5)), ms(crowd.Part(loaded, 0.99)),
		ms(crowd.Part(took, 0.5)), ms(crowd.Part(took, 0.99)), missed, more, strings.TrimSpace(string(busy)))
	if r.Failed > 0 || r.Loaded == 0 {
		t.Errorf("%d of %d pages did not come", r.Failed, r.Loaded)
	}
	last := map[int]string{}
	for _, a := range r.Arrivals {
		last[a.Stream] = a.Text
	}
	for i := range streams {
		if last[i] != sent[len(sent)-1].Text {
			t.Errorf("stream %d has %q last", i, last[i])
		}
	}
	if long {
		if crowd.Part(loaded, 0.5) > 3*crowd.Part(alone, 0.5)/2 || crowd.Part(loaded, 0.99) > 3*crowd.Part(alone, 0.99)/2 {
			t.Error("keys take more than half as much again: see above, and whether the machine does other work")
		}
		if more > 64 {
			t.Errorf("%.1f MiB more, want at most 64", more)
		}
	}
	desk.Quit("q")
}
