package session

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"club/quadrille/scoring"
)

// hurtNight is a night of six people with a game on court 1, and who plays it.
func hurtNight(t *testing.T, flow Flow) (d *Desk, log *MemoryLog, clock *testClock, g *Game) {
	t.Helper()
	d, log, clock = newTestDesk(t)
	withPeople(t, d, 1, 6, flow)
	if flow == Rolling {
		must(t, d, BeginPlay{})
	} else {
		must(t, d, CallRound{})
	}
	return d, log, clock, d.Ledger().Night().GameOn("1")
}

// An injury stops the game, and its time with it, until it is decided what becomes of it.
func TestAnInjuryStopsTheGame(t *testing.T) {
	d, log, clock, g := hurtNight(t, Rounds)
	hurt := g.A[0]
	clock.now = clock.now.Add(4 * time.Minute)
	must(t, d, ReportInjury{Person: hurt, Note: "ankle"})
	n := d.Ledger().Night()
	if x, ok := n.Unsettled(n.GameOn("1")); !ok || x.Person != hurt || x.Note != "ankle" || x.Game != g.ID || !x.At.Equal(clock.now) {
		t.Fatalf("noted as %+v", x)
	}
	clock.now = clock.now.Add(9 * time.Minute)
	must(t, d, SettleInjury{Person: hurt, How: PlaysOn})
	n = d.Ledger().Night()
	if played := n.GameTime(n.GameOn("1"), clock.now); played != 4*time.Minute {
		t.Errorf("%v of playing time, want the 4 minutes before the stop", played)
	}
	if _, open := n.Unsettled(n.GameOn("1")); open || n.Attending(hurt).State != Here {
		t.Error("play goes on, and the injury still waits for a decision")
	}
	if got := d.Ledger().Newest(); !strings.Contains(got, "play goes on after the injury") {
		t.Errorf("history says %q", got)
	}
	checkReplay(t, d, log)
}

// What becomes of the game is what the commands for it do, and the hurt person rests.
func TestWhatBecomesOfTheGameOfAnInjury(t *testing.T) {
	for name, c := range map[string]struct {
		how  Settlement
		want func(g *Game, hurt, in PersonID) bool
	}{
		"substitute": {SubForHurt, func(g *Game, hurt, in PersonID) bool { return g.Running() && g.Has(in) && !g.Has(hurt) }},
		"retired": {HurtRetires, func(g *Game, hurt, _ PersonID) bool {
			w, ok := g.Final.Winner()
			return g.Final.How() == scoring.Retired && ok && w == scoring.A
		}},
		"void": {VoidForHurt, func(g *Game, _, _ PersonID) bool { return g.Final.How() == scoring.Void }},
	} {
		for _, head := range []bool{false, true} {
			t.Run(fmt.Sprintf("%s, head %v", name, head), func(t *testing.T) {
				d, log, _, g := hurtNight(t, Rounds)
				hurt, in := g.B[1], d.Ledger().Night().Bench()[0].Person
				must(t, d, ReportInjury{Person: hurt, Head: head}, SettleInjury{hurt, c.how, in})
				n := d.Ledger().Night()
				if got := n.Game(g.ID); !c.want(got, hurt, in) {
					t.Errorf("the game came to %+v", got)
				}
				want := map[bool]Presence{false: Resting, true: Gone}[head]
				if got := n.Attending(hurt).State; got != want {
					t.Errorf("who was hurt is %s, want %s", got, want)
				}
				checkReplay(t, d, log)
				before := n.Attending(hurt).State
				must(t, d, Undo{}, Redo{})
				if got := d.Ledger().Night().Attending(hurt).State; got != before {
					t.Errorf("undone and redone: %s, want %s", got, before)
				}
				checkReplay(t, d, log)
			})
		}
	}
}

