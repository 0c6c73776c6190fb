package main

import (
	"context"
	"testing"
	"time"

	"club/quadrille/scheduler"
)

func TestParseEffort(t *testing.T) {
	for text, want := range map[string]effort{
		"1": {times: 1}, " 6 ": {times: 6}, "1000": {times: 1000},
		"10s": {1, 10 * time.Second}, "1m30s": {1, 90 * time.Second}, "60m": {1, time.Hour},
	} {
		if got, err := parseEffort(text); err != nil || got != want {
			t.Errorf("%q is read as %+v (%v)", text, got, err)
		}
	}
	for _, text := range []string{"", "0", "-1", "1001", "0s", "500ms", "61m", "ten", "10 s", "-5s", "1e3"} {
		if got, err := parseEffort(text); err == nil {
			t.Errorf("%q is read as %+v", text, got)
		}
	}
}

// TestEffortOfATimeIsNeverWorse compares with the usual rotation, and ends when the context of the caller does.
func TestEffortOfATimeIsNeverWorse(t *testing.T) {
	p := scheduler.Problem{People: make([]scheduler.Person, 29), Courts: make([]scheduler.CourtSpec, 5), Rounds: 14, Seed: 1}
	usual, err := effort{times: 1}.plan(t.Context(), p)
	if err != nil {
		t.Fatal(err)
	}
	longer, err := effort{times: 1, span: 2 * time.Second}.plan(t.Context(), p)
	if err != nil {
		t.Fatal(err)
	}
	before, after := scheduler.Certify(p, usual).MeetingEvenness, scheduler.Certify(p, longer).MeetingEvenness
	if after.Value > before.Value {
		t.Errorf("%d meetings repeat, usually %d", after.Value, before.Value)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := (effort{times: 1, span: time.Hour}).plan(ctx, p); err == nil {
		t.Error("no error though the caller has ended it")
	}
}
