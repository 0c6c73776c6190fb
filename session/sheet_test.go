package session

import (
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/scoring"
)

// onCourt is a desk with one game going on and one person on the bench.
func onCourt(t testing.TB, flow Flow) (*Desk, *MemoryLog, *testClock, *Game) {
	t.Helper()
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 1, 5, flow)
	if flow == Rolling {
		must(t, d, BeginPlay{})
	} else {
		r := d.Ledger().Night().Roll
		first := PlannedGame{"1", Team{r[0].Person, r[1].Person}, Team{r[2].Person, r[3].Person}}
		must(t, d, CallRound{[]PlannedRound{{Games: []PlannedGame{first}, Out: []PersonID{r[4].Person}}}})
	}
	return d, log, clock, d.Ledger().Night().Game(1)
}

// play notes rallies of game 1 by their winners.
func play(t testing.TB, d *Desk, winners string) {
	t.Helper()
	rallies, err := scoring.ParseRallies(winners)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rallies {
		must(t, d, ScoreRally{1, r})
	}
}

// game1 is game 1 as it stands now.
func game1(d *Desk) *Game { return d.Ledger().Club().Night().Game(1) }

func TestEntriesOfASheetChangeTheGame(t *testing.T) {
	won := func(s scoring.Team) scoring.Rally { return scoring.Rally{Won: s} }
	set := func(a, b int) scoring.Setting {
		return scoring.Setting{Score: scoring.Score{A: a, B: b}, Number: 1, Right: [2]scoring.Seat{{}, {Team: scoring.B}}}
	}
	for name, c := range map[string]struct {
		before string
		entry  scoring.Entry
		call   string // empty when the game is over
		final  string // of a game that is over
	}{
		"time-out":             {"aa", scoring.Entry{Kind: scoring.TimeOut}, "2-0-2", ""},
		"medical time-out":     {"aa", scoring.Entry{Kind: scoring.MedicalTimeOut, Team: scoring.B}, "2-0-2", ""},
		"replayed rally":       {"aa", scoring.Entry{Kind: scoring.RallyReplayed}, "2-0-2", ""},
		"remark":               {"aa", scoring.Entry{Kind: scoring.Remark, Note: "sun"}, "2-0-2", ""},
		"ends changed":         {"aaaaaa", scoring.Entry{Kind: scoring.EndsSwitched}, "6-0-2", ""},
		"forgotten at the end": {"aa", scoring.Entry{Kind: scoring.RallyInserted, At: 3, Rally: won(scoring.A)}, "3-0-2", ""},
		"forgotten before":     {"ab", scoring.Entry{Kind: scoring.RallyInserted, At: 1, Rally: won(scoring.A)}, "0-2-1", ""},
		"one too many":         {"aab", scoring.Entry{Kind: scoring.RallyRemoved, At: 3}, "2-0-2", ""},
		"noted wrongly":        {"aa", scoring.Entry{Kind: scoring.RallyChanged, At: 2, Rally: won(scoring.B)}, "0-1-1", ""},
		"set right":            {"aa", scoring.Entry{Kind: scoring.SetRight, Setting: set(4, 3)}, "4-3-1", ""},
		"technical foul":       {"aa", scoring.Entry{Kind: scoring.TechnicalFoul}, "1-0-2", ""},
		"foul without a point": {"aa", scoring.Entry{Kind: scoring.TechnicalFoul, Team: scoring.B}, "3-0-2", ""},
		"gave up":              {"aaa", scoring.Entry{Kind: scoring.TeamRetired}, "", "3-0 retired, B won"},
		"set right to the end": {"aa", scoring.Entry{Kind: scoring.SetRight, Setting: set(11, 3)}, "", "11-3"},
		"foul ends the game":   {"aaaaaaaaaa", scoring.Entry{Kind: scoring.TechnicalFoul, Team: scoring.B}, "", "11-0"},
		"forgotten last point": {"aaaaaaaaaa", scoring.Entry{Kind: scoring.RallyInserted, At: 11, Rally: won(scoring.A)}, "", "11-0"},
	} {
		t.Run(name, func(t *testing.T) {
			d, log, _, _ := onCourt(t, Rounds)
			play(t, d, c.before)
			// "forgotten before" and "noted wrongly" follow from the fold by hand: a point, then the side out.
			must(t, d, NoteGame{1, c.entry})
			g := game1(d)
			if c.final == "" && (!g.Running() || g.State.Call() != c.call) {
				t.Errorf("the call is %q, want %q", g.State.Call(), c.call)
			}
			if c.final != "" && (g.Running() || g.Final.String() != c.final) {
				t.Errorf("the game ended as %v, want %s", g.Final, c.final)
			}
			checkReplay(t, d, log)
			must(t, d, Undo{})
			rallies, err := scoring.ParseRallies(c.before)
			if err != nil {
				t.Fatal(err)
			}
			if g := game1(d); g.State != scoring.Fold(g.Rules, scoring.A, rallies) || !g.Running() {
				t.Errorf("undo leaves %v, want the state of the rallies alone", g.State.Score)
			}
		})
	}
}

