package session

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// WhyNot is why somebody who waits is not among the four that the rolling flow calls next, by what the
// caller itself weighs.
type WhyNot struct {
	Person PersonID
	Called PlannedGame // who is called next
	First  PersonID    // who is called whatever it costs: the longest wait of the four
	IsNext bool        // the person is among them

	Barred string // why the person is not called at all, empty for who may be
	Place  int    // in the order of the waits, from 1
	Waited time.Duration

	Possible bool        // a game with First and the person is possible
	With     PlannedGame // the best such game
	Instead  []PersonID  // who would stay on the bench for it
	Longer   []time.Duration
	Taken    scheduler.Weighed // what Called costs
	Costs    scheduler.Weighed // what With costs
	Again    []Again           // whom the person has met before and would meet again in With

	PlaceThen int  // on the bench, from 1, after Called has been called
	Certain   bool // to be called next then, whoever else is called before: one at most has waited as long, and nobody is pinned
	Then      Wait // until the person plays, as likely as not
}

// Again is a person whom somebody would meet again.
type Again struct {
	Other   PersonID
	Partner bool // as a partner, and was that before
	Times   int  // which time it would be
}

// ErrNotWaiting is returned for somebody who is not on the bench.
var ErrNotWaiting = errors.New("only somebody on the bench waits for a game")

// WhyNot says why a person on the bench is not called next in the rolling flow. It changes nothing. The
// error says what keeps everybody waiting, or is [ErrNotWaiting].
func (l *Ledger) WhyNot(id PersonID, now time.Time) (WhyNot, error) {
	n, err := openNight(l)
	if err != nil {
		return WhyNot{}, err
	}
	bench := n.Bench()
	at := slices.IndexFunc(bench, func(a Attendance) bool { return a.Person == id })
	if at < 0 || n.Settings.Flow != Rolling {
		return WhyNot{}, ErrNotWaiting
	}
	w := WhyNot{Person: id, Place: at + 1, Waited: bench[at].Waited(now)}
	u := newLineup(l.club, n, now)
	if !slices.ContainsFunc(u.queue, func(a Attendance) bool { return a.Person == id }) {
		w.bar(l.club, u)
		return w, nil
	}
	court := n.callCourt()
	if court == "" {
		return WhyNot{}, fmt.Errorf("no court is open")
	}
	if why := u.tooFew(); why.Cause != Callable {
		return WhyNot{}, &idleError{why.Words(l.club, now.Location())}
	}
	taken, with, err := scheduler.WhyNot(u.rolling(court), u.player(id))
	if err != nil && !errors.Is(err, scheduler.ErrNoGameWith) {
		return WhyNot{}, &idleError{u.noFour().Words(l.club, now.Location())}
	}
	w.Called, w.Taken = u.planned(taken.Game), taken
	w.IsNext, w.First = w.Called.has(id), u.person(taken.First)
	if err == nil {
		w.Possible, w.With, w.Costs = true, u.planned(with.Game), with
		w.compare(n, bench, now)
	}
	w.then(n, bench, now)
	return w, nil
}

// has tells whether somebody plays in g.
func (g PlannedGame) has(id PersonID) bool { return g.A.Has(id) || g.B.Has(id) }

// callCourt is the court that the next four would be called to: a free one, or the first that is open.
func (n *Night) callCourt() CourtID {
	if free := n.freeCourts(); len(free) > 0 {
		return free[0]
	}
	if open := n.OpenCourts(); len(open) > 0 {
		return open[0]
	}
	return ""
}

func (w *WhyNot) bar(club *Club, u *lineup) {
	w.Barred = "is not called until that is put right"
	for _, b := range u.barred {
		if slices.Contains(b.People, w.Person) {
			w.Barred = b.Words(club)
		}
	}
}

// compare says who would stay on the bench, and whom the person would meet again.
func (w *WhyNot) compare(n *Night, bench []Attendance, now time.Time) {
	for _, a := range bench {
		if w.Called.has(a.Person) && !w.With.has(a.Person) {
			w.Instead = append(w.Instead, a.Person)
			w.Longer = append(w.Longer, a.Waited(now)-w.Waited)
		}
	}
	us := w.With.A
	if w.With.B.Has(w.Person) {
		us = w.With.B
	}
	for _, other := range slices.Concat(w.With.A[:], w.With.B[:]) {
		if other == "" || other == w.Person {
			continue
		}
		partners, met := n.metBefore(w.Person, other)
		switch {
		case us.Has(other) && partners > 0:
			w.Again = append(w.Again, Again{other, true, partners + 1})
		case met > 0:
			w.Again = append(w.Again, Again{other, false, met + 1})
		}
	}
}

// metBefore counts the games of tonight that two people had together, as partners and in all.
func (n *Night) metBefore(a, b PersonID) (partners, all int) {
	for i := range n.Games {
		g := &n.Games[i]
		if !g.Has(a) || !g.Has(b) || g.Final != nil && g.Final.How() == scoring.Void {
			continue
		}
		all++
		if g.A.Has(a) == g.A.Has(b) {
			partners++
		}
	}
	return partners, all
}

