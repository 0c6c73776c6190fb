package rotation

import (
	"slices"
	"strings"
	"testing"

	"club/quadrille/scheduler"
	"club/quadrille/session/roster"
)

func parse(t *testing.T, text string) []roster.Entry {
	t.Helper()
	entries, err := roster.Parse(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return entries
}

func TestMomentsBecomeRounds(t *testing.T) {
	tests := []struct {
		name, arrive, leave string
		from, until         int // rounds from 0; until is the first round missed, 0 for none
	}{
		{"there throughout", "", "", 0, 0},
		{"from round 3", "3", "", 2, 0},
		{"round 5 is the last", "", "5", 0, 5},
		{"on time", "18:30", "", 0, 0},
		{"at a call", "19:30", "", 2, 0},
		{"just after a call", "19:31", "", 3, 0},
		{"gone at a call", "", "20:00", 0, 4},
		{"gone within a round", "", "20:14", 0, 4},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			text := "name,arrive,leave\nAnn," + tt.arrive + "," + tt.leave + "\nBob,,\nCas,,\nDan,,\n"
			p, err := Request{Roster: parse(t, text), Courts: 1, Rounds: 8, Start: "19:00", Slot: 15}.Problem()
			if err != nil {
				t.Fatal(err)
			}
			if got := p.People[0]; got.Arrive != tt.from || got.Leave != tt.until {
				t.Errorf("from round %d until %d, want %d until %d", got.Arrive, got.Leave, tt.from, tt.until)
			}
		})
	}
}

func TestWishesAreTakenOncePerPair(t *testing.T) {
	entries := parse(t, "name,partner_with,keep_apart\nAnn,bob,\nBob,Ann,\nCas,Dan*2,\nDan,,Ann\n")
	p, err := Request{Roster: entries, Courts: 1, Rounds: 2}.Problem()
	if err != nil {
		t.Fatal(err)
	}
	if want := []scheduler.Pair{{A: 0, B: 1}, {A: 2, B: 3, Times: 2}}; !slices.Equal(p.Together, want) {
		t.Errorf("together %v, want %v", p.Together, want)
	}
	if want := []scheduler.Pair{{A: 0, B: 3}}; !slices.Equal(p.NeverMeet, want) {
		t.Errorf("apart %v, want %v", p.NeverMeet, want)
	}
}

func TestWhoPlaysOnlyOnSomeCourts(t *testing.T) {
	p, err := Request{Roster: parse(t, "name,courts\nAnn,2; 3\nBob,\nCas,\nDan,\n"), Courts: 3, Rounds: 2}.Problem()
	if err != nil || !slices.Equal(p.People[0].Courts, []scheduler.Court{1, 2}) || p.People[1].Courts != nil {
		t.Errorf("%+v, %v", p.People, err)
	}
}

func TestRequestRefuses(t *testing.T) {
	clock := parse(t, "name,arrive\nAnn,19:30\nBob,\nCas,\nDan,\n")
	gone := parse(t, "name,arrive,leave\nAnn,5,4\nBob,,\nCas,,\nDan,,\n")
	tests := []struct {
		name string
		ask  Request
		want string
	}{
		{"three people", Request{Players: 3, Courts: 1, Rounds: 1}, "4 to 2000 players, not 3"},
		{"too many people", Request{Players: 5000, Courts: 1, Rounds: 1}, "not 5000"},
		{"no court", Request{Players: 8, Rounds: 1}, "1 to 500 courts, not 0"},
		{"no round", Request{Players: 8, Courts: 1}, "1 to 500 rounds, not 0"},
		{"a ladder", Request{Players: 8, Courts: 1, Rounds: 1, Format: scheduler.Ladder}, "a ladder cannot be planned"},
		{"times without a start", Request{Roster: clock, Courts: 1, Rounds: 2, Slot: 15}, "roster line 2: Ann: arrive: a time of day needs"},
		{"a start that is none", Request{Roster: clock, Courts: 1, Rounds: 2, Slot: 15, Start: "seven"}, "--start \"seven\" is no time of day"},
		{"no slot", Request{Roster: clock, Courts: 1, Rounds: 2, Start: "19:00"}, "a round takes 1 minute or more"},
		{"a court that is none", Request{Roster: parse(t, "name,courts\nAnn,1;3\nBob,\nCas,\nDan,\n"), Courts: 2, Rounds: 1}, "roster line 2: Ann plays only on court 3, and the courts are 1 to 2"},
		{"gone before arriving", Request{Roster: gone, Courts: 1, Rounds: 8}, "Ann leaves before the first round that fits"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if _, err := tt.ask.Problem(); err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}

func TestPeopleWithoutNamesAreNumbered(t *testing.T) {
	for n, want := range map[int][2]string{8: {"P01", "P08"}, 99: {"P01", "P99"}, 100: {"P001", "P100"}} {
		people := Numbered(n, scheduler.Rotating)
		if got := [2]string{people[0].Name, people[n-1].Name}; got != want {
			t.Errorf("%d people are called %v, want %v", n, got, want)
		}
	}
	if p := Numbered(4, scheduler.Mixed); p[0].Group == p[1].Group || p[0].Group != p[2].Group {
		t.Errorf("groups %v", p)
	}
}
