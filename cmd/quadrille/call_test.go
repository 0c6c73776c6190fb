package main

import (
	"encoding/json"
	"strings"
	"testing"
)

// A first sequence of rallies: the calls, the servers and their boxes, worked out by hand from
// the rules of side-out doubles.
func TestCallOfTheFirstFiveRallies(t *testing.T) {
	out, errs, code := quadrille(t, "a b b b a", "call", "--json")
	if code != exitFine || errs != "" {
		t.Fatalf("exit %d: %s", code, errs)
	}
	want := []struct {
		call, serving, server, box, receiver, what string
		number                                     int
	}{
		{"0-0-2", "a", "A1", "right", "B1", "start", 2},
		{"1-0-2", "a", "A1", "left", "B2", "point", 2},
		{"0-1-1", "b", "B1", "right", "A2", "side out", 1},
		{"1-1-1", "b", "B1", "left", "A1", "point", 1},
		{"2-1-1", "b", "B1", "right", "A2", "point", 1},
		{"2-1-2", "b", "B2", "left", "A1", "second server", 2},
	}
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if len(lines) != len(want) {
		t.Fatalf("%d lines, not %d", len(lines), len(want))
	}
	for i, w := range want {
		var got struct {
			Rally                                      int
			Call, Serving, Server, Box, Receiver, What string
			Number                                     int
			Done                                       bool
			Why                                        string
		}
		if err := json.Unmarshal([]byte(lines[i]), &got); err != nil {
			t.Fatal(err)
		}
		if got.Rally != i || got.Call != w.call || got.Serving != w.serving || got.Server != w.server || got.Box != w.box ||
			got.Receiver != w.receiver || got.What != w.what || got.Number != w.number || got.Done || got.Why == "" {
			t.Errorf("rally %d: %+v, want %+v", i, got, w)
		}
	}
}

// Lines for people stay within the columns, whatever the names.
func TestCallFitsTheColumns(t *testing.T) {
	out, _, code := quadrille(t, "abababbbaaabbabababa", "call",
		"--team-a", "Maximiliane Oberhuber-Stein,Konstantin Wetterling", "--team-b", "Wilhelmina-Charlotte von der Wetterau,Bob")
	if code != exitFine {
		t.Fatalf("exit %d", code)
	}
	for line := range strings.Lines(out) {
		if w := width(strings.TrimRight(line, "\n")); w > columns {
			t.Errorf("%d columns: %s", w, line)
		}
	}
}
