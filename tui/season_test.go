package tui

import (
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// season plays nights of four people with set partners, a week apart, and leaves the last one open.
func season(t *testing.T, nights, games int) *stage {
	t.Helper()
	s := newStage(t)
	for range nights {
		s.do(session.OpenNight{Name: "Club night", Settings: session.DefaultSettings(7), Courts: 1})
		for i, name := range []string{"Agnes Vale", "Bram Okoro", "Cleo Hart", "Dario Finch"} {
			if p, ok := s.desk.Ledger().Club().Named(name); ok {
				s.do(session.CheckIn{Person: p.ID})
				continue
			}
			s.do(session.AddGuest{Name: name, Level: 2 + float64(i)})
		}
		id := func(i int) session.PersonID { return s.night().Roll[i].Person }
		for range games {
			s.do(session.CallRound{Plan: []session.PlannedRound{{Games: []session.PlannedGame{{Court: "1", A: session.Team{id(0), id(1)}, B: session.Team{id(2), id(3)}}}}}})
			g := s.night().Running()[0]
			final, err := g.Rules.Final(11, 6, scoring.Played)
			if err != nil {
				t.Fatal(err)
			}
			s.do(session.FinishGame{Game: g.ID, Final: final})
		}
		s.do(session.EndNight{})
		s.now = s.now.Add(7 * 24 * time.Hour)
	}
	return s.reopen()
}

// TestTheSeasonAtTheDesk: partners with enough games have a row, `w` chooses nights and games for league and partners,
// and a person's page tells with and against whom.
func TestTheSeasonAtTheDesk(t *testing.T) {
	s := season(t, 3, 3)
	s.press("s", "v").shows("All nights. All nights count").press("v", "v").shows("Agnes Vale & Bram Okoro", "9      9   100 %", "70 to 100 %", "Cleo Hart & Dario Finch", "All nights. Best first")
	s.press("w").shows("Which nights and games?").press("2", "0", "2", "6", "enter").shows(`! from: "2026" is no day: write it as 2026-01-08`)
	s.press("ctrl+u").press(letters("2026-11-22")...).press("enter").shows("Nights from 2026-11-22 on: nobody has had 8 games")
	s.press("v", "v").shows("Nights from 2026-11-22 on. All nights count").press("w", "down", "down", "right").shows("< rotating >")
	s.press("right", "enter").hides("Which nights").press("w").shows("2026-11-22", "mixed").press("ctrl+u", "down", "down", "left", "left").shows("< all >")
	s.press("enter").shows("All nights. All nights count")
	s.press("w", "down", "down", "down", "6", "enter").shows("All nights, levels from 6: no game counts. w chooses others.")
	s.press("w", "down", "down", "down", "2", "down", "1", "enter").shows("! levels from 2 to 1 are none")
	s.press("esc", "v", "enter").shows("Bram Okoro", "Rating").press("m").shows("Bram Okoro: with and against whom, on all nights", "Agnes Vale", "70 to 100 %", "Opponents", "Dario Finch")
}

// TestWhatHappensWhileNightsAreChosenIsCounted: a score that comes in while the form is open stands in the table behind it.
func TestWhatHappensWhileNightsAreChosenIsCounted(t *testing.T) {
	s := called(t, 2, 8)
	run := s.night().Running()
	s.do(session.FinishGame{Game: run[0].ID, Final: final(t, s, 11, 5)})
	s.press("s", "v").shows(s.m.names.Full(run[0].A[0])).hides(s.m.names.Full(run[1].A[0])).press("w")
	s.do(session.FinishGame{Game: run[1].ID, Final: final(t, s, 11, 7)})
	s.press("2", "0", "2", "0", "-", "0", "1", "-", "0", "1", "enter").shows("Nights from 2020-01-01 on", s.m.names.Full(run[0].A[0]), s.m.names.Full(run[1].A[0]))
}
