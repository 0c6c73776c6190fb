package session

import (
	"fmt"
	"testing"
	"time"
)

// stateOfPlay is somewhere that a night can have come to when its flow is changed.
type stateOfPlay struct {
	name string
	flow Flow
	play func(t *testing.T, d *Desk, clock *testClock)
}

// score enters a final score for so many of the running games.
func score(t testing.TB, d *Desk, clock *testClock, games int) {
	t.Helper()
	for range games {
		clock.now = clock.now.Add(4 * time.Minute)
		g := d.Ledger().Night().Running()[0]
		must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 4)})
	}
}

// playCalls calls rounds and ends their games, or in the rolling flow the games on all courts, so many times.
func playCalls(t testing.TB, d *Desk, clock *testClock, times int) {
	t.Helper()
	rounds := d.Ledger().Night().Settings.Flow == Rounds
	if !rounds {
		must(t, d, BeginPlay{})
	}
	for range times {
		if rounds {
			must(t, d, CallRound{})
		}
		clock.now = clock.now.Add(11 * time.Minute)
		for _, g := range d.Ledger().Night().Running() {
			must(t, d, FinishGame{g.ID, final(t, 11, 4)})
		}
	}
}

var statesOfPlay = []stateOfPlay{
	{"nobody is called yet", Rounds, func(*testing.T, *Desk, *testClock) {}},
	{"a round goes on", Rounds, func(t *testing.T, d *Desk, _ *testClock) { must(t, d, CallRound{}) }},
	{"one score is in", Rounds, func(t *testing.T, d *Desk, c *testClock) {
		must(t, d, CallRound{})
		score(t, d, c, 1)
	}},
	{"a round is over", Rounds, func(t *testing.T, d *Desk, c *testClock) { playRound(t, d, c) }},
	{"all rounds are played", Rounds, func(t *testing.T, d *Desk, c *testClock) {
		for range d.Ledger().Night().Settings.Rounds {
			playRound(t, d, c)
		}
	}},
	{"a round is held", Rounds, func(t *testing.T, d *Desk, _ *testClock) { must(t, d, CallRound{}, HoldPlay{"rain"}) }},
	{"a court with a game is closed", Rounds, func(t *testing.T, d *Desk, _ *testClock) { must(t, d, CallRound{}, CloseCourt{"1"}) }},
	{"too few are here", Rounds, func(t *testing.T, d *Desk, c *testClock) {
		playRound(t, d, c)
		for _, a := range d.Ledger().Night().Roll[3:] {
			must(t, d, Leave{a.Person})
		}
	}},
	{"play has not begun", Rolling, func(*testing.T, *Desk, *testClock) {}},
	{"courts call by themselves", Rolling, func(t *testing.T, d *Desk, _ *testClock) { must(t, d, BeginPlay{}) }},
	{"courts have called again", Rolling, func(t *testing.T, d *Desk, c *testClock) {
		must(t, d, BeginPlay{})
		score(t, d, c, 3)
	}},
	{"the last games go on", Rolling, func(t *testing.T, d *Desk, _ *testClock) { must(t, d, BeginPlay{}, EndCalls{}) }},
	{"the last games are over", Rolling, func(t *testing.T, d *Desk, c *testClock) {
		must(t, d, BeginPlay{}, EndCalls{})
		score(t, d, c, 2)
	}},
	{"rolling is held", Rolling, func(t *testing.T, d *Desk, _ *testClock) { must(t, d, BeginPlay{}, HoldPlay{"rain"}) }},
}

// TestTheFlowCanChangeInEveryState: to the other flow, and there and back. What was played keeps its meaning,
// what the night is said to need next is accepted, games of the new flow are called, and the night ends.
func TestTheFlowCanChangeInEveryState(t *testing.T) {
	other := map[Flow]Flow{Rounds: Rolling, Rolling: Rounds}
	for _, state := range statesOfPlay {
		for _, way := range [][]Flow{{other[state.flow]}, {other[state.flow], state.flow}} {
			t.Run(fmt.Sprintf("%s, to %v", state.name, way), func(t *testing.T) {
				d, log, clock := newTestDesk(t)
				withPeople(t, d, 2, 9, state.flow)
				must(t, d, changed(d, func(s *Settings) { s.Rounds = 3 }))
				state.play(t, d, clock)
				start := d.Ledger()
				for _, flow := range way {
					before := d.Ledger()
					must(t, d, changed(d, func(s *Settings) { s.Flow, s.Rounds = flow, len(start.Night().Rounds)+4 }))
					checkMeaning(t, before, d.Ledger())
					before = d.Ledger()
					must(t, d, Undo{}, Redo{})
					if got, want := before.Night().Settings, d.Ledger().Night().Settings; got != want {
						t.Fatalf("undone and redone the settings are %+v, want %+v", got, want)
					}
				}
				playOn(t, d, clock, way[len(way)-1], len(start.Night().Games))
				checkReplay(t, d, log)
			})
		}
	}
}

// playOn does what the night is said to need, until four games of a flow were called that were not when there
// were so many games, and then ends the night.
func playOn(t *testing.T, d *Desk, clock *testClock, flow Flow, games int) {
	t.Helper()
	for range 60 {
		before := d.Ledger()
		n := before.Night()
		called := 0
		for _, g := range n.Games[games:] {
			if (g.Round > 0) == (flow == Rounds) {
				called++
			}
		}
		switch a := before.NextStep(clock.now); {
		case called >= 4 && len(n.Running()) > 0:
			must(t, d, EndCalls{}.orNothing(n)...)
			score(t, d, clock, 1)
		case called >= 4:
			must(t, d, EndNight{})
			return
		case a.Step == StepCheckIn, a.Here < 4:
			must(t, d, AddGuest{Name: fmt.Sprintf("Guest %d", len(before.Club().People))})
		case a.Step == StepHeld:
			must(t, d, ResumePlay{})
		case a.Step == StepCall:
			must(t, d, CallRound{})
		case a.Step == StepBegin:
			must(t, d, BeginPlay{})
		case a.Step == StepScores:
			score(t, d, clock, 1)
		default:
			t.Fatalf("at %d games, %d of the flow %s, the night is said to need %+v", len(n.Games), called, flow, a)
		}
		checkMeaning(t, before, d.Ledger())
	}
	t.Fatal("the night does not get on")
}

// orNothing is the end of calls where there is something to end.
func (c EndCalls) orNothing(n *Night) []Command {
	if n.Rolls {
		return []Command{c}
	}
	return nil
}
