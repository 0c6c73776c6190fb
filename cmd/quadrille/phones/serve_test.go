package phones

import (
	"bufio"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"strings"
	"testing"
	"time"

	"go.uber.org/goleak"

	"club/quadrille/cmd/quadrille/phones/crowd"
	"club/quadrille/session/public"
)

func TestMain(m *testing.M) {
	crowd.Main()
	goleak.VerifyTestMain(m)
}

// limit is how long a test waits for what must come at once: far longer, since a machine may be busy.
const limit = 30 * time.Second

// open are limits that a test does not meet, whose phones all have one address.
var open = Limits{
	Streams: 400, StreamsEach: 400, Conns: 1000, ConnsEach: 1000, Burst: 1 << 20, Every: time.Millisecond,
	Head: limit, Write: limit, Idle: limit, Beat: limit,
}

// serving is a server that shows the evening.
func serving(t testing.TB, limits Limits) *Server {
	t.Helper()
	l, err := Listen(netip.MustParseAddrPort("127.0.0.1:0"))
	if err != nil {
		t.Fatal(err)
	}
	s := Serve(l, limits)
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
		http.DefaultClient.CloseIdleConnections()
	})
	s.Tell(evening())
	return s
}

// ask hands the server a request as if it had come from a phone.
func (s *Server) ask(method, target, host string, body io.Reader) *http.Response {
	r := httptest.NewRequest(method, "http://"+s.host+"/", body)
	r.URL.Path, r.URL.RawQuery, _ = strings.Cut(target, "?")
	if strings.Contains(r.URL.Path, "%") {
		r.URL.RawPath = r.URL.Path
	}
	r.Host = host
	w := httptest.NewRecorder()
	s.ServeHTTP(w, r)
	return w.Result()
}

// raw sends some bytes on a connection of its own and reads the answer, of which it gives the first line.
func (s *Server) raw(t *testing.T, text string) string {
	t.Helper()
	c, err := net.Dial("tcp", s.host)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	_ = c.SetDeadline(time.Now().Add(limit))
	go func() { _, _ = io.WriteString(c, text) }()
	line, err := bufio.NewReader(c).ReadString('\n')
	if err != nil {
		return err.Error()
	}
	return strings.TrimSpace(line)
}

