package session

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session/roster"
)

// testClock is a clock that a test moves by hand.
type testClock struct{ now time.Time }

func (c *testClock) Now() time.Time { return c.now }

// evening is when test nights begin.
var evening = time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)

// newTestDesk is a desk over a log in memory, with counted identities.
func newTestDesk(t testing.TB) (*Desk, *MemoryLog, *testClock) {
	t.Helper()
	log, clock, people := &MemoryLog{}, &testClock{evening}, 0
	d, err := NewDesk(log, clock.Now, func() PersonID { people++; return PersonID(fmt.Sprintf("p%03d", people)) })
	if err != nil {
		t.Fatal(err)
	}
	return d, log, clock
}

// GameOn is the game going on at a court, nil when it is free.
func (n *Night) GameOn(id CourtID) *Game {
	if c := n.Court(id); c != nil {
		return n.Game(c.Game)
	}
	return nil
}

// must does commands that have to be accepted.
func must(t testing.TB, d *Desk, commands ...Command) {
	t.Helper()
	for _, c := range commands {
		if _, err := d.Do(c); err != nil {
			t.Fatalf("%T: %v", c, err)
		}
	}
}

// refused does a command that has to be refused with these words.
func refused(t testing.TB, d *Desk, c Command, words string) {
	t.Helper()
	before := d.Ledger().Last()
	_, err := d.Do(c)
	if err == nil || !strings.Contains(err.Error(), words) {
		t.Fatalf("%T: got %v, want a refusal about %q", c, err, words)
	}
	if d.Ledger().Last() != before {
		t.Fatalf("%T was refused and still wrote records", c)
	}
}

// withPeople opens a night on some courts with some people checked in.
func withPeople(t testing.TB, d *Desk, courts, people int, flow Flow) {
	t.Helper()
	s := DefaultSettings(7)
	s.Flow = flow
	must(t, d, OpenNight{Name: "test night", Settings: s, Courts: courts})
	for i := range people {
		must(t, d, AddGuest{Name: fmt.Sprintf("Person %02d", i+1)})
	}
}

func final(t testing.TB, a, b int) scoring.Final {
	t.Helper()
	f, err := DefaultSettings(1).Scoring.Final(a, b, scoring.Played)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// playRound calls a round and enters a score on every court.
func playRound(t testing.TB, d *Desk, clock *testClock) {
	t.Helper()
	must(t, d, CallRound{})
	clock.now = clock.now.Add(12 * time.Minute)
	for i, g := range d.Ledger().Night().Running() {
		must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, i)})
	}
	clock.now = clock.now.Add(3 * time.Minute)
}

func stateOf(t testing.TB, l *Ledger) string {
	t.Helper()
	b, err := json.Marshal(struct {
		Club   *Club
		Undone map[uint64]bool
		Redo   []Undone
		Last   uint64
	}{l.club, l.undone, l.redo, l.last})
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func checkReplay(t testing.TB, d *Desk, log *MemoryLog) {
	t.Helper()
	again, err := Load(log.Records(1))
	if err != nil {
		t.Fatalf("replay: %v", err)
	}
	if got, want := stateOf(t, again), stateOf(t, d.Ledger()); got != want {
		t.Fatalf("replay differs\n got %s\nwant %s", got, want)
	}
}

func TestANightOfRounds(t *testing.T) {
	d, log, clock := newTestDesk(t)
	refused(t, d, CallRound{}, "no night is open")
	withPeople(t, d, 4, 18, Rounds)
	for range 6 {
		playRound(t, d, clock)
	}
	n := d.Ledger().Night()
	sat := map[int]int{}
	for _, a := range n.Roll {
		sat[n.SatOut(a.Person)]++
	}
	if len(n.Rounds) != 6 || len(n.Games) != 24 {
		t.Fatalf("%d rounds with %d games, want 6 with 24", len(n.Rounds), len(n.Games))
	}
	// 12 sit-outs over 18 people: nobody sits out twice before everybody has once.
	if sat[0] != 6 || sat[1] != 12 {
		t.Errorf("people by sit-outs: %v, want 6 with none and 12 with one", sat)
	}
	if k := Certify(d.Ledger().Club(), n, clock.now); k.PartnerRepeats.Value != 0 || k.BenchedTwice.Value != 0 {
		t.Errorf("certificate %+v, want no partner twice and nobody benched twice running", k)
	}
	must(t, d, EndNight{})
	refused(t, d, CallRound{}, "no night is open")
	checkReplay(t, d, log)
}

// A closed rolling night is judged by the games it had, although everybody has gone by then.
func TestCertificateOfAClosedRollingNight(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rolling)
	must(t, d, BeginPlay{})
	for i := range 6 {
		clock.now = clock.now.Add(10 * time.Minute)
		must(t, d, FinishGame{Game: GameID(i + 1), Final: final(t, 11, 5)})
	}
	void, err := DefaultSettings(1).Scoring.Final(0, 0, scoring.Void)
	if err != nil {
		t.Fatal(err)
	}
	must(t, d, FinishGame{Game: 7, Final: void}, HoldPlay{"the end"})
	must(t, d, FinishGame{Game: 8, Final: void}, EndNight{})
	// Four people have three ways to pair up: six games on one court repeat each pair once.
	if k := Certify(d.Ledger().Club(), d.Ledger().Club().Night(), clock.now); k.PartnerRepeats != (scheduler.Value{Value: 6, Bound: 6}) {
		t.Errorf("partner repeats %+v, want 6 of at least 6", k.PartnerRepeats)
	}
}

