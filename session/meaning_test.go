package session

import (
	"reflect"
	"slices"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// changed is the settings of the night with something else in them.
func changed(d *Desk, change func(*Settings)) ChangeSettings {
	s := d.Ledger().Night().Settings
	change(&s)
	return ChangeSettings{s}
}

// lastAction is the identity of what was done last.
func lastAction(d *Desk) uint64 {
	actions := d.Ledger().Actions()
	return actions[len(actions)-1].ID
}

// TestAFormatIsForWhatComesNext: four rounds of rotating partners stay so in the table of the night and in
// the league when the rest of the night, or none of it, is played by set pairs.
func TestAFormatIsForWhatComesNext(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	for range 4 {
		playRound(t, d, clock)
	}
	before := Standings(d.Ledger().Club(), d.Ledger().Night())
	must(t, d, changed(d, func(s *Settings) { s.Format = scheduler.Pairs }))
	after := Standings(d.Ledger().Club(), d.Ledger().Night())
	if !slices.Equal(before, after) {
		t.Errorf("the table was\n%+v\nand is after a change of the format\n%+v", before, after)
	}
	playRound(t, d, clock)
	persons, pairs := 0, 0
	for _, r := range Standings(d.Ledger().Club(), d.Ledger().Night()) {
		switch r.Games {
		case 4:
			persons++
		case 1:
			pairs++
		}
	}
	if persons != 8 || pairs != 4 {
		t.Errorf("%d rows with four games and %d with one, want eight persons and four set pairs", persons, pairs)
	}
	must(t, d, EndNight{})
	if rows := League(d.Ledger().Club(), 0, Span{}); len(rows) != 12 {
		t.Errorf("the league has %d rows, want eight persons and four set pairs: %+v", len(rows), rows)
	}
	checkReplay(t, d, log)
}

// TestLotsAreForTheRowsOfTheTable: lots are drawn for the rows that the table has.
func TestLotsAreForTheRowsOfTheTable(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	playRound(t, d, clock)
	must(t, d, changed(d, func(s *Settings) { s.Format = scheduler.Pairs }), DrawLots{})
	for i, r := range Standings(d.Ledger().Club(), d.Ledger().Night()) {
		if r.Rank != i+1 {
			t.Errorf("%s has place %d in line %d after the draw", r.Name, r.Rank, i+1)
		}
	}
}

// TestWalkoversCountAsWasSaidAtTheCall: whether a walkover counts was settled before it happened.
func TestWalkoversCountAsWasSaidAtTheCall(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	walkover := DefaultSettings(1).Scoring.Walkover(scoring.A)
	must(t, d, CallRound{}, FinishGame{Game: 1, Final: walkover}, changed(d, func(s *Settings) { s.Stopped = true }))
	if rows := Standings(d.Ledger().Club(), d.Ledger().Night()); len(rows) != 0 {
		t.Errorf("a walkover that was not to count gives %+v", rows)
	}
	must(t, d, CallRound{}, FinishGame{Game: 2, Final: walkover}, changed(d, func(s *Settings) { s.Stopped = false }))
	if rows := Standings(d.Ledger().Club(), d.Ledger().Night()); len(rows) != 4 || rows[0].Games != 1 {
		t.Errorf("a walkover that was to count gives %+v", rows)
	}
}

// TestUndoOfRallyTo15: the game that is scored under it goes on under it, and so does one that is over.
func TestUndoOfRallyTo15(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	rules := scoring.Rules{Scoring: scoring.RallyScoring, To: 15, WinBy: 2}
	must(t, d, changed(d, func(s *Settings) { s.Scoring = rules }))
	settings := lastAction(d)
	must(t, d, CallRound{})
	for range 12 {
		must(t, d, ScoreRally{1, scoring.Rally{Won: scoring.A}})
	}
	score, err := rules.Final(15, 3, scoring.Played)
	if err != nil {
		t.Fatal(err)
	}
	must(t, d, FinishGame{Game: 2, Final: score}, UndoAction{settings})
	n := d.Ledger().Night()
	if n.Settings.Scoring == rules {
		t.Error("the undo changed nothing")
	}
	for _, g := range n.Games {
		if g.Rules != rules {
			t.Errorf("game %d was called under %v and is now under %v", g.ID, rules, g.Rules)
		}
	}
	if g := n.Game(1); g.State.Done || g.State.Score.A != 12 {
		t.Errorf("at 12 of 15 the game stands at %v, done: %v", g.State.Score, g.State.Done)
	}
	if err := n.Game(2).Rules.Check(*n.Game(2).Final); err != nil {
		t.Error(err)
	}
	for range 3 {
		must(t, d, ScoreRally{1, scoring.Rally{Won: scoring.A}})
	}
	must(t, d, CallRound{})
	if g := d.Ledger().Night().Game(3); g.Rules != DefaultSettings(1).Scoring {
		t.Errorf("the next game is under %v", g.Rules)
	}
	checkReplay(t, d, log)
}

// TestUndoOfAFlowThatWasPlayed: a rolling night that began cannot become one of rounds by an undo, nor a
// round one of a rolling night. The way out can be read whole on a terminal of 80 columns, and is one.
func TestUndoOfAFlowThatWasPlayed(t *testing.T) {
	for from, to := range map[Flow]Flow{Rounds: Rolling, Rolling: Rounds} {
		t.Run(string(to), func(t *testing.T) {
			d, log, _ := newTestDesk(t)
			withPeople(t, d, 1, 6, from)
			must(t, d, changed(d, func(s *Settings) { s.Flow = to }))
			settings := lastAction(d)
			begin := map[Flow]Command{Rounds: CallRound{}, Rolling: BeginPlay{}}
			must(t, d, begin[to])
			before := d.Ledger().Night().Played()
			refused(t, d, UndoAction{settings}, "rests on it: change the flow back (o)")
			_, err := d.Do(UndoAction{settings})
			if k := ansi.StringWidth(err.Error()); k > 80-len("! ")-len("  (esc; 3 before)") {
				t.Errorf("the refusal is %d cells wide: %v", k, err)
			}
			must(t, d, changed(d, func(s *Settings) { s.Flow = from }), FinishGame{Game: 1, Final: final(t, 11, 4)})
			before[0].Final = final(t, 11, 4)
			must(t, d, begin[from])
			n := d.Ledger().Night()
			if n.Settings.Flow != from || len(n.Games) != 2 || (n.Games[1].Round > 0) != (from == Rounds) {
				t.Errorf("after going back to %s the games are %+v", from, n.Games)
			}
			if got := n.Played(); got[0] != before[0] {
				t.Errorf("the first game was %+v and is %+v", before[0], got[0])
			}
			checkReplay(t, d, log)
		})
	}
}

// TestUndoOfSettingsThatWereChangedAgain would change nothing, so it is refused.
func TestUndoOfSettingsThatWereChangedAgain(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, changed(d, func(s *Settings) { s.Rounds = 5 }))
	first := lastAction(d)
	must(t, d, changed(d, func(s *Settings) { s.Slot = 9 }))
	refused(t, d, UndoAction{first}, "changed again later")
	must(t, d, Undo{}, UndoAction{first})
	if got, want := d.Ledger().Night().Settings, DefaultSettings(7); got != want {
		t.Errorf("with both undone the settings are %+v, want %+v", got, want)
	}
}

