package paper_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"club/quadrille/session"
	"club/quadrille/session/paper"
	"club/quadrille/session/roster"
)

// evening is a night of nine people on two courts after one round of three, with somebody hidden, somebody who comes late
// and a game that is void.
func evening(t *testing.T) *session.Desk {
	t.Helper()
	d := newDesk(t)
	open, _ := opened(0, 2, 3)
	var entries []roster.Entry
	for i, name := range []string{"Agnes Vale", "Bram Okoro", "Cleo Hart", "Dario Finch", "Edda Noll", "Finn Noll", "Greta Umber", "Hugo Pask", "Iris Quell"} {
		entries = append(entries, roster.Entry{Line: i + 1, Name: name, Group: string(rune('x' + i%2))})
	}
	do(t, d, open, session.ImportRoster{Entries: entries, Arrived: true})
	do(t, d, session.ImportRoster{Entries: []roster.Entry{{Line: 1, Name: "Jonas Reed", Arrive: roster.Moment{Round: 3}}}})
	p, _ := d.Ledger().Club().Named("Cleo Hart")
	p.Hidden = true
	n := do(t, d, session.ChangePerson{Person: p}, session.CallRound{})
	for i, g := range n.Running() {
		final, err := g.Rules.ParseFinal([]string{"11-7", "void"}[i])
		if err != nil {
			t.Fatal(err)
		}
		do(t, d, session.FinishGame{Game: g.ID, Final: final})
	}
	return d
}

// nightOf is what sheets of the night are made of.
func nightOf(t *testing.T, d *session.Desk) paper.Night {
	t.Helper()
	r, err := session.PlanRotation(t.Context(), d.Ledger(), d.Now())
	if err != nil {
		t.Fatal(err)
	}
	return paper.Of(d.Ledger().Club(), d.Ledger().Night(), r.Rounds, time.UTC)
}

// TestGoldenSheets is every sheet of one night as text.
func TestGoldenSheets(t *testing.T) {
	n := nightOf(t, evening(t))
	for _, k := range paper.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			var out strings.Builder
			if err := paper.Text(&out, k.Of(n)); err != nil {
				t.Fatal(err)
			}
			golden.RequireEqual(t, out.String())
		})
	}
}

// TestOnlyTheDeskSeesWhoIsHidden: the full name stands on the check-in list and on the own strip, and nowhere else.
func TestOnlyTheDeskSeesWhoIsHidden(t *testing.T) {
	n := nightOf(t, evening(t))
	for _, k := range paper.Kinds() {
		found := 0
		for _, text := range k.Of(n).Texts() {
			if strings.Contains(text, "Cleo") || strings.Contains(text, "Hart") {
				found++
			}
		}
		want := map[string]int{"checkin": 1, "personal": 1}[k.Name]
		if found != want {
			t.Errorf("the sheet %s has the name %d times, and not %d", k.Name, found, want)
		}
	}
}

// TestStripsHaveEveryGame: each person's strip has a row for each game and each sit-out of the night, and the slips are
// just the games that are not over.
func TestStripsHaveEveryGame(t *testing.T) {
	n := nightOf(t, evening(t))
	rows, slips := 0, 0
	for _, r := range n.Rounds {
		rows += len(r.Out)
		for _, g := range r.Games {
			rows += len(g.A) + len(g.B)
			if !g.Played {
				slips++
			}
		}
	}
	got := 0
	for _, b := range paper.Personal(n).Blocks {
		got += len(b.Table.Rows)
	}
	if got != rows {
		t.Errorf("the strips have %d rows of %d", got, rows)
	}
	if got := len(paper.Slips(n).Blocks); got != slips || slips == 0 {
		t.Errorf("%d slips for %d games", got, slips)
	}
}