func TestRefusalsSayWhatToDo(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 2, 9, Rounds)
	refused(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1}, "close it first")
	refused(t, d, AddGuest{Name: "person 03"}, "already has a Person 03")
	refused(t, d, AddGuest{Name: " \x1b[2J "}, "at least one letter")
	refused(t, d, AddGuest{Name: "117"}, "scores are typed on the courts")
	refused(t, d, CheckIn{"p002"}, "checked in already")
	refused(t, d, CallGame{"1"}, "goes by rounds")
	must(t, d, CallRound{})
	refused(t, d, CallRound{}, "enter the score of court 1 first")
	refused(t, d, EndNight{}, "court 1 still has a game")
	g := d.Ledger().Night().Running()[0]
	bench := d.Ledger().Night().Bench()[0].Person
	refused(t, d, Substitute{g.ID, bench, g.A[0]}, "does not play")
	must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 7)})
	refused(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 7)}, "correct its score instead")
	refused(t, d, CorrectScore{g.ID, final(t, 11, 7)}, "has that score already")
	refused(t, d, CloseCourt{"9"}, "no court 9")
	must(t, d, CloseCourt{"2"})
	refused(t, d, CloseCourt{"1"}, "the only open one")
	must(t, d, HoldPlay{"lightning"})
	refused(t, d, ScoreRally{Game: 2}, "play is held (lightning)")
	must(t, d, ResumePlay{})
	refused(t, d, ResumePlay{}, "not held")
}

func TestPlayerReplacedAfterTheCall(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 1, 6, Rounds)
	must(t, d, CallRound{})
	n := d.Ledger().Night()
	out, in := n.Games[0].A[1], n.Bench()[0].Person
	must(t, d, Substitute{1, out, in})
	n = d.Ledger().Night()
	if !n.Games[0].Has(in) || n.Games[0].Has(out) || n.SatOut(in) != 0 || n.TurnsOf(out) != (Turns{Unfinished: 1}) {
		t.Fatalf("after the change the game is %v and %v sat out", n.Games[0].Players(), n.Rounds[0].Out)
	}
	must(t, d, Leave{out}, FinishGame{Game: 1, Final: final(t, 11, 2)})
	playRound(t, d, clock)
	if d.Ledger().Night().Games[1].Has(out) {
		t.Fatal("somebody who left was called")
	}
	checkReplay(t, d, log)
}

func TestRollingCallsTheNextFourByItself(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 2, 11, Rolling)
	must(t, d, BeginPlay{})
	if got := len(d.Ledger().Night().Running()); got != 2 {
		t.Fatalf("%d games begun on 2 courts", got)
	}
	waiting := d.Ledger().Night().Bench()
	clock.now = clock.now.Add(10 * time.Minute)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 5)})
	n := d.Ledger().Night()
	g := n.GameOn("1")
	if g == nil || g.ID != 3 {
		t.Fatal("the free court did not call the next four")
	}
	for _, a := range waiting {
		if !g.Has(a.Person) {
			t.Errorf("%s had waited longest, with only three waiting, and is not in the next game", a.Person)
		}
	}
	must(t, d, Undo{})
	if n = d.Ledger().Night(); n.GameOn("1").ID != 1 || len(n.Games) != 2 {
		t.Error("undoing a score did not undo the call that came with it")
	}
	checkReplay(t, d, log)
}

func TestUndoOfAnyAction(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	refused(t, d, Redo{}, "nothing to redo")
	must(t, d, CallRound{})
	call := d.Ledger().Actions()[len(d.Ledger().Actions())-1].ID
	must(t, d, ScoreRally{Game: 1, Rally: scoring.Rally{Won: scoring.A}})
	must(t, d, FinishGame{Game: 2, Final: final(t, 11, 3)})
	refused(t, d, UndoAction{call}, "rests on it; undo that first")
	must(t, d, UndoRally{1})
	if n := d.Ledger().Night(); len(n.Games[0].Rallies) != 0 || n.Games[1].Running() {
		t.Fatal("taking a rally back changed another court")
	}
	refused(t, d, UndoRally{1}, "no rally")
	must(t, d, Redo{})
	if len(d.Ledger().Night().Games[0].Rallies) != 1 {
		t.Fatal("redo did not bring the rally back")
	}
	must(t, d, Undo{}, Undo{}, Undo{})
	if len(d.Ledger().Night().Games) != 0 {
		t.Fatal("the round is still called")
	}
	must(t, d, Redo{}, Redo{}, Redo{})
	if n := d.Ledger().Night(); len(n.Games[0].Rallies) != 1 || n.Games[1].Running() {
		t.Fatal("three redos did not bring three actions back")
	}
	for range 2 + 1 + 8 { // two scores, the call, eight guests
		must(t, d, Undo{})
	}
	refused(t, d, Undo{}, "nothing to undo")
	checkReplay(t, d, log)
}

