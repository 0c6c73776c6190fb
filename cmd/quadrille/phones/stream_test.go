package phones

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"go.uber.org/goleak"

	"club/quadrille/session/public"
)

// follower is a phone with a stream.
type follower struct {
	t    testing.TB
	body io.ReadCloser
	in   *bufio.Reader
}

// follow opens the stream of somebody; it is closed when the test ends.
func (s *Server) follow(t testing.TB, client *http.Client, key string) *follower {
	t.Helper()
	ctx, stop := context.WithTimeout(context.Background(), 2*limit)
	t.Cleanup(stop)
	r, err := http.NewRequestWithContext(ctx, "GET", s.URL()+"live?me="+key, nil)
	if err != nil {
		t.Fatal(err)
	}
	got, err := client.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	if got.StatusCode != http.StatusOK || got.Header.Get("Content-Type") != "text/event-stream" {
		t.Fatalf("%d %v", got.StatusCode, got.Header)
	}
	t.Cleanup(func() { _ = got.Body.Close() })
	return &follower{t, got.Body, bufio.NewReader(got.Body)}
}

// next is the name and data of the next event.
func (f *follower) next() (name, data string, err error) {
	for {
		line, err := f.in.ReadString('\n')
		switch {
		case err != nil:
			return name, data, err
		case line == "\n":
			return name, data, nil
		}
		if v, ok := strings.CutPrefix(line, "event: "); ok {
			name = strings.TrimSpace(v)
		}
		if v, ok := strings.CutPrefix(line, "data: "); ok {
			data = strings.TrimSpace(v)
		}
	}
}

// until reads on to an event of this name that has a text.
func (f *follower) until(name, text string) string {
	f.t.Helper()
	for {
		got, data, err := f.next()
		if err != nil {
			f.t.Errorf("no event %s has %q: %v", name, text, err)
			return ""
		}
		if got == name && strings.Contains(data, text) {
			return data
		}
	}
}

func TestAStreamFollowsTheHall(t *testing.T) {
	s := serving(t, open)
	f := s.follow(t, http.DefaultClient, keyOf(1))
	f.until(mine, "It stands 4-7.")
	f.until(top, "as of")
	f.until(hall, "4-7")
	v := evening()
	v.Courts[0].Score = []int{5, 7}
	s.Tell(v)
	f.until(mine, "It stands 5-7.")
	f.until(hall, "5-7")
	v = evening()
	v.Courts[0].Score, v.Messages = []int{5, 7}, []public.Message{{Text: "court 3 is wet"}}
	s.Tell(v)
	if name, data, err := f.next(); name != top || !strings.Contains(data, "court 3 is wet") || err != nil {
		t.Errorf("%s %q %v: only what is new is sent", name, data, err)
	}
	s.Tell(nil)
	f.until(top, noDesk)
	s.Over()
	f.until(top, nightOver)
	f.until("over", "")
	if _, _, err := f.next(); err == nil {
		t.Error("the stream goes on after the night")
	}
	again := s.follow(t, http.DefaultClient, "")
	again.until(hall, "5-7") // who comes late still sees how it ended
	again.until("over", "")
}

func TestAStreamShowsThatItLives(t *testing.T) {
	limits := open
	limits.Beat = 10 * time.Millisecond
	f := serving(t, limits).follow(t, http.DefaultClient, "")
	f.until("beat", "-")
	f.until("beat", "-")
}

func TestStreamsHaveALimit(t *testing.T) {
	limits := open
	limits.StreamsEach = 2
	s := serving(t, limits)
	first := s.follow(t, http.DefaultClient, keyOf(1))
	s.follow(t, http.DefaultClient, keyOf(2))
	status := func() int {
		ctx, stop := context.WithCancel(context.Background())
		defer stop()
		r, _ := http.NewRequestWithContext(ctx, "GET", s.URL()+"live", nil)
		got, err := http.DefaultClient.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		_ = got.Body.Close()
		return got.StatusCode
	}
	if got := status(); got != http.StatusServiceUnavailable {
		t.Errorf("a third stream: %d", got)
	}
	_ = first.body.Close()
	wait(t, func() bool { return status() == http.StatusOK })
}

// A phone that does not read is cut off, and keeps nobody from anything.
func TestWhoDoesNotReadIsCutOff(t *testing.T) {
	limits := open
	limits.Write = 50 * time.Millisecond
	s := serving(t, limits)
	c, err := net.Dial("tcp", s.host)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	_ = c.(*net.TCPConn).SetReadBuffer(1 << 12)
	if _, err := fmt.Fprintf(c, "GET /live HTTP/1.1\r\nHost: %s\r\n\r\n", s.host); err != nil {
		t.Fatal(err)
	}
	wait(t, func() bool { return s.open() == 1 })
	i := 0
	wait(t, func() bool {
		v := big(100)
		v.Clock = fmt.Sprint(i)
		v.Courts[0].Score = []int{i, 0}
		i++
		s.Tell(v)
		return s.open() == 0
	})
}

// open counts the streams.
func (s *Server) open() int {
	s.streams.mu.Lock()
	defer s.streams.mu.Unlock()
	return s.streams.all
}

// Three hundred phones all come to the newest state, whatever came between, and nothing is left of them.
func TestThreeHundredPhones(t *testing.T) {
	before := goleak.IgnoreCurrent()
	s := serving(t, open)
	client := &http.Client{Transport: &http.Transport{DisableKeepAlives: true}}
	const phones, states = 300, 40
	var all []*follower
	for i := range phones {
		f := s.follow(t, client, keyOf(i%100))
		f.until(hall, "Ada A.")
		all = append(all, f)
	}
	if n := s.open(); n != phones {
		t.Errorf("%d streams", n)
	}
	var reading sync.WaitGroup
	for _, f := range all {
		reading.Go(func() {
			f.until(hall, fmt.Sprintf("%d-%d", states, states))
			f.until("over", "")
			_ = f.body.Close()
		})
	}
	for i := range states + 1 {
		v := big(25)
		v.Courts[0].Score = []int{i, i}
		s.Tell(v)
	}
	s.Over()
	reading.Wait()
	wait(t, func() bool { return s.open() == 0 })
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	goleak.VerifyNone(t, before)
}
