package scoring_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
)

// everyRally plays drawn rallies under drawn rules and hands each step to check.
func everyRally(t *testing.T, check func(t *rapid.T, before, after scoring.State, won scoring.Team)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		rules := drawRules().Draw(t, "rules")
		state := scoring.Start(rules, drawSide().Draw(t, "first"))
		for _, rl := range drawRallies().Draw(t, "rallies") {
			after := state.After(rl)
			check(t, state, after, rl.Won)
			state = after
		}
	})
}

// Rule 4.B.4 (2026: 5.B.3), for the serving and for the receiving side.
func TestStartingServerStandsRightExactlyWhenOwnScoreIsEven(t *testing.T) {
	everyRally(t, func(t *rapid.T, _, s scoring.State, _ scoring.Team) {
		if s.Rules().Singles {
			return
		}
		for _, side := range []scoring.Team{scoring.A, scoring.B} {
			right := s.At(scoring.Seat{Team: side}) == scoring.Right
			if right != (s.Score.Of(side)%2 == 0) {
				t.Fatalf("%v: the starting server of %v stands %v", s.Score, side, s.At(scoring.Seat{Team: side}))
			}
		}
	})
}

func TestReceiverStandsInTheBoxOfTheServersName(t *testing.T) {
	everyRally(t, func(t *rapid.T, _, s scoring.State, _ scoring.Team) {
		if s.Done {
			return
		}
		if s.Server.Team != s.Serving || s.Receiver.Team == s.Serving {
			t.Fatalf("%v serves to %v while %v has the serve", s.Server, s.Receiver, s.Serving)
		}
		if s.At(s.Server) != s.Box || s.At(s.Receiver) != s.Box {
			t.Fatalf("box %v, server %v, receiver %v", s.Box, s.At(s.Server), s.At(s.Receiver))
		}
		if seat, ok := s.On(s.Serving, s.Box); !ok || seat != s.Server {
			t.Fatalf("%v stands where %v serves", seat, s.Server)
		}
	})
}

// Rules 4.A and 12.B.1: side-out scores on serve only, rally scoring in every rally.
func TestOnlyTheRightSideScores(t *testing.T) {
	everyRally(t, func(t *rapid.T, before, after scoring.State, won scoring.Team) {
		gain := scoring.Score{A: after.Score.A - before.Score.A, B: after.Score.B - before.Score.B}
		want := 0
		switch rules := before.Rules(); {
		case before.Done:
		case won == before.Serving:
			want = 1
		case rules.Scoring == scoring.RallyScoring:
			want = 1
			if rules.WinOnServe && wouldWin(before, won) {
				want = 0
			}
		}
		if gain.Of(won) != want || gain.Of(won.Other()) != 0 {
			t.Fatalf("%v won the rally at %q and the score went to %v", won, before.Call(), after.Score)
		}
	})
}

// wouldWin reports whether one more point ends the game for side, by the wording of the rule.
func wouldWin(s scoring.State, side scoring.Team) bool {
	own, other, r := s.Score.Of(side)+1, s.Score.Of(side.Other()), s.Rules()
	return own >= r.To && own >= other+r.WinBy || own == r.Cap
}

func TestGameEndsExactlyWhenTargetAndLeadAreMet(t *testing.T) {
	everyRally(t, func(t *rapid.T, _, s scoring.State, _ scoring.Team) {
		r := s.Rules()
		lead := max(s.Score.A-s.Score.B, s.Score.B-s.Score.A)
		high := max(s.Score.A, s.Score.B)
		met := high >= r.To && lead >= r.WinBy || r.Cap > 0 && high == r.Cap
		if s.Done != met {
			t.Fatalf("done is %v at %v under %v", s.Done, s.Score, r)
		}
		if s.Done && s.Score.Of(s.Winner) != high {
			t.Fatalf("%v won at %v", s.Winner, s.Score)
		}
		if s.Done != (s.What == scoring.Game) {
			t.Fatalf("done is %v and the last rally made a %v", s.Done, s.What)
		}
	})
}

func TestCallHasThreeNumbersInSideOutDoublesAndElseTwo(t *testing.T) {
	everyRally(t, func(t *rapid.T, _, s scoring.State, _ scoring.Team) {
		want := 2
		if r := s.Rules(); r.Scoring == scoring.SideOut && !r.Singles {
			want = 3
		}
		if s.Done {
			want = 1 // the empty call splits into one empty part
		}
		if got := len(strings.Split(s.Call(), "-")); got != want {
			t.Fatalf("%q has %d numbers under %v", s.Call(), got, s.Rules())
		}
	})
}

