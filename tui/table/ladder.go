package table

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/session/rungs"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// ladderSheet is the ladder in the newest round, the top court first.
func (f *facts) ladderSheet(c ui.Context) sheet {
	name := max(10, min(26, c.Width-66))
	row := func(court, who, with, points, came, goes string) string {
		return line.Right(court, 7) + "  " + line.Fit(who, name) + line.Fit(with, 14) + line.Fit(points, 9) + line.Fit(came, 12) + goes
	}
	s := sheet{
		head:  row("court", "name", "with", "points", "came", "goes"),
		empty: "The ladder begins with the first round: the best people on the first court.",
		foot:  "The first court is the top. Winners move up a court, losers down; on the top court winners stay, on the bottom court losers. Partners split.",
	}
	if !f.climbed {
		return s
	}
	type place struct {
		rung int
		step rungs.Step
		head bool
	}
	var rows []place
	for k, r := range f.climb.Rungs {
		for i, step := range r.Steps {
			rows = append(rows, place{k, step, i == 0})
			s.people = append(s.people, step.Person)
		}
	}
	if len(f.climb.Out) > 0 {
		s.note = fmt.Sprintf("Sits out round %d: %s; the next move up.", f.climb.Round, c.Names.List(f.climb.Out))
	}
	s.count = len(rows)
	s.strong = func(i int) bool { return rows[i].rung == 0 }
	s.row = func(i int) string {
		p := rows[i]
		court, with := "", ""
		if p.head {
			court = string(f.climb.Rungs[p.rung].Court)
		}
		if p.step.Partner != "" {
			with = c.Names.Short(p.step.Partner)
		}
		return row(court, c.Names.Full(p.step.Person), with, points(p.step), f.came(p.rung, p.step), f.goes(p.rung, p.step))
	}
	return s
}

// points are those of the game on the court, as the person sees them.
func points(s rungs.Step) string {
	switch {
	case s.Void:
		return "void"
	case !s.Over:
		return "on court"
	}
	mark := "·"
	if s.Won {
		mark = "✓"
	} else if s.Level {
		mark = "="
	}
	return fmt.Sprintf("%s %d-%d", mark, s.Ours, s.Theirs)
}

// came says how somebody came to the court.
func (f *facts) came(rung int, s rungs.Step) string {
	switch f.climb.Came(rung, s) {
	case rungs.Up:
		return "↑ from " + string(s.From)
	case rungs.Down:
		return "↓ from " + string(s.From)
	case rungs.Stays:
		return "= stayed"
	}
	return ""
}

// goes says how somebody goes on.
func (f *facts) goes(rung int, s rungs.Step) string {
	to := func(way int) string {
		if s.Next != "" {
			return " to court " + string(s.Next)
		}
		return " to court " + string(f.climb.Rungs[rung+way].Court)
	}
	switch way := f.climb.Goes(rung, s); {
	case way == rungs.Up:
		return "↑ up" + to(-1)
	case way == rungs.Down:
		return "↓ down" + to(1)
	case way == rungs.Stays && rung == 0:
		return "= stays at the top"
	case way == rungs.Stays:
		return "= stays" + court(s.Next)
	case s.Sits:
		return "sits out the next round"
	case s.Level:
		return "a lot decides"
	case s.Next != "":
		return "to" + court(s.Next)
	}
	return ""
}

func court(id session.CourtID) string {
	if id == "" {
		return ""
	}
	return " court " + string(id)
}
