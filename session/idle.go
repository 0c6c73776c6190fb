package session

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"club/quadrille/scheduler"
)

// Cause is what keeps a free court empty.
type Cause uint8

// The causes, the weightiest first: where several hold, the first of them is told.
const (
	Callable      Cause = iota // nothing: the court can be called
	OnHold                     // play is held
	NotBegun                   // play has not begun
	LastGames                  // the calls were ended
	PastClosing                // closing time has passed
	TooFew                     // fewer than four people wait
	NoGroup                    // people wait who are in none of the two groups of a mixed night
	Contradiction              // people wait whose wishes contradict each other
	NoFour                     // no four of those who wait may play together
	NewPartners                // every four would repeat partners, and need not once the next game is over
	TooLate                    // a game called now would probably not be over by closing time
)

// Idle is why an open court has no game. The zero value is about no court.
type Idle struct {
	Court   CourtID // that is free
	Cause   Cause
	Waiting int        // people on the bench
	People  []PersonID // whom the cause is about: NoGroup, Contradiction
	Text    string     // Contradiction, NoFour and NewPartners: what is wrong, in words
	Chance  float64    // TooLate: that a game called now would be over by closing time
	Closing time.Time  // PastClosing and TooLate
}

// LikelyOver is the least chance to be over by closing time with which a court calls by itself. The hall must
// be left then, and the same chance is asked for where the desk proposes how to play (see Suggest).
const LikelyOver = 0.8

// Idle says why a free court of the rolling flow is not called. Ok is false when there is nothing to say:
// no night rolls or no open court is free. What it says holds for all free courts.
func (l *Ledger) Idle(now time.Time) (why Idle, ok bool) {
	n := l.Night()
	if n == nil || n.Settings.Flow != Rolling {
		return Idle{}, false
	}
	free := n.freeCourts()
	if len(free) == 0 {
		return Idle{}, false
	}
	return n.idleOf(l.club, free, now), true
}

// idleOf is why none of some free courts is called: of the first, unless another one can be called. Where anybody
// may play anywhere they are all as good.
func (n *Night) idleOf(club *Club, free []CourtID, now time.Time) Idle {
	why := n.idle(club, free[0], now)
	why.Court = free[0]
	if why.Cause != NoFour || len(n.bound(club)) == 0 {
		return why
	}
	for _, court := range free[1:] {
		if other := n.idle(club, court, now); other.Cause != NoFour {
			other.Court = court
			return other
		}
	}
	return why
}

func (n *Night) idle(club *Club, court CourtID, now time.Time) Idle {
	late := n.blocked(now)
	if late.Cause != Callable && late.Cause != TooLate {
		return late
	}
	u := newLineup(club, n, now)
	if why := u.tooFew(); why.Cause != Callable {
		return why
	}
	switch _, err := u.next(court, scheduler.Call); {
	case errors.Is(err, scheduler.ErrPatience):
		late.Cause, late.Text = NewPartners, "partners would repeat, and need not once the next game is over"
	case err != nil:
		return u.noFour()
	}
	return late
}

// begun is the night as it would be if play began now.
func (n *Night) begun() *Night {
	later := *n
	later.Rolls, later.LastCall = true, false
	return &later
}

// blocked is what keeps free courts empty whoever waits.
func (n *Night) blocked(now time.Time) Idle {
	why := Idle{Waiting: len(n.Bench())}
	switch {
	case n.Hold != nil:
		why.Cause, why.Text = OnHold, n.Hold.Why
	case n.LastCall:
		why.Cause = LastGames
	case !n.Rolls:
		why.Cause = NotBegun
	case n.pastClosing(now):
		why.Cause, why.Closing = PastClosing, n.Settings.Closing
	default:
		return n.late(now)
	}
	return why
}

// late is TooLate where a game called now would probably not be over by closing time.
func (n *Night) late(now time.Time) Idle {
	why := Idle{Waiting: len(n.Bench())}
	if chance, ok := n.Chance(now); ok && chance < LikelyOver {
		why.Cause, why.Chance, why.Closing = TooLate, chance, n.Settings.Closing
	}
	return why
}

// tooFew is why those who may be called make no four by their number.
func (u *lineup) tooFew() Idle {
	why := Idle{Waiting: len(u.bench)}
	switch {
	case len(u.queue) >= 4:
	case len(u.bench) < 4 || len(u.barred) == 0:
		why.Cause = TooFew
	default:
		b := u.barred[0]
		why.Cause, why.People, why.Text = b.Cause, b.People, b.Text
	}
	return why
}

// noFour is why no four of those who wait may play together, after the scheduler found none.
func (u *lineup) noFour() Idle {
	why := Idle{Cause: NoFour, Waiting: len(u.bench), Text: "no four of those who wait may play together"}
	if !u.night.NeedsGroups() {
		return why
	}
	groups := u.night.Groups(u.club)
	if len(groups) < 2 {
		why.Text = fmt.Sprintf("a mixed game takes two of each group, and everybody here is of group %s", strings.Join(groups, ""))
		return why
	}
	var count [2]int
	for _, a := range u.queue {
		if isOf(groups[:1], u.club, a.Person) {
			count[0]++
		} else {
			count[1]++
		}
	}
	if min(count[0], count[1]) < 2 {
		why.Text = fmt.Sprintf("a mixed game takes two of each group, and %d of %s and %d of %s wait", count[0], groups[0], count[1], groups[1])
	}
	return why
}

// Waits says how many people wait who could be called.
func (i Idle) Waits() string {
	if i.Waiting == 1 {
		return "1 waits"
	}
	return fmt.Sprintf("%d wait", i.Waiting)
}

// Words says the cause in words, with times of day in the zone of the hall. Callable has none.
func (i Idle) Words(club *Club, zone *time.Location) string {
	switch i.Cause {
	case OnHold:
		return fmt.Sprintf("play is held (%s)", i.Text)
	case NotBegun:
		return "play has not begun"
	case LastGames:
		return "no more games are called"
	case PastClosing:
		return fmt.Sprintf("closing time, %s, has passed", i.Closing.In(zone).Format("15:04"))
	case TooFew:
		return "a game takes four people, and " + i.Waits()
	case NoGroup:
		return Barred{Cause: NoGroup, People: i.People}.Words(club)
	case Contradiction, NoFour, NewPartners:
		return i.Text
	case TooLate:
		return fmt.Sprintf("a game called now is over by %s with a chance of %.0f %%", i.Closing.In(zone).Format("15:04"), 100*i.Chance)
	}
	return ""
}

// Words says in words why people are not called.
func (b Barred) Words(club *Club) string {
	if b.Cause != NoGroup {
		return b.Text
	}
	const named = 3
	var names []string
	for _, id := range b.People[:min(named, len(b.People))] {
		names = append(names, club.Name(id))
	}
	text := strings.Join(names, ", ")
	if more := len(b.People) - named; more > 0 {
		text += fmt.Sprintf(" and %d more", more)
	}
	grouped := slices.ContainsFunc(b.People, func(id PersonID) bool {
		p, _ := club.Person(id)
		return p.Group != ""
	})
	switch one := len(b.People) == 1; {
	case grouped && one:
		return text + " is in neither group of tonight"
	case grouped:
		return text + " are in neither group of tonight"
	case one:
		return text + " has no group"
	}
	return text + " have no group"
}
