package session

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// HandCost is what a decision by hand costs, by the scheduler's own measures of the whole night: what was played and
// what is planned, or in the rolling flow the next game.
type HandCost struct {
	Before, After scheduler.Certificate
	Words         []string       // sentences for the organiser, the weightiest first
	Plan          []PlannedRound // the rounds to come with the decision; what is shown is what is taken
	Next          PlannedGame    // the next game of the rolling flow with it, if one can be called
}

// Weigh works out what a decision by hand costs before it is taken. It changes nothing; the error is the refusal of
// the command. Both plans set out from the rotation that people have seen, so that only what the decision changes is
// weighed. It takes as long as two plans, and stops early when ctx is done.
func Weigh(ctx context.Context, l *Ledger, c Command, now time.Time, shown Shown) (HandCost, error) {
	env := Env{Now: now, Zone: now.Location(), NewID: func() PersonID { return "" }}
	events, err := c.decide(l, env)
	if err != nil {
		return HandCost{}, err
	}
	records, err := record(l, now, events)
	if err != nil {
		return HandCost{}, err
	}
	then, err := l.Extend(records)
	if err != nil {
		return HandCost{}, err
	}
	before, err := outlookOf(ctx, l, now, shown)
	if err != nil {
		return HandCost{}, err
	}
	after, err := outlookOf(ctx, then, now, shown)
	if err != nil {
		return HandCost{}, err
	}
	cost := HandCost{Before: before.Certificate, After: after.Certificate, Plan: after.rounds, Next: after.next}
	cost.Words = slices.Concat(meetsAgain(l.club, before, after), benchWords(l, before, after), measureWords(l, before, after))
	return cost, nil
}

// outlook is a night with what comes next in it.
type outlook struct {
	scheduler.Certificate
	games  []PlannedGame // played, going on and planned
	rounds []PlannedRound
	next   PlannedGame
	out    []PersonID // who does not play next, though here
}

// outlookOf is the rotation of a night of rounds, and of a rolling one what was played with the next game.
func outlookOf(ctx context.Context, l *Ledger, now time.Time, shown Shown) (outlook, error) {
	n := l.Night()
	var o outlook
	for i := range n.Games {
		if g := &n.Games[i]; g.Final == nil || g.Final.How() != scoring.Void {
			o.games = append(o.games, PlannedGame{g.Court, g.A, g.B})
		}
	}
	if n.Settings.Flow == Rounds {
		r, err := ReplanRotation(ctx, l, now, shown)
		if err != nil {
			return o, err
		}
		o.Certificate, o.rounds = r.Certificate, r.Rounds
		for k, round := range r.Rounds {
			o.games = append(o.games, round.Games...)
			if k == 0 {
				o.out = round.Out
			}
		}
		return o, nil
	}
	d := newRollingDraw(l.club, n, now)
	games := d.games()
	if court := n.callCourt(); court != "" && !n.LastCall {
		if g, err := NextGame(l.club, n, court, now); err == nil {
			o.next = g
			o.games = append(o.games, g)
			games = append(games, d.game(&Game{Court: g.Court, A: g.A, B: g.B}))
			for _, a := range n.Bench() {
				if !g.has(a.Person) {
					o.out = append(o.out, a.Person)
				}
			}
		}
	}
	o.Certificate = scheduler.CertifyGames(d.problem, games)
	return o, nil
}

// couple is two people in the order of their identities.
type couple [2]PersonID

func coupleOf(a, b PersonID) couple { return couple{min(a, b), max(a, b)} }

// tallies counts how often each two people are partners, and in one game at all.
func tallies(games []PlannedGame) (partners, met map[couple]int) {
	partners, met = map[couple]int{}, map[couple]int{}
	for _, g := range games {
		people := (&Game{A: g.A, B: g.B}).Players()
		for k, a := range people {
			for _, b := range people[:k] {
				met[coupleOf(a, b)]++
				if g.A.Has(a) == g.A.Has(b) {
					partners[coupleOf(a, b)]++
				}
			}
		}
	}
	return partners, met
}

// wordsAtMost is how many people of a kind are named.
const wordsAtMost = 3

