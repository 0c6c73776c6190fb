package session

import (
	"testing"
	"time"
)

func TestTheNightLearnsHowLongItsGamesTake(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	s := d.Ledger().Night().Settings
	s.Closing = evening.Add(150 * time.Minute)
	must(t, d, ChangeSettings{s})
	if _, ok := d.Ledger().Night().Fit(clock.now); !ok {
		t.Fatal("closing time is set and nothing is said about it")
	}
	before, _ := d.Ledger().Night().Fit(clock.now)
	if before.Sure > before.Probable || before.Probable > before.Even || before.Sure < 1 {
		t.Errorf("fit %+v is out of order", before)
	}
	for range 4 { // games of 25 minutes, twice what was expected
		must(t, d, CallRound{})
		clock.now = clock.now.Add(25 * time.Minute)
		for _, g := range d.Ledger().Night().Running() {
			must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 3)})
		}
	}
	n := d.Ledger().Night()
	if m := n.Clock().Median(); m < 17 || m > 25 {
		t.Errorf("after eight games of 25 minutes a game is thought to take %.1f", m)
	}
	after, _ := n.Fit(clock.now)
	if left := 50 / 28; after.Even > left+1 {
		t.Errorf("%d rounds of 25 minutes are thought to fit into 50 minutes", after.Even)
	}
	must(t, d, CallRound{})
	clock.now = clock.now.Add(10 * time.Minute)
	if w := d.Ledger().Night().NextTurn(0, clock.now); w.Early > w.Likely || w.Likely > w.Late || w.Late < 2*time.Minute {
		t.Errorf("next turn %+v", w)
	}
}

func TestFourMoreOnTheBenchWaitForOneCourtMore(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 16, Rolling)
	must(t, d, BeginPlay{})
	clock.now = clock.now.Add(4 * time.Minute)
	n := d.Ledger().Night()
	first, fifth := n.NextTurn(0, clock.now), n.NextTurn(4, clock.now)
	if first.Likely <= 0 || fifth.Likely < first.Likely {
		t.Errorf("the first on the bench waits %v, the fifth %v", first.Likely, fifth.Likely)
	}
}

// A score that is entered sooner than its points can be played is of a game that began before its call, or of somebody
// who tries the desk. It teaches nothing: twelve rounds still fit into three hours after it.
func TestAScoreRightAfterTheCallTeachesNothing(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	s := d.Ledger().Night().Settings
	s.Closing = evening.Add(3 * time.Hour)
	must(t, d, ChangeSettings{s})
	want := d.Ledger().Night().Clock()
	must(t, d, CallRound{})
	for _, g := range d.Ledger().Night().Running() {
		clock.now = clock.now.Add(20 * time.Second)
		must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 7)})
	}
	if got := d.Ledger().Night().Clock(); got != want {
		t.Errorf("after scores 20 seconds after the call a game takes %.1f minutes in the median and %.1f in nine of ten, before %.1f and %.1f",
			got.Median(), got.Quantile(0.9), want.Median(), want.Quantile(0.9))
	}
	must(t, d, CallRound{})
	clock.now = clock.now.Add(90 * time.Second)
	must(t, d, FinishGame{Game: d.Ledger().Night().Running()[0].ID, Final: final(t, 11, 7)})
	if got := d.Ledger().Night().Clock(); got.Median() >= want.Median() {
		t.Error("a quick game of a minute and a half teaches nothing")
	}
}

// A court of the rolling flow calls at the score of its game, so it frees when the game is likely to be over, and not after
// the minutes that a round has between two games.
func TestACourtFreesAtTheScore(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 16, Rolling)
	must(t, d, BeginPlay{})
	clock.now = clock.now.Add(4 * time.Minute)
	l := d.Ledger()
	_, free := newLineup(l.Club(), l.Night(), clock.now).running()
	want := l.Night().Clock().Remaining(4, 0.5)
	if len(free) != 2 || free[0] != want || free[1] != want {
		t.Errorf("the courts free in %v minutes, the games are likely to be over in %.2f", free, want)
	}
}
