package evening

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/sessiontest"
)

// hall is a night under way.
type hall struct{ *sessiontest.Desk }

func newHall(t testing.TB, flow session.Flow, courts, people int) hall {
	t.Helper()
	return hall{sessiontest.Open(t, sessiontest.Flow(flow), courts, people)}
}

func (h hall) of(id session.PersonID) Evening {
	h.T.Helper()
	return h.with(h.Ahead(), id)
}

func (h hall) with(ahead []session.PlannedRound, id session.PersonID) Evening {
	h.T.Helper()
	e, ok := Of(h.Ledger().Club(), h.Night(), ahead, h.Clock, id)
	if !ok {
		h.T.Fatalf("%s has no evening", id)
	}
	return e
}

// TestNowAndNext: before, in and after a round the evening says where somebody is and what comes.
func TestNowAndNext(t *testing.T) {
	h := newHall(t, session.Rounds, 1, 5)
	plan := h.Ahead()
	first, out := plan[0].Games[0], plan[0].Out[0]
	who := first.A[0]

	e := h.of(who)
	if e.Now() != nil || e.Next() == nil || e.Next().Court != "1" || e.Next().Partner != first.A[1] || e.Next().Against != first.B {
		t.Errorf("before the call next is %+v, now %+v", e.Next(), e.Now())
	}
	if next := h.of(out).Next(); next == nil || next.Kind != WillSit || next.Round != 1 {
		t.Errorf("who sits out has next %+v", next)
	}
	if next := h.of(out).NextGame(); next == nil || next.Round < 2 {
		t.Errorf("who sits out has the next game %+v", next)
	}

	h.Must(session.CallRound{Plan: plan})
	g := h.Night().Running()[0]
	e = h.of(who)
	if e.Now() == nil || e.Now().Court != "1" || e.Now().Partner != first.A[1] || e.Now().Against != first.B {
		t.Errorf("on court now is %+v", e.Now())
	}
	h.Clock = h.Clock.Add(10 * time.Minute)
	h.Finish(g, 7, 11, scoring.Played)
	e = h.of(first.B[1])
	p := e.Parts[0]
	if p.Kind != Played || p.Ours != 11 || p.Theirs != 7 || !p.Won || p.Partner != first.B[0] || p.Against != first.A {
		t.Errorf("the game that was won is %+v", p)
	}
	if p = h.of(who).Parts[0]; p.Ours != 7 || p.Theirs != 11 || p.Won || p.Level {
		t.Errorf("the game that was lost is %+v", p)
	}
	if p = h.of(out).Parts[0]; p.Kind != SatOut || p.Round != 1 {
		t.Errorf("the round that was sat out is %+v", p)
	}
	if more, same := h.of(out).Place(); more != 0 || same != 0 {
		t.Errorf("of five people %d sat out more and %d as often as the one who did", more, same)
	}
	if met, others := h.of(who).MetOf(); met != 3 || others != 4 {
		t.Errorf("after a game %d of %d are met", met, others)
	}
}

// TestNobodyElsesEvening: who has no part in the night has no evening.
func TestNobodyElsesEvening(t *testing.T) {
	h := newHall(t, session.Rounds, 1, 4)
	if _, ok := Of(h.Ledger().Club(), h.Night(), nil, h.Clock, "nobody"); ok {
		t.Error("somebody unknown has an evening")
	}
}

// TestEveningsAgree: over random nights of both flows, what one person's evening says is what the others'
// say, and what the night says.
func TestEveningsAgree(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		flow := rapid.SampledFrom([]session.Flow{session.Rounds, session.Rolling}).Draw(rt, "flow")
		h := newHall(t, flow, rapid.IntRange(1, 3).Draw(rt, "courts"), rapid.IntRange(4, 14).Draw(rt, "people"))
		if flow == session.Rolling {
			h.Must(session.BeginPlay{})
		}
		for range rapid.IntRange(0, 25).Draw(rt, "steps") {
			h.step(rt)
			h.Clock = h.Clock.Add(time.Minute)
		}
		h.agree(rt)
	})
}

