package scoring_test

import (
	"testing"

	"club/quadrille/scoring"
)

func TestReasons(t *testing.T) {
	singles := scoring.Rules{To: 11, WinBy: 2, Singles: true}
	rally := scoring.Rules{Scoring: scoring.RallyScoring, To: 11, WinBy: 2}
	rallySingles := scoring.Rules{Scoring: scoring.RallyScoring, Singles: true, To: 11, WinBy: 2}
	onServe := scoring.Rules{Scoring: scoring.RallyScoring, To: 1, WinBy: 1, WinOnServe: true}
	capped := scoring.Rules{To: 1, WinBy: 2, Cap: 2}
	for _, c := range []struct {
		rules   scoring.Rules
		rallies string
		want    string
	}{
		{toEleven, "", "The team that starts a game has only one server, who is called the second: A1 serves from the right box."},
		{toEleven, "a", "Team A won the rally while serving: a point, the partners change boxes, and A1 serves on from the left box."},
		{toEleven, "ab", "Team A lost the rally, and the team that starts a game has only one server, so it is a side out: B1, in the right box, serves first."},
		{toEleven, "ba", "Team B lost the rally on the first serve: no point, and B2 serves second, from the left box where B2 already stands."},
		{toEleven, "baa", "Team B lost the rally on the second serve, so it is a side out with no point: A1, in the right box, serves first."},
		{singles, "", "A1 serves first, from the right box because the server's score is even."},
		{singles, "a", "A1 won the rally while serving: a point, and the next serve is from the left box because the server's score is now odd."},
		{singles, "ab", "A1 lost the rally while serving, so it is a side out with no point: B1 serves, from the right box because the server's score is even."},
		{rally, "b", "Team B won the rally: a point and the serve, and B2, who now stands in the right box, serves."},
		{rallySingles, "b", "B1 won the rally: a point and the serve, from the left box because the new score is odd."},
		{onServe, "b", "Team B won the rally, but the last point must be won on serve: no point, only the serve, and B1 serves from the right box."},
		{onServe, "bb", "Team B won the rally and came to 1 point first: the game is over, 1-0."},
		{toEleven, "aaaaaaaaaaa", "Team A won the rally and came to 11 points with a lead of 2 or more: the game is over, 11-0."},
		{capped, "abbaaa", "Team A won the rally and came to 2 points where any lead wins, for the cap is 2: the game is over, 2-1."},
	} {
		rallies, err := scoring.ParseRallies(c.rallies)
		if err != nil {
			t.Fatal(err)
		}
		if got := scoring.Fold(c.rules, scoring.A, rallies).Why(); got != c.want {
			t.Errorf("%v, %q:\n got %s\nwant %s", c.rules, c.rallies, got, c.want)
		}
	}
}

func TestReasonsNamePlayers(t *testing.T) {
	s := scoring.Start(toEleven, scoring.A).After(scoring.Rally{Won: scoring.A})
	want := "Ann and Art won the rally while serving: a point, the partners change boxes, and Ann serves on from the left box."
	if got := s.WhyFor(people); got != want {
		t.Errorf("got %s", got)
	}
}
