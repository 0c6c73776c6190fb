package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"net"
	"net/http"
	"net/netip"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/cmd/quadrille/phones"
	"club/quadrille/cmd/quadrille/wire"
	"club/quadrille/session/public"
)

// openTestPage is a page on a port of this computer that any test may have.
func openTestPage(t *testing.T) *phones.Server {
	t.Helper()
	l, err := phones.Listen(netip.MustParseAddrPort("127.0.0.1:0"))
	if err != nil {
		t.Fatal(err)
	}
	server := phones.Serve(l, phones.UsualLimits)
	t.Cleanup(func() { _ = server.Close() })
	return server
}

// The page ends with the night: not while the desk is closed for a moment, and not before a night.
func TestSharingEndsWithTheNight(t *testing.T) {
	var out bytes.Buffer
	s := sharing{server: openTestPage(t), out: &out, idle: time.Hour, farewell: time.Millisecond}
	news := make(chan wire.News)
	go func() {
		night, none := &public.View{Version: 1, Open: true, Night: "test night"}, &public.View{Version: 1}
		for _, n := range []wire.News{{}, {}, {View: none}, {View: night}, {}, {View: night}, {Why: "This desk has as many boards as it can have."}, {View: none}} {
			news <- n
		}
	}()
	if err := s.run(t.Context(), news); err != nil {
		t.Fatal(err)
	}
	want := []string{
		"The desk is not open: the page waits for it. Open quadrille in another terminal.",
		"No night goes on yet: the page waits for one.",
		"Phones follow the desk.",
		"The desk is not open: the page waits for it. Open quadrille in another terminal.",
		"Phones follow the desk.",
		"This desk has as many boards as it can have.",
		"The night is over: the page is closed.",
	}
	if got := strings.Join(strings.Fields(out.String()), " "); got != strings.Join(want, " ") {
		t.Errorf("the organiser reads\n%s", out.String())
	}
}

// A page that nobody needs does not stay open.
func TestSharingEndsWhereNoNightGoesOn(t *testing.T) {
	var out bytes.Buffer
	s := sharing{server: openTestPage(t), out: &out, idle: time.Millisecond}
	if err := s.run(t.Context(), nil); err != nil || !strings.Contains(out.String(), "No night goes on: the page is closed.") {
		t.Errorf("%q, %v", out.String(), err)
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	s = sharing{server: openTestPage(t), out: &out, idle: time.Hour}
	if err := s.run(ctx, nil); err != nil || !strings.HasSuffix(out.String(), "\nThe page is closed.\n") {
		t.Errorf("%q, %v", out.String(), err)
	}
	s = sharing{server: openTestPage(t), out: deaf{}, idle: time.Millisecond}
	if err := s.run(t.Context(), nil); !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("%v", err)
	}
}

// deaf is an output that nobody reads.
type deaf struct{}

func (deaf) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

// What cannot be opened is refused with what to do.
func TestShareRefusesInWords(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	_, taken, _ := net.SplitHostPort(l.Addr().String())
	for _, c := range []struct {
		args []string
		code int
		want string
	}{
		{[]string{"--address", "8.8.8.8"}, exitRefused, "no address of a private network"},
		{[]string{"--address", "0.0.0.0"}, exitRefused, "no address of a private network"},
		{[]string{"--address", "10.254.253.252"}, exitRefused, "does not have the address"},
		{[]string{"--address", "127.0.0.1", "--port", taken}, exitRefused, "choose one with --port"},
		{[]string{"--address", "hall"}, exitUsage, "--address takes an address in numbers"},
		{[]string{"--port", "80"}, exitUsage, "--port takes 0 or a whole number from 1024"},
	} {
		out, errs, code := quadrille(t, "", append([]string{"share"}, c.args...)...)
		if text := strings.Join(strings.Fields(errs), " "); code != c.code || out != "" || !strings.Contains(text, c.want) {
			t.Errorf("%v: exit %d, %s%s", c.args, code, out, errs)
		}
	}
}