// TestUndoOfSettingsPlansAnew: rounds that were planned for other settings are not called.
func TestUndoOfSettingsPlansAnew(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	playRound(t, d, clock)
	must(t, d, changed(d, func(s *Settings) { s.Rounds = 4 }))
	settings := lastAction(d)
	playRound(t, d, clock)
	if got := len(d.Ledger().Night().Plan); got != 2 {
		t.Fatalf("%d rounds to come, want 2", got)
	}
	must(t, d, UndoAction{settings})
	if told := d.Ledger().Newest(); told != "undid: settings: rounds, rotating, side-out to 11, win by 2, 4 rounds" {
		t.Errorf("it is told as %q", told)
	}
	plan, err := PlanRotation(t.Context(), d.Ledger(), clock.now)
	if err != nil || len(plan.Rounds) != 6 {
		t.Errorf("of eight rounds two are played, and %d are planned (%v)", len(plan.Rounds), err)
	}
	must(t, d, Redo{})
	plan, err = PlanRotation(t.Context(), d.Ledger(), clock.now)
	if err != nil || len(plan.Rounds) != 2 || len(d.Ledger().Night().Plan) != 2 {
		t.Errorf("of four rounds two are played, and %d are planned (%v)", len(plan.Rounds), err)
	}
	checkReplay(t, d, log)
}

