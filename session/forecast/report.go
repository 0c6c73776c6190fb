package forecast

import (
	"context"
	"fmt"
	"strings"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// Question is what an organiser asks before a night.
type Question struct {
	Hall   Hall
	Format scheduler.Format // of the teams, for the mixing
	Wished int              // games that everybody should get
	Seed   uint64           // equal seeds give equal answers
}

// Report is all that can be said of a night before it.
type Report struct {
	Question
	Habit  Habit
	Answer Answer
	Others []Other // the hall itself first
	Ways   []Way
	Best   int // of the ways, -1 where none gives everybody the wished games
	Mixes  []Mixing
}

// Reported works a report out, with how long games take in a club; nil for one of which nothing is known. It takes a
// second or two, and less when ctx is done: the mixing of more rounds is then left out.
func Reported(ctx context.Context, q Question, club *session.Club) (r Report, err error) {
	r = Report{Question: q, Habit: Learned(club, q.Hall.Rules)}
	if r.Answer, err = Of(q.Hall, r.Habit, q.Seed); err != nil {
		return Report{}, err
	}
	if r.Ways, r.Best, err = Ways(q.Hall, club, q.Wished, q.Seed); err != nil {
		return Report{}, err
	}
	r.Others = Others(q.Hall, r.Habit, q.Seed)
	if r.Mixes, err = Mixes(ctx, q.Hall, q.Format, q.Seed); err != nil {
		return Report{}, err
	}
	return r, nil
}

// Line is a line of a report.
type Line struct {
	Text  string
	Flows bool // may be broken where the room ends; else it is a row of a table
}

// Text is the report in words.
func (r Report) Text() []Line {
	h := r.Hall
	out := []Line{
		{fmt.Sprintf("%d people on %s for %s: %s, %s.", h.People, session.Counted(h.Courts, "court"), hours(h.Minutes), h.Flow, h.Rules), true},
		{r.taught(), true},
		{},
		row("games in all", "%d to %d (in %.0f of 100 such nights)", r.Answer.Games.Low, r.Answer.Games.High, 100*r.Answer.Games.Chance),
		row("games each", "%s", chances(r.Answer.Each)),
	}
	if len(r.Answer.Rounds) > 0 {
		out = append(out,
			row("rounds", "%s", chances(r.Answer.Rounds)),
			row("minutes a round", "%.0f from call to call, half of them longer", r.Answer.Round))
	}
	out = append(out, row("last score", "after %s; in 9 of 10 nights within %s", hours(int(r.Answer.End.Median)), hours(int(r.Answer.End.P90))))
	out = append(out, r.others()...)
	out = append(out, r.ways()...)
	return append(out, r.mixing()...)
}

// row is a row of what is told one below the other.
func row(label, format string, values ...any) Line {
	return Line{Text: fmt.Sprintf("%-18s ", label) + fmt.Sprintf(format, values...)}
}

func (r Report) taught() string {
	if r.Habit.Games == 0 {
		return fmt.Sprintf("No games of your club are known yet: a model says that half of the games take %.0f minutes or more. It learns from each night that you run.", r.Habit.Clock.Median())
	}
	return fmt.Sprintf("Learned from %s of your club: half of them take %.1f minutes or more, and %.1f minutes pass between rounds.", session.Counted(r.Habit.Games, "game"), r.Habit.Clock.Median(), r.Habit.Change)
}

// chances are the numbers that are neither sure nor out of the question, and the last that is sure.
func chances(all []AtLeast) string {
	var parts []string
	for i, x := range all {
		last := i+1 == len(all)
		if x.Chance < 0.05 || !last && all[i+1].Chance > 0.97 {
			continue
		}
		parts = append(parts, fmt.Sprintf("%d: %.0f %%", x.N, 100*x.Chance))
	}
	if len(parts) == 0 {
		return "none"
	}
	return "at least " + strings.Join(parts, ", ")
}

// hours is a time in hours and minutes.
func hours(minutes int) string { return fmt.Sprintf("%d:%02d h", minutes/60, minutes%60) }

func (r Report) others() []Line {
	out := []Line{{}, {Text: fmt.Sprintf("%-8s %-8s %-12s %s", "courts", "people", "games each", "of their time people sit out")}}
	for i, o := range r.Others {
		here := ""
		if i == 0 {
			here = "  as planned"
		}
		out = append(out, Line{Text: fmt.Sprintf("%-8d %-8d %-12d %.0f %%%s", o.Courts, o.People, o.Each, 100*o.Waiting, here)})
	}
	return out
}

// Words name the rules of the way as briefly as they can be told apart in a table of lengths.
func (w Way) Words() string {
	if w.Rules.Minutes > 0 {
		return fmt.Sprintf("%d minutes", w.Rules.Minutes)
	}
	return fmt.Sprintf("to %d", w.Rules.To)
}

func (r Report) ways() []Line {
	out := []Line{{}, {Text: fmt.Sprintf("%-12s %-9s %-16s %s", "a game", "flow", "minutes a round", "games each, probably")}}
	for i, w := range r.Ways {
		mark := ""
		if i == r.Best {
			mark = fmt.Sprintf("  the longest that gives %s", session.Counted(r.Wished, "game"))
		}
		out = append(out, Line{Text: fmt.Sprintf("%-12s %-9s %-16.0f %d%s", w.Words(), w.Flow, w.Round, w.Each, mark)})
	}
	if r.Best < 0 {
		out = append(out, Line{fmt.Sprintf("No way to play probably gives everybody %s: more courts, more time or fewer people would.", session.Counted(r.Wished, "game")), true})
	}
	return out
}

func (r Report) mixing() []Line {
	out := []Line{{}, {Text: fmt.Sprintf("%-8s %-19s %-19s %s", "rounds", "same partner twice", "same people twice", "pairs who never meet")}}
	for _, m := range r.Mixes {
		c := m.Certificate
		out = append(out, Line{Text: fmt.Sprintf("%-8d %-19s %-19s %s", m.Rounds, bounded(c.PartnerRepeats), bounded(c.MeetingEvenness), bounded(c.Strangers))})
	}
	return append(out, Line{"With everybody there all the time; in brackets, where it is lower, what no rotation can be below that shares the sit-outs alike.", true})
}

// bounded is a value, with its bound where that is lower.
func bounded(v scheduler.Value) string {
	if v.Bound < v.Value {
		return fmt.Sprintf("%d (%d)", v.Value, v.Bound)
	}
	return fmt.Sprint(v.Value)
}
