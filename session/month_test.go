package session

import (
	"fmt"
	"math/rand/v2"
	"os"
	"reflect"
	"testing"
	"time"

	"club/quadrille/scheduler"
)

// TestAMonthOfNights plays nights in both flows by the desk, with people who come and go, undos, a way that is picked,
// and a desk that is opened again in the middle: each call passes the audit, is what was shown, and what Next offers is
// accepted; what was picked stays picked. It plays 2 nights, and 12 with QUADRILLE_LONG.
func TestAMonthOfNights(t *testing.T) {
	nights := 2
	if os.Getenv("QUADRILLE_LONG") != "" {
		nights = 12
	}
	log, clock, people := &MemoryLog{}, &testClock{evening}, 0
	open := func() *Desk {
		d, err := NewDesk(log, clock.Now, func() PersonID { people++; return PersonID(fmt.Sprintf("p%04d", people)) })
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	m := &month{t: t, d: open(), open: open, clock: clock, dice: rand.New(rand.NewPCG(1, 2))}
	for night := range nights {
		m.night(night)
		clock.now = clock.now.Add(20 * time.Hour)
	}
	if m.picks == 0 || m.calls < 4*nights || m.offers == 0 {
		t.Errorf("%d picks, %d calls, %d offers: this month shows nothing", m.picks, m.calls, m.offers)
	}
	t.Logf("%d nights: %d calls, %d picks, %d offers", nights, m.calls, m.picks, m.offers)
}

// month is a desk with somebody who runs nights at it.
type month struct {
	t     *testing.T
	d     *Desk
	open  func() *Desk
	clock *testClock
	dice  *rand.Rand
	seen  Shown
	way   *Way

	picks, calls, offers int
}

func (m *month) night(k int) {
	s := DefaultSettings(uint64(k))
	s.Rounds = 5
	if k%2 == 1 {
		s.Flow = Rolling
	}
	must(m.t, m.d, OpenNight{Name: fmt.Sprint("night ", k), Settings: s, Courts: 2})
	for i := range 16 {
		must(m.t, m.d, AddGuest{Name: fmt.Sprintf("Guest %d-%d", k, i), Sure: true})
	}
	m.seen, m.way = Shown{}, nil
	if s.Flow == Rolling {
		must(m.t, m.d, BeginPlay{})
	}
	for step := range 5 {
		if s.Flow == Rounds {
			m.round(step)
		}
		m.next()
		m.clock.now = m.clock.now.Add(9 * time.Minute)
		for _, g := range m.d.Ledger().Night().Running() {
			must(m.t, m.d, FinishGame{Game: g.ID, Final: final(m.t, 11, m.dice.IntN(10))})
			m.audited(s.Flow)
		}
		m.change(k, step)
		m.next()
	}
	must(m.t, m.d, EndNight{SetAside: true})
}

// round shows the rotation, lets a way be picked in the first, and calls what is shown.
func (m *month) round(step int) {
	l := m.d.Ledger()
	r, err := ReplanRotation(m.t.Context(), l, m.clock.now, m.seen)
	if err != nil {
		m.t.Fatal(err)
	}
	if step == 0 {
		others, err := Ways(m.t.Context(), l, m.clock.now)
		if err != nil {
			m.t.Fatal(err)
		}
		if ways := Beside(others, l, m.clock.now, r); len(ways) > 0 {
			must(m.t, m.d, PickWay{ways[0].Way, ways[0].Rounds}, Undo{}, Redo{})
			m.way, m.picks = &ways[0].Way, m.picks+1
			if r, err = ReplanRotation(m.t.Context(), m.d.Ledger(), m.clock.now, m.seen); err != nil || !reflect.DeepEqual(r.Rounds, ways[0].Rounds) {
				m.t.Fatalf("what was picked is not shown: %v", err)
			}
		}
	}
	l = m.d.Ledger()
	d := newDraw(l.Club(), l.Night(), m.clock.now)
	for _, v := range scheduler.Audit(d.problem, d.schedule(r.Rounds)) {
		m.t.Errorf("round %d: %s", len(l.Night().Rounds)+1, v.Text)
	}
	must(m.t, m.d, CallRound{r.Rounds})
	m.calls++
	m.seen = l.Show(r)
	n := m.d.Ledger().Night()
	called := n.Rounds[len(n.Rounds)-1]
	for k, id := range called.Games {
		if g, want := n.Game(id), r.Rounds[0].Games[k]; g.A != want.A || g.B != want.B || g.Court != want.Court {
			m.t.Errorf("round %d: called %v v %v, shown %v v %v", called.Number, g.A, g.B, want.A, want.B)
		}
	}
}

// change lets somebody come or go, undoes it or not, and now and then opens the desk again.
func (m *month) change(k, step int) {
	here := m.d.Ledger().Night().Bench()
	switch m.dice.IntN(3) {
	case 0:
		must(m.t, m.d, AddGuest{Name: fmt.Sprintf("Late %d-%d", k, step), Sure: true})
	case 1:
		must(m.t, m.d, Leave{here[m.dice.IntN(len(here))].Person})
	default:
		must(m.t, m.d, Rest{here[0].Person}, Undo{})
	}
	if m.dice.IntN(2) == 0 {
		before := m.d.Ledger().Night()
		m.d, m.seen = m.open(), Shown{}
		if !reflect.DeepEqual(m.d.Ledger().Night().Games, before.Games) {
			m.t.Error("opened again, the night has other games")
		}
	}
	if n := m.d.Ledger().Night(); m.way != nil && (n.Picked == nil || *n.Picked != *m.way) {
		m.t.Errorf("picked %+v, now %+v", *m.way, n.Picked)
	}
}

// next takes what the line Next offers at its word.
func (m *month) next() {
	l := m.d.Ledger()
	for _, c := range l.Offers(m.clock.now) {
		m.offers++
		if _, err := try(l, c, m.clock.now); err != nil {
			m.t.Errorf("Next offers %T, which is refused: %v", c, err)
		}
	}
}

// audited checks the games on court of a rolling night: nobody is on two courts, and all are here.
func (m *month) audited(f Flow) {
	if f != Rolling {
		return
	}
	n, on := m.d.Ledger().Night(), map[PersonID]bool{}
	m.calls++
	for _, g := range n.Running() {
		for _, id := range g.Players() {
			if on[id] || !n.contains(id, Here) {
				m.t.Errorf("%s is on two courts, or not here", id)
			}
			on[id] = true
		}
	}
}