func TestRallyThatDecidesEndsTheGame(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, CallRound{})
	for range 11 {
		must(t, d, ScoreRally{Game: 1, Rally: scoring.Rally{Won: scoring.A}})
	}
	g := d.Ledger().Club().Night().Game(1)
	if g.Running() || g.Final.Score() != (scoring.Score{A: 11}) {
		t.Fatalf("after eleven rallies the game is %+v", g.Final)
	}
}

func TestImportRoster(t *testing.T) {
	d, log, clock := newTestDesk(t)
	must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1})
	entries, err := roster.Parse(strings.NewReader("name,level,arrive,leave,partner_with,keep_apart\n" +
		"Ada,3.5,,21:00,Ben,\nBen,,,,,Cy\nCy,2,19:30,,,\nDi,,2,,,\n"))
	if err != nil {
		t.Fatal(err)
	}
	must(t, d, ImportRoster{Entries: entries, Arrived: true})
	n := d.Ledger().Night()
	if n.Count(Here) != 2 || n.Count(Expected) != 2 {
		t.Fatalf("%d here and %d expected, want 2 and 2", n.Count(Here), n.Count(Expected))
	}
	ada, _ := d.Ledger().Club().Named("ada")
	ben, _ := d.Ledger().Club().Named("Ben")
	cy, _ := d.Ledger().Club().Named("Cy")
	if len(ada.Together) != 1 || ada.Together[0].With != ben.ID || ben.KeepApart[0] != cy.ID {
		t.Errorf("wishes are not kept: %+v %+v", ada, ben)
	}
	if due := n.Attending(cy.ID).Due; !due.Equal(evening.Add(30 * time.Minute)) {
		t.Errorf("Cy is due %v", due)
	}
	clock.now = clock.now.Add(time.Minute)
	refused(t, d, ImportRoster{Entries: entries[:3], Arrived: true}, "known and expected already")
	must(t, d, Undo{})
	if len(d.Ledger().Club().People) != 0 {
		t.Error("an undone import leaves people behind")
	}
	checkReplay(t, d, log)
}

// TestAGameSetAsideIsMadeUpFor: its people sat out after all, so the rounds to come are planned anew.
func TestAGameSetAsideIsMadeUpFor(t *testing.T) {
	void, err := DefaultSettings(1).Scoring.Final(0, 0, scoring.Void)
	if err != nil {
		t.Fatal(err)
	}
	for name, corrected := range map[string]bool{"at its end": false, "by a correction": true} {
		t.Run(name, func(t *testing.T) {
			d, log, clock := newTestDesk(t)
			withPeople(t, d, 2, 10, Rounds)
			must(t, d, CallRound{})
			for i, g := range d.Ledger().Night().Running() {
				switch {
				case i > 0:
					must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 4)})
				case corrected:
					must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 4)}, CorrectScore{g.ID, void})
				default:
					must(t, d, FinishGame{Game: g.ID, Final: void})
				}
			}
			for range 7 {
				playRound(t, d, clock)
			}
			n := d.Ledger().Night()
			least, most := 99, 0
			for _, a := range n.Roll {
				least, most = min(least, n.GamesOf(a.Person)), max(most, n.GamesOf(a.Person))
			}
			if most-least > 1 {
				t.Errorf("games a person: %d to %d, want a difference of 1 at most", least, most)
			}
			checkReplay(t, d, log)
		})
	}
}

// TestAnUndoneGuestIsToldByName: the club no longer knows who that was, and the action does.
func TestAnUndoneGuestIsToldByName(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	guest := d.Ledger().Last() + 1
	must(t, d, AddGuest{Name: "Zed Quill"}, Undo{})
	a, ok := d.Ledger().Action(guest)
	if got := Describe(d.Ledger().Club(), a); !ok || got != "Zed Quill is new to the club, Zed Quill checked in" {
		t.Errorf("the undone action is told as %q", got)
	}
}

// A plan made when somebody was still expected for the next round is not shown once that round
// comes and the person is not there.
func TestThePlanShownIsAboutWhoIsHere(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 7, Rounds)
	late := d.Ledger().Night().Roll[6].Person
	must(t, d, Leave{late}, Expect{Person: late, Due: clock.now.Add(10 * time.Minute)}, CallRound{})
	clock.now = clock.now.Add(12 * time.Minute)
	for _, scored := range []bool{false, true} {
		if scored {
			must(t, d, FinishGame{Game: 1, Final: final(t, 11, 3)})
		}
		r, err := PlanRotation(t.Context(), d.Ledger(), clock.now)
		if err != nil {
			t.Fatal(err)
		}
		next := append(slices.Clone(r.Rounds[0].Out), (&Game{A: r.Rounds[0].Games[0].A, B: r.Rounds[0].Games[0].B}).Players()...)
		if slices.Contains(next, late) || len(next) != 6 {
			t.Errorf("scored %v: the next round is about %v", scored, next)
		}
	}
}
