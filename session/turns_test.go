package session

import (
	"testing"

	"club/quadrille/scoring"
)

// TestWhoWasOnCourtDidNotSitOut: somebody who is hurt and left the game to a substitute, and the four of a game
// that was void, are told as what they are, and the substitute has the game.
func TestWhoWasOnCourtDidNotSitOut(t *testing.T) {
	for _, flow := range []Flow{Rounds, Rolling} {
		d, log, _ := newTestDesk(t)
		withPeople(t, d, 1, 5, flow)
		if flow == Rounds {
			must(t, d, CallRound{})
		} else {
			must(t, d, BeginPlay{}, EndCalls{})
		}
		n := d.Ledger().Night()
		hurt, sub := n.Games[0].A[0], n.Bench()[0].Person
		must(t, d, ScoreRally{1, scoring.Rally{Won: scoring.A}}, Substitute{1, hurt, sub})
		n = d.Ledger().Night()
		if got := n.TurnsOf(hurt); got != (Turns{Unfinished: 1}) || got.Also() != "1 unfinished" {
			t.Errorf("%s: the one who was hurt reads %+v (%s)", flow, got, got.Also())
		}
		if got := n.TurnsOf(sub); got != (Turns{Games: 1}) || got.Also() != "" {
			t.Errorf("%s: the substitute reads %+v (%s)", flow, got, got.Also())
		}
		void, err := n.Games[0].Rules.Final(0, 0, scoring.Void)
		if err != nil {
			t.Fatal(err)
		}
		must(t, d, FinishGame{Game: 1, Final: void})
		n = d.Ledger().Night()
		for _, id := range n.Games[0].Players() {
			if got := n.TurnsOf(id); got != (Turns{Void: 1}) || got.Also() != "1 void" {
				t.Errorf("%s: who played the void game reads %+v (%s)", flow, got, got.Also())
			}
		}
		checkReplay(t, d, log)
	}
}
