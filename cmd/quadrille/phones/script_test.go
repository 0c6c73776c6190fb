package phones

import (
	"encoding/json"
	"os/exec"
	"reflect"
	"testing"
)

// The script of the page remembers a name, puts what comes in its place, tells a call once, says when the connection
// is lost, and comes back. It runs in a made-up browser.
func TestTheScriptKeepsThePageAsItIs(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("node is not installed: the script of the page is not run")
	}
	text, err := exec.Command(node, "testdata/browser.js", "page/live.js").CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	var got map[string]any
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	const lost = "No connection to the desk. You see the hall as of 19:42. This page goes on by itself when the connection is back."
	for what, want := range map[string]any{
		"remembers": "/?me=abc",
		"forgets":   []any{nil, nil, "/live?me="},
		"keeps":     []any{"abc", "You wait – Autumn night", "/live?me=abc"},
		"called":    []any{"<p>go</p>", "Go to court 2, with Ben B.", "Go to court 2 – Autumn night", "fresh"},
		"once":      "fresh",
		"lost":      []any{lost, true, 1.0},
		"again":     []any{2.0, false},
		"found":     "",
		"silent":    []any{true, 3.0},
		"over":      []any{true, "", 3.0},
		"gone":      nil,
	} {
		if !reflect.DeepEqual(got[what], want) {
			t.Errorf("%s: %v, want %v", what, got[what], want)
		}
	}
}
