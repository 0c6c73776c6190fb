package browser

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

// A page with every fault: each is found, and what is right is not.
func TestFaultsAreFound(t *testing.T) {
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = w.Write([]byte(`<!DOCTYPE html><html lang="en"><title>t</title><body style="background:#fff;color:#000">
<p>fine</p><p style="color:#999">pale</p><div style="background:#222"><p style="color:#333">dark on dark</p></div>
<p style="font-size:30px;color:#888">large and pale enough</p><p style="color:#777;background:rgba(0,0,0,.5)">glass</p>
<button style="width:40px;height:44px" aria-label="narrow"></button><button style="width:44px;height:44px">ok</button>
<button></button><div style="width:9000px">wide</div>
<table style="overflow-wrap:anywhere"><tr><th scope="col" style="width:1%">Pieces<th scope="col" style="overflow-wrap:normal">Points made</table>`))
	}))
	defer server.Close()
	tab := Open(t).Tab(360, 780).Go(server.URL)
	got := strings.Join(tab.Faults(), "\n")
	for _, want := range []string{": pale", ": dark on dark", "shines through", "target of 40.0 by 44.0", "wider than the screen", "in pieces: Pieces"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not found:\n%s", want, got)
		}
	}
	for _, not := range []string{"fine", "large and", ">ok<", "Points made"} {
		if strings.Contains(got, not) {
			t.Errorf("%q is found, and is right:\n%s", not, got)
		}
	}
	if bad := Unnamed(tab.Said()); len(bad) != 1 || bad[0] != "button" {
		t.Errorf("without a name: %q, want one button", bad)
	}
}
