package session

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"time"

	"club/quadrille/scheduler"
)

// Choice is a way to plan the coming rounds, with the rounds and what they come to.
type Choice struct {
	Way         Way
	Levels      bool // it differs in how even games are, and not in who sits out
	Rounds      []PlannedRound
	Certificate scheduler.Certificate
	Twice       int  // people who sit out twice running
	Groups      int  // closed groups that never meet, all night; 1 where everybody is tied to everybody
	Now         bool // it is how the rounds are planned now
}

// Ways works out in which other ways the rounds to come can be planned, where that matters; none where the night
// has no choice. It takes several times as long as a plan, and gives the same for the same night.
func Ways(ctx context.Context, l *Ledger, now time.Time) ([]Choice, error) {
	n, err := openNight(l)
	if err != nil || n.Settings.Flow != Rounds || n.Settings.Rounds <= len(n.Rounds) {
		return nil, err
	}
	d := newDraw(l.Club(), n, now)
	if d.missingGroups() != nil {
		return nil, nil
	}
	var out []Choice
	if scheduler.Choosable(d.problem) {
		found, err := scheduler.Alternatives(ctx, d.problem, scheduler.Budget{})
		if err != nil {
			return nil, err
		}
		out = append(out, d.choices(found, false)...)
	}
	if scheduler.LevelsChoosable(d.problem) {
		found, err := scheduler.LevelAlternatives(ctx, d.problem, scheduler.Budget{})
		if err != nil {
			return nil, err
		}
		out = append(out, d.choices(found, true)...)
	}
	return out, ctx.Err()
}

// choices translates alternatives back to people and courts.
func (d *draw) choices(found []scheduler.Alternative, levels bool) []Choice {
	var out []Choice
	for _, a := range found {
		w := wayOf(a.Benching, a.Price, a.Leveling)
		if levels {
			w.Price = d.night.Way().Price
		}
		out = append(out, d.choice(w, levels, a.Rounds))
	}
	return out
}

func (d *draw) choice(w Way, levels bool, plan []scheduler.Round) Choice {
	p := d.problem
	w.follow(&p)
	return Choice{
		Way: w, Levels: levels, Rounds: d.rounds(plan), Certificate: scheduler.Certify(p, plan),
		Twice: scheduler.TwicePeople(p, plan), Groups: scheduler.ClosedGroups(p, plan),
	}
}

// Beside sets other ways beside the rounds that are planned now, for each thing that can be chosen: those with fewest
// sit-outs twice running, and with least even games, first. What has no advantage over the rounds of now is left
// out, and where nothing is left there is nothing to choose.
func Beside(others []Choice, l *Ledger, now time.Time, shown Rotation) []Choice {
	n := l.Night()
	if n == nil || len(shown.Rounds) == 0 {
		return nil
	}
	d := newDraw(l.Club(), n, now)
	var out []Choice
	for _, levels := range []bool{false, true} {
		is := d.choice(n.Way(), levels, d.schedule(shown.Rounds))
		is.Now, is.Rounds = true, shown.Rounds
		list := []Choice{is}
		for _, c := range others {
			if c.Levels == levels && c.Way != is.Way && !c.without(is) {
				list = append(list, c)
			}
		}
		if len(list) > 1 {
			slices.SortStableFunc(list, func(a, b Choice) int { return cmp.Compare(a.order(), b.order()) })
			out = append(out, list...)
		}
	}
	return out
}

// gain is what a choice is about: sit-outs twice running, or games with a sure winner.
func (c Choice) gain() int {
	if c.Levels {
		return c.Certificate.Levels.Onesided
	}
	return c.Certificate.BenchedTwice.Value
}

// order is the place of a choice among its kind.
func (c Choice) order() int {
	if c.Levels {
		return int(c.Way.Leveling())
	}
	return c.gain()
}

// without tells whether a choice has no advantage over another one.
func (c Choice) without(than Choice) bool {
	return c.gain() >= than.gain() && c.Certificate.MeetingEvenness.Value >= than.Certificate.MeetingEvenness.Value
}

// Words say what a choice comes to, with figures.
func (c Choice) Words() string {
	meets := Counted(c.Certificate.MeetingEvenness.Value, "repeat")
	if c.Levels {
		v := c.Certificate.Levels
		return fmt.Sprintf("%s: %d of %s with a sure winner, %s", levelsWord(c.Way), v.Onesided, Counted(v.Games, "game"), meets)
	}
	text := twiceWord(c.Certificate.BenchedTwice.Value, c.Twice) + ": "
	if c.Groups > 1 {
		text += fmt.Sprintf("%d closed groups, ", c.Groups)
	}
	return text + meets
}

func levelsWord(w Way) string {
	switch w.Leveling() {
	case scheduler.GentleLevels:
		return "gently even games"
	case scheduler.EvenLevels:
		return "even games"
	}
	return "any levels"
}

// twiceWord says how often people sit out twice running, and how many.
func twiceWord(times, people int) string {
	who := Counted(people, "person")
	if people != 1 {
		who = fmt.Sprintf("%d people", people)
	}
	switch {
	case times == 0:
		return "nobody twice running"
	case times == people:
		return who + " twice running once"
	}
	return fmt.Sprintf("%s twice running, %d times in all", who, times)
}