// Rule 4.B.6: after a side out whoever stands right serves first; the second server is the partner.
func TestServeOrder(t *testing.T) {
	everyRally(t, func(t *rapid.T, before, s scoring.State, _ scoring.Team) {
		if before.Done || s.Done || s.Rules().Singles {
			return
		}
		switch s.What {
		case scoring.Point:
			if s.Server != before.Server || s.Number != before.Number || s.Box == before.Box {
				t.Fatalf("after a point %v serves from the %v, before it was %v from the %v", s.Server, s.Box, before.Server, before.Box)
			}
		case scoring.SecondServer:
			if s.Server != before.Server.Partner() || s.Box != before.At(s.Server) || before.Number != 1 || s.Number != 2 {
				t.Fatalf("second server %v from the %v after %v", s.Server, s.Box, before.Server)
			}
		case scoring.ServeOver:
			if s.Serving == before.Serving || s.Box != scoring.Right || before.Number == 1 || s.Number == 2 {
				t.Fatalf("side out to %v in the %v, number %d after %d", s.Server, s.Box, s.Number, before.Number)
			}
		default:
			t.Fatalf("a rally made a %v", s.What)
		}
	})
}

func TestUndoingRalliesIsNeverHavingPlayedThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rules, first := drawRules().Draw(t, "rules"), drawSide().Draw(t, "first")
		rallies := drawRallies().Draw(t, "rallies")
		kept := rapid.IntRange(0, len(rallies)).Draw(t, "kept")
		state := scoring.Start(rules, first)
		for _, rl := range rallies[:kept] {
			state = state.After(rl)
		}
		if got := scoring.Fold(rules, first, rallies[:kept]); got != state {
			t.Fatalf("folding %d rallies gives %+v, playing them %+v", kept, got, state)
		}
	})
}

func TestGamePointIsWonByTheNextRally(t *testing.T) {
	everyRally(t, func(t *rapid.T, s, _ scoring.State, _ scoring.Team) {
		ending := map[scoring.Team]bool{}
		for _, side := range []scoring.Team{scoring.A, scoring.B} {
			ending[side] = !s.Done && s.After(scoring.Rally{Won: side}).Done
		}
		side, ok := s.GamePoint()
		if ok != (ending[scoring.A] || ending[scoring.B]) || ok && !ending[side] {
			t.Fatalf("at %q game point is %v %v; the next rally ends the game for %v", s.Call(), side, ok, ending)
		}
		if ok && ending[s.Serving] && side != s.Serving {
			t.Fatalf("at %q game point is given to the receivers", s.Call())
		}
	})
}

func TestPointsToGameAreEnoughAndNeeded(t *testing.T) {
	everyRally(t, func(t *rapid.T, s, _ scoring.State, side scoring.Team) {
		if s.Done {
			return
		}
		need, start := s.PointsToGame(side), s.Score.Of(side)
		for !s.Done {
			if got := need - (s.Score.Of(side) - start); got != s.PointsToGame(side) || got < 1 {
				t.Fatalf("at %v %v needs %d more, or %d", s.Score, side, got, s.PointsToGame(side))
			}
			s = s.After(scoring.Rally{Won: side})
		}
		if s.Winner != side || s.Score.Of(side)-start != need {
			t.Fatalf("%v won with %d points, not %d", s.Winner, s.Score.Of(side)-start, need)
		}
	})
}

// Rule 12.B.1.a (2026: 21.B): once in a game, when the first side comes to half of the target.
func TestEndsChangeOnceAtHalf(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rules := drawRules().Draw(t, "rules")
		state := scoring.Start(rules, scoring.A)
		changes := 0
		for _, rl := range drawRallies().Draw(t, "rallies") {
			if state = state.After(rl); state.Done {
				break
			}
			if state.EndsChange() {
				changes++
				if max(state.Score.A, state.Score.B) != rules.EndsAt() {
					t.Fatalf("ends change at %v in a game to %d", state.Score, rules.To)
				}
			}
		}
		passed := max(state.Score.A, state.Score.B) >= rules.EndsAt()
		began := max(rules.StartA, rules.StartB) < rules.EndsAt()
		want := 0
		if passed && began && rules.EndsAt() < rules.To {
			want = 1
		}
		if changes != want {
			t.Fatalf("ends changed %d times by %v under %v, want %d", changes, state.Score, rules, want)
		}
	})
}

func TestEveryChangeIsExplainedInOneSentence(t *testing.T) {
	everyRally(t, func(t *rapid.T, _, s scoring.State, _ scoring.Team) {
		why := s.WhyFor(people)
		if !strings.HasSuffix(why, ".") || strings.Count(why, ".") != 1 || strings.Contains(why, "%") {
			t.Fatalf("%v is explained by %q", s.What, why)
		}
		if !s.Done && !strings.Contains(why, people.Player(s.Server)) {
			t.Fatalf("%q does not name the server %v", why, people.Player(s.Server))
		}
	})
}
