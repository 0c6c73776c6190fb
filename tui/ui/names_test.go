package ui

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/session"
	"club/quadrille/tui/line"
)

// namesOf are the names of a night of these people, with p0, p1 … for identities.
func namesOf(people ...string) (*Names, []session.PersonID) {
	c := &session.Club{}
	n := &session.Night{}
	var ids []session.PersonID
	for i, name := range people {
		id := session.PersonID(rune('a' + i))
		ids = append(ids, id)
		c.People = append(c.People, session.Person{ID: id, Name: name})
		n.Roll = append(n.Roll, session.Attendance{Person: id, State: session.Here})
	}
	c.Nights = []*session.Night{n}
	return NewNames(c), ids
}

func TestShortNames(t *testing.T) {
	for _, c := range []struct{ people, want []string }{
		{[]string{"Agnes Vale", "Bram Okoro"}, []string{"Agnes", "Bram"}},
		{[]string{"Agnes Vale", "Agnes Okoro", "Bram Hart"}, []string{"Agnes V.", "Agnes O.", "Bram"}},
		{[]string{"Agnes Vale", "agnes okoro"}, []string{"Agnes V.", "agnes o."}},
		{[]string{"Agnes Vale", "Agnes Vold"}, []string{"Agnes Vale", "Agnes Vold"}},
		{[]string{"Agnes", "Agnes Vale"}, []string{"Agnes", "Agnes V."}},
		{[]string{"Jan van der Berg", "Jan de Vries"}, []string{"Jan B.", "Jan V."}},
		{[]string{"Åsa Öst", "Åsa Ek"}, []string{"Åsa Ö.", "Åsa E."}},
		{[]string{"Ng", "Li"}, []string{"Ng", "Li"}},
		{[]string{"Åsa 👩\u200d👧", "Åsa Ek"}, []string{"Åsa 👩\u200d👧.", "Åsa E."}},
	} {
		names, ids := namesOf(c.people...)
		var got []string
		for _, id := range ids {
			got = append(got, names.Short(id))
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q are called %q, want %q", c.people, got, c.want)
		}
	}
}

// TestShortNamesLeaveNoDoubt: no two people of a night are called the same, as long as their full
// names differ, and a short name is never longer than the full one.
func TestShortNamesLeaveNoDoubt(t *testing.T) {
	first := rapid.SampledFrom([]string{"Ann", "ann", "Bo", "Cy"})
	last := rapid.SampledFrom([]string{"", " Ash", " Alm", " B.", " Berg", " de Berg", " A."})
	rapid.Check(t, func(r *rapid.T) {
		people := rapid.SliceOfNDistinct(rapid.Custom(func(r *rapid.T) string {
			return first.Draw(r, "first") + last.Draw(r, "last")
		}), 1, 12, strings.ToLower).Draw(r, "people")
		names, ids := namesOf(people...)
		seen := map[string]session.PersonID{}
		for _, id := range ids {
			short := names.Short(id)
			if other, ok := seen[strings.ToLower(short)]; ok {
				r.Fatalf("%q and %q are both called %q", names.Full(id), names.Full(other), short)
			}
			seen[strings.ToLower(short)] = id
		}
	})
}

func TestSidesAndLists(t *testing.T) {
	names, ids := namesOf("Agnes Vale", "Bram Okoro", "Cleo Hart")
	for _, c := range []struct{ got, want string }{
		{names.Team(session.Team{ids[0], ids[1]}), "Agnes & Bram"},
		{names.Team(session.Team{ids[2]}), "Cleo"},
		{names.FullTeam(session.Team{ids[0], ids[1]}), "Agnes Vale & Bram Okoro"},
		{names.FullTeam(session.Team{ids[2]}), "Cleo Hart"},
		{names.List(ids), "Agnes, Bram, Cleo"},
		{names.List(nil), ""},
		{names.Full("nobody"), "somebody"},
		{names.Short("nobody"), "somebody"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// TestATeamInLittleRoom: it never takes more cells than there are, and while there are a few both people can be told.
func TestATeamInLittleRoom(t *testing.T) {
	names, ids := namesOf("Agnes Vale", "Bartholomew-Maximilian van der Weijden", "Wolfeschlegelstein Wolfeschlegelstein", "Li")
	for _, c := range []struct {
		a, b, room int
		want       string
	}{
		{0, 3, 40, "Agnes Vale & Li"},
		{0, 1, 60, "Agnes Vale & Bartholomew-Maximilian van der Weijden"},
		{0, 1, 40, "Agnes Vale & Bartholomew-Maximilian"},
		{1, 0, 40, "Bartholomew-Maximilian & Agnes Vale"},
		{0, 1, 25, "Agnes Vale & Bartholomew…"},
		{2, 3, 20, "Wolfeschlegels… & Li"},
	} {
		if got := names.FullTeamIn(session.Team{ids[c.a], ids[c.b]}, c.room); got != c.want {
			t.Errorf("in %d cells it is %q, want %q", c.room, got, c.want)
		}
	}
	rapid.Check(t, func(r *rapid.T) {
		team := session.Team{rapid.SampledFrom(ids).Draw(r, "a"), rapid.SampledFrom(ids).Draw(r, "b")}
		room := rapid.IntRange(7, 90).Draw(r, "room")
		got := names.FullTeamIn(team, room)
		a, b, _ := strings.Cut(got, " & ")
		if line.Width(got) > room || a == "" || b == "" {
			r.Fatalf("in %d cells it is %q", room, got)
		}
	})
}