// One sentence says what is shown, to whom, and how it ends; address and code follow, and fit a terminal.
func TestShareSaysWhatIsShown(t *testing.T) {
	var out bytes.Buffer
	if err := announce(&out, "http://192.168.100.200:8470/", inkFor(&out)); err != nil {
		t.Fatal(err)
	}
	first, rest, _ := strings.Cut(out.String(), "\n\n")
	first = strings.Join(strings.Fields(first), " ")
	for _, want := range []string{"Everybody in the local network", "no level, wish, note or rating", "nobody can change anything", "ends with the night"} {
		if !strings.Contains(first, want) {
			t.Errorf("%q does not say %q", first, want)
		}
	}
	if strings.Count(first, ".") != 1 || !strings.Contains(rest, "\nhttp://192.168.100.200:8470/\n") || !strings.Contains(rest, "█▀") {
		t.Errorf("it prints\n%s", out.String())
	}
	if lines := strings.Split(strings.TrimRight(out.String(), "\n"), "\n"); len(lines) > 28 {
		t.Errorf("%d lines", len(lines))
	}
}

// No port is open unless it is asked for: one function opens ports, share calls it, and nothing else does.
func TestOnlyShareOpensAPort(t *testing.T) {
	callers := 0
	for path, text := range textsBelow(t, "../..", ".go") {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		if bytes.Contains(text, []byte(`net.Listen("tcp"`)) != strings.HasSuffix(path, "phones/serve.go") {
			t.Errorf("%s opens a port, or does not any more", path)
		}
		if bytes.Contains(text, []byte("phones.Listen(")) {
			callers++
			if !strings.HasSuffix(path, "cmd/quadrille/share.go") {
				t.Errorf("%s opens the page", path)
			}
		}
	}
	if callers != 1 {
		t.Errorf("%d files open the page", callers)
	}
}

// The desk opens the page, for which it names the networks first, and closes it; another one opens at another port
// while the usual one is taken.
func TestTheDeskOpensAndClosesThePage(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	local := func() ([]phones.Place, error) {
		return []phones.Place{{Addr: netip.MustParseAddr("127.0.0.1"), Interface: "lo"}}, nil
	}
	one, two := &deskPhones{path: path, places: local}, &deskPhones{path: path, places: local}
	defer one.end()
	defer two.end()
	if got, err := one.Places(); err != nil || !slices.Equal(got, []string{"127.0.0.1 (lo)"}) {
		t.Errorf("%v, %v", got, err)
	}
	if url, code := one.Address(); url != "" || code != nil {
		t.Errorf("the page is at %s before it is asked for", url)
	}
	if err := one.Open("10.0.0.1 (wlan0)"); err == nil || !strings.Contains(err.Error(), "share again") {
		t.Errorf("a network that is gone: %v", err)
	}
	for _, d := range []*deskPhones{one, two} {
		if err := errors.Join(d.Open("127.0.0.1 (lo)"), d.Open("127.0.0.1 (lo)")); err != nil {
			t.Fatal(err)
		}
	}
	first, code := one.Address()
	second, _ := two.Address()
	if first == second || len(code) == 0 || status(first) != http.StatusOK || status(second) != http.StatusOK {
		t.Errorf("%s and %s", first, second)
	}
	one.Close()
	one.end()
	if url, _ := one.Address(); url != "" || status(first) == http.StatusOK {
		t.Errorf("the page is still at %q", url)
	}
	none := &deskPhones{places: func() ([]phones.Place, error) { return nil, nil }}
	if _, err := none.Places(); err == nil || !strings.Contains(err.Error(), "join the Wi-Fi") {
		t.Errorf("without a network: %v", err)
	}
}

// status is how a page answers, 0 if nothing does.
func status(url string) int {
	got, err := http.Get(url)
	if err != nil {
		return 0
	}
	_ = got.Body.Close()
	return got.StatusCode
}
