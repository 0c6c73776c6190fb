package session

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// TestTheTableOfALedgerIsItsOwn: whichever ledger is asked, in whatever order, its table is that of its own night.
func TestTheTableOfALedgerIsItsOwn(t *testing.T) {
	d, clock := hall(t, 2, 9, func(s *Settings) { s.Flow = Rounds })
	ledgers := []*Ledger{NewLedger(), d.Ledger()}
	for range 3 {
		if _, err := d.Do(CallRound{}); err != nil {
			t.Fatal(err)
		}
		ledgers = append(ledgers, d.Ledger())
		score(t, d, clock, 1)
		ledgers = append(ledgers, d.Ledger())
		score(t, d, clock, 1)
		ledgers = append(ledgers, d.Ledger())
	}
	rapid.Check(t, func(r *rapid.T) {
		l := rapid.SampledFrom(ledgers).Draw(r, "ledger")
		var want []Place
		if n := l.Club().Night(); n != nil {
			want = Places(l.Club(), n)
		}
		if got := l.Places(); !reflect.DeepEqual(got, want) {
			r.Fatalf("the table is %v, want %v", got, want)
		}
	})
}
