package session

import (
	"bytes"
	"strings"
	"testing"
)

// The card is the club's: it needs no night, is there on the next ones, and is undone and replayed like anything else.
func TestTheEmergencyCard(t *testing.T) {
	d, log, _ := newTestDesk(t)
	card := EmergencyCard{Address: " 12 Mill Lane \n", Contacts: "warden 555 0100"}
	must(t, d, WriteCard{Card: card})
	got := d.Ledger().Club().Card(HomeVenue)
	if got.Address != "12 Mill Lane" || len(got.Written()) != 2 || len(got.Lines()) != 5 || got.OnBoard {
		t.Fatalf("kept as %+v", got)
	}
	refused(t, d, WriteCard{Card: card}, "nothing is different")
	refused(t, d, WriteCard{Card: EmergencyCard{Access: strings.Repeat("x", MaxCardText+1)}}, "Access: a line of the card has at most 200 characters")
	must(t, d, WriteCard{Venue: "hall 2", Card: EmergencyCard{Address: "9 Yard Road"}})
	if d.Ledger().Club().Card(HomeVenue) != got || d.Ledger().Club().Card("hall 2").Address != "9 Yard Road" {
		t.Error("a card of one place is that of another")
	}
	checkReplay(t, d, log)
	withPeople(t, d, 1, 4, Rounds)
	before := d.Ledger()
	must(t, d, WriteCard{Card: EmergencyCard{Address: "14 Mill Lane"}})
	if before.Club().Card(HomeVenue) != got {
		t.Error("the state before was changed")
	}
	must(t, d, Undo{})
	if d.Ledger().Club().Card(HomeVenue) != got {
		t.Error("the undo did not bring back what the card said")
	}
	checkReplay(t, d, log)
	must(t, d, EndNight{}, OpenNight{Settings: DefaultSettings(1), Courts: 1})
	if d.Ledger().Club().Card(HomeVenue) != got {
		t.Error("the next night has another card")
	}
}

// A merge takes the other file's card where there is none here, whenever it was written, and leaves ours.
func TestACardIsTakenInWhereThereIsNone(t *testing.T) {
	card := func(address string) Command { return WriteCard{Card: EmergencyCard{Address: address}} }
	for _, own := range []bool{false, true} {
		a, log, clock := laptop(t, "a")
		fullNight(t, a, clock, "Ada", "Ben", "Cy", "Di")
		b, _, _ := laptop(t, "b")
		if _, _, err := b.Join(log.records, AskSame); err != nil {
			t.Fatal(err)
		}
		must(t, a, card("an old one"), card("theirs"))
		want := "theirs"
		if own {
			must(t, b, card("ours"))
			want = "ours"
		}
		for range 2 {
			if _, _, err := b.Join(log.records, AskSame); err != nil {
				t.Fatal(err)
			}
			if got := b.Ledger().Club().Card(HomeVenue).Address; got != want {
				t.Errorf("own card %v: it says %q", own, got)
			}
		}
	}
}

// Whoever is forgotten is no contact any more.
func TestTheCardForgets(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	name := d.Ledger().Club().People[0].Name
	must(t, d, WriteCard{Card: EmergencyCard{Address: "12 Mill Lane", Contacts: name + " has the key"}})
	change, _ := forgetting(t, NewForgotten(name), log)
	for r := range log.Records(1) {
		if after := change(r).Payload; r.Kind == "CardWritten" && (bytes.Contains(after, []byte(name)) || !bytes.Contains(after, []byte("has the key"))) {
			t.Errorf("the card says %s", after)
		}
	}
}
