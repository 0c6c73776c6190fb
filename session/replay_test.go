package session

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/session/care"
)

// drawCommand draws any command about what the night has, and sometimes about what it has not.
func drawCommand(t *rapid.T, l *Ledger) Command {
	person := PersonID(fmt.Sprintf("p%03d", rapid.IntRange(1, len(l.Club().People)+1).Draw(t, "person")))
	other := PersonID(fmt.Sprintf("p%03d", rapid.IntRange(1, len(l.Club().People)+1).Draw(t, "other")))
	games, round := 1, 1
	var shown []PlannedRound
	if n := l.Night(); n != nil {
		games, round, shown = len(n.Games)+1, len(n.Rounds)+rapid.IntRange(1, 2).Draw(t, "round"), n.Plan
	}
	game := GameID(rapid.IntRange(max(1, games-4), games).Draw(t, "game"))
	court := CourtID(fmt.Sprint(rapid.IntRange(1, 4).Draw(t, "court")))
	rules := DefaultSettings(1).Scoring
	score, err := rules.Final(11, rapid.IntRange(0, 9).Draw(t, "points"), scoring.Played)
	if err != nil {
		t.Fatal(err)
	}
	rally := scoring.Rally{Won: rapid.SampledFrom([]scoring.Team{scoring.A, scoring.B}).Draw(t, "won")}
	rally.Fault = rapid.SampledFrom(append(scoring.Faults(), scoring.None)).Draw(t, "fault")
	rally.By = uint8(rapid.IntRange(0, 2).Draw(t, "by"))
	settings := DefaultSettings(9)
	settings.Flow = rapid.SampledFrom([]Flow{Rounds, Rolling}).Draw(t, "flow")
	settings.Rounds = 3 // short plans keep the property quick
	return rapid.SampledFrom([]Command{
		OpenNight{Settings: settings, Courts: 2},
		AddGuest{Name: fmt.Sprintf("Guest %d", len(l.Club().People))},
		AddGuest{Name: fmt.Sprintf("Guest %d", len(l.Club().People))},
		CheckIn{person},
		Rest{person},
		Leave{person},
		Expect{Person: person},
		MergePeople{person, other},
		CallRound{},
		CallRound{},
		BeginPlay{},
		EndCalls{},
		CallGame{court},
		Substitute{game, person, other},
		PinPartners{A: person, B: other},
		PutFirst{Person: person},
		SwapPlanned{A: person, B: other, Round: round, Shown: shown},
		MovePlanned{From: court, To: "1", Round: round, Shown: shown},
		PinGame{Court: court, Round: round, Shown: shown},
		ExchangePlayers{person, other},
		MoveGame{game, court},
		ScoreRally{game, rally},
		ScoreRally{game, rally},
		UndoRally{game},
		NoteGame{game, drawEntry(t, rally)},
		NoteGame{game, drawEntry(t, rally)},
		NoShow{Game: game, Person: person},
		NoShow{game, person, other},
		FinishGame{Game: game, Final: score},
		FinishGame{Game: game, Final: score},
		CorrectScore{game, score},
		OpenCourt{},
		CloseCourt{court},
		LevelCourt{court, rapid.SampledFrom([]float64{0, 3, 11}).Draw(t, "low"), rapid.SampledFrom([]float64{0, 4}).Draw(t, "high")},
		NoteCourt{court, rapid.SampledFrom([]string{"", "slow"}).Draw(t, "note")},
		KeepUsualNight{Name: rapid.SampledFrom([]string{"doubles", "Doubles", "late"}).Draw(t, "usual"), Zone: time.UTC},
		DropUsualNight{"doubles"},
		PostMessage{Text: "pizza at 20:30"},
		PostMessage{Text: "court 3 is wet", Until: evening.Add(time.Hour)},
		EndMessage{string(person)},
		ChooseLeague{rapid.IntRange(-1, 3).Draw(t, "best")},
		ChooseNaming{rapid.SampledFrom(Namings()).Draw(t, "naming")},
		HoldPlay{rapid.SampledFrom([]string{"heat", "lightning"}).Draw(t, "why")},
		HearThunder{},
		TellCourts{[]CourtID{court}},
		ReportInjury{person, rapid.Bool().Draw(t, "head"), "fell"},
		SettleInjury{person, Settlement(rapid.IntRange(0, 4).Draw(t, "settlement")), other},
		ClearToPlay{person, "Dr Vale, physician"},
		ChooseReminders{rapid.Bool().Draw(t, "off")},
		WriteCard{Venue: rapid.SampledFrom([]string{HomeVenue, "hall"}).Draw(t, "venue"), Card: EmergencyCard{Address: fmt.Sprint(person)}},
		MeasureHeat{care.Air{Fahrenheit: 91, Humidity: rapid.Float64Range(-1, 101).Draw(t, "humidity")}},
		DrawLots{},
		ChooseCourtScores{rapid.Bool().Draw(t, "sends"), rapid.SampledFrom(Passings()).Draw(t, "pass"), testSecret},
		ProposeScore{codeIn(l, court), game, rally.Won, 11, 4},
		ProposeScore{codeIn(l, court), game, rally.Won.Other(), 11, 4},
		TakeProposal{game, rally.Won},
		RefuseProposals{game},
		ResumePlay{},
		ChangeSettings{settings},
		KeepUsual{},
		Undo{},
		Undo{},
		Redo{},
		UndoAction{uint64(rapid.IntRange(1, int(l.Last())+1).Draw(t, "action"))},
		EndNight{},
		EndNight{SetAside: true},
	}).Draw(t, "command")
}

