package session

import (
	"slices"
	"testing"
	"time"

	"club/quadrille/scoring"
)

// TestSettingsOfOneNightAreNotUsual: what is changed in an emergency is not proposed next week; what a night
// was opened with is, and so is what the organiser keeps.
func TestSettingsOfOneNightAreNotUsual(t *testing.T) {
	d, log, clock := newTestDesk(t)
	if s, courts := d.Ledger().Club().Proposal(3); s != DefaultSettings(3) || courts != 4 {
		t.Errorf("a new club is proposed %+v on %d courts", s, courts)
	}
	withPeople(t, d, 3, 4, Rolling)
	opened := d.Ledger().Night().Settings
	refused(t, d, KeepUsual{}, "usual ones already")
	hurry := changed(d, func(s *Settings) {
		s.Rounds, s.Slot, s.Scoring.Minutes, s.Closing = 7, 5, 15, evening.Add(2*time.Hour)
	})
	must(t, d, hurry, OpenCourt{})
	want := []string{
		"side-out to 11, win by 2, 15 minutes (usually side-out to 11, win by 2)", "7 rounds (usually 8)",
		"5 minutes a round (usually 15)", "4 courts (usually 3)",
	}
	if got := d.Ledger().Club().Unusual(); !slices.Equal(got, want) {
		t.Errorf("for tonight only:\n%q\nwant\n%q", got, want)
	}
	must(t, d, EndNight{})
	proposed := opened
	proposed.Seed = 3
	if s, courts := d.Ledger().Club().Proposal(3); s != proposed || courts != 3 {
		t.Errorf("the next night is proposed with %+v on %d courts, want %+v on 3", s, courts, proposed)
	}

	clock.now = clock.now.AddDate(0, 0, 7)
	must(t, d, OpenNight{Settings: proposed, Courts: 3}, hurry, KeepUsual{})
	if got := d.Ledger().Club().Unusual(); len(got) > 0 {
		t.Errorf("kept as usual, and %q is for tonight only", got)
	}
	kept := hurry.Settings
	kept.Seed, kept.Closing = 3, time.Time{}
	if s, _ := d.Ledger().Club().Proposal(3); s != kept {
		t.Errorf("kept was %+v and proposed is %+v", kept, s)
	}
	checkReplay(t, d, log)
	must(t, d, Undo{})
	if s, _ := d.Ledger().Club().Proposal(3); s != proposed {
		t.Errorf("with that undone %+v is proposed, want %+v", s, proposed)
	}
	must(t, d, Redo{}, EndNight{}, OpenNight{Settings: kept, Courts: 3})
	checkReplay(t, d, log)
}

// TestEachPartOfTheSettingsCanBeUnusual: none is left out of what is said, but those that are of one night.
func TestEachPartOfTheSettingsCanBeUnusual(t *testing.T) {
	for name, change := range map[string]func(*Settings){
		"flow":                    func(s *Settings) { s.Flow = Rolling },
		"format":                  func(s *Settings) { s.Format++ },
		"scoring":                 func(s *Settings) { s.Scoring = scoring.Rules{Scoring: scoring.RallyScoring, To: 11, WinBy: 2} },
		"cap":                     func(s *Settings) { s.Scoring.Cap = 15 },
		"rounds":                  func(s *Settings) { s.Rounds++ },
		"slot":                    func(s *Settings) { s.Slot++ },
		"levels":                  func(s *Settings) { s.Balance = 0.75 },
		"singles":                 func(s *Settings) { s.Singles = true },
		"stopped":                 func(s *Settings) { s.Stopped = true },
		"running":                 func(s *Settings) { s.MaxRun = 3 },
		"levels by ratings":       func(s *Settings) { s.Rated = true },
		"nights before forgotten": func(s *Settings) { s.Forget = true },
	} {
		d, _, _ := newTestDesk(t)
		withPeople(t, d, 2, 0, Rounds)
		must(t, d, changed(d, change))
		if got := d.Ledger().Club().Unusual(); len(got) != 1 {
			t.Errorf("%s: %q is for tonight only, want one thing", name, got)
		}
	}
}
