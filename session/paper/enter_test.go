package paper_test

import (
	"context"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/session/paper"
	"club/quadrille/session/roster"
)

// newDesk stands ready on an empty log, with a clock that goes on by a minute at each look.
func newDesk(t testing.TB) *session.Desk {
	t.Helper()
	now, ids := time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC), 0
	desk, err := session.NewDesk(&session.MemoryLog{}, func() time.Time {
		now = now.Add(time.Minute)
		return now
	}, func() session.PersonID {
		ids++
		return session.PersonID(fmt.Sprintf("identity-%03d", ids))
	})
	if err != nil {
		t.Fatal(err)
	}
	return desk
}

func do(t testing.TB, d *session.Desk, commands ...session.Command) *session.Night {
	t.Helper()
	for _, c := range commands {
		if _, err := d.Do(c); err != nil {
			t.Fatalf("%T: %v", c, err)
		}
	}
	return d.Ledger().Night()
}

// opened opens a night and checks everybody in.
func opened(people, courts, rounds int) (session.OpenNight, []roster.Entry) {
	s := session.DefaultSettings(7)
	s.Rounds = rounds
	var entries []roster.Entry
	for i := range people {
		entries = append(entries, roster.Entry{Line: i + 1, Name: fmt.Sprintf("Person %c%c", 'A'+i/26, 'a'+i%26)})
	}
	return session.OpenNight{Name: "test night", Settings: s, Courts: courts}, entries
}

// printed is what was printed of a night before its first call.
func printed(t testing.TB, d *session.Desk, open session.OpenNight, entries []roster.Entry) *paper.Plan {
	t.Helper()
	r, err := session.PlanRotation(context.Background(), d.Ledger(), d.Now())
	if err != nil {
		t.Fatal(err)
	}
	club := d.Ledger().Club()
	n := paper.Of(club, d.Ledger().Night(), r.Rounds, time.UTC)
	plan := &paper.Plan{Night: paper.Night{}, Open: open, Entries: entries}
	for _, c := range d.Ledger().Night().OpenCourts() {
		plan.Courts = append(plan.Courts, string(c))
	}
	full := func(t session.Team) (names []string) {
		for _, id := range t {
			if id != "" {
				names = append(names, club.Name(id))
			}
		}
		return names
	}
	for i, r := range r.Rounds {
		round := paper.Round{Number: i + 1, Mark: n.Rounds[i].Mark}
		for _, g := range r.Games {
			round.Games = append(round.Games, paper.Game{Court: string(g.Court), A: full(g.A), B: full(g.B)})
		}
		for _, id := range r.Out {
			round.Out = append(round.Out, club.Name(id))
		}
		plan.Night.Rounds = append(plan.Night.Rounds, round)
	}
	return plan
}

// TestPaperGivesTheStandingsOfTheDesk: whatever was played, the results that are typed from paper on another laptop give
// the table, the reasons and the games that the desk would have, had it lived; and the same lines once more change nothing.
func TestPaperGivesTheStandingsOfTheDesk(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		people, courts := rapid.IntRange(4, 14).Draw(rt, "people"), rapid.IntRange(1, 3).Draw(rt, "courts")
		rounds := rapid.IntRange(1, 3).Draw(rt, "rounds")
		open, entries := opened(people, courts, rounds)
		live, dead := newDesk(t), newDesk(t)
		do(t, live, open, session.ImportRoster{Entries: entries, Arrived: true})
		plan := printed(t, live, open, entries)
		var lines []string
		for _, r := range plan.Night.Rounds {
			n := do(t, live, session.CallRound{})
			lines = append(lines, fmt.Sprintf("round %d %s", r.Number, r.Mark))
			for _, g := range n.Running() {
				score := rapid.SampledFrom([]string{"11-7", "3 11", "12-10", "9-6 timed", "9-6 retired a", "walkover b", "void"}).Draw(rt, "score")
				final, err := g.Rules.ParseFinal(score)
				if err != nil {
					t.Fatal(err)
				}
				lines = append(lines, fmt.Sprintf("%d %s %s", r.Number, g.Court, score))
				do(t, live, session.FinishGame{Game: g.ID, Final: final})
			}
			if strings.Contains(strings.Join(lines, "\n"), "void") {
				break // the desk plans anew after a void game, so what was printed is not called
			}
		}
		typed, err := paper.ReadTyped(strings.NewReader(strings.Join(lines, "\n")))
		if err != nil {
			t.Fatal(err)
		}
		done, err := paper.Enter(dead, typed, plan)
		if err != nil {
			t.Fatalf("%v\n%s", err, strings.Join(lines, "\n"))
		}
		if len(done) != len(typed.Results) {
			t.Errorf("%d of %d results were entered", len(done), len(typed.Results))
		}
		want, got := live.Ledger(), dead.Ledger()
		if !reflect.DeepEqual(session.Standings(want.Club(), want.Night()), session.Standings(got.Club(), got.Night())) {
			t.Errorf("the tables differ:\n%v\n%v", session.Standings(want.Club(), want.Night()), session.Standings(got.Club(), got.Night()))
		}
		if !reflect.DeepEqual(want.Night().Played(), got.Night().Played()) {
			t.Error("the games differ")
		}
		before := got.Last()
		if done, err := paper.Enter(dead, typed, plan); err != nil || len(done) > 0 || dead.Ledger().Last() != before {
			t.Errorf("typed twice, %d results were entered, %v", len(done), err)
		}
	})
}

