package session

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
	"time"

	"club/quadrille/session/roster"
)

// formulas are names that begin as a formula does, with what a spreadsheet must be given instead. A
// tab or a return cannot begin a name of the club, but may stand in a file of another program; a roster takes
// it for the white space that it is.
var formulas = []string{"=SUM(A1)", "+Plus", "-Minus", "@At", "\tTab", "\rReturn", "'=Quoted", "Plain"}

// People who are exported and taken in again are the same people, whatever their names begin with.
func TestExportedPeopleAreARoster(t *testing.T) {
	club := &Club{}
	for i, name := range formulas {
		club.People = append(club.People, Person{ID: PersonID(rune('a' + i)), Name: name, Group: "=x", Level: 3.25})
	}
	club.People[0].Together = []Together{{With: "b"}, {With: "c", Times: 2}, {With: "gone"}}
	club.People[1].KeepApart = []PersonID{"d", "gone"}
	club.People[2].NotPartner = []PersonID{"d", "a"}
	club.People[3].Courts = []CourtID{"=2", "Centre"}
	var out bytes.Buffer
	if err := ExportPeople(&out, club, time.UTC); err != nil {
		t.Fatal(err)
	}
	text := out.String()
	entries, err := roster.Parse(&out)
	if err != nil || len(entries) != len(formulas) {
		t.Fatalf("%d people came back, %v\n%s", len(entries), err, text)
	}
	for i, e := range entries {
		if e.Name != strings.TrimSpace(formulas[i]) || e.Group != "=x" || e.Level != 3.25 {
			t.Errorf("%q came back as %q of group %q with level %g", formulas[i], e.Name, e.Group, e.Level)
		}
	}
	if got, want := entries[0].PartnerWith, []roster.Partner{{Name: "+Plus"}, {Name: "-Minus", Times: 2}}; !reflect.DeepEqual(got, want) {
		t.Errorf("the wishes for partners came back as %v, want %v", got, want)
	}
	if got := entries[1].KeepApart; !reflect.DeepEqual(got, []string{"@At"}) {
		t.Errorf("who is kept apart came back as %q", got)
	}
	if got := entries[2].NotPartner; !reflect.DeepEqual(got, []string{"@At", entries[0].Name}) {
		t.Errorf("who is no partner came back as %q", got)
	}
	if got := entries[3].Courts; !reflect.DeepEqual(got, []string{"=2", "Centre"}) {
		t.Errorf("the only courts came back as %q", got)
	}
}

func TestExportPeopleCountsWhatTheyPlayed(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 5, Rounds)
	playRound(t, d, clock)
	playRound(t, d, clock)
	var out bytes.Buffer
	if err := ExportPeople(&out, d.Ledger().Club(), time.UTC); err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	if len(lines) != 6 || lines[0] != strings.Join(peopleHeader, ",") {
		t.Fatalf("%d lines, the first %s", len(lines), lines[0])
	}
	games := 0
	for i, l := range lines[1:] {
		n := d.Ledger().Night().GamesOf(d.Ledger().Club().People[i].ID)
		games += n
		if !strings.HasSuffix(l, ",1,"+string(rune('0'+n))+",2026-11-20") {
			t.Errorf("line %q, want %d games", l, n)
		}
	}
	if games != 8 {
		t.Errorf("%d games in all, want 8", games)
	}
}
