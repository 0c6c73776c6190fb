package phones

import (
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"go.uber.org/goleak"
)

// dial opens a connection and writes a text on it; the answer is for the caller.
func (s *Server) dial(t *testing.T, text string) *net.TCPConn {
	t.Helper()
	c, err := net.Dial("tcp", s.host)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Close() })
	_ = c.SetDeadline(time.Now().Add(limit))
	_, _ = io.WriteString(c, text) // which may be refused half way
	return c.(*net.TCPConn)
}

// A head with too much in it is refused, however it is cut into lines, and so are paths that try to lead elsewhere,
// as they come from the wire.
func TestFloodsAndTricksAreRefused(t *testing.T) {
	s := serving(t, open)
	host := "Host: " + s.host + "\r\n"
	for name, c := range map[string]struct {
		text string
		want []string // one of them
	}{
		"many lines":      {"GET / HTTP/1.1\r\n" + host + strings.Repeat("X-A: 1\r\n", 100_000) + "\r\n", []string{"431"}},
		"one long line":   {"GET / HTTP/1.1\r\n" + host + "X-A: " + strings.Repeat("a", 1<<20) + "\r\n\r\n", []string{"431"}},
		"a long path":     {"GET /" + strings.Repeat("a", 1<<20) + " HTTP/1.1\r\n" + host + "\r\n", []string{"431", "414"}},
		"many folds":      {"GET / HTTP/1.1\r\n" + host + "X-A: 1\r\n" + strings.Repeat(" 2\r\n", 100_000) + "\r\n", []string{"431", "400"}},
		"up":              {"GET /../../etc/passwd HTTP/1.1\r\n" + host + "\r\n", []string{"404"}},
		"up, escaped":     {"GET /%2e%2e/%2e%2e/etc/passwd HTTP/1.1\r\n" + host + "\r\n", []string{"404"}},
		"up, twice":       {"GET /%252e%252e/look.css HTTP/1.1\r\n" + host + "\r\n", []string{"404"}},
		"a null":          {"GET /look.css%00.html HTTP/1.1\r\n" + host + "\r\n", []string{"404"}},
		"backslashes":     {"GET \\..\\look.css HTTP/1.1\r\n" + host + "\r\n", []string{"400", "404"}},
		"no host":         {"GET / HTTP/1.1\r\n\r\n", []string{"400"}},
		"an old protocol": {"GET / HTTP/1.0\r\n\r\n", []string{"421"}},
		"two lengths":     {"GET / HTTP/1.1\r\n" + host + "Content-Length: 5\r\nContent-Length: 6\r\n\r\nhello", []string{"400"}},
		"length and more": {"POST / HTTP/1.1\r\n" + host + "Content-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n", []string{"400", "405"}},
		"an upgrade":      {"GET /live HTTP/1.1\r\n" + host + "Connection: Upgrade\r\nUpgrade: websocket\r\nContent-Length: 9\r\n\r\n", []string{"413"}},
	} {
		got := s.raw(t, c.text)
		ok := strings.Contains(got, "reset") || strings.Contains(got, "broken pipe") // closed before all of it was sent
		for _, want := range c.want {
			ok = ok || strings.HasPrefix(got, "HTTP/1.1 "+want) || strings.HasPrefix(got, "HTTP/1.0 "+want)
		}
		if !ok {
			t.Errorf("%s: %q, want %v", name, got, c.want)
		}
	}
}

// A phone that says that it will send no more, and stays, takes a place only while it is there.
func TestHalfClosedStreamsAreLetGo(t *testing.T) {
	before := goleak.IgnoreCurrent()
	s := serving(t, open)
	for range 50 {
		c := s.dial(t, "GET /live HTTP/1.1\r\nHost: "+s.host+"\r\n\r\n")
		if err := c.CloseWrite(); err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(c) // up to the end of the stream, which the server makes
		if err != nil || !strings.HasPrefix(string(text), "HTTP/1.1 200 ") {
			t.Fatalf("%.100q, %v", text, err)
		}
	}
	wait(t, func() bool { return s.open() == 0 })
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	goleak.VerifyNone(t, before)
}

// Nobody's phone notices strangers who hold connections open, send heads byte by byte, floods, bodies of ten
// megabytes and streams that they do not read, all at once.
func TestStrangersKeepNobodyFromTheHall(t *testing.T) {
	before := goleak.IgnoreCurrent()
	limits := open
	limits.Head, limits.Idle, limits.Write = 200*time.Millisecond, 200*time.Millisecond, 200*time.Millisecond
	limits.Streams, limits.StreamsEach = 60, 60
	s := serving(t, limits)
	good := s.follow(t, http.DefaultClient, keyOf(1))
	good.until(hall, "4-7")
	host := "Host: " + s.host + "\r\n"
	stop := make(chan struct{})
	var strangers sync.WaitGroup
	stranger := func(do func(c net.Conn)) {
		strangers.Go(func() {
			for {
				select {
				case <-stop:
					return
				default:
				}
				if c, err := net.Dial("tcp", s.host); err == nil {
					_ = c.SetDeadline(time.Now().Add(time.Second))
					do(c)
					_ = c.Close()
				}
			}
		})
	}
	megabytes := strings.Repeat("x", 10<<20)
	for range 20 {
		stranger(func(c net.Conn) { // a head, byte by byte
			for _, b := range []byte("GET / HTTP/1.1\r\n" + host + strings.Repeat("X-A: 1\r\n", 1000)) {
				if _, err := c.Write([]byte{b}); err != nil {
					return
				}
				time.Sleep(10 * time.Millisecond)
			}
		})
		stranger(func(c net.Conn) { // a stream that nobody reads
			_, _ = io.WriteString(c, "GET /live HTTP/1.1\r\n"+host+"\r\n")
			time.Sleep(300 * time.Millisecond)
		})
	}
	stranger(func(c net.Conn) {
		_, _ = io.WriteString(c, "POST / HTTP/1.1\r\n"+host+fmt.Sprintf("Content-Length: %d\r\n\r\n", len(megabytes))+megabytes)
	})
	stranger(func(c net.Conn) {
		_, _ = io.WriteString(c, "GET / HTTP/1.1\r\n"+host+strings.Repeat("X-A: 1\r\n", 100_000))
	})
	for n := 1; n <= 20; n++ {
		v := evening()
		v.Courts[0].Score = []int{n, 9}
		s.Tell(v)
		good.until(hall, fmt.Sprintf("%d-9", n))
		time.Sleep(20 * time.Millisecond)
	}
	close(stop)
	strangers.Wait()
	_ = good.body.Close()
	wait(t, func() bool { return s.open() == 0 })
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	http.DefaultClient.CloseIdleConnections()
	goleak.VerifyNone(t, before)
}
