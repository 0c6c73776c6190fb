package session

import "testing"

// TestACopyOfAPersonSharesNothing: what is changed in the copy stays as it was in the first.
func TestACopyOfAPersonSharesNothing(t *testing.T) {
	first := Person{Together: []Together{{With: "a"}}, KeepApart: []PersonID{"a"}, NotPartner: []PersonID{"a"}, Courts: []CourtID{"a"}}
	second := first.clone()
	second.Together[0].With, second.KeepApart[0], second.NotPartner[0], second.Courts[0] = "b", "b", "b", "b"
	if first.Together[0].With != "a" || first.KeepApart[0] != "a" || first.NotPartner[0] != "a" || first.Courts[0] != "a" {
		t.Errorf("the first became %+v", first)
	}
}

// TestNobodyIsReplacedWhoDoesNotPlay, whatever a log says.
func TestNobodyIsReplacedWhoDoesNotPlay(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 6, Rounds)
	must(t, d, CallRound{})
	n := d.Ledger().Night()
	bench := n.Bench()
	f := &fold{d.Ledger().club.clone(), d.Ledger().last + 1}
	for _, out := range []PersonID{"", "nobody", bench[1].Person} {
		if err := (PlayerReplaced{1, out, bench[0].Person}).apply(f, evening); err == nil {
			t.Errorf("%q was replaced in game 1", out)
		}
	}
	if err := (PlayerReplaced{1, n.Running()[0].A[0], n.Running()[0].B[0]}).apply(f, evening); err == nil {
		t.Error("who plays was sent on")
	}
}