// step does one of the things that happen in a night; what is refused is left.
func (h hall) step(rt *rapid.T) {
	n := h.Night()
	id := rapid.SampledFrom(n.Roll).Draw(rt, "who").Person
	switch rapid.IntRange(0, 9).Draw(rt, "what") {
	case 0:
		_, _ = h.Do(session.Rest{Person: id})
	case 1:
		_, _ = h.Do(session.CheckIn{Person: id})
	case 2:
		_, _ = h.Do(session.Leave{Person: id})
	case 3:
		if bench, on := n.Bench(), n.Running(); len(bench) > 0 && len(on) > 0 {
			_, _ = h.Do(session.Substitute{Game: on[0].ID, Out: on[0].A[0], In: bench[0].Person})
		}
	default:
		if on := n.Running(); len(on) > 0 {
			h.Finish(on[0], 11, rapid.IntRange(0, 9).Draw(rt, "points"), scoring.Played)
			return
		}
		_, _ = h.Do(session.CallRound{})
	}
}

func (h hall) agree(rt *rapid.T) {
	n := h.Night()
	var ahead []session.PlannedRound
	if n.Settings.Flow == session.Rounds {
		ahead = h.Ahead()
	}
	all := map[session.PersonID]Evening{}
	for _, a := range n.Roll {
		all[a.Person] = h.with(ahead, a.Person)
	}
	turns := n.TurnsOfAll()
	for id, e := range all {
		if turns[id] != n.TurnsOf(id) {
			rt.Fatalf("%s has had %+v, and counted in one go %+v", id, n.TurnsOf(id), turns[id])
		}
		games, out, rounds := 0, 0, map[int]int{}
		for _, p := range e.Parts {
			switch p.Kind {
			case Played, OnCourt:
				games++
			case SatOut:
				out++
			}
			if p.Round > 0 {
				rounds[p.Round]++
			}
		}
		if games != n.GamesOf(id) || out != n.SatOut(id) {
			rt.Fatalf("%s: %d games and %d sit-outs, the night has %d and %d", id, games, out, n.GamesOf(id), n.SatOut(id))
		}
		for r := 1; n.Settings.Flow == session.Rounds && r <= len(n.Rounds); r++ {
			if rounds[r] == 0 { // a substitute may have had a game of the same round before
				rt.Fatalf("%s has no part of round %d", id, r)
			}
		}
		partners, opponents := 0, 0
		for _, m := range e.Met {
			partners, opponents = partners+m.Partner, opponents+m.Opponent
			for _, back := range all[m.With].Met {
				if back.With == id && (back.Partner != m.Partner || back.Opponent != m.Opponent || back.Ahead != m.Ahead) {
					rt.Fatalf("%s met %s %+v, and the other way round %+v", id, m.With, m, back)
				}
			}
		}
		if partners != games || opponents != 2*games {
			rt.Fatalf("%s has %d games, %d partners and %d opponents", id, games, partners, opponents)
		}
		if now, g := e.Now(), n.Playing(id); (now == nil) != (g == nil) || g != nil && now.Court != g.Court {
			rt.Fatalf("%s is on %+v, the night says %+v", id, now, g)
		}
	}
}

// TestWhyARoundWasSatOut: with how many people for how many places, and beside it what everybody sat out.
func TestWhyARoundWasSatOut(t *testing.T) {
	h := newHall(t, session.Rounds, 2, 11)
	plan := h.Ahead()
	h.Must(session.CallRound{Plan: plan})
	out := plan[0].Out[0]
	e := h.of(out)
	if p := e.Parts[0]; p.Kind != SatOut || p.Of != 11 || p.Places != 8 {
		t.Errorf("the round that was sat out is %+v", p)
	}
	if s := e.SitOuts(); len(s) != 2 || s[0] != 8 || s[1] != 3 {
		t.Errorf("sit-outs of everybody: %v", s)
	}
	if s := e.Games(); len(s) != 2 || s[0] != 3 || s[1] != 8 {
		t.Errorf("games of everybody: %v", s)
	}
	if own := e.Own(); own.SatOut != 1 || own.Games != 0 {
		t.Errorf("own count %+v", own)
	}
}

