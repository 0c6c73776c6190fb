package scheduler

import (
	"context"
	"errors"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night/nighttest"
)

// TestAnyNightIsPlannedOrRightlyRefused plans random nights, plays some rounds, lets people leave,
// and plans on, sometimes with what was played as games of no round. A plan must be valid and not better
// than its bounds; a refusal must be one that an independent look confirms.
func TestAnyNightIsPlannedOrRightlyRefused(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.AnyProblem(t)
		rounds, ok := planOrRefuse(t, p)
		if !ok || len(rounds) < 2 {
			return
		}
		played := rapid.IntRange(1, len(rounds)-1).Draw(t, "played")
		p.History, p.Rounds = rounds[:played], len(rounds)-played
		for range rapid.IntRange(0, 3).Draw(t, "departures") {
			i := rapid.IntRange(0, len(p.People)-1).Draw(t, "gone")
			p.People[i].Leave = max(played, p.People[i].Arrive+1)
		}
		if rapid.Bool().Draw(t, "of no round") {
			p.Met, p.History = p.Earlier(), nil
		}
		planOrRefuse(t, p)
	})
}

func planOrRefuse(t *rapid.T, p Problem) ([]Round, bool) {
	rounds, err := Plan(context.Background(), p, Budget{Moves: 4_000})
	if possible := Possible(p); p.Format != Ladder && (possible == nil) != (err == nil) {
		t.Fatalf("said to be possible: %v, and the plan: %v", possible, err)
	}
	var conflict *Conflict
	switch {
	case errors.As(err, &conflict):
		if !nighttest.Contradictory(p) && nighttest.FirstGame(p) {
			t.Fatalf("refused although a first game exists: %v", err)
		}
		if len(Warnings(p)) == 0 && nighttest.Contradictory(p) {
			t.Fatal("refused without a warning")
		}
		return nil, false
	case err != nil:
		t.Fatal(err)
	}
	if nighttest.Contradictory(p) {
		t.Fatal("planned although the wishes contradict each other")
	}
	for _, v := range Audit(p, rounds) {
		t.Fatalf("invalid: %s", v.Text)
	}
	checkBounds(t, Certify(p, rounds))
	return rounds, true
}

func checkBounds(t *rapid.T, c Certificate) {
	for name, v := range map[string]Value{
		"partner repeats": c.PartnerRepeats, "partner evenness": c.PartnerEvenness,
		"opponent evenness": c.OpponentEvenness, "meeting evenness": c.MeetingEvenness,
		"sit-out spread": c.SitoutSpread, "benched twice": c.BenchedTwice, "court spread": c.CourtSpread,
	} {
		if v.Value < v.Bound {
			t.Fatalf("%s is %d, below its bound %d", name, v.Value, v.Bound)
		}
	}
}