// TestCallsOfOlderFiles have no terms: they mean what the settings at their place in the log say, and an
// undo of those settings is refused.
func TestCallsOfOlderFiles(t *testing.T) {
	settings := DefaultSettings(5)
	rally := settings
	rally.Scoring = scoring.Rules{Scoring: scoring.RallyScoring, To: 15, WinBy: 2}
	events := []Event{NightOpened{Night: 1, Settings: settings, Courts: []CourtID{"1"}}}
	people := []PersonID{"p1", "p2", "p3", "p4"}
	for _, id := range people {
		events = append(events, PersonAdded{Person{ID: id, Name: string(id)}}, PersonArrived{id})
	}
	l := NewLedger()
	log := &MemoryLog{}
	for _, action := range [][]Event{
		events, {SettingsChanged{rally}}, {GameCalled{Game: 1, Court: "1", A: Team(people[:2]), B: Team(people[2:])}}, {SettingsChanged{settings}},
	} {
		records, err := record(l, evening, action)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range records {
			if r.Version != 1 {
				t.Fatalf("%s without terms is written as version %d", r.Kind, r.Version)
			}
		}
		if l, err = l.Extend(records); err != nil {
			t.Fatal(err)
		}
		if err := log.Append(records); err != nil {
			t.Fatal(err)
		}
	}
	if got := l.Night().Game(1).Rules; got != rally.Scoring {
		t.Errorf("the game is under %v, want %v", got, rally.Scoring)
	}
	d, err := NewDesk(log, (&testClock{evening}).Now, func() PersonID { return "new" })
	if err != nil {
		t.Fatal(err)
	}
	call := d.Ledger().Actions()
	must(t, d, Undo{})
	refused(t, d, UndoAction{call[1].ID}, "a game on court 1 would be read otherwise")
	checkReplay(t, d, log)
}

// TestANightThatAnOlderUndoBroke: a file may hold a night of rounds in which courts call by themselves. They
// do so no more, and its first round can be called.
func TestANightThatAnOlderUndoBroke(t *testing.T) {
	rolling := DefaultSettings(5)
	rolling.Flow = Rolling
	events := []Event{NightOpened{Night: 1, Settings: DefaultSettings(5), Courts: []CourtID{"1"}}}
	people := []PersonID{"p1", "p2", "p3", "p4"}
	for _, id := range people {
		events = append(events, PersonAdded{Person{ID: id, Name: string(id)}}, PersonArrived{id})
	}
	l, log := NewLedger(), &MemoryLog{}
	settings := uint64(len(events) + 1)
	for _, action := range [][]Event{
		events,
		{SettingsChanged{rolling}},
		{PlayBegun{}, GameCalled{Game: 1, Court: "1", A: Team(people[:2]), B: Team(people[2:])}},
		{Undone{Action: settings}},
	} {
		records, err := record(l, evening, action)
		if err != nil {
			t.Fatal(err)
		}
		if l, err = l.Extend(records); err != nil {
			t.Fatal(err)
		}
		if err := log.Append(records); err != nil {
			t.Fatal(err)
		}
	}
	d, err := NewDesk(log, (&testClock{evening}).Now, func() PersonID { return "new" })
	if err != nil {
		t.Fatal(err)
	}
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 3)}, CallRound{})
	if n := d.Ledger().Night(); len(n.Games) != 2 || n.Games[1].Round != 1 {
		t.Errorf("the games are %+v, want one of no round and one of round 1", n.Games)
	}
}

// TestMeaningStays: whatever is done and undone, a game that was called keeps its flow, format and rules,
// and its score, unless the action that called it or gave it its score is undone, redone, or a correction.
func TestMeaningStays(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d, log, clock := newTestDesk(t)
		s := DefaultSettings(3)
		s.Rounds = 3
		must(t, d, OpenNight{Settings: s, Courts: 2})
		for i := range 9 {
			must(t, d, AddGuest{Name: string(rune('A' + i))})
		}
		for range rapid.IntRange(5, 40).Draw(rt, "steps") {
			clock.now = clock.now.Add(time.Duration(rapid.IntRange(0, 900).Draw(rt, "seconds")) * time.Second)
			before := d.Ledger()
			command := drawCommand(rt, before)
			if rapid.IntRange(0, 3).Draw(rt, "settings") == 0 {
				command = drawSettings(rt, before)
			}
			if _, err := d.Do(command); err != nil {
				continue
			}
			checkMeaning(rt, before, d.Ledger())
			checkNight(rt, d.Ledger())
			checkReplay(t, d, log)
		}
	})
}

// drawSettings draws any change of what games are called under.
func drawSettings(t *rapid.T, l *Ledger) Command {
	s := DefaultSettings(3)
	if n := l.Night(); n != nil {
		s = n.Settings
	}
	s.Rounds = rapid.IntRange(2, 4).Draw(t, "rounds")
	s.Flow = rapid.SampledFrom([]Flow{Rounds, Rolling}).Draw(t, "flow")
	s.Format = rapid.SampledFrom(scheduler.Formats()).Draw(t, "format")
	s.Stopped = rapid.Bool().Draw(t, "stopped")
	s.Scoring = rapid.SampledFrom([]scoring.Rules{
		{To: 11, WinBy: 2},
		{Scoring: scoring.RallyScoring, To: 15, WinBy: 2},
		{Scoring: scoring.RallyScoring, To: 3, WinBy: 1},
	}).Draw(t, "rules")
	return ChangeSettings{s}
}