func TestEntriesThatCannotBeAreRefused(t *testing.T) {
	for name, c := range map[string]struct {
		before []Command
		entry  scoring.Entry
		words  string
	}{
		"no kind":             {nil, scoring.Entry{}, "needs a kind"},
		"third time-out":      {[]Command{NoteGame{1, scoring.Entry{Kind: scoring.TimeOut}}, NoteGame{1, scoring.Entry{Kind: scoring.TimeOut}}}, scoring.Entry{Kind: scoring.TimeOut}, "2 time-outs"},
		"no such rally":       {nil, scoring.Entry{Kind: scoring.RallyRemoved, At: 2}, "no rally 2"},
		"ends not due":        {nil, scoring.Entry{Kind: scoring.EndsSwitched}, "6 points"},
		"nothing changed":     {[]Command{ScoreRally{1, scoring.Rally{Won: scoring.B}}}, scoring.Entry{Kind: scoring.RallyChanged, At: 1, Rally: scoring.Rally{Won: scoring.B}}, "noted so already"},
		"remark of nothing":   {nil, scoring.Entry{Kind: scoring.Remark, Note: "\x1b[2J "}, "needs words"},
		"absent without name": {nil, scoring.Entry{Kind: scoring.NoShow}, "which player"},
		"impossible score":    {nil, scoring.Entry{Kind: scoring.SetRight, Setting: scoring.Setting{Score: scoring.Score{A: 15}, Number: 1, Right: [2]scoring.Seat{{}, {Team: scoring.B}}}}, "15-0"},
		"rally while held":    {[]Command{HoldPlay{"heat"}}, scoring.Entry{Kind: scoring.RallyWon}, "play is held"},
	} {
		t.Run(name, func(t *testing.T) {
			d, _, _, _ := onCourt(t, Rounds)
			must(t, d, c.before...)
			refused(t, d, NoteGame{1, c.entry}, c.words)
		})
	}
	d, _, _, _ := onCourt(t, Rounds)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 4)})
	refused(t, d, NoteGame{1, scoring.Entry{Kind: scoring.TimeOut}}, "correct its score")
}

// TestTakingBackTheLastEntry: backspace on a board means the last thing noted there, whatever it was.
func TestTakingBackTheLastEntry(t *testing.T) {
	d, _, _, _ := onCourt(t, Rounds)
	play(t, d, "aab")
	must(t, d, NoteGame{1, scoring.Entry{Kind: scoring.TimeOut, Team: scoring.B}}, ScoreRally{1, scoring.Rally{Won: scoring.B}})
	for _, want := range []struct {
		left int
		call string
	}{{1, "0-2-1"}, {2, "0-2-1"}, {2, "2-0-2"}} {
		must(t, d, UndoRally{1})
		if g := game1(d); g.TimeOutsLeft(scoring.B) != want.left || g.State.Call() != want.call {
			t.Errorf("%d time-outs left at %s, want %d at %s", g.TimeOutsLeft(scoring.B), g.State.Call(), want.left, want.call)
		}
	}
}

// TestARallyThatWasNamedStays: a correction names a rally by its number, so nothing before it may go
// while it stands.
func TestARallyThatWasNamedStays(t *testing.T) {
	d, log, _, _ := onCourt(t, Rounds)
	play(t, d, "aab")
	first := d.Ledger().Actions()
	must(t, d, NoteGame{1, scoring.Entry{Kind: scoring.RallyRemoved, At: 2}})
	refused(t, d, UndoAction{first[len(first)-3].ID}, "rally 2 does not")
	must(t, d, UndoRally{1}, UndoAction{first[len(first)-3].ID})
	if got := game1(d).State.Call(); got != "0-1-1" {
		t.Errorf("without the first of three rallies the call is %s, want 0-1-1", got)
	}
	checkReplay(t, d, log)
}

// TestAGameGivenUpCallsTheNext: in the rolling flow an entry that ends a game frees its court.
func TestAGameGivenUpCallsTheNext(t *testing.T) {
	d, _, _, _ := onCourt(t, Rolling)
	play(t, d, "ab")
	must(t, d, NoteGame{1, scoring.Entry{Kind: scoring.TeamRetired, Team: scoring.B}})
	if n := d.Ledger().Night(); len(n.Games) != 2 || !n.Game(2).Running() {
		t.Fatalf("%d games were called, want the next one on the free court", len(n.Games))
	}
}

