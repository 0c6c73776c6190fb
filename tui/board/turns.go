package board

import (
	"fmt"
	"slices"
	"time"

	"club/quadrille/session/public"
)

// turn is one of the things that are shown one after the other.
type turn struct {
	title string // over all of it, empty for the usual one
	takes time.Duration
	draw  func() []string
}

// listTurn is the time that a page of a list is shown for.
const listTurn = 6 * time.Second

// courtsTurn is the time that each of so many pages of courts is shown for: the more there are, the fewer names are
// on each.
func courtsTurn(pages int) time.Duration {
	switch {
	case pages <= 2:
		return 8 * time.Second
	case pages <= 4:
		return 5 * time.Second
	}
	return 4 * time.Second
}

// turnsOfCourts are the pages of the courts as they are now, and then as they will be; after a call only as they
// are now, since everybody looks for their own.
func (b *Board) turnsOfCourts(v *public.View, width, height int) []turn {
	out := b.turnsOf("", v.Courts, width, height)
	if next := nextCourts(v); len(next) > 0 && !called(v) {
		out = append(out, b.turnsOf(fmt.Sprintf("Next: round %d", v.Next.Round), next, width, height)...)
	}
	return out
}

// turnsOf are the pages of some courts.
func (b *Board) turnsOf(title string, courts []public.Court, width, height int) []turn {
	g := b.pen.arrange(courts, width, height, b.height)
	var out []turn
	for page := range g.pages {
		out = append(out, turn{title, courtsTurn(g.pages), func() []string { return b.courts(courts, g, page) }})
	}
	return out
}

// turnsOfLists are the pages of all lists.
func (b *Board) turnsOfLists(v *public.View, width, height int) []turn {
	var out []turn
	for _, p := range panels(v) {
		l := b.pen.list(p.items, width, height-rowsOf(titleSize(height))-1)
		for page := range l.pages {
			out = append(out, turn{"", listTurn, func() []string { return b.panel(p, l, page, width, height) }})
		}
	}
	if v.Phones != "" && !b.away {
		out = append(out, turn{"", listTurn, func() []string { return b.phones(v.Phones, width, height) }})
	}
	return out
}

// between shows the courts before each of the lists.
func between(courts, lists []turn) []turn {
	if len(lists) == 0 {
		return courts
	}
	var out []turn
	for _, l := range lists {
		out = append(append(out, courts...), l)
	}
	return out
}

// whose is whose turn it is after a time.
func whose(passed time.Duration, turns []turn) int {
	var all time.Duration
	for _, t := range turns {
		all += t.takes
	}
	passed %= all
	for i, t := range turns {
		if passed < t.takes {
			return i
		}
		passed -= t.takes
	}
	return 0
}

// called tells whether half of the players or more are on their way: a round was called, or play has begun. In the
// rolling flow a court is called every few minutes, and the others want to see the lists.
func called(v *public.View) bool {
	on, going := 0, 0
	for _, c := range v.Courts {
		switch c.State {
		case public.Called:
			going++
		case public.Playing:
			on++
		}
	}
	return going > 0 && going >= on
}

// newlyCalled tells whether people were called to a court since an earlier view.
func newlyCalled(before, now *public.View) bool {
	for i, c := range now.Courts {
		if c.State != public.Called {
			continue
		}
		if before == nil || i >= len(before.Courts) {
			return true
		}
		if was := before.Courts[i]; was.State != public.Called || !slices.Equal(was.A, c.A) || !slices.Equal(was.B, c.B) {
			return true
		}
	}
	return false
}