// meetsAgain says who will be partners or meet again that would not have, the most often first.
func meetsAgain(club *Club, before, after outlook) []string {
	partners, met := tallies(before.games)
	partnersThen, metThen := tallies(after.games)
	list := func(was, is map[couple]int, verb string) []string {
		type again struct {
			who   couple
			times int
		}
		var more []again
		for who, times := range is {
			if times > max(1, was[who]) {
				more = append(more, again{who, times})
			}
		}
		slices.SortFunc(more, func(x, y again) int {
			return cmp.Or(y.times-x.times, cmp.Compare(x.who[0], y.who[0]), cmp.Compare(x.who[1], y.who[1]))
		})
		var out []string
		for _, m := range more[:min(len(more), wordsAtMost)] {
			out = append(out, fmt.Sprintf("%s and %s %s for the %s time.", club.Name(m.who[0]), club.Name(m.who[1]), verb, ordinal(m.times)))
		}
		switch k := len(more) - wordsAtMost; {
		case k == 1:
			out = append(out, "One more pair does so more often than without it.")
		case k > 1:
			out = append(out, fmt.Sprintf("%d more pairs do so more often than without it.", k))
		}
		return out
	}
	out := list(partners, partnersThen, "are partners")
	if again := list(met, metThen, "meet"); len(again) > 0 {
		return append(out, again...)
	}
	return append(out, "Nobody meets more often than without it.")
}

// benchWords says who sits out next instead of whom.
func benchWords(l *Ledger, before, after outlook) []string {
	var stays, plays []PersonID
	for _, id := range after.out {
		if !slices.Contains(before.out, id) {
			stays = append(stays, id)
		}
	}
	for _, id := range before.out {
		if !slices.Contains(after.out, id) {
			plays = append(plays, id)
		}
	}
	verbs := [2]string{"sits out", "sit out"}
	if l.Night().Settings.Flow == Rolling {
		verbs = [2]string{"waits for the court after", "wait for the court after"}
	}
	if len(stays) == 0 {
		return nil
	}
	verb := verbs[min(1, len(stays)-1)]
	text := fmt.Sprintf("%s %s", nameList(l.club, stays), verb)
	if len(plays) > 0 {
		text += " instead of " + nameList(l.club, plays)
	}
	return []string{text + "."}
}

// nameList is a list of people in words.
func nameList(club *Club, ids []PersonID) string {
	text := ""
	for k, id := range ids {
		switch {
		case k > 0 && k == len(ids)-1:
			text += " and "
		case k > 0:
			text += ", "
		}
		text += club.Name(id)
	}
	return text
}

// measureWords says what becomes of sitting out twice running, and then which measures change.
func measureWords(l *Ledger, before, after outlook) []string {
	var out []string
	rests := l.Night().Settings.Flow == Rounds
	if rests {
		switch was, is := before.BenchedTwice.Value, after.BenchedTwice.Value; {
		case is == 0:
			out = append(out, "Nobody sits out twice running.")
		case is > was:
			out = append(out, fmt.Sprintf("Somebody sits out twice running %s, instead of %d.", timesText(is), was))
		}
	}
	was := map[string]int{}
	for _, m := range before.Measures() {
		was[m.Name] = m.Value.Value
	}
	var worse, better []string
	for _, m := range after.Measures() {
		old, known := was[m.Name]
		switch {
		case m.Rests && !rests || !known:
		case m.Value.Value > old:
			worse = append(worse, m.Name)
		case m.Value.Value < old:
			better = append(better, m.Name)
		}
	}
	if len(worse) > 0 {
		out = append(out, "Worse: "+strings.Join(worse, ", ")+".")
	}
	if len(better) > 0 {
		out = append(out, "Better: "+strings.Join(better, ", ")+".")
	}
	if len(worse)+len(better) == 0 {
		out = append(out, "All measures stay as they are.")
	}
	return out
}

func timesText(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

// WithPlan is a decision by hand with the rounds to come that were shown for it, which are taken with it.
func WithPlan(c Command, plan []PlannedRound) Command {
	switch c := c.(type) {
	case PinPartners:
		c.Plan = plan
		return c
	case PutFirst:
		c.Plan = plan
		return c
	}
	return c
}
