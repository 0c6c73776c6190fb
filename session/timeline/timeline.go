// Package timeline tells a night by its courts: what was played where and when, when courts stood idle, were
// closed or held, and what the pace foretells until closing time. It is a pure function of the ledger, the rounds
// to come and the time. All its times are by the laptop's clock as it is set now, also those of before it was set.
package timeline

import (
	"cmp"
	"slices"
	"time"

	"club/quadrille/session"
)

// Kind is what a block is.
type Kind uint8

// The kinds of blocks.
const (
	Played   Kind = iota // a game that is over
	Going                // a game that goes on
	Forecast             // a game that the pace foretells
)

// Block is a game on a court.
type Block struct {
	Kind        Kind
	Game        session.GameID // 0 for a forecast
	Round       int            // 0 in the rolling flow
	From, Until time.Time
	A, B        session.Team // empty where nobody can tell
}

// Span is a stretch of time.
type Span struct {
	From, Until time.Time
	Why         string // of a hold
}

// Row is one court of the night.
type Row struct {
	Court  session.CourtID
	Blocks []Block // in the order of time
	Shut   []Span  // when it was closed, without the games that went on meanwhile
	Idle   time.Duration
}

// Timeline is a night by its courts.
type Timeline struct {
	Night    *session.Night
	From     time.Time // the first call, or the opening where nothing was called
	Now      time.Time // of a night that is over its last score
	Until    time.Time // the end of what is shown, forecast and closing time included
	Closing  time.Time // zero for none
	Rows     []Row
	Holds    []Span
	Idle     time.Duration // of all courts
	Open     time.Duration // of all courts, closed and held time left out
	Expected time.Duration // of a game, by what the night has taught
}

// IdleShare is which part of the time of open courts nobody played, 0 to 1.
func (t Timeline) IdleShare() float64 {
	if t.Open <= 0 {
		return 0
	}
	return t.Idle.Seconds() / t.Open.Seconds()
}

// InUse is how many courts had a game at a time.
func (t Timeline) InUse(at time.Time) int {
	k := 0
	for _, r := range t.Rows {
		if slices.ContainsFunc(r.Blocks, func(b Block) bool { return b.Kind != Forecast && !at.Before(b.From) && at.Before(b.Until) }) {
			k++
		}
	}
	return k
}

// Of is the timeline of the newest night. Ahead are the rounds to come, nil where they are not known. Ok is false
// where there is no night.
func Of(l *session.Ledger, ahead []session.PlannedRound, now time.Time) (t Timeline, ok bool) {
	n := l.Club().Night()
	if n == nil {
		return Timeline{}, false
	}
	told := readTale(l, now)
	t = Timeline{Night: n, From: n.Opened, Now: now, Closing: n.Settings.Closing, Holds: told.holds}
	t.Expected = time.Duration(n.Clock().Median() * float64(time.Minute))
	for _, c := range n.Courts {
		t.Rows = append(t.Rows, Row{Court: c.ID, Shut: told.shut[c.ID]})
	}
	t.play(n, told)
	if !n.IsOpen() {
		t.over()
	}
	t.idle()
	t.Until = t.Now
	if n.IsOpen() {
		t.forecast(n, ahead)
		if t.Closing.After(t.Until) {
			t.Until = t.Closing
		}
	}
	return t, true
}

// play puts the games on their courts.
func (t *Timeline) play(n *session.Night, told tale) {
	for i := range n.Games {
		g := &n.Games[i]
		at := slices.IndexFunc(t.Rows, func(r Row) bool { return r.Court == g.Court })
		if at < 0 {
			continue
		}
		b := Block{Kind: Going, Game: g.ID, Round: g.Round, From: g.Called, Until: t.Now, A: g.A, B: g.B}
		if g.Final != nil {
			moved := told.after(g.End)
			b.Kind, b.From, b.Until = Played, g.Called.Add(moved), g.Finished.Add(moved)
		}
		if b.Until.Before(b.From) {
			b.Until = b.From
		}
		t.Rows[at].Blocks = append(t.Rows[at].Blocks, b)
	}
	first := time.Time{}
	for i := range t.Rows {
		slices.SortStableFunc(t.Rows[i].Blocks, func(a, b Block) int { return a.From.Compare(b.From) })
		if b := t.Rows[i].Blocks; len(b) > 0 && (first.IsZero() || b[0].From.Before(first)) {
			first = b[0].From
		}
	}
	if !first.IsZero() {
		t.From = first
	}
}

// over ends the timeline of a night that is over with its last score.
func (t *Timeline) over() {
	last := t.From
	for _, r := range t.Rows {
		for _, b := range r.Blocks {
			if b.Until.After(last) {
				last = b.Until
			}
		}
	}
	t.Now = last
}

// idle adds up when open courts had no game.
func (t *Timeline) idle() {
	for i := range t.Rows {
		r := &t.Rows[i]
		var away, busy []Span
		for _, s := range slices.Concat(r.Shut, t.Holds) {
			away = append(away, t.clip(s.From, s.Until))
		}
		busy = slices.Clone(away)
		for _, b := range r.Blocks {
			busy = append(busy, t.clip(b.From, b.Until))
		}
		all := max(0, t.Now.Sub(t.From))
		r.Idle = all - covered(busy)
		t.Idle += r.Idle
		t.Open += all - covered(without(away, r.Blocks))
	}
}

// without leaves out of some spans the time that games took.
func without(spans []Span, blocks []Block) []Span {
	for _, b := range blocks {
		var left []Span
		for _, s := range spans {
			if !b.From.Before(s.Until) || !b.Until.After(s.From) {
				left = append(left, s)
				continue
			}
			if b.From.After(s.From) {
				left = append(left, Span{From: s.From, Until: b.From})
			}
			if b.Until.Before(s.Until) {
				left = append(left, Span{From: b.Until, Until: s.Until})
			}
		}
		spans = left
	}
	return spans
}

// clip is a span within what has passed of the night.
func (t *Timeline) clip(from, until time.Time) Span {
	if from.Before(t.From) {
		from = t.From
	}
	if until.After(t.Now) {
		until = t.Now
	}
	return Span{From: from, Until: until}
}

// covered is how much time some spans take together, counting what several cover once.
func covered(spans []Span) time.Duration {
	spans = slices.DeleteFunc(slices.Clone(spans), func(s Span) bool { return !s.Until.After(s.From) })
	slices.SortFunc(spans, func(a, b Span) int { return cmp.Or(a.From.Compare(b.From), a.Until.Compare(b.Until)) })
	var sum time.Duration
	end := time.Time{}
	for _, s := range spans {
		if s.From.Before(end) {
			s.From = end
		}
		if s.Until.After(s.From) {
			sum += s.Until.Sub(s.From)
			end = s.Until
		}
	}
	return sum
}