func TestEndsAreDueUntilTheyAreChanged(t *testing.T) {
	d, _, _, _ := onCourt(t, Rounds)
	play(t, d, "aaaaa")
	if game1(d).EndsDue() {
		t.Error("ends are due at 5")
	}
	play(t, d, "aa")
	if !game1(d).EndsDue() {
		t.Error("ends are not due at 7, though nobody changed them at 6")
	}
	must(t, d, NoteGame{1, scoring.Entry{Kind: scoring.EndsSwitched}})
	if game1(d).EndsDue() {
		t.Error("ends are due after they were changed")
	}
	refused(t, d, NoteGame{1, scoring.Entry{Kind: scoring.EndsSwitched}}, "it is not time to switch ends")
}

// TestNothingIsPlayedAfterTheEnd: in a log that was tampered with, where a team gave up and its game was
// not ended, the next rally cannot stand.
func TestNothingIsPlayedAfterTheEnd(t *testing.T) {
	for _, k := range []scoring.Kind{scoring.TeamRetired, scoring.TimeUp} {
		l := playing(t)
		for i, e := range []Event{
			GameNoted{Game: 1, Entry: scoring.Entry{Kind: k}},
			GameNoted{Game: 1, Entry: scoring.Entry{Kind: scoring.Remark, Note: "ankle"}},
			RallyWon{Game: 1},
		} {
			records, err := record(l, evening, []Event{e})
			if err != nil {
				t.Fatal(err)
			}
			next, err := l.Extend(records)
			if last := i == 2; last != (err != nil) {
				t.Fatalf("%v, then %T: %v", k, e, err)
			}
			l = next
		}
	}
}

// TestOnlyMedicalPausesAreNoPlayingTime: the night must not learn from a game that waited for help.
func TestOnlyMedicalPausesAreNoPlayingTime(t *testing.T) {
	for kind, want := range map[scoring.Kind]time.Duration{
		scoring.TimeOut: 0, scoring.MedicalTimeOut: 9 * time.Minute, scoring.RefereeTimeOut: 9 * time.Minute,
	} {
		for _, held := range []bool{false, true} {
			d, log, clock, _ := onCourt(t, Rounds)
			play(t, d, "a")
			must(t, d, NoteGame{1, scoring.Entry{Kind: kind}})
			if p := game1(d).Pause; p == nil || p.Kind != kind || !p.Since.Equal(clock.now) {
				t.Fatalf("%v: the pause is %+v", kind, p)
			}
			want := want
			if held { // a hold of 4 of the 9 minutes is not counted twice
				want = max(want, 4*time.Minute)
				must(t, d, HoldPlay{"injury"})
				clock.now = clock.now.Add(4 * time.Minute)
				must(t, d, ResumePlay{})
				clock.now = clock.now.Add(5 * time.Minute)
			} else {
				clock.now = clock.now.Add(9 * time.Minute)
			}
			play(t, d, "a")
			if g := game1(d); g.Pause != nil || g.Stood != want {
				t.Errorf("%v, held %v: stood %v with pause %+v, want %v and none", kind, held, g.Stood, g.Pause, want)
			}
			checkReplay(t, d, log)
		}
	}
}

func TestWhoDoesNotCome(t *testing.T) {
	d, _, clock, g := onCourt(t, Rounds)
	n := d.Ledger().Night()
	absent, in := g.B[1], n.Bench()[0].Person
	if n.Grace() != 5 {
		t.Fatalf("the grace of a round of %d minutes is %d, want 5", n.Settings.Slot, n.Grace())
	}
	refused(t, d, NoShow{Game: 1, Person: in}, "does not play")
	clock.now = clock.now.Add(3*time.Minute + 30*time.Second)
	refused(t, d, NoShow{Game: 1, Person: absent}, "2 minutes of grace are left")
	if left := d.Ledger().Night().GraceLeft(game1(d), clock.now); left != 2 {
		t.Errorf("%d minutes of grace are left, want 2", left)
	}

	must(t, d, NoShow{Game: 1, Person: absent, In: in})
	if g := game1(d); !g.Running() || g.B[1] != in {
		t.Errorf("the game goes on %v with %s, want %s in it", g.Running(), g.B[1], in)
	}
	if a := d.Ledger().Night().Attending(absent); a.State != Resting {
		t.Errorf("who did not come is %s, want resting", a.State)
	}
	must(t, d, Undo{})

	must(t, d, HoldPlay{"lightning"}) // nobody is late while play is held
	clock.now = clock.now.Add(20 * time.Minute)
	refused(t, d, NoShow{Game: 1, Person: absent}, "2 minutes of grace are left")
	must(t, d, ResumePlay{})
	clock.now = clock.now.Add(2 * time.Minute)
	must(t, d, NoShow{Game: 1, Person: absent})
	if g := game1(d); g.Running() || g.Final.String() != "11-0 walkover" {
		t.Errorf("the game ended as %v, want a walkover to A", g.Final)
	}
	if got := d.Ledger().Night().Count(Resting); got != 1 {
		t.Errorf("%d people rest, want the one who did not come", got)
	}
}

