package session

import (
	"strings"
	"testing"
	"time"

	"club/quadrille/scheduler"
)

// TestTheLeagueOfASpan: only its nights, format and levels count, by hand on two nights.
func TestTheLeagueOfASpan(t *testing.T) {
	d, _, clock := newTestDesk(t)
	first := clock.now
	for night := range 2 {
		s := DefaultSettings(7)
		if night == 1 {
			s.Format = scheduler.Ladder
		}
		must(t, d, OpenNight{Settings: s, Courts: 2})
		for i, name := range []string{"Ann", "Bob", "Cat", "Dan", "Eve", "Flo", "Gus", "Hal"} {
			if p, ok := d.Ledger().Club().Named(name); ok {
				must(t, d, CheckIn{p.ID})
				continue
			}
			level := 2.5
			if i >= 4 {
				level = 4
			}
			if name == "Hal" {
				level = 0
			}
			must(t, d, AddGuest{Name: name, Level: level})
		}
		id := func(name string) PersonID { return named(t, d, name) }
		plan := []PlannedRound{{Games: []PlannedGame{
			{"1", Team{id("Ann"), id("Bob")}, Team{id("Cat"), id("Dan")}}, {"2", Team{id("Eve"), id("Flo")}, Team{id("Gus"), id("Hal")}},
		}}}
		must(t, d, CallRound{Plan: plan})
		for _, g := range d.Ledger().Night().Running() {
			must(t, d, FinishGame{g.ID, final(t, 11, 3)})
		}
		must(t, d, EndNight{})
		clock.now = clock.now.AddDate(0, 0, 7)
	}
	club := d.Ledger().Club()
	day := time.Date(first.Year(), first.Month(), first.Day(), 0, 0, 0, 0, time.UTC)
	rotating, ladder, mixed := scheduler.Rotating, scheduler.Ladder, scheduler.Mixed
	for _, c := range []struct {
		span   Span
		people int
		nights int // of the leader
		words  string
	}{
		{Span{}, 8, 2, "all nights"},
		{Span{From: day.AddDate(0, 0, 1)}, 8, 1, "nights from " + day.AddDate(0, 0, 1).Format(time.DateOnly) + " on"},
		{Span{From: day, Until: day}, 8, 1, "nights from " + day.Format(time.DateOnly) + " until " + day.Format(time.DateOnly)},
		{Span{Until: day.AddDate(0, 0, -1)}, 0, 0, "nights until " + day.AddDate(0, 0, -1).Format(time.DateOnly)},
		{Span{Format: &ladder}, 8, 1, "all nights, ladder"},
		{Span{Format: &rotating}, 8, 1, "all nights, rotating"},
		{Span{Format: &mixed}, 0, 0, "all nights, mixed"},
		{Span{High: 2.5}, 4, 2, "all nights, levels to 2.5"},
		{Span{Low: 2.5, High: 2.5, Format: &ladder}, 4, 1, "all nights, ladder, levels 2.5 to 2.5"},
		{Span{Low: 3}, 0, 0, "all nights, levels from 3"}, // Hal states none
	} {
		rows := League(club, 0, c.span)
		if len(rows) != c.people || len(rows) > 0 && rows[0].Nights != c.nights || c.span.Words() != c.words {
			t.Errorf("%q, want %q: %d people, want %d: %+v", c.span.Words(), c.words, len(rows), c.people, rows)
		}
		if got := len(Partners(club, c.span)); got != c.people/2 {
			t.Errorf("%q: %d pairs, want %d", c.words, got, c.people/2)
		}
		if err := c.span.Validate(); err != nil || c.span.IsZero() != (c.words == "all nights") {
			t.Errorf("%q: %v", c.words, err)
		}
	}
	if got := (Span{From: day.AddDate(0, 0, 1)}).Nights(club); got != 1 {
		t.Errorf("%d nights in the span", got)
	}
	for want, s := range map[string]Span{"the earlier day comes first": {From: day, Until: day.AddDate(0, 0, -1)}, "the lower one comes first": {Low: 4, High: 3}} {
		if err := s.Validate(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: %v", s, err)
		}
	}
}