// TestTextFitsItsColumns: whatever people and courts are called, no line is wider than a screen and no name is lost.
func TestTextFitsItsColumns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.StringMatching(`[A-Za-zé李]{1,30}( [A-Za-z]{1,40})?`)
		names := rapid.SliceOfNDistinct(name, 4, 8, func(s string) string { return s }).Draw(t, "names")
		g := paper.Game{Court: rapid.StringMatching(`[0-9A-Z]{1,8}`).Draw(t, "court"), A: names[:2], B: names[2:4]}
		n := paper.Night{Title: "Night", Rounds: []paper.Round{{Number: 1, Games: []paper.Game{g}, Out: names[4:], Mark: "ABCD"}}}
		for _, name := range names {
			n.People = append(n.People, paper.Person{Name: name, Full: name})
		}
		k := rapid.SampledFrom(paper.Kinds()).Draw(t, "sheet")
		var out strings.Builder
		if err := paper.Text(&out, k.Of(n)); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(out.String()) {
			if w := ansi.StringWidth(strings.TrimSuffix(line, "\n")); w > 80 {
				t.Fatalf("%d cells: %s", w, line)
			}
		}
		if k.Name == "standings" || k.Name == "met" || k.Name == "rotation" || k.Name == "card" {
			return
		}
		letters := func(text string) string { return strings.Join(strings.Fields(text), "") }
		for _, name := range names[:4] {
			if w := strings.Fields(name)[0]; ansi.StringWidth(w) < 15 && !strings.Contains(letters(out.String()), w) {
				t.Fatalf("%q is missing:\n%s", w, out.String())
			}
		}
	})
}

// TestWidthsShareRoom: columns that fit keep their widths; else the widest give way, and all together fit.
func TestWidthsShareRoom(t *testing.T) {
	for _, c := range []struct {
		like []float64
		room float64
		want string
	}{
		{[]float64{3, 10}, 15, "[3 10]"},
		{[]float64{3, 30}, 15, "[3 10]"},
		{[]float64{20, 3, 30}, 27, "[10 3 10]"},
		{[]float64{12, 3, 30}, 31, "[12 3 12]"},
		{nil, 10, "[]"},
	} {
		before := slices.Clone(c.like)
		if got := fmt.Sprint(paper.Widths(c.like, 2, c.room)); got != c.want {
			t.Errorf("%v in %g: %s, want %s", c.like, c.room, got, c.want)
		}
		if !slices.Equal(before, c.like) {
			t.Error("what the columns would like was changed")
		}
	}
}

// TestANightGoesOnByWhatHasItsRounds: these sheets say who plays whom, so a night that was printed stays as printed.
func TestANightGoesOnByWhatHasItsRounds(t *testing.T) {
	var with []string
	for _, k := range paper.Kinds() {
		if k.HasRounds() {
			with = append(with, k.Name)
		}
	}
	if want := []string{"rotation", "personal", "slips"}; !slices.Equal(with, want) {
		t.Errorf("%q have rounds, want %q", with, want)
	}
	if _, err := paper.ParseKind("nothing"); err == nil {
		t.Error("a sheet was found that there is not")
	}
}

// TestASheetSaysWhoRetired by name, also where the points tell who won.
func TestASheetSaysWhoRetired(t *testing.T) {
	for _, c := range []struct{ typed, how string }{
		{"9-6 retired b", "Cleo & Dario retired"},
		{"6-9 retired b", "Cleo & Dario retired"},
		{"9-6 retired a", "Agnes & Bram retired"},
		{"9-6 timed", "timed"},
		{"walkover b", "walkover"},
		{"11-7", ""},
		{"void", ""},
	} {
		d := newDesk(t)
		open, _ := opened(0, 1, 1)
		do(t, d, open)
		var ids []session.PersonID
		for _, name := range []string{"Agnes", "Bram", "Cleo", "Dario"} {
			do(t, d, session.AddGuest{Name: name})
			p, _ := d.Ledger().Club().Named(name)
			ids = append(ids, p.ID)
		}
		n := do(t, d, session.CallRound{Plan: []session.PlannedRound{{Games: []session.PlannedGame{{Court: "1", A: session.Team{ids[0], ids[1]}, B: session.Team{ids[2], ids[3]}}}}}})
		final, err := n.Running()[0].Rules.ParseFinal(c.typed)
		if err != nil {
			t.Fatal(err)
		}
		do(t, d, session.FinishGame{Game: 1, Final: final})
		if got := nightOf(t, d).Rounds[0].Games[0].How; got != c.how {
			t.Errorf("%s: the sheet says %q, want %q", c.typed, got, c.how)
		}
	}
}
