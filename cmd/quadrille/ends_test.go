package main

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/store"
)

// endsPlayed is a club file with a closed night in which games ended in all ways, retirements by the team that
// led among them.
func endsPlayed(t *testing.T) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "club.qdb")
	kept, err := store.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 1, 8, 19, 0, 0, 0, time.UTC)
	desk, err := session.NewDesk(kept, func() time.Time { now = now.Add(time.Minute); return now }, newPersonID)
	if err != nil {
		t.Fatal(err)
	}
	do := func(c session.Command) {
		t.Helper()
		if _, err := desk.Do(c); err != nil {
			t.Fatalf("%T: %v", c, err)
		}
	}
	settings := session.DefaultSettings(1)
	settings.Flow = session.Rolling
	do(session.OpenNight{Settings: settings, Courts: 1})
	for _, name := range []string{"Ada", "Ben", "Cy", "Di", "=Ed"} {
		do(session.AddGuest{Name: name})
	}
	do(session.BeginPlay{})
	rules := settings.Scoring
	for i, text := range []string{"11-4", "9-4 retired a", "9-4 retired b", "walkover b", "3-8 timed", "void", "5-5 retired b", "7-11"} {
		final, err := rules.ParseFinal(text)
		if err != nil {
			t.Fatal(err)
		}
		do(session.FinishGame{Game: session.GameID(i + 1), Final: final})
	}
	do(session.EndNight{SetAside: true})
	if err := kept.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

// Games come back from an export as they ended: ratings by the spreadsheet are those by the club, and the table is
// the night's own.
func TestGamesComeBackAsTheyEnded(t *testing.T) {
	path := endsPlayed(t)
	command := func(in string, args ...string) (out, errs string) {
		t.Helper()
		out, errs, code := quadrille(t, in, args...)
		if code != exitFine {
			t.Fatalf("%q exits with %d: %s", args, code, errs)
		}
		return out, errs
	}
	games, _ := command("", "export", "--games", "--data", path)
	for _, how := range []scoring.How{scoring.Played, scoring.Timed, scoring.Walkover, scoring.Void} {
		if !strings.Contains(games, ","+how.String()+",") {
			t.Errorf("no game ended %v:\n%s", how, games)
		}
	}
	if !strings.Contains(games, ",9,4,2026-01-08,,1,retired a,") || strings.Count(games, ",retired b,") != 2 {
		t.Errorf("who gave up is not told:\n%s", games)
	}
	own, _ := command("", "rate", "--json", "--data", path)
	theirs, errs := command(games, "rate", "-", "--json")
	if own != theirs || !strings.Contains(errs, "games left out: 1 walkover, 2 void") {
		t.Errorf("the club rates\n%s, and its export\n%s %s", own, theirs, errs)
	}
	own, _ = command("", "standings", "--json", "--data", path)
	theirs, errs = command(games, "standings", "--games", "-", "--json")
	if own != theirs || !strings.Contains(errs, "6 games left out: 3 retired, 1 walkover, 2 void") {
		t.Errorf("the night's table is\n%s, and that of its export\n%s %s", own, theirs, errs)
	}
	if foot, _ := command("", "standings", "--data", path); !strings.Contains(foot, "\nLeft out: 3 retired, 1 walkover, 2 void. Ratings count retired games.\n") {
		t.Errorf("the foot of the table does not tell what is left out:\n%s", foot)
	}
}
