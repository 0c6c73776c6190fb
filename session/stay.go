package session

import (
	"fmt"
	"math"
	"time"

	"club/quadrille/session/roster"
)

// Stay is when somebody is announced to come and to go: at times of day, or with rounds, whenever those
// are called. In the rolling flow rounds bind nobody: who is here is called.
type Stay struct {
	Due    time.Time `json:"due,omitzero"`         // announced arrival
	Leaves time.Time `json:"leaves,omitzero"`      // announced departure
	From   int       `json:"from_round,omitempty"` // the first round that the person plays, 0 if not announced by rounds
	Last   int       `json:"last_round,omitempty"` // the last round that the person plays, 0 if not announced by rounds
}

func (s Stay) equal(o Stay) bool {
	return s.Due.Equal(o.Due) && s.Leaves.Equal(o.Leaves) && s.From == o.From && s.Last == o.Last
}

// possible says what is wrong with s.
func (s Stay) possible() error {
	switch {
	case !s.Leaves.IsZero() && !s.Due.IsZero() && !s.Leaves.After(s.Due), s.Last > 0 && s.Last < s.From:
		return fmt.Errorf("cannot leave before arriving")
	case s.From < 0 || s.Last < 0:
		return fmt.Errorf("rounds are counted from 1")
	}
	return nil
}

// Arriving is s with another arrival, and Leaving with another departure. Whoever comes with a round that
// can be called now or was called already comes now, and is not announced.
func (s Stay) Arriving(m roster.Moment, n *Night, now time.Time) Stay {
	s.Due, s.From = n.TimeOfDay(m, now), 0
	if m.Round > len(n.Rounds)+1 {
		s.From = m.Round
	}
	return s
}

// Leaving is s with another departure.
func (s Stay) Leaving(m roster.Moment, n *Night, now time.Time) Stay {
	s.Leaves, s.Last = n.TimeOfDay(m, now), m.Round
	return s
}

// later tells whether somebody comes later than now.
func (s Stay) later(n *Night, now time.Time) bool {
	return s.Due.After(now) || s.From > len(n.Rounds)+1
}

// Late tells whether the time, or the round, for which somebody was announced has come, and the person
// has not.
func (n *Night) Late(a Attendance, now time.Time) bool {
	if a.State != Expected {
		return false
	}
	coming := len(n.Rounds)
	if len(n.Running()) == 0 {
		coming++ // the next round is to be called
	}
	byRound := n.Settings.Flow == Rounds && a.From > 0 && a.From <= coming
	return byRound || !a.Due.IsZero() && now.After(a.Due)
}

// stays tells whether somebody who is here has a part in the next round: not whose last round was called.
func (n *Night) stays(a Attendance) bool {
	return a.State == Here && (n.Settings.Flow != Rounds || a.Last == 0 || a.Last > len(n.Rounds))
}

// staying counts those who are here and have a part in what is called next.
func (n *Night) staying() int {
	k := 0
	for _, a := range n.Roll {
		if n.stays(a) {
			k++
		}
	}
	return k
}

// window gives the first round that a person can play and the first that the person no longer
// can; ok is false for people who have no part in any round.
func (d *draw) window(a Attendance) (from, until int, ok bool) {
	played := len(d.night.Rounds)
	slot := time.Duration(d.night.Settings.Slot) * time.Minute
	switch {
	case d.night.stays(a):
	case a.State == Expected && (!a.Due.IsZero() || a.From > 0):
		from = max(played+1, a.From-1)
		if !a.Due.IsZero() {
			from = max(from, played+int(math.Ceil(float64(a.Due.Sub(d.now))/float64(slot))))
		}
		if a.Last > 0 && a.Last <= from {
			return 0, played, d.took(a.Person)
		}
	case a.State == Expected:
		return 0, 0, false
	case played == 0: // there is no round before which somebody could have gone
		return d.problem.Rounds, 0, d.took(a.Person)
	default:
		return 0, played, d.took(a.Person)
	}
	if !a.Leaves.IsZero() {
		until = max(from+1, played+1, played+int(a.Leaves.Sub(d.now)/slot))
	}
	if a.Last > 0 && (until == 0 || a.Last < until) {
		until = a.Last
	}
	return from, until, true
}