func TestWhoPlaysIsNotAbsent(t *testing.T) {
	d, _, clock, g := onCourt(t, Rounds)
	play(t, d, "a")
	clock.now = clock.now.Add(time.Hour)
	refused(t, d, NoShow{Game: 1, Person: g.A[0]}, "has begun to play")
}

func TestFaultsAreCountedByWhoMadeThem(t *testing.T) {
	d, _, _, g := onCourt(t, Rounds)
	rally := func(won scoring.Team, f scoring.Fault, by uint8) ScoreRally {
		return ScoreRally{1, scoring.Rally{Won: won, Fault: f, By: by}}
	}
	b1, in := g.B[0], d.Ledger().Night().Bench()[0].Person
	must(t, d, rally(scoring.A, scoring.Out, 1), rally(scoring.A, scoring.Net, 1), rally(scoring.A, scoring.Net, 0),
		rally(scoring.A, scoring.None, 0), rally(scoring.B, scoring.Kitchen, 2))
	must(t, d, Substitute{1, b1, in}, rally(scoring.A, scoring.HitByBall, 1))
	people, untold := d.Ledger().Night().Faults()
	got := map[PersonID]int{}
	for _, p := range people {
		got[p.Person] = p.Count.Total()
	}
	if got[b1] != 2 || got[in] != 1 || got[g.A[1]] != 1 || len(got) != 3 {
		t.Errorf("faults by person are %v", got)
	}
	if people[0].Person != b1 || people[0].Count[scoring.Net] != 1 {
		t.Errorf("the list begins with %+v, want %s with one ball in the net", people[0], b1)
	}
	if untold[scoring.Net] != 1 || untold.Total() != 1 {
		t.Errorf("untold are %v, want one ball in the net", untold)
	}
}

// TestHistoryTellsEntries: every entry is told in words, with its note, and no two kinds alike.
func TestHistoryTellsEntries(t *testing.T) {
	d, _, _, g := onCourt(t, Rounds)
	club, seen := d.Ledger().Club(), map[string]scoring.Kind{}
	for k := scoring.RallyWon; k <= scoring.Remark; k++ {
		text := EntryText(club, g, scoring.Entry{Kind: k, At: 2, Team: scoring.B, Rally: scoring.Rally{Won: scoring.B, Fault: scoring.Net}, Note: "so they say"})
		if other, twice := seen[text]; twice || !strings.Contains(text, "so they say") {
			t.Errorf("%v is told as %q (as is %v)", k, text, other)
		}
		seen[text] = k
	}
	play(t, d, "a")
	must(t, d, NoteGame{1, scoring.Entry{Kind: scoring.TimeOut, Team: scoring.B, Note: "cramp"}})
	actions := d.Ledger().Actions()
	got := Describe(d.Ledger().Club(), actions[len(actions)-1])
	want := "court 1: time-out of " + pairName(club, g.B) + " (cramp)"
	if got != want {
		t.Errorf("the history says %q, want %q", got, want)
	}
	if !slices.ContainsFunc(game1(d).Sheet().Entries, func(e scoring.Entry) bool { return e.Note == "cramp" }) {
		t.Error("the sheet has lost the note")
	}
}

// TestTheSheetOfAGameThatIsOverIsSealed: a rally cannot be taken from under a final score, but the end
// of the game can, and then the rally.
func TestTheSheetOfAGameThatIsOverIsSealed(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, CallRound{})
	var actions []uint64
	for d.Ledger().Night().Game(1).Running() {
		actions = append(actions, d.Ledger().Last()+1)
		must(t, d, ScoreRally{1, scoring.Rally{Won: scoring.A}})
	}
	refused(t, d, UndoAction{actions[2]}, "that game is over")
	must(t, d, Undo{}, UndoAction{actions[2]})
	if g := d.Ledger().Night().Game(1); !g.Running() || g.State.Score.A != 9 {
		t.Errorf("the game stands at %v, want it to go on at 9-0", g.State.Score)
	}
	must(t, d, Redo{}, Redo{})
	if g := d.Ledger().Night().Game(1); g.Running() || g.State.Score.A != 11 {
		t.Errorf("the game stands at %v, want it to be over at 11-0", g.State.Score)
	}
	checkReplay(t, d, log)
}