func TestThePageHasItsFilesAndNothingElse(t *testing.T) {
	s := serving(t, open)
	for target, kind := range map[string]string{
		"/": "text/html; charset=utf-8", "/?me=" + keyOf(1): "text/html; charset=utf-8", "/look.css": "text/css; charset=utf-8",
		"/live.js": "text/javascript; charset=utf-8", "/icon.svg": "image/svg+xml",
	} {
		got := s.ask("GET", target, s.host, nil)
		if got.StatusCode != http.StatusOK || got.Header.Get("Content-Type") != kind {
			t.Errorf("%s: %d %s", target, got.StatusCode, got.Header.Get("Content-Type"))
		}
	}
	for _, target := range []string{
		"", "//", "/..", "/../etc/passwd", "/look.css/", "/./look.css", "/page/look.css", "/%6cive", "/%2e%2e/live.js", "/look.css%00", `\`, "/page.html",
		"/LIVE", "/live/", "/index.html", "/favicon.ico", "/debug/pprof/", "/" + strings.Repeat("a", 4000), "*",
	} {
		if got := s.ask("GET", target, s.host, nil); got.StatusCode != http.StatusNotFound || got.Header.Get("Location") != "" {
			t.Errorf("%q: %d, leads to %q", target, got.StatusCode, got.Header.Get("Location"))
		}
	}
}

func TestEveryAnswerHasTheHeaders(t *testing.T) {
	s := serving(t, open)
	for _, got := range []*http.Response{
		s.ask("GET", "/", s.host, nil), s.ask("HEAD", "/", s.host, nil), s.ask("GET", "/live.js", s.host, nil), s.ask("HEAD", "/live", s.host, nil),
		s.ask("GET", "/none", s.host, nil), s.ask("POST", "/", s.host, nil), s.ask("GET", "/", "evil.example", nil),
	} {
		policy := got.Header.Get("Content-Security-Policy")
		for _, want := range []string{"default-src 'none'", "frame-ancestors 'none'", "base-uri 'none'", "script-src 'self'"} {
			if !strings.Contains(policy, want) {
				t.Errorf("%d: the policy %q has no %s", got.StatusCode, policy, want)
			}
		}
		if strings.Contains(policy, "unsafe") || strings.Contains(policy, "*") || strings.Contains(policy, "http") {
			t.Errorf("%d: %q", got.StatusCode, policy)
		}
		for name, want := range map[string]string{
			"X-Content-Type-Options": "nosniff", "X-Frame-Options": "DENY", "Referrer-Policy": "no-referrer", "Cache-Control": "no-store", "Set-Cookie": "",
			"Access-Control-Allow-Origin": "", "Cross-Origin-Resource-Policy": "same-origin",
		} {
			if got.Header.Get(name) != want {
				t.Errorf("%d: %s is %q, want %q", got.StatusCode, name, got.Header.Get(name), want)
			}
		}
	}
}

// A name that somebody lets lead to this computer does not show the page (DNS rebinding).
func TestOnlyItsOwnAddressShowsThePage(t *testing.T) {
	s := serving(t, open)
	_, port, _ := net.SplitHostPort(s.host)
	for _, host := range []string{
		"evil.example", "evil.example:" + port, "localhost:" + port, "127.0.0.1", "127.0.0.2:" + port, "", s.host + ".", s.host + "@evil.example",
		"[::1]:" + port, "127.1:" + port, "127.0.0.1:0" + port,
	} {
		if got := s.ask("GET", "/", host, nil); got.StatusCode != http.StatusMisdirectedRequest {
			t.Errorf("%q: %d", host, got.StatusCode)
		}
	}
	if got := s.raw(t, "GET http://evil.example/ HTTP/1.1\r\nHost: "+s.host+"\r\n\r\n"); !strings.Contains(got, "421") {
		t.Error(got)
	}
	if got := s.raw(t, "GET / HTTP/1.1\r\nHost: "+s.host+"\r\nHost: evil.example\r\n\r\n"); !strings.Contains(got, "400") {
		t.Error(got)
	}
}

func TestThePageCanOnlyBeLookedAt(t *testing.T) {
	s := serving(t, open)
	for _, method := range []string{"POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "CONNECT", "PROPFIND", "get"} {
		if got := s.ask(method, "/", s.host, nil); got.StatusCode != http.StatusMethodNotAllowed || got.Header.Get("Allow") != "GET, HEAD" {
			t.Errorf("%s: %d", method, got.StatusCode)
		}
	}
	const ten = 10 << 20
	for name, head := range map[string]string{
		"405": fmt.Sprintf("POST / HTTP/1.1\r\nHost: %s\r\nContent-Length: %d\r\n\r\n", s.host, ten),
		"413": fmt.Sprintf("GET / HTTP/1.1\r\nHost: %s\r\nContent-Length: %d\r\n\r\n", s.host, ten),
		"431": fmt.Sprintf("GET / HTTP/1.1\r\nHost: %s\r\nX: ", s.host),
	} {
		if got := s.raw(t, head+strings.Repeat("x", ten)); !strings.Contains(got, name) && !strings.Contains(got, "reset") {
			t.Errorf("ten megabytes: %q, want %s", got, name)
		}
	}
	if got := s.raw(t, "GET / HTTP/1.1\r\nHost: "+s.host+"\r\nTransfer-Encoding: chunked\r\n\r\n5\r\nhello\r\n0\r\n\r\n"); !strings.Contains(got, "413") {
		t.Error(got)
	}
	if got := s.raw(t, "OPTIONS * HTTP/1.1\r\nHost: "+s.host+"\r\n\r\n"); !strings.Contains(got, "405") {
		t.Error(got)
	}
	for _, text := range []string{"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03\r\n\r\n", "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", "GET / HTTP/9.9\r\n\r\n", "\r\n\r\n\r\n\r\n"} {
		if got := s.raw(t, text); strings.Contains(got, "200") {
			t.Errorf("%q: %s", text, got)
		}
	}
}

// Whoever is slow with the head of a request is cut off, and so is who asks nothing.
func TestSlowHeadsAreCutOff(t *testing.T) {
	limits := open
	limits.Head, limits.Idle = 50*time.Millisecond, 50*time.Millisecond
	s := serving(t, limits)
	for _, text := range []string{"", "GET / HT", "GET / HTTP/1.1\r\nHost: " + s.host + "\r\nX-A: 1\r\n"} {
		if got := s.raw(t, text); strings.Contains(got, "200") || strings.Contains(got, "timeout") {
			t.Errorf("%q: %s", text, got)
		}
	}
	u := UsualLimits
	if h := Serve(mustListen(t), u); h.http.ReadHeaderTimeout != u.Head || h.http.MaxHeaderBytes > 16<<10 || h.Close() != nil {
		t.Error("heads have no limit")
	}
	for _, d := range []time.Duration{u.Head, u.Write, u.Idle} {
		if d <= 0 || d > 10*time.Second {
			t.Errorf("a limit is %v", d)
		}
	}
}

func mustListen(t *testing.T) net.Listener {
	t.Helper()
	l, err := Listen(netip.MustParseAddrPort("127.0.0.1:0"))
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestWhoAsksTooOftenWaits(t *testing.T) {
	limits := open
	limits.Burst, limits.Every = 3, time.Hour
	s := serving(t, limits)
	for i, want := range []int{200, 200, 200, 429, 429} {
		got := s.ask("GET", "/", s.host, nil)
		if got.StatusCode != want || want == 429 && got.Header.Get("Retry-After") == "" {
			t.Errorf("request %d: %d, want %d", i, got.StatusCode, want)
		}
	}
}

func TestEachAddressHasItsAllowance(t *testing.T) {
	now := time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)
	p := newPacer(2, time.Second, func() time.Time { return now })
	one, two := netip.MustParseAddr("10.0.0.1"), netip.MustParseAddr("10.0.0.2")
	take := func(a netip.Addr, want ...bool) {
		t.Helper()
		for i, w := range want {
			if got := p.take(a); got != w {
				t.Errorf("%v, request %d: %v", a, i, got)
			}
		}
	}
	take(one, true, true, false, false)
	take(two, true, true, false)
	now = now.Add(time.Second)
	take(one, true, false)
	now = now.Add(time.Hour)
	take(one, true, true, false)
	for i := range 3 * maxPaced {
		p.take(netip.AddrFrom4([4]byte{10, 1, byte(i >> 8), byte(i)}))
	}
	if len(p.by) > maxPaced+1 {
		t.Errorf("%d addresses are kept", len(p.by))
	}
	take(netip.MustParseAddr("10.200.0.1"), false) // all that are too many share one allowance
	now = now.Add(time.Hour)
	take(netip.MustParseAddr("10.200.0.1"), true, true, false)
}

// One address cannot take all connections.
func TestConnectionsHaveLimits(t *testing.T) {
	limits := open
	limits.ConnsEach = 2
	s := serving(t, limits)
	var held []net.Conn
	for range 2 {
		c, err := net.Dial("tcp", s.host)
		if err != nil {
			t.Fatal(err)
		}
		held = append(held, c)
		if _, err := fmt.Fprintf(c, "HEAD / HTTP/1.1\r\nHost: %s\r\n\r\n", s.host); err != nil {
			t.Fatal(err)
		}
		if line, err := bufio.NewReader(c).ReadString('\n'); err != nil || !strings.Contains(line, "200") {
			t.Fatal(line, err)
		}
	}
	plain := "GET / HTTP/1.1\r\nHost: " + s.host + "\r\nConnection: close\r\n\r\n"
	if got := s.raw(t, plain); strings.Contains(got, "HTTP") {
		t.Errorf("a third connection is answered: %s", got)
	}
	for _, c := range held {
		_ = c.Close()
	}
	wait(t, func() bool { return strings.Contains(s.raw(t, plain), "200") })
}

// wait waits until something holds.
func wait(t testing.TB, holds func() bool) {
	t.Helper()
	for end := time.Now().Add(limit); !holds(); time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			t.Fatal("it never holds")
		}
	}
}

// What was told stands on the page: no desk, no night, the night, the desk closed, the night over.
func TestThePageSaysWhatIsTheMatter(t *testing.T) {
	s := Serve(mustListen(t), open)
	defer s.Close()
	page := func() string {
		body, err := io.ReadAll(s.ask("GET", "/", s.host, nil).Body)
		if err != nil {
			t.Fatal(err)
		}
		return string(body)
	}
	for i, step := range []struct {
		do   func()
		has  string
		hall bool
	}{
		{func() {}, notYet, false},
		{func() { s.Tell(nil) }, notYet, false},
		{func() { s.Tell(&public.View{}) }, noNight, false},
		{func() { s.Tell(evening()) }, "as of", true},
		{func() { s.Tell(nil) }, noDesk, true},
		{func() { s.Tell(nil) }, noDesk, true},
		{func() { s.Tell(evening()) }, "as of", true},
		{s.Over, nightOver, true},
		{func() { s.Tell(&public.View{}) }, nightOver, true},
	} {
		step.do()
		text := page()
		if !strings.Contains(text, step.has) || strings.Contains(text, "Ada A.") != step.hall {
			t.Errorf("step %d: %q and the hall %v are not in\n%s", i, step.has, step.hall, text)
		}
	}
}