// TestPaperGoesOnFromTheDesk: after two rounds at the desk the laptop dies; the club file has the rest of the rotation, so
// that the paper of its first hour is enough, and what people decided by hand after that print is told.
func TestPaperGoesOnFromTheDesk(t *testing.T) {
	open, entries := opened(10, 2, 4)
	d := newDesk(t)
	do(t, d, open, session.ImportRoster{Entries: entries, Arrived: true})
	plan := printed(t, d, open, entries)
	n := do(t, d, session.CallRound{})
	final, err := n.Settings.Scoring.ParseFinal("11-4")
	if err != nil {
		t.Fatal(err)
	}
	for _, g := range n.Running() {
		do(t, d, session.FinishGame{Game: g.ID, Final: final})
	}
	typed := func(text string) paper.Typed {
		out, err := paper.ReadTyped(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	lines := fmt.Sprintf("round 2 %s\n2 1 11 3\n2 2 5 11\n3 1 11 9\n", plan.Night.Rounds[1].Mark)
	if _, err := paper.Enter(d, typed(lines), nil); err != nil {
		t.Fatal(err)
	}
	if n := d.Ledger().Night(); len(n.Rounds) != 3 || len(n.Running()) != 1 {
		t.Errorf("%d rounds are called and %d games go on", len(n.Rounds), len(n.Running()))
	}
	before := d.Ledger().Last()
	_, err = paper.Enter(d, typed("3 2 11 0\nround 4 AAAA\n4 1 11 0\n"), nil)
	if err == nil || !strings.Contains(err.Error(), "line 2: round 4 has other games here than on the paper") {
		t.Errorf("letters of another print are answered %v", err)
	}
	if d.Ledger().Last() != before {
		t.Error("half of it was entered")
	}
}

// TestPaperFollowsWhoComesAndGoes: people of the plan who come later and go earlier are checked in and let go with the
// rounds that they are in.
func TestPaperFollowsWhoComesAndGoes(t *testing.T) {
	open, entries := opened(5, 1, 3)
	name := func(i int) string { return entries[i].Name }
	game := func(a, b, c, d int) []paper.Game {
		return []paper.Game{{Court: "1", A: []string{name(a), name(b)}, B: []string{name(c), name(d)}}}
	}
	plan := &paper.Plan{Open: open, Courts: []string{"1"}, Entries: entries, Night: paper.Night{Rounds: []paper.Round{
		{Number: 1, Games: game(0, 1, 2, 3)},
		{Number: 2, Games: game(0, 2, 1, 4), Out: []string{name(3)}},
		{Number: 3, Games: game(1, 2, 3, 4)},
	}}}
	for i := range plan.Night.Rounds {
		plan.Night.Rounds[i].Mark = paper.Mark(plan.Night.Rounds[i].Games)
	}
	d := newDesk(t)
	typed, err := paper.ReadTyped(strings.NewReader("1 1 11 7\n2 1 11 7\n3 1 11 7"))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := paper.Enter(d, typed, plan); err != nil {
		t.Fatal(err)
	}
	n := d.Ledger().Night()
	state := map[string]session.Presence{}
	for _, a := range n.Roll {
		state[d.Ledger().Club().Name(a.Person)] = a.State
	}
	want := map[string]session.Presence{name(0): session.Gone, name(1): session.Here, name(2): session.Here, name(3): session.Here, name(4): session.Here}
	if len(n.Games) != 3 || !reflect.DeepEqual(state, want) {
		t.Errorf("%d games, and people are %v", len(n.Games), state)
	}
	if c := scheduler.Rotating; n.Settings.Format != c {
		t.Errorf("the format is %v", n.Settings.Format)
	}
}

// FuzzReadTyped: whatever is typed is read or refused with its line, and what is read can be written and read again.
func FuzzReadTyped(f *testing.F) {
	for _, text := range []string{"1 3 11 7", "round 3 KQFA\n3 1 11-7 # close\n\n3 Centre Court void", "1;2;11;7\r\n", "\ufeff1 1 9-6 retired b", "x", "0 1 1 1", "501 1 11 7", "1 1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		typed, err := paper.ReadTyped(strings.NewReader(text))
		if err != nil {
			if m := err.Error(); !strings.HasPrefix(m, "line ") && !strings.HasPrefix(m, "no result") && !strings.HasPrefix(m, "more than") {
				t.Errorf("%q is refused without a line: %v", text, err)
			}
			return
		}
		var out strings.Builder
		for _, r := range typed.Results {
			fmt.Fprintf(&out, "%d %s\n", r.Round, strings.Join(r.Words, " "))
		}
		for _, m := range typed.Marks {
			fmt.Fprintf(&out, "round %d %s\n", m.Round, m.Mark)
		}
		again, err := paper.ReadTyped(strings.NewReader(out.String()))
		if err != nil && !strings.Contains(err.Error(), "longer than") && !strings.Contains(err.Error(), "letters of a round") {
			t.Fatalf("%q cannot be read again: %v", out.String(), err)
		}
		if err == nil && (len(again.Results) != len(typed.Results) || len(again.Marks) != len(typed.Marks)) {
			t.Errorf("%q is read again as %v", out.String(), again)
		}
	})
}

// TestRoundsAreNumberedFromOne, on paper too.
func TestRoundsAreNumberedFromOne(t *testing.T) {
	for text, ok := range map[string]bool{"1": true, "500": true, "0": false, "501": false, "-1": false, "99999": false, "x": false} {
		if _, err := paper.ReadTyped(strings.NewReader(text + " 1 11 7\n")); (err == nil) != ok || !ok && !strings.Contains(err.Error(), "is no round: rounds are numbered from 1") {
			t.Errorf("%s: %v", text, err)
		}
	}
}
