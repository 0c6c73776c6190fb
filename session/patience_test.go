package session

import (
	"strings"
	"testing"
	"time"
)

// TestACourtWaitsForNewPartners: where every four on the bench would repeat partners, a court stays free until the next
// game is over and then both are called with new ones; the reason is told, time alone does not change it, the organiser
// can have the court called all the same, and strictly by waiting time no court waits.
func TestACourtWaitsForNewPartners(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 4, 18, Rolling)
	must(t, d, BeginPlay{})
	waited := 0
	for range 60 {
		clock.now = clock.now.Add(3 * time.Minute)
		must(t, d, FinishGame{Game: d.Ledger().Night().Running()[0].ID, Final: final(t, 11, 4)})
		l := d.Ledger()
		n := l.Night()
		if len(n.freeCourts()) == 0 {
			continue
		}
		waited++
		why, ok := l.Idle(clock.now)
		later, _ := l.Idle(clock.now.Add(time.Hour))
		words := why.Words(l.Club(), time.UTC)
		if !ok || why.Cause != NewPartners || later.Cause != NewPartners || !strings.Contains(words, "partners would repeat") {
			t.Fatalf("court %v is free, and the reason is %+v, an hour later %+v", n.freeCourts(), why, later)
		}
		if step := l.NextStep(clock.now); step.Step != StepScores {
			t.Fatalf("a court waits for the next score, and next is %+v", step)
		}
		byWait := n.Settings
		byWait.ByWait = true
		for _, c := range []Command{CallGame{why.Court}, ChangeSettings{Settings: byWait}} {
			if after, err := try(l, c, clock.now); err != nil || len(after.Night().freeCourts()) != 0 {
				t.Fatalf("after %T a court is still free: %v", c, err)
			}
		}
		calls := len(n.Games)
		must(t, d, FinishGame{Game: n.Running()[0].ID, Final: final(t, 11, 4)})
		n = d.Ledger().Night()
		if len(n.freeCourts()) != 0 || len(n.Games) != calls+2 {
			t.Fatalf("after the next score courts %v are free, and %d games were called", n.freeCourts(), len(n.Games)-calls)
		}
		for _, team := range [2]Team{n.Games[calls].A, n.Games[calls].B} {
			if partners, _ := n.metBefore(team[0], team[1]); partners != 1 {
				t.Fatalf("%v were partners before, and the court waited for new ones", team)
			}
		}
	}
	if waited == 0 {
		t.Error("in 60 games of 18 people on 4 courts no court waited: the night shows nothing")
	}
}
