package wire

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"club/quadrille/session/public"
)

// Only addresses of private networks are told as a page, whatever somebody says hello with.
func TestOnlyAPageInTheNetworkIsTold(t *testing.T) {
	for said, want := range map[string]string{
		"http://192.168.1.20:8470/": "http://192.168.1.20:8470/", "http://[fd00::2]:8470/": "http://[fd00::2]:8470/", "http://127.0.0.1:80": "http://127.0.0.1:80/",
		"": "", "192.168.1.20:8470": "", "https://192.168.1.20:8470/": "", "http://evil.example:80/": "", "http://8.8.8.8:80/": "", "http://192.168.1.20/": "",
		"http://192.168.1.20:8470/../": "", "http://192.168.1.20:8470/\x1b[31m": "", "http://[fe80::1%eth0]:80/": "", "http://": "",
	} {
		if got := (hello{Page: said}).page(); got != want {
			t.Errorf("%q is told as %q, want %q", said, got, want)
		}
	}
}

// The address of a page is shown to all boards while somebody shows the views on there, and no longer.
func TestThePageIsToldWhileItIsThere(t *testing.T) {
	club := filepath.Join(folder(t), "club.qdb")
	s := openDesk(t, club, usualPace)
	s.Show(func() ([]byte, error) { return Encode(public.View{Version: public.Version, Seq: 7, Phones: s.Page()}) })
	board := watch(t, club)
	board.until("no page", func(n News) bool { return n.View != nil && n.View.Phones == "" })
	const page = "http://192.168.1.20:8470/"
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan struct{})
	go func() {
		defer close(done)
		Share(ctx, club, "v1", page, func(News) {})
	}()
	board.until("the page", func(n News) bool { return n.View != nil && n.View.Phones == page && n.View.Seq == 7 })
	asking, enough := context.WithTimeout(t.Context(), limit)
	defer enough()
	if v := Ask(asking, club, "v1"); v == nil || v.Phones != page {
		t.Errorf("who asks is told %+v", v)
	}
	stop()
	<-done
	board.until("no page again", func(n News) bool { return n.View != nil && n.View.Phones == "" })
	none, soon := context.WithTimeout(t.Context(), time.Second)
	defer soon()
	if v := Ask(none, filepath.Join(folder(t), "other.qdb"), "v1"); v != nil {
		t.Errorf("a desk that is not there says %+v", v)
	}
}
