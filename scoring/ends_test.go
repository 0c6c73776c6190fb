package scoring_test

import (
	"strings"
	"testing"

	"club/quadrille/scoring"
)

// The scores at which teams switch ends: USA Pickleball Official Rulebook 2025, 12.B.1.a, and 2026, 21.B:
// 6 in a game to 11, 8 to 15, 11 to 21; 4 to 7 in the bad-weather option of 2025.
func TestTeamsSwitchEndsAtTheScoreOfTheRulebook(t *testing.T) {
	for to, at := range map[int]int{7: 4, 11: 6, 15: 8, 21: 11} {
		for _, scorer := range []scoring.Team{scoring.A, scoring.B} {
			s := scoring.Start(scoring.Rules{To: to, WinBy: 2}, scorer)
			for points := 1; points < to; points++ {
				s = s.After(scoring.Rally{Won: scorer})
				why := s.EndsWhy(scoring.Names{})
				if s.EndsChange() != (points == at) || (why != "") != (points == at) {
					t.Errorf("to %d, %d points: the switch is %v, told as %q", to, points, s.EndsChange(), why)
				}
				if points == at && !strings.Contains(why, s.Server.String()+" serves all the same") {
					t.Errorf("to %d: %q does not name the server", to, why)
				}
			}
		}
	}
}

// Only the first team to get there makes the teams switch.
func TestTeamsSwitchEndsOnce(t *testing.T) {
	s := scoring.Fold(toEleven, scoring.A, rallies(t, "aaaaaa"))
	if got := s.EndsWhy(people); got != "At 6 points the teams switch ends; Ann serves all the same." {
		t.Errorf("%q", got)
	}
	for _, won := range "bbbbbbb" { // B serves on, and comes to six as well
		s = s.After(rallies(t, string(won))[0])
		if s.EndsChange() {
			t.Errorf("the teams switch ends again at %v", s.Score)
		}
	}
	if s.Score.B != 6 {
		t.Fatalf("B has %d points", s.Score.B)
	}
}

// Who starts with as many points never comes to them, and then neither team makes the teams switch.
func TestNoSwitchWhereAStartIsPastIt(t *testing.T) {
	for _, start := range []int{5, 6, 7} {
		s := scoring.Start(scoring.Rules{To: 11, WinBy: 2, StartA: start}, scoring.B)
		switched := false
		for range 7 {
			s = s.After(scoring.Rally{Won: scoring.B})
			switched = switched || s.EndsChange()
		}
		if switched != (start < 6) {
			t.Errorf("A starts with %d points: the teams switch at B's 6: %v", start, switched)
		}
	}
}

// A correction to the score at which the teams switch takes it as done, and one on the spot ends the call for it.
func TestCorrectionsAndTheSwitchOfEnds(t *testing.T) {
	s := scoring.Fold(toEleven, scoring.A, rallies(t, "aaaaaa"))
	if !s.EndsChange() {
		t.Fatal("at six points the teams do not switch")
	}
	same, err := s.Set(s.Setting())
	if err != nil || same.EndsChange() {
		t.Errorf("after a correction the teams are still told to switch: %v", err)
	}
	if foul := s.Penalise(scoring.B); foul.EndsChange() {
		t.Error("after a technical foul the teams are told to switch once more")
	}
	set := scoring.Start(toEleven, scoring.A).Setting()
	set.Score = scoring.Score{A: 6, B: 5}
	at, err := scoring.Start(toEleven, scoring.A).Set(set)
	if err != nil {
		t.Fatal(err)
	}
	for _, won := range "bbb" {
		if at = at.After(rallies(t, string(won))[0]); at.EndsChange() {
			t.Errorf("the teams switch at %v, after a correction to 6-5", at.Score)
		}
	}
	set.Score = scoring.Score{A: 5, B: 5}
	before, err := scoring.Start(toEleven, scoring.A).Set(set)
	if err != nil {
		t.Fatal(err)
	}
	if !before.After(rallies(t, "a")[0]).EndsChange() {
		t.Error("after a correction to 5-5 the teams do not switch at 6")
	}
}

func rallies(t *testing.T, text string) []scoring.Rally {
	t.Helper()
	parsed, err := scoring.ParseRallies(text)
	if err != nil {
		t.Fatal(err)
	}
	return parsed
}
