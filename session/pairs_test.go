package session

import (
	"fmt"
	"testing"
	"time"

	"club/quadrille/scheduler"
)

// TestSetPairsStaySet: who was not there at first, and stands earlier in the roll than others, does not
// part the pairs that have played.
func TestSetPairsStaySet(t *testing.T) {
	for _, flow := range []Flow{Rounds, Rolling} {
		t.Run(string(flow), func(t *testing.T) {
			d, log, clock := newTestDesk(t)
			s := DefaultSettings(7)
			s.Format, s.Flow = scheduler.Pairs, flow
			must(t, d, OpenNight{Settings: s, Courts: 2})
			for i := range 9 {
				must(t, d, AddGuest{Name: fmt.Sprintf("Person %d", i+1)})
			}
			late := d.Ledger().Club().People[2].ID
			must(t, d, Rest{late})
			if flow == Rolling {
				must(t, d, BeginPlay{})
			}
			partner := map[PersonID]PersonID{}
			for round := range 5 {
				if flow == Rounds {
					must(t, d, CallRound{})
				}
				clock.now = clock.now.Add(10 * time.Minute)
				for _, g := range d.Ledger().Night().Running() {
					for _, side := range []Team{g.A, g.B} {
						for i, id := range side {
							if was, ok := partner[id]; ok && was != side[1-i] {
								t.Errorf("game %d: %s plays with %s, and was paired with %s", g.ID, id, side[1-i], was)
							}
							partner[id] = side[1-i]
						}
					}
					must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 4)})
				}
				if round == 0 {
					must(t, d, CheckIn{late})
				}
			}
			if flow == Rounds && len(partner) != 8 {
				t.Errorf("%d people have played, want four pairs", len(partner))
			}
			checkReplay(t, d, log)
		})
	}
}