// checkMeaning fails if the last action of after gave a game of before another meaning, unless the action
// is about that game's own call or score. Any test that does commands can ask it.
func checkMeaning(t interface {
	Helper()
	Fatalf(format string, args ...any)
}, before, after *Ledger,
) {
	t.Helper()
	if len(before.Club().Nights) == 0 || len(before.Club().Nights) != len(after.Club().Nights) {
		return // the first night, or a new one: those before it are closed for good
	}
	actions := after.Actions()
	last := actions[len(actions)-1]
	about := last
	switch e := last.Events[0].(type) {
	case Undone:
		about, _ = after.Action(e.Action)
	case Redone:
		about, _ = after.Action(e.Action)
	}
	was, is := before.Club().Night().Played(), after.Club().Night().Played()
	for i := range was {
		id := GameID(i + 1)
		switch {
		case i >= len(is) && !last.IsUndo():
			t.Fatalf("game %d is gone after %q", id, Describe(after.Club(), last))
		case i < len(is) && was[i] != is[i] && !about.scores(id) && !about.moves(id):
			t.Fatalf("game %d was %+v and is %+v after %q", id, was[i], is[i], after.Describe(last))
		case i < len(is) && about.moves(id):
			court := was[i]
			if court.Court = is[i].Court; court != is[i] {
				t.Fatalf("a move made game %d from %+v into %+v", id, was[i], is[i])
			}
		case i < len(is) && about.scores(id):
			score := was[i]
			if score.Final = is[i].Final; score != is[i] {
				t.Fatalf("a score made game %d from %+v into %+v", id, was[i], is[i])
			}
		}
	}
}

// TestUndoPlansForWhatIsThen: after an undo the rounds to come use the court that is open again and keep to who is
// there and what people ask, though rounds were planned without that meanwhile.
func TestUndoPlansForWhatIsThen(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(n *Night, people []Person) Command
		want func(r PlannedRound, people []Person) bool
	}{
		{
			"a court that was closed", func(*Night, []Person) Command { return CloseCourt{"3"} },
			func(r PlannedRound, _ []Person) bool { return len(r.Games) == 3 && len(r.Out) == 0 },
		},
		{
			"a court that was kept for some levels", func(*Night, []Person) Command { return LevelCourt{"3", 2, 3} },
			func(r PlannedRound, _ []Person) bool { return len(r.Games) == 3 },
		},
		{"two who were to be partners", func(_ *Night, people []Person) Command {
			p := people[0]
			p.Together = []Together{{With: people[5].ID}}
			return ChangePerson{p}
		}, func(r PlannedRound, people []Person) bool {
			return !slices.ContainsFunc(r.Games, func(g PlannedGame) bool {
				pair := Team{people[0].ID, people[5].ID}
				return g.A == pair || g.B == pair
			})
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, log, clock := newTestDesk(t)
			withPeople(t, d, 3, 12, Rounds)
			playRound(t, d, clock)
			people := d.Ledger().Club().People
			must(t, d, c.do(d.Ledger().Night(), people))
			done := lastAction(d)
			playRound(t, d, clock)
			must(t, d, UndoAction{done})
			if n := d.Ledger().Night(); len(n.Plan) > 0 {
				t.Errorf("%d rounds stay that were planned for what was taken back", len(n.Plan))
			}
			playRound(t, d, clock)
			n := d.Ledger().Night()
			last := n.Rounds[len(n.Rounds)-1]
			r := PlannedRound{Out: last.Out}
			for _, id := range last.Games {
				g := n.Game(id)
				r.Games = append(r.Games, PlannedGame{Court: g.Court, A: g.A, B: g.B})
			}
			if !c.want(r, people) {
				t.Errorf("round %d was called as %+v", last.Number, r)
			}
			checkReplay(t, d, log)
		})
	}
}

// TestUndoKeepsThePlanItDoesNotTouch: an undo of what no rotation rests on changes nothing of what people saw.
func TestUndoKeepsThePlanItDoesNotTouch(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 2, 9, Rounds)
	playRound(t, d, clock)
	must(t, d, PostMessage{Text: "pizza"})
	message := lastAction(d)
	playRound(t, d, clock)
	plan := d.Ledger().Night().Plan
	must(t, d, UndoAction{message})
	if got := d.Ledger().Night().Plan; len(got) == 0 || !reflect.DeepEqual(got, plan) {
		t.Errorf("%d rounds to come are not those that were shown", len(got))
	}
	checkReplay(t, d, log)
}