// drawEntry draws any entry of a sheet, possible or not.
func drawEntry(t *rapid.T, rally scoring.Rally) scoring.Entry {
	server := scoring.Seat{Team: rally.Won, Index: uint8(rapid.IntRange(0, 1).Draw(t, "server"))}
	right := [2]scoring.Seat{{Team: scoring.A, Index: server.Index}, {Team: scoring.B}}
	points := func(name string) int { return rapid.IntRange(0, 12).Draw(t, name) }
	return scoring.Entry{
		Kind: scoring.Kind(rapid.IntRange(0, int(scoring.Remark)+1).Draw(t, "kind")), Rally: rally, Team: rally.Won,
		At: rapid.IntRange(0, 4).Draw(t, "at"), Note: rapid.SampledFrom([]string{"", "as the players agree"}).Draw(t, "note"),
		Setting: scoring.Setting{
			Score: scoring.Score{A: points("a"), B: points("b")}, Serving: server.Team, Server: server,
			Number: rapid.IntRange(0, 2).Draw(t, "number"), Right: right,
		},
	}
}

// Any sequence of commands leaves a log whose replay gives the same state, byte for byte, after
// every step; and a refusal writes nothing.
func TestReplayGivesTheSameState(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d, log, clock := newTestDesk(t)
		s := DefaultSettings(3)
		s.Rounds = 3
		must(t, d, OpenNight{Settings: s, Courts: 2})
		for i := range rapid.IntRange(0, 9).Draw(rt, "people") {
			must(t, d, AddGuest{Name: fmt.Sprintf("Early %d", i)})
		}
		for range rapid.IntRange(1, 40).Draw(rt, "steps") {
			drawClock(rt, clock)
			before := log.Last()
			_, err := d.Do(drawCommand(rt, d.Ledger()))
			if err != nil && log.Last() != before {
				rt.Fatalf("refused with %v and still wrote", err)
			}
			var keep *KeepError
			if errors.As(err, &keep) {
				rt.Fatal(err)
			}
			checkReplay(t, d, log)
			checkNight(rt, d.Ledger())
		}
	})
}

// checkNight looks for states that a night can never be in.
func checkNight(t *rapid.T, l *Ledger) {
	n := l.Night()
	if n == nil {
		return
	}
	on := map[PersonID]CourtID{}
	for _, c := range n.Courts {
		g := n.Game(c.Game)
		if g == nil {
			continue
		}
		if !g.Running() || g.Court != c.ID {
			t.Fatalf("court %s holds game %d of court %s", c.ID, g.ID, g.Court)
		}
		for _, id := range g.Players() {
			if at, twice := on[id]; twice {
				t.Fatalf("%s plays on courts %s and %s", id, at, c.ID)
			}
			on[id] = c.ID
		}
	}
	for _, a := range n.Roll {
		if _, out := n.OutForTonight(a.Person); out && a.State != Gone {
			t.Fatalf("%s is out for tonight and %s", a.Person, a.State)
		}
	}
	for i := range n.Games {
		checkSheet(t, &n.Games[i])
		if g := &n.Games[i]; g.Running() && n.GameOn(g.Court) != g {
			t.Fatalf("game %d goes on and is on no court", g.ID)
		}
	}
}

// checkSheet: what a game says of itself is what its sheet folds to.
func checkSheet(t *rapid.T, g *Game) {
	t.Helper()
	state, err := g.Sheet().State()
	if err != nil {
		t.Fatalf("the sheet of game %d does not fold: %v", g.ID, err)
	}
	if state != g.State {
		t.Fatalf("game %d stands at %+v, its sheet at %+v", g.ID, g.State, state)
	}
	if g.Running() && g.State.Done {
		t.Fatalf("game %d is decided at %v and goes on", g.ID, g.State.Score)
	}
	if g.Stood < 0 {
		t.Fatalf("game %d stood for %v", g.ID, g.Stood)
	}
}

// Refolding after an append that failed takes what the log really holds.
func TestFailedAppendIsReadAgain(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 1, 3, Rounds)
	bad := &faultyLog{MemoryLog: log, fail: true, keep: true}
	d.log = bad
	var keep *KeepError
	if _, err := d.Do(AddGuest{Name: "Lost or not"}); !errors.As(err, &keep) {
		t.Fatalf("got %v, want a KeepError", err)
	}
	if d.Ledger().Night().Count(Here) != 3 {
		t.Fatal("what was not acknowledged is shown")
	}
	bad.fail = false
	if _, err := d.Do(AddGuest{Name: "Lost or not"}); err == nil {
		t.Fatal("it had been written after all, and was taken twice")
	}
	must(t, d, AddGuest{Name: "Fifth"})
	if d.Ledger().Night().Count(Here) != 5 {
		t.Fatalf("%d here after the log was read again, want 5", d.Ledger().Night().Count(Here))
	}
	checkReplay(t, d, log)
}

// faultyLog fails appends, and may have kept the records all the same, as disks do.
type faultyLog struct {
	*MemoryLog
	fail, keep bool
}

func (f *faultyLog) Append(recs []Record) error {
	if !f.fail {
		return f.MemoryLog.Append(recs)
	}
	if f.keep {
		if err := f.MemoryLog.Append(recs); err != nil {
			return err
		}
	}
	return errors.New("no space left on device")
}
