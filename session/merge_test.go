package session

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
)

// laptop is a desk whose identities differ from every other laptop's.
func laptop(t testing.TB, name string) (*Desk, *MemoryLog, *testClock) {
	t.Helper()
	log, clock, n := &MemoryLog{}, &testClock{evening}, 0
	d, err := NewDesk(log, clock.Now, func() PersonID { n++; return PersonID(fmt.Sprintf("%s-%03d", name, n)) })
	if err != nil {
		t.Fatal(err)
	}
	return d, log, clock
}

// fullNight plays a night with an undo in it and closes it.
func fullNight(t *testing.T, d *Desk, clock *testClock, people ...string) {
	t.Helper()
	must(t, d, OpenNight{Name: "a night", Settings: DefaultSettings(5), Courts: 1})
	for _, name := range people {
		if p, ok := d.Ledger().Club().Named(name); ok {
			must(t, d, CheckIn{p.ID})
			continue
		}
		must(t, d, AddGuest{Name: name})
	}
	playRound(t, d, clock)
	must(t, d, Undo{}, Redo{})
	playRound(t, d, clock)
	must(t, d, EndNight{})
}

func TestJoiningAnEmptyFileGivesTheSameRecords(t *testing.T) {
	a, log, clock := laptop(t, "a")
	fullNight(t, a, clock, "Ada", "Ben", "Cy", "Di", "Eve")
	b, copied, _ := laptop(t, "b")
	if _, _, err := b.Join(log.records, AskSame); err != nil {
		t.Fatal(err)
	}
	var one, two bytes.Buffer
	if err := errors.Join(ExportEvents(&one, log.Records(1)), ExportEvents(&two, copied.Records(1))); err != nil {
		t.Fatal(err)
	}
	if one.String() != two.String() {
		t.Errorf("export, import, export differs:\n%s\n%s", one.String(), two.String())
	}
}

func TestJoiningTwoLaptops(t *testing.T) {
	a, _, clockA := laptop(t, "a")
	fullNight(t, a, clockA, "Ada", "Ben", "Cy", "Di")
	b, logB, clockB := laptop(t, "b")
	fullNight(t, b, clockB, "Ada", "Bo", "Cleo", "Dan")
	var ask *SameNameError
	if _, _, err := a.Join(logB.records, AskSame); !errors.As(err, &ask) || !slices.Equal(ask.Names, []string{"Ada"}) {
		t.Fatalf("got %v, want to be asked about Ada", err)
	}
	_, got, err := a.Join(logB.records, OneAlike)
	if err != nil || got.Nights != 1 || got.People != 3 {
		t.Fatalf("%+v, %v", got, err)
	}
	ada, _ := a.Ledger().Club().Named("Ada")
	second := a.Ledger().Club().Nights[1]
	if len(a.Ledger().Club().People) != 7 || second.Attending(ada.ID) == nil || second.GamesOf(ada.ID) != 2 {
		t.Errorf("Ada's games of the other laptop are not hers here: %+v", second.Roll)
	}
	before := a.Ledger().Last()
	if _, got, err = a.Join(logB.records, OneAlike); err != nil || got.Records != 0 || got.Known != 1 || a.Ledger().Last() != before {
		t.Errorf("joining the same night twice: %+v, %v", got, err)
	}
}

func TestTwoPeopleOfOneNameStayTwo(t *testing.T) {
	a, logA, clockA := laptop(t, "a")
	fullNight(t, a, clockA, "Ada", "Ben", "Cy", "Di")
	b, logB, clockB := laptop(t, "b")
	fullNight(t, b, clockB, "Ada", "Bo", "Cleo", "Dan")
	_, got, err := a.Join(logB.records, TwoAlike)
	if err != nil || got.People != 4 || !slices.Equal(got.Renamed, []string{"Ada (2)"}) {
		t.Fatalf("%+v, %v", got, err)
	}
	checkReplay(t, a, logA)
}

func TestForgottenPersonsNameIsNowhere(t *testing.T) {
	d, log, clock := newTestDesk(t)
	must(t, d, OpenNight{Name: "Birthday of ADA ALDER", Settings: DefaultSettings(5), Courts: 1})
	for _, name := range []string{"Ada Alder", "Ben Brook", "Cy Crane", "Di Dale"} {
		must(t, d, AddGuest{Name: name, Level: 3})
	}
	playRound(t, d, clock)
	must(t, d, HoldPlay{"injury of Ada Alder"}, ResumePlay{})
	ada, _ := d.Ledger().Club().Named("Ada Alder")
	games := d.Ledger().Night().GamesOf(ada.ID)
	change, label := forgetting(t, NewForgotten("Ada Alder"), log)
	for i, r := range log.records {
		log.records[i] = change(r)
	}
	raw, err := json.Marshal(log.records)
	if err != nil || strings.Contains(strings.ToLower(string(raw)), "ada alder") {
		t.Errorf("the name is still in the records: %v", err)
	}
	l, err := Load(log.Records(1))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := l.Club().Person(ada.ID)
	if p.Name != label || p.Level != 0 || l.Night().GamesOf(ada.ID) != games {
		t.Errorf("left of the person: %+v with %d games, want %d", p, l.Night().GamesOf(ada.ID), games)
	}
}

// TestANumberedNameIsNotTooLong, however long the name is that two people have.
func TestANumberedNameIsNotTooLong(t *testing.T) {
	long := strings.Repeat("Ada ", MaxName/4)[:MaxName-1] + "z"
	a, _, clockA := laptop(t, "a")
	fullNight(t, a, clockA, long, "Ben", "Cy", "Di")
	b, logB, clockB := laptop(t, "b")
	fullNight(t, b, clockB, long, "Bo", "Cleo", "Dan")
	_, got, err := a.Join(logB.records, TwoAlike)
	if err != nil || len(got.Renamed) != 1 || len(got.Renamed[0]) > MaxName || !strings.HasSuffix(got.Renamed[0], " (2)") {
		t.Fatalf("%+v, %v", got, err)
	}
}
