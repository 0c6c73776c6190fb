package session

import (
	"strings"
	"testing"
	"time"
)

// TestMessagesAreRefused in words that say what to do.
func TestMessagesAreRefused(t *testing.T) {
	d, _, clock := newTestDesk(t)
	refused(t, d, PostMessage{Text: "hello"}, ErrNoNight.Error())
	withPeople(t, d, 1, 4, Rounds)
	refused(t, d, PostMessage{Text: " \x1b "}, "needs a text")
	refused(t, d, PostMessage{Text: strings.Repeat("x", MaxMessage+1)}, "at most 60 characters")
	refused(t, d, PostMessage{Text: "too late", Until: clock.now}, "has passed")
	must(t, d, PostMessage{Text: strings.Repeat("界", MaxMessage/2)}, PostMessage{Text: "two", Until: clock.now.Add(time.Minute)})
	refused(t, d, PostMessage{Text: "two"}, "stands already")
	must(t, d, PostMessage{Text: "three"})
	refused(t, d, PostMessage{Text: "four"}, "3 messages stand already")
	two := d.Ledger().Night().Messages[1].ID
	clock.now = clock.now.Add(time.Minute)
	refused(t, d, EndMessage{two}, "stands no more")
	must(t, d, PostMessage{Text: "two"}, EndMessage{d.Ledger().Night().Messages[0].ID})
	must(t, d, EndNight{})
	if left := d.Ledger().Club().Night().Messages; len(left) > 0 {
		t.Errorf("the night is over, and the hall still reads %v", left)
	}
}

// TestHowTheHallSeesPeople: the club's choice holds on later nights; what the hall sees of somebody is nothing
// to the rotation, and goes when the person is forgotten.
func TestHowTheHallSeesPeople(t *testing.T) {
	d, log, _ := newTestDesk(t)
	refused(t, d, ChooseNaming{}, "already")
	refused(t, d, ChooseNaming{"shouted"}, "no way to call people")
	must(t, d, ChooseNaming{AsChosen})
	withPeople(t, d, 1, 5, Rounds)
	must(t, d, CallRound{}, PostMessage{Text: "Person 01 has left a bag"})
	p := d.Ledger().Club().People[0]
	key, plan := d.Ledger().DrawKey(), len(d.Ledger().Night().Plan)
	p.Shown, p.Hidden = " The\x07 Count ", true
	must(t, d, ChangePerson{p})
	if got := d.Ledger().Club().People[0]; got.Shown != "The Count" || !got.Hidden {
		t.Errorf("the hall sees %+v", got)
	}
	if l := d.Ledger(); l.DrawKey() != key || len(l.Night().Plan) != plan || plan == 0 {
		t.Errorf("how the hall sees somebody changes the rotation: %d rounds were planned, %d are", plan, len(l.Night().Plan))
	}
	p.Level = 3
	must(t, d, ChangePerson{p})
	if l := d.Ledger(); l.DrawKey() == key || len(l.Night().Plan) > 0 {
		t.Error("a level changes nothing of the rotation")
	}
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 4)}, EndNight{})
	if got := d.Ledger().Club().Naming; got != AsChosen {
		t.Errorf("after the night the hall sees %v", got)
	}
	checkReplay(t, d, log)
	change, _ := forgetting(t, NewForgotten("Person 01"), log)
	for r := range log.Records(1) {
		if text := string(change(r).Payload); strings.Contains(text, "Count") || strings.Contains(text, "Person 01") {
			t.Errorf("what is left of %s: %s", r.Kind, text)
		}
	}
}

// TestTwoPeopleWhoAreOneStayHidden, whichever of the two was.
func TestTwoPeopleWhoAreOneStayHidden(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 2, Rounds)
	p := d.Ledger().Club().People[0]
	p.Hidden, p.Shown = true, "Ace"
	must(t, d, ChangePerson{p}, MergePeople{p.ID, d.Ledger().Club().People[1].ID})
	if got := d.Ledger().Club().People[0]; !got.Hidden || got.Shown != "Ace" {
		t.Errorf("the one person is %+v", got)
	}
}

// TestAnotherFileBringsNoNaming: how the hall sees people is the choice of this club file; into an empty one all is
// taken as it is.
func TestAnotherFileBringsNoNaming(t *testing.T) {
	theirs, log, _ := newTestDesk(t)
	must(t, theirs, ChooseNaming{InFull})
	withPeople(t, theirs, 1, 4, Rounds)
	must(t, theirs, EndNight{})
	var records []Record
	for r, err := range log.Records(1) {
		if err != nil {
			t.Fatal(err)
		}
		records = append(records, r)
	}
	for _, c := range []struct {
		name string
		own  []Command
		want Naming
	}{
		{"empty", nil, InFull},
		{"in use", []Command{ChooseNaming{AsChosen}}, AsChosen},
	} {
		ours, _, _ := newTestDesk(t)
		must(t, ours, c.own...)
		if _, _, err := ours.Join(records, OneAlike); err != nil {
			t.Fatal(err)
		}
		if got := ours.Ledger().Club().Naming; got != c.want || len(ours.Ledger().Club().Nights) != 1 {
			t.Errorf("%s: the hall sees %v, want %v", c.name, got, c.want)
		}
	}
}
