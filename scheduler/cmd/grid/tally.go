package main

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"club/quadrille/scheduler"
)

// tally adds up nights.
type tally struct {
	nights, sitouts, benched, repeats, meetings, opponents, courts int // nights at the bound
	worstRepeat                                                    int // greatest gap of partner repeats
	value, bound                                                   int // meetings over all nights
	times                                                          []time.Duration
}

func (t *tally) add(c scheduler.Certificate, took time.Duration) {
	t.nights++
	for _, m := range []struct {
		at    *int
		value scheduler.Value
	}{
		{&t.sitouts, c.SitoutSpread},
		{&t.benched, c.BenchedTwice},
		{&t.repeats, c.PartnerRepeats},
		{&t.meetings, c.MeetingEvenness},
		{&t.opponents, c.OpponentEvenness},
		{&t.courts, c.CourtSpread},
	} {
		if m.value.Gap() == 0 {
			*m.at++
		}
	}
	t.worstRepeat = max(t.worstRepeat, c.PartnerRepeats.Gap())
	t.value += c.MeetingEvenness.Value
	t.bound += c.MeetingEvenness.Bound
	t.times = append(t.times, took)
}

// String is a row of the table.
func (t *tally) String() string {
	return fmt.Sprintf("%7d %9s %8s %8s %18s %7d %7d %11.1f %8.1f", t.nights,
		t.share(t.sitouts), t.share(t.benched), t.share(t.repeats), t.share(t.meetings),
		t.value, t.bound, ms(t.quantile(0.5)), ms(t.quantile(1)))
}

// summary says the totals in words.
func (t *tally) summary() string {
	var b strings.Builder
	fmt.Fprintf(&b, "partner repeats: at the bound in %s, at most %d above\n", t.share(t.repeats), t.worstRepeat)
	fmt.Fprintf(&b, "meetings: at the bound in %s, in total %d against a bound of %d\n", t.share(t.meetings), t.value, t.bound)
	fmt.Fprintf(&b, "opponents at the bound in %s, courts in %s\n", t.share(t.opponents), t.share(t.courts))
	fmt.Fprintf(&b, "one plan: median %.1f ms, 9 of 10 within %.1f ms, longest %.1f ms\n",
		ms(t.quantile(0.5)), ms(t.quantile(0.9)), ms(t.quantile(1)))
	return b.String()
}

func (t *tally) share(count int) string {
	return fmt.Sprintf("%.1f%%", 100*float64(count)/float64(max(1, t.nights)))
}

// quantile returns the time within which that share of the nights was planned.
func (t *tally) quantile(q float64) time.Duration {
	if len(t.times) == 0 {
		return 0
	}
	slices.Sort(t.times)
	return t.times[int(q*float64(len(t.times)-1))]
}

func ms(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
