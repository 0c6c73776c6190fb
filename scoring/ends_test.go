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
		for _, scorer := range []scoring.Side{scoring.A, scoring.B} {
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

func rallies(t *testing.T, text string) []scoring.Rally {
	t.Helper()
	parsed, err := scoring.ParseRallies(text)
	if err != nil {
		t.Fatal(err)
	}
	return parsed
}
