package door

import (
	"slices"
	"strings"
	"testing"

	"club/quadrille/session"
	"club/quadrille/session/sessiontest"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// club is the context of a night with four people.
func club(t *testing.T) (ui.Context, []session.Person) {
	t.Helper()
	d := sessiontest.New(t)
	d.Must(session.OpenNight{Settings: session.DefaultSettings(1), Courts: 1})
	for _, name := range []string{"Agnes Vale", "Bram Okoro", "Cleo Hart", "Zoë Ōno"} {
		d.Must(session.AddGuest{Name: name})
	}
	l := d.Ledger()
	return ui.Context{Ledger: l, Names: ui.NewNames(l.Club()), Now: d.Clock, Theme: theme.Plain(), Width: 80, Height: 17}, l.Club().People
}

// TestWishesAreReadAsTheyAreWritten: what the form shows of somebody's wishes reads back as the
// same wishes.
func TestWishesAreReadAsTheyAreWritten(t *testing.T) {
	c, p := club(t)
	for _, wishes := range [][]session.Together{
		nil,
		{{With: p[1].ID}},
		{{With: p[1].ID, Times: 2}, {With: p[3].ID}},
	} {
		p[0].Together = wishes
		text := togetherText(c, p[0])
		if got, err := parseTogether(c, p[0], text); err != nil || !slices.Equal(got, wishes) {
			t.Errorf("%v reads %q, and that %v (%v)", wishes, text, got, err)
		}
	}
	for _, apart := range [][]session.PersonID{nil, {p[2].ID}, {p[3].ID, p[1].ID}} {
		p[0].KeepApart = apart
		text := namesText(c, p[0].KeepApart)
		if got, err := parseNames(c, p[0], text); err != nil || !slices.Equal(got, apart) {
			t.Errorf("%v reads %q, and that %v (%v)", apart, text, got, err)
		}
	}
}

func TestWishesThatCannotBeRead(t *testing.T) {
	c, p := club(t)
	for _, w := range []struct{ text, says string }{
		{"Nobody Known", "knows nobody called"},
		{"agnes vale", "that is Agnes Vale"},
		{"Bram Okoro*", "Name*2"},
		{"Bram Okoro*0", "Name*2"},
		{"Bram Okoro*-1", "Name*2"},
		{"Bram Okoro*two", "Name*2"},
		{"Bram Okoro, Cleo Hart", "knows nobody called"},
	} {
		if _, err := parseTogether(c, p[0], w.text); err == nil || !strings.Contains(err.Error(), w.says) {
			t.Errorf("%q: %v, want a sentence about %q", w.text, err, w.says)
		}
	}
	for text, want := range map[string]session.PersonID{"bra": p[1].ID, "Cleo": p[2].ID, "zoe": p[3].ID, "bram o": p[1].ID} {
		if got, err := parseNames(c, p[0], text); err != nil || len(got) != 1 || got[0] != want {
			t.Errorf("%q is %v (%v), want %s", text, got, err, want)
		}
	}
	for text, says := range map[string]string{"br": "knows nobody called", "agnes": "knows nobody called", "okoro": "knows nobody called"} {
		if _, err := parseNames(c, p[0], text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, want a sentence about %q", text, err, says)
		}
	}
	c.Club().People[2].Name = "Bram Hart"
	if _, err := parseNames(c, p[0], "bram"); err == nil || !strings.Contains(err.Error(), "can be Bram Okoro or Bram Hart: write more of the name") {
		t.Errorf("a beginning that two people have: %v", err)
	}
	c.Club().People[2].Name = "Cleo Hart"
	if _, err := parseNames(c, p[0], "Cleo Hart; Nobody"); err == nil {
		t.Error("a name that nobody has is taken")
	}
	if got, err := parseTogether(c, p[0], " ;  bram okoro * 3 ;"); err != nil || len(got) != 1 || got[0] != (session.Together{With: p[1].ID, Times: 3}) {
		t.Errorf("blanks and empty parts give %v (%v)", got, err)
	}
}

func TestLevels(t *testing.T) {
	for text, want := range map[string]float64{"": 0, "  ": 0, "3": 3, "3.5": 3.5, " 3,5 ": 3.5, "4.25": 4.25} {
		if got, err := session.ParseLevel(text); err != nil || got != want {
			t.Errorf("%q is level %g (%v), want %g", text, got, err, want)
		}
	}
	for _, text := range []string{"good", "3.5.1", "3,5,1", "--", "nan"} {
		if got, err := session.ParseLevel(text); err == nil {
			t.Errorf("%q is taken for level %g", text, got)
		}
	}
}

// TestTimesOfTheEvening: what is shown of somebody's times reads back as it was, and rounds are rounds
// where there are any.
func TestTimesOfTheEvening(t *testing.T) {
	c, _ := club(t)
	rolling := session.DefaultSettings(1)
	rolling.Flow = session.Rolling
	for text, want := range map[string]string{"": "", "19:40": "19:40", "9:05": "09:05", "0:30": "00:30", "3": "3", "1": ""} {
		m, err := moment(text, c.Night())
		stay := session.Stay{}.Arriving(m, c.Night(), c.Now)
		if shown := shownMoment(stay.Due, stay.From, c.Now); err != nil || shown != want {
			t.Errorf("%q is %q (%v), want %q", text, shown, err, want)
		}
	}
	for _, text := range []string{"soon", "24:61", "7 pm", "0", "-2"} {
		if got, err := moment(text, c.Night()); err == nil {
			t.Errorf("%q is taken for %v", text, got)
		}
	}
	if got, err := moment("3", &session.Night{Settings: rolling}); err == nil {
		t.Errorf("round 3 of a rolling night is taken for %v", got)
	}
}

// TestRowsShowWhoIsToComeFirst, then the rest of the club, then those who are here.
func TestRowsShowWhoIsToComeFirst(t *testing.T) {
	c, _ := club(t)
	d := New()
	rows := d.rows(c)
	if len(rows) != 4 || rows[0].person.Name != "Agnes Vale" {
		t.Fatalf("%d rows, the first %q", len(rows), rows[0].person.Name)
	}
	d.input.SetValue("zoe")
	if rows = d.rows(c); rows[0].person.Name != "Zoë Ōno" || rows[1].guest != "zoe" {
		t.Errorf("zoe finds %+v", rows)
	}
	d.input.SetValue("Zoë Ōno")
	if rows = d.rows(c); len(rows) != 1 || rows[0].guest != "" {
		t.Error("somebody whom the club knows is offered as a guest")
	}
	for state, mark := range map[session.Presence]string{session.Here: "[x]", session.Resting: "[~]", session.Gone: "[-]", session.Expected: "[ ]"} {
		r := rows[0]
		r.state = state
		if text := r.text(c, 60); !strings.HasPrefix(text, mark) {
			t.Errorf("%s is shown as %q, want the mark %s", state, text, mark)
		}
	}
}
