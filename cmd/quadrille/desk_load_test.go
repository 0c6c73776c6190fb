//go:build linux

package main

import (
	"context"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"club/quadrille/cmd/quadrille/phones"
	"club/quadrille/cmd/quadrille/phones/crowd"
	"club/quadrille/session"
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

// keyToFrame presses keys that move the choice from court 1 to court 2 and back, and gives how long each took until
// the terminal had drawn the answer, shortest first. It waits for the choice itself: a frame that something else
// caused is no answer, and a key pressed after it could take the one before back in the same frame.
func (s *terminal) keyToFrame(n int) (took []time.Duration) {
	s.t.Helper()
	for i := range n {
		time.Sleep(time.Duration(10+i%7) * time.Millisecond) // between keys, as a hand does, and in no step with the frames
		begin := time.Now()
		s.Press([]string{"right", "left"}[i%2]).Shows([]string{"Court 2: ", "Court 1: "}[i%2])
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

// Phones that do what they should not, at the page of a court whose code they have and at those whose codes they guess,
// come to nothing at the desk. With QUADRILLE_LONG=1 for half a minute, in which a key takes at most half as much again.
func TestADeskAmongHostilePhones(t *testing.T) {
	long := os.Getenv("QUADRILLE_LONG") == "1"
	keys := 60
	if long {
		keys = 1200
	}
	desk, host := shareAtDesk(t, fullHall(t, 12), 120, 40)
	desk.Type("o").Shows("scores from the courts").Type("c").Shows("on: they wait").Type("1").Shows("Saved: scores from the courts")
	desk.Type("c").Type("m").Shows("show the code").Type("q").Shows("Court 1: send the score")
	own := "http://" + host + regexp.MustCompile(`/C/[A-Z2-7]{26}`).FindString(desk.Screen())
	desk.Press("esc").quiet()
	alone := desk.keyToFrame(keys)

	ctx, stop := context.WithCancel(t.Context())
	var hostile sync.WaitGroup
	var answered atomic.Int64
	post := func(at, body string) {
		r, err := http.NewRequestWithContext(ctx, http.MethodPost, at, strings.NewReader(body))
		if err != nil {
			t.Error(err)
			return
		}
		r.Header.Set("Origin", "http://"+host)
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		if got, err := http.DefaultClient.Do(r); err == nil {
			_ = got.Body.Close()
			answered.Add(1)
		}
	}
	long10MB := strings.Repeat("a=11&", 2<<20)
	for _, attack := range []struct {
		every time.Duration // so that it is the desk that is loaded, and not the machine that both share
		do    func(i int)
	}{
		{20 * time.Millisecond, func(i int) { post(own, fmt.Sprintf("game=1&a=11&b=%d&by=a", i%10)) }},
		{20 * time.Millisecond, func(i int) { post(own, fmt.Sprintf("game=%d&a=99&b=98&by=b", i)) }},
		{20 * time.Millisecond, func(i int) { post(fmt.Sprintf("http://%s/C/%026d", host, i), "game=1&a=11&b=3&by=a") }},
		{500 * time.Millisecond, func(int) { post(own, long10MB) }},
	} {
		hostile.Go(func() {
			for i := 0; ctx.Err() == nil; i++ {
				attack.do(i)
				time.Sleep(attack.every)
			}
		})
	}
	attacked := desk.keyToFrame(keys)
	stop()
	hostile.Wait()
	http.DefaultClient.CloseIdleConnections()
	ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
	t.Logf("a key to its frame: %.1f ms in the median, %.1f ms for 99 of 100; among hostile phones (%d answers) %.1f and %.1f ms",
		ms(crowd.Part(alone, 0.5)), ms(crowd.Part(alone, 0.99)), answered.Load(), ms(crowd.Part(attacked, 0.5)), ms(crowd.Part(attacked, 0.99)))
	if answered.Load() == 0 {
		t.Error("no hostile phone was answered: this shows nothing")
	}
	desk.Press("home").quiet()
	if screen := desk.Screen(); strings.Contains(screen, "sent 11-") != strings.Contains(screen, "Court 1: a score was sent") || strings.Contains(screen, "99-98") {
		t.Errorf("the desk shows\n%s", screen)
	}
	if long && (crowd.Part(attacked, 0.5) > 3*crowd.Part(alone, 0.5)/2 || crowd.Part(attacked, 0.99) > 3*crowd.Part(alone, 0.99)/2) {
		t.Error("keys take more than half as much again: see above, and whether the machine does other work")
	}
	desk.Press("h").Shows("History")
	if sent := strings.Count(desk.Screen(), "sent from the court"); sent > session.MaxProposals {
		t.Errorf("the history has %d scores of one game", sent)
	}
	desk.Quit("q")
}