// Whoever may have a head injury is out for tonight: nothing brings the person back but a clearance that names who decided.
func TestAHeadInjuryIsOutForTonight(t *testing.T) {
	for _, flow := range []Flow{Rounds, Rolling} {
		d, log, _, g := hurtNight(t, flow)
		hurt, other := g.A[1], g.B[0]
		must(t, d, ReportInjury{Person: hurt, Head: true, Note: "dizzy"})
		if got := d.Ledger().Newest(); !strings.Contains(got, "Person") || !strings.Contains(got, "out for tonight (dizzy)") {
			t.Errorf("history says %q", got)
		}
		refused(t, d, ReportInjury{Person: hurt, Head: true}, "out for tonight already")
		refused(t, d, SettleInjury{Person: hurt, How: PlaysOn}, "until a qualified person clears it")
		refused(t, d, ScoreRally{g.ID, scoring.Rally{Won: scoring.A}}, "may have a head injury")
		refused(t, d, ExchangePlayers{hurt, other}, "out for tonight")
		must(t, d, SettleInjury{hurt, SubForHurt, d.Ledger().Night().Bench()[0].Person})
		for _, c := range []Command{CheckIn{hurt}, CheckInAs{Person: hurt, Group: "x"}, Expect{Person: hurt}} {
			refused(t, d, c, "until a qualified person clears it")
		}
		refused(t, d, ClearToPlay{hurt, " - "}, "name the qualified person")
		refused(t, d, ClearToPlay{other, "Dr Vale"}, "is not out for tonight")
		must(t, d, ClearToPlay{hurt, "Dr Vale, physician"})
		if got := d.Ledger().Newest(); !strings.Contains(got, "cleared by Dr Vale, physician") {
			t.Errorf("history says %q", got)
		}
		if d.Ledger().Night().Attending(hurt).State != Gone {
			t.Error("a clearance alone checks nobody in")
		}
		must(t, d, CheckIn{hurt})
		refused(t, d, UndoAction{actionOf[PersonCleared](t, d)}, "rests on")
		checkReplay(t, d, log)
		must(t, d, ReportInjury{Person: hurt, Head: true})
		if _, out := d.Ledger().Night().OutForTonight(hurt); !out {
			t.Error("an earlier clearance covers a later injury")
		}
	}
}

// actionOf is the newest action that has an event of a kind.
func actionOf[E Event](t *testing.T, d *Desk) uint64 {
	t.Helper()
	all := d.Ledger().Actions()
	for i := len(all) - 1; i >= 0; i-- {
		if all[i].has(func(e Event) bool { _, ok := e.(E); return ok }) {
			return all[i].ID
		}
	}
	t.Fatal("no such action")
	return 0
}

// Off court, and of somebody who has left, an injury can be noted too; the next night begins without it.
func TestAnInjuryIsOfOneNight(t *testing.T) {
	d, _, _, g := hurtNight(t, Rounds)
	left := d.Ledger().Night().Bench()[0].Person
	must(t, d, Leave{left}, ReportInjury{Person: left, Head: true})
	refused(t, d, CheckIn{left}, "out for tonight")
	refused(t, d, ReportInjury{Person: "nobody"}, "no part in tonight")
	must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 4)}, EndNight{}, OpenNight{Settings: DefaultSettings(1), Courts: 1}, CheckIn{left})
}

// When two people turn out to be one, the one who is out for tonight is out.
func TestOneOfTwoPeopleIsOut(t *testing.T) {
	d, log, _, _ := hurtNight(t, Rounds)
	bench := d.Ledger().Night().Bench()
	must(t, d, ReportInjury{Person: bench[0].Person, Head: true}, MergePeople{bench[0].Person, bench[1].Person})
	n := d.Ledger().Night()
	if _, out := n.OutForTonight(bench[1].Person); !out || n.Attending(bench[1].Person).State != Gone {
		t.Error("a merge brought somebody back")
	}
	checkReplay(t, d, log)
}

// Words about somebody's injury go when the person is forgotten.
func TestInjuriesAreForgotten(t *testing.T) {
	d, log, _, g := hurtNight(t, Rounds)
	club := d.Ledger().Club()
	must(t, d, ReportInjury{Person: g.A[0], Head: true, Note: "knocked out"}, ClearToPlay{g.A[0], "Dr Vale"},
		ReportInjury{Person: g.A[1], Note: "hit by " + club.Name(g.A[0])})
	f := NewForgotten(club.Name(g.A[0]))
	if err := f.Learn(log); err != nil {
		t.Fatal(err)
	}
	change, _, err := f.In(log, d.Ledger().Club())
	if err != nil || change == nil {
		t.Fatalf("nothing to change: %v", err)
	}
	for r := range log.Records(1) {
		after := change(r).Payload
		for _, secret := range []string{"knocked", "Vale", club.Name(g.A[0])} {
			if bytes.Contains(after, []byte(secret)) {
				t.Errorf("%s still has %q: %s", r.Kind, secret, after)
			}
		}
	}
}