// TestWhenTheNextRoundIs: later rounds come later, and nobody can tell while play is held.
func TestWhenTheNextRoundIs(t *testing.T) {
	h := newHall(t, session.Rounds, 2, 8)
	plan := h.Ahead()
	if about := h.with(plan, plan[0].Games[0].A[0]).Next().About; !about.IsZero() {
		t.Errorf("before the first call the next round is about %v", about)
	}
	h.Must(session.CallRound{Plan: plan})
	last := h.Clock
	for _, p := range h.of(plan[0].Games[0].A[0]).Parts {
		if p.Kind != Planned {
			continue
		}
		if !p.About.After(last) || p.About.Sub(last) > 40*time.Minute {
			t.Errorf("round %d is about %v, after %v", p.Round, p.About, last)
		}
		last = p.About
	}
	h.Must(session.HoldPlay{Why: "rain"})
	if about := h.of(plan[0].Games[0].A[0]).Next().About; !about.IsZero() {
		t.Errorf("while play is held the next round is about %v", about)
	}
}

// TestWishesAndHowFarTheyAreKept of both who ask, but never who asks to be kept apart.
func TestWishesAndHowFarTheyAreKept(t *testing.T) {
	h := newHall(t, session.Rounds, 2, 8)
	roll := h.Night().Roll
	a, b, c, d := roll[0].Person, roll[1].Person, roll[2].Person, roll[3].Person
	change := func(id session.PersonID, together []session.Together, apart ...session.PersonID) {
		p, _ := h.Ledger().Club().Person(id)
		p.Together, p.KeepApart = together, apart
		h.Must(session.ChangePerson{Person: p})
	}
	change(a, []session.Together{{With: b, Times: 2}}, c)
	change(d, nil, a)
	p, _ := h.Ledger().Club().Person(a)
	p.NotPartner = []session.PersonID{roll[4].Person}
	h.Must(session.ChangePerson{Person: p})
	want := []Wish{{With: b, Times: 2, Here: true}, {With: c, Apart: true, Here: true}}
	for round := range 5 {
		h.Must(session.CallRound{Plan: h.Ahead()})
		for len(h.Night().Running()) > 0 {
			h.Clock = h.Clock.Add(5 * time.Minute)
			h.Finish(h.Night().Running()[0], 11, 3, scoring.Played)
		}
		e := h.with(nil, a)
		want[0].Done = 0
		for _, p := range e.Parts {
			if p.Partner == b {
				want[0].Done++
			}
		}
		want[0].Games, want[1].Games = round+1, round+1
		if w := e.Wishes[len(e.Wishes)-1]; w.With != roll[4].Person || !w.NoTeam || w.Done != 0 || !w.Kept() {
			t.Errorf("after %d rounds the wish for no partner is %+v", round+1, w)
		}
		if len(e.Wishes) != 3 || e.Wishes[0] != want[0] || e.Wishes[1] != want[1] || !e.Wishes[1].Kept() {
			t.Errorf("after %d rounds the wishes are %+v, want %+v", round+1, e.Wishes, want)
		}
	}
	if e := h.with(nil, a); e.Wishes[0].Done != 2 || !e.Wishes[0].Kept() {
		t.Errorf("after the last round the two games as partners are %+v", e.Wishes[0])
	}
	if e := h.with(nil, b); len(e.Wishes) != 1 || !e.Wishes[0].Theirs || e.Wishes[0].With != a {
		t.Errorf("who is asked for as a partner reads %+v", e.Wishes)
	}
	if e := h.with(nil, c); len(e.Wishes) != 0 {
		t.Errorf("who is kept apart reads %+v", e.Wishes)
	}
}
