package session

import (
	"bytes"
	"encoding/json"
	"os"
	"testing"

	"club/quadrille/scheduler"
)

// oldDesk goes on with a night that a program before the choice of bench and calls left open: 16 people on 2 courts.
func oldDesk(t *testing.T, flow Flow) *Desk {
	t.Helper()
	text, err := os.ReadFile("testdata/before-choice-" + string(flow) + ".jsonl")
	if err != nil {
		t.Fatal(err)
	}
	log := &MemoryLog{}
	for _, row := range bytes.Split(bytes.TrimSpace(text), []byte("\n"))[1:] {
		var r Record
		if err := json.Unmarshal(row, &r); err != nil {
			t.Fatal(err)
		}
		if err := log.Append([]Record{r}); err != nil {
			t.Fatal(err)
		}
	}
	clock := &testClock{evening.Add(1 << 31)}
	d, err := NewDesk(log, clock.Now, func() PersonID { return "new" })
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestAnOldNightKeepsItsOwnRule: what was opened before there was a choice goes on as it began, and says so; the
// next night is proposed as a new club's.
func TestAnOldNightKeepsItsOwnRule(t *testing.T) {
	for _, flow := range []Flow{Rounds, Rolling} {
		d := oldDesk(t, flow)
		holds := func(when string) {
			t.Helper()
			if s := d.Ledger().Night().Settings; s.Benching != scheduler.StrictBench || !s.ByWait {
				t.Errorf("%s, %s: %s bench, by wait %v", flow, when, s.Benching, s.ByWait)
			}
		}
		holds("opened again")
		s := d.Ledger().Night().Settings
		s.Rounds = 9
		must(t, d, ChangeSettings{s})
		holds("with another setting")
		must(t, d, Undo{})
		holds("after an undo")
		if p, _ := d.Ledger().Club().Proposal(1); p.Benching != scheduler.MixedBench || p.ByWait {
			t.Errorf("the next night has a %s bench, by wait %v", p.Benching, p.ByWait)
		}
		s.ByWait, s.Benching = false, scheduler.MixedBench
		must(t, d, ChangeSettings{s})
		if got := d.Ledger().Night().Settings; got != s {
			t.Errorf("chosen %+v, got %+v", s, got)
		}
	}
}

// TestAnOldNightIsPlannedOnAsBefore: with two closed groups, and nobody out twice running.
func TestAnOldNightIsPlannedOnAsBefore(t *testing.T) {
	d := oldDesk(t, Rounds)
	r, err := PlanRotation(t.Context(), d.Ledger(), evening)
	if err != nil || r.Certificate.BenchedTwice.Value != 0 {
		t.Fatalf("%d out twice running, %v", r.Certificate.BenchedTwice.Value, err)
	}
	s := d.Ledger().Night().Settings
	s.Benching = scheduler.MixedBench
	must(t, d, ChangeSettings{s})
	if r, err = PlanRotation(t.Context(), d.Ledger(), evening); err != nil || r.Certificate.BenchedTwice.Value == 0 {
		t.Fatalf("once it is chosen: %d out twice running, %v", r.Certificate.BenchedTwice.Value, err)
	}
}
