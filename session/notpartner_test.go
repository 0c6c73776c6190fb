package session

import (
	"testing"

	"club/quadrille/scheduler"
)

// TestNotPartners: in all flows and formats two who shall not be partners never are, and do play.
func TestNotPartners(t *testing.T) {
	for _, c := range []struct {
		flow   Flow
		format scheduler.Format
	}{{Rounds, scheduler.Rotating}, {Rolling, scheduler.Rotating}, {Rounds, scheduler.Pairs}, {Rounds, scheduler.Ladder}} {
		d, _, clock := newTestDesk(t)
		s := DefaultSettings(7)
		s.Flow, s.Format = c.flow, c.format
		must(t, d, OpenNight{Settings: s, Courts: 2})
		for _, name := range []string{"Ann", "Bob", "Cat", "Dan", "Eve", "Flo", "Gus", "Hal", "Ida", "Joe"} {
			must(t, d, AddGuest{Name: name})
		}
		ann, _ := d.Ledger().Club().Named("Ann")
		for _, other := range []string{"Bob", "Cat", "Dan", "Eve"} {
			ann.NotPartner = append(ann.NotPartner, named(t, d, other))
		}
		must(t, d, ChangePerson{ann})
		playCalls(t, d, clock, 12)
		n, games, against := d.Ledger().Night(), 0, 0
		for _, g := range n.Games {
			us, them := g.A, g.B
			if them.Has(ann.ID) {
				us, them = them, us
			}
			if !us.Has(ann.ID) {
				continue
			}
			games++
			for _, id := range ann.NotPartner {
				if us.Has(id) {
					t.Errorf("%s, %s: Ann plays with %s", c.flow, c.format.Words(), d.Ledger().Club().Name(id))
				}
				if them.Has(id) {
					against++
				}
			}
		}
		if games < 7 || against == 0 {
			t.Errorf("%s, %s: Ann has %d games, and meets those who are no partners %d times", c.flow, c.format.Words(), games, against)
		}
	}
}

// TestNoExchangeMakesPartnersOfThem, neither within a game nor between two.
func TestNoExchangeMakesPartnersOfThem(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	must(t, d, CallRound{})
	n := d.Ledger().Night()
	g, h := n.Running()[0], n.Running()[1]
	p, _ := d.Ledger().Club().Person(g.A[0])
	p.NotPartner = []PersonID{g.B[0], h.A[1]}
	must(t, d, ChangePerson{p})
	refused(t, d, ExchangePlayers{g.A[0], g.B[1]}, "shall never be partners")
	refused(t, d, ExchangePlayers{g.A[1], g.B[0]}, "shall never be partners")
	refused(t, d, ExchangePlayers{g.A[0], h.A[0]}, "shall never be partners")
	must(t, d, ExchangePlayers{g.A[0], h.B[0]}, ExchangePlayers{g.A[1], h.B[1]})
}