// then says where the person is in the queue after the call, and how long that takes.
func (w *WhyNot) then(n *Night, bench []Attendance, now time.Time) {
	if w.IsNext {
		w.Then = n.NextTurn(0, now)
		return
	}
	left := slices.DeleteFunc(slices.Clone(bench), func(a Attendance) bool { return w.Called.has(a.Person) })
	at := slices.IndexFunc(left, func(a Attendance) bool { return a.Person == w.Person })
	w.PlaceThen = at + 1
	since, before := left[at].Waiting, 0
	for _, a := range bench {
		if a.Person != w.Person && !a.Waiting.After(since) {
			before++
		}
	}
	w.Certain = at == 0 && len(n.Pins) == 0 && before <= 1
	w.Then = n.NextTurn(4+w.PlaceThen-1, now)
}

// Words says why, a sentence a line, with names as name gives them.
func (w WhyNot) Words(name func(PersonID) string) []string {
	who := name(w.Person)
	if w.Barred != "" {
		return []string{fmt.Sprintf("%s is not called: %s.", who, w.Barred)}
	}
	side := func(s Team) string {
		if s[1] == "" {
			return name(s[0])
		}
		return name(s[0]) + " & " + name(s[1])
	}
	next := fmt.Sprintf("The next free court takes %s v %s", side(w.Called.A), side(w.Called.B))
	if w.IsNext {
		return []string{next + fmt.Sprintf(": %s is next, %s.", who, w.Then.Words())}
	}
	out := []string{
		next + fmt.Sprintf("; %s is number %d of the bench and has waited %d min.", who, w.Place, int(w.Waited.Minutes())), w.instead(name),
	}
	if w.Possible {
		out = append(out, w.figures())
	}
	return append(out, w.afterwards(who))
}

// Brief is Words without who is called instead and without what that weighs.
func (w WhyNot) Brief(name func(PersonID) string) []string {
	if w.Barred != "" || w.IsNext {
		return w.Words(name)
	}
	return []string{w.instead(name), w.afterwards(name(w.Person))}
}

// instead says what the best game with the person would be like.
func (w WhyNot) instead(name func(PersonID) string) string {
	if !w.Possible {
		return fmt.Sprintf("%s has waited longest and plays for certain, and %s may not be on a court with %s.", name(w.First), name(w.Person), name(w.First))
	}
	var out, again []string
	for i, id := range w.Instead {
		text := name(id)
		switch d := w.Longer[i]; {
		case d >= time.Minute:
			text += fmt.Sprintf(" (waits %d min longer)", int(d.Minutes()))
		case d <= -time.Minute:
			text += fmt.Sprintf(" (waits %d min less)", int(-d.Minutes()))
		default:
			text += " (waits as long)"
		}
		out = append(out, text)
	}
	for _, a := range w.Again {
		as := ""
		if a.Partner {
			as = " as a partner"
		}
		again = append(again, fmt.Sprintf("%s for the %s time%s", name(a.Other), ordinal(a.Times), as))
	}
	text := fmt.Sprintf("With %s for %s: meets ", name(w.Person), strings.Join(out, " and "))
	if len(again) == 0 {
		return text + "nobody again."
	}
	return text + strings.Join(again, ", ") + "."
}

// figures gives what was weighed. The unit is that of the caller's costs, of which a partner's repeat is
// 100.
func (w WhyNot) figures() string {
	taken, with := w.Taken, w.Costs
	more := with.Cost() - taken.Cost()
	parts := []string{}
	part := func(d float64, about string) {
		if math.Round(d) != 0 {
			parts = append(parts, fmt.Sprintf("%s %+.0f", about, d))
		}
	}
	part(with.Wait-taken.Wait, "order of the waits")
	part(with.Four-taken.Four, "who met, wishes and levels")
	part(with.After-taken.After, "games after it")
	again := ""
	if with.Met+taken.Met > 0 {
		again = fmt.Sprintf("Meetings before of the four: %d instead of %d", with.Met, taken.Met)
		if with.Partners+taken.Partners > 0 {
			again += fmt.Sprintf(", as partners %d instead of %d", with.Partners, taken.Partners)
		}
		again += ". "
	}
	switch {
	case len(parts) == 0:
		return again + "Both games weigh the same: the seed decided."
	case with.Barred:
		return again + "Partners who were partners before are avoided while others can play."
	case more < 0.5:
		return again + fmt.Sprintf("By itself that game weighs more (%s), so it was not looked at further.", strings.Join(parts, ", "))
	}
	return again + fmt.Sprintf("That game weighs %.0f more (a partner's repeat is 100): %s.", more, strings.Join(parts, ", "))
}

// afterwards says when the person plays instead.
func (w WhyNot) afterwards(who string) string {
	if w.Certain {
		return fmt.Sprintf("After that %s has waited longest and is certain for the next court, %s.", who, w.Then.Words())
	}
	return fmt.Sprintf("After that %s is number %d of the bench, and likely plays %s.", who, w.PlaceThen, w.Then.Words())
}

// Words is a wait in words.
func (w Wait) Words() string {
	early, late := int(w.Early.Minutes()), int(w.Late.Minutes())
	switch {
	case late == 0:
		return "at once"
	case early == late:
		return fmt.Sprintf("in about %d min", late)
	}
	return fmt.Sprintf("in %d to %d min", early, late)
}

func ordinal(n int) string {
	words := []string{"first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"}
	if n >= 1 && n <= len(words) {
		return words[n-1]
	}
	return fmt.Sprintf("%d.", n)
}
