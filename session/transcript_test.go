package session

import (
	"context"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/session/roster"
)

// transcriptSteps is how many commands each night has.
const transcriptSteps = 70

// TestNightsGoAsTheyWent plays nights of any kind with any commands, always the same, and holds what each command did
// or why it was refused, in the words that people read, and a digest of all that the ledger tells then. Whoever changes
// words or rules on purpose writes the file anew with -update and reads what changed.
func TestNightsGoAsTheyWent(t *testing.T) {
	NightsAsBefore(t, 16, digestOf)
}

// NightsAsBefore plays so many of these nights, tells them line by line, and compares them with the test's golden file.
// Each line ends with what is told of the moment, in one word.
func NightsAsBefore(t *testing.T, nights int, tell func(l *Ledger, now time.Time) string) {
	if runtime.GOARCH != "amd64" {
		t.Skip("the nights were noted on another kind of machine, and forecasts may be rounded otherwise")
	}
	var out strings.Builder
	for seed := range nights {
		fmt.Fprintf(&out, "night %d\n", seed)
		d := rand.New(rand.NewPCG(uint64(seed), 31))
		out.WriteString(rapid.Custom(func(rt *rapid.T) string { return transcript(t, rt, d, tell) }).Example(seed))
	}
	golden.RequireEqual(t, []byte(out.String()))
}

// transcript plays a night and tells it, a line for each command.
func transcript(t *testing.T, rt *rapid.T, chance *rand.Rand, tell func(l *Ledger, now time.Time) string) string {
	d, _, clock := newTestDesk(t)
	s := drawNight(rt, evening)
	s.Flow = []Flow{Rounds, Rolling}[chance.IntN(2)]
	s.Closing = evening.Add(3 * time.Hour).UTC()
	must(t, d, OpenNight{Settings: s, Courts: 1 + chance.IntN(3)})
	for i := range 6 + chance.IntN(9) {
		must(t, d, AddGuest{Name: fmt.Sprintf("Early %d", i), Group: []string{"x", "y"}[i%2]})
	}
	var out strings.Builder
	for range transcriptSteps {
		clock.now = clock.now.Add(time.Duration(chance.IntN(240)) * time.Second)
		c := drawLikely(rt, chance, d.Ledger(), d.Now())
		said := ""
		switch c.(type) {
		case PinPartners, PutFirst, SwapPlanned, MovePlanned, PinGame, ExchangePlayers:
			cost, err := Weigh(context.Background(), d.Ledger(), c, d.Now(), Shown{})
			text, _ := json.Marshal(cost)
			said = fmt.Sprintf("%s %v %s ", cost.Words, err, Letters(string(text), 8))
		}
		if _, err := d.Do(c); err != nil {
			said = "refused: " + err.Error()
		} else {
			said += d.Ledger().Newest()
		}
		fmt.Fprintf(&out, "%T: %s %s\n", c, strings.ReplaceAll(said, "\n", " / "), tell(d.Ledger(), d.Now()))
	}
	return out.String()
}

// drawLikely draws what a desk does most: what the night needs next, scores and decisions by hand; and any other command.
func drawLikely(t *rapid.T, chance *rand.Rand, l *Ledger, now time.Time) Command {
	n := l.Night()
	switch what := chance.IntN(24); {
	case n == nil && what < 16:
		s := drawNight(t, now)
		s.Closing = now.Add(3 * time.Hour).UTC()
		return OpenNight{Settings: s, Courts: 1 + chance.IntN(3)}
	case n == nil:
	case n.Count(Here) < 8 && what < 12:
		return CheckIn{l.Club().People[chance.IntN(len(l.Club().People))].ID}
	case what < 6:
		if offers := l.Offers(now); len(offers) > 0 {
			return offers[0]
		}
	case what < 11 && len(n.Running()) > 0:
		g := n.Running()[chance.IntN(len(n.Running()))]
		if f, err := g.Rules.Final(g.Rules.To, chance.IntN(g.Rules.To-1), scoring.Played); err == nil {
			return FinishGame{g.ID, f}
		}
	case what < 13:
		if c := drawByHand(chance, l, now); c != nil {
			return c
		}
	case what < 16 && len(n.Running()) > 0:
		return ScoreRally{n.Running()[0].ID, scoring.Rally{Won: scoring.Team(chance.IntN(2))}}
	case what < 18:
		return drawAny(t, l, now)
	case what < 19:
		return ImportRoster{Entries: drawRoster(chance, l.Club()), Arrived: chance.IntN(2) == 0}
	}
	c := drawCommand(t, l)
	if _, ends := c.(EndNight); ends && chance.IntN(3) > 0 {
		return Undo{}
	}
	return c
}

// drawByHand draws a decision by hand that is likely to be possible, nil where nothing is to be decided.
func drawByHand(chance *rand.Rand, l *Ledger, now time.Time) Command {
	n := l.Night()
	if n.Settings.Flow == Rolling {
		bench, games := n.Bench(), n.Running()
		switch {
		case len(bench) > 1 && chance.IntN(2) == 0:
			return PinPartners{A: bench[0].Person, B: bench[len(bench)-1].Person}
		case len(bench) > 0 && chance.IntN(2) == 0:
			return PutFirst{Person: bench[len(bench)-1].Person}
		case len(games) > 0:
			return ExchangePlayers{games[0].A[0], games[len(games)-1].B[1]}
		}
		return nil
	}
	r, err := PlanRotation(context.Background(), l, now)
	if err != nil || len(r.Rounds) == 0 {
		return nil
	}
	at := chance.IntN(len(r.Rounds))
	round, games := len(n.Rounds)+1+at, r.Rounds[at].Games
	g, h := games[chance.IntN(len(games))], games[chance.IntN(len(games))]
	other := h.B[0]
	if out := r.Rounds[at].Out; len(out) > 0 && chance.IntN(2) == 0 {
		other = out[chance.IntN(len(out))]
	}
	return []Command{
		SwapPlanned{A: g.A[0], B: other, Round: round, Shown: r.Rounds},
		SwapPlanned{A: g.A[0], B: other, Round: round, Shown: r.Rounds},
		MovePlanned{From: g.Court, To: h.Court, Round: round, Shown: r.Rounds},
		PinGame{Court: g.Court, Round: round, Shown: r.Rounds},
		PinPartners{A: g.A[0], B: h.B[1], Plan: r.Rounds},
		PutFirst{Person: other, Plan: r.Rounds},
	}[chance.IntN(6)]
}

// drawRoster draws two people of a list, known to the club or not, with whatever a list says of people.
func drawRoster(chance *rand.Rand, club *Club) (out []roster.Entry) {
	known := func() string { return club.People[chance.IntN(len(club.People))].Name }
	for i := range 2 {
		e := roster.Entry{Line: i + 2, Name: fmt.Sprintf("Listed %d", chance.IntN(9)), Group: []string{"", "x", "y"}[chance.IntN(3)], Level: float64(chance.IntN(4))}
		switch chance.IntN(6) {
		case 0:
			e.Name = known()
		case 1:
			e.KeepApart, e.NotPartner = []string{known()}, []string{known()}
		case 2:
			e.Courts = []string{"2", "1"}
		case 3:
			e.PartnerWith = []roster.Partner{{Name: known(), Times: chance.IntN(3)}}
		case 4:
			e.Arrive = roster.Moment{Round: 1 + chance.IntN(4)}
			e.Leave = roster.Moment{Clock: 20 * time.Hour, IsClock: true}
		}
		if i == 0 || e.Name != out[0].Name {
			out = append(out, e)
		}
	}
	return out
}

// Letters is a digest of a text, in so many letters of at most sixteen.
func Letters(text string, count int) string {
	h := fnv.New64a()
	h.Write([]byte(text))
	return fmt.Sprintf("%016x", h.Sum64())[:count]
}

// digestOf is a digest of all that a ledger tells of a moment.
func digestOf(l *Ledger, now time.Time) string {
	var said strings.Builder
	say := func(what ...any) { fmt.Fprintln(&said, what...) }
	club := l.Club()
	text, err := json.Marshal(club)
	say(string(text), err)
	for _, a := range l.Actions() {
		say(a.ID, a.Undone, l.Describe(a))
	}
	say(l.Skipped(), l.Lossy(), l.Clock(), l.NextStep(now), l.NothingToUndo(), l.Decisions(), l.NewestCalls(), l.Venue(), l.Card())
	say(l.Idle(now))
	say(club.Unusual(), club.VenueNames(), club.NightsOffered(now), l.Places())
	say(club.Proposal(1))
	say(club.Alike("Early"))
	n := l.Night()
	if n == nil {
		return Letters(said.String(), 8)
	}
	say(n.Way(), n.Came(), n.Count(Here), n.OpenCourts(), n.Untold(), n.Groups(club), n.GroupChoice(club), n.NeedsGroups(), n.Decided(club))
	say(n.MessagesAt(now), n.GamesEach(), n.TableNote(), n.TurnsOfAll(), n.NextTurns(2, now), n.RoundsBegin(2, now))
	say(n.Chance(now))
	say(n.Fit(now))
	say(n.RoundClock(now))
	say(n.Faults())
	text, err = json.Marshal([]any{n.Standings(club.Name), n.Results(club.Name), n.Partings(club.Name), n.Played()})
	say(string(text), err)
	for _, a := range n.Bench() {
		w, err := l.WhyNot(a.Person, now)
		text, _ := json.Marshal(w)
		say(a.Person, n.Late(a, now), string(text), err)
		if err == nil {
			say(w.Words(club.Name), w.Brief(club.Name))
		}
		say(n.PinOf(a.Person))
	}
	for i := range n.Games {
		g := &n.Games[i]
		say(n.GameTime(g, now), n.OutOfTime(g, now), n.GraceLeft(g, now), n.ProposalsOf(g.ID), g.EndsDue())
		say(n.FinalNow(g, 5, 4, now))
		say(n.Unsettled(g))
	}
	return Letters(said.String(), 8)
}
