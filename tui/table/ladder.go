package table

import (
	"fmt"
	"slices"

	"club/quadrille/session"
	"club/quadrille/session/rungs"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// ladderSheet is the ladder in the newest round, the top court first.
func (f *facts) ladderSheet(c ui.Context) sheet {
	name := max(10, min(40, c.Width-66))
	row := func(court, who, with, points, came, goes string) string {
		return line.Right(court, 7) + "  " + line.Fit(who, name-1) + " " + line.Fit(with, 13) + " " + line.Fit(points, 9) + line.Fit(came, 12) + goes
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
		goes := f.goes(p.rung, p.step)
		if why := f.offRule(c, p.rung, p.step); why != "" && c.Width >= wideLadder {
			goes += " (" + why + ")"
		}
		return row(court, c.Names.Full(p.step.Person), with, points(p.step), f.came(p.rung, p.step), goes)
	}
	off := 0
	for _, p := range rows {
		if f.climb.Off(p.rung, p.step) != 0 {
			off++
		}
	}
	switch {
	case off == 1:
		s.about = func(i int) string { return f.about(c, rows[i].rung, rows[i].step, "1 goes") }
	case off > 1:
		s.about = func(i int) string { return f.about(c, rows[i].rung, rows[i].step, fmt.Sprintf("%d go", off)) }
	}
	return s
}

// about says of somebody who goes on another court than the game alone says which one, and why; of others that
// some do.
func (f *facts) about(c ui.Context, rung int, s rungs.Step, some string) string {
	why := f.offRule(c, rung, s)
	if why == "" {
		return some + " another way than the game says: choose the name to see why"
	}
	verb := "lost"
	if s.Won {
		verb = "won"
	}
	return fmt.Sprintf("%s %s, and is on court %s next: %s", c.Names.Short(s.Person), verb, s.Next, why)
}

// wideLadder is the least width at which every row has room for why somebody goes another way than the game says.
const wideLadder = 110

// offRule is why somebody goes on another court than the game alone says, empty for who goes as it says.
func (f *facts) offRule(c ui.Context, rung int, s rungs.Step) string {
	off := f.climb.Off(rung, s)
	switch {
	case off < 0:
		return "fills a place"
	case off == 0:
		return ""
	}
	rule, _ := f.climb.ByRule(rung, s)
	for _, r := range f.climb.Rungs {
		for _, other := range r.Steps {
			if other.Next == f.climb.Rungs[rule].Court && apart(c, s.Person, other.Person) {
				return "kept apart from " + c.Names.Short(other.Person)
			}
		}
	}
	return "makes room"
}

// apart tells whether two people are never on one court.
func apart(c ui.Context, a, b session.PersonID) bool {
	p, _ := c.Club().Person(a)
	q, _ := c.Club().Person(b)
	return slices.Contains(p.KeepApart, b) || slices.Contains(q.KeepApart, a)
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
		return "= stays" + on(s.Next)
	case s.Sits:
		return "sits out the next round"
	case s.Level:
		return "a lot decides"
	case s.Next != "":
		return "to court " + string(s.Next)
	}
	return ""
}

func on(id session.CourtID) string {
	if id == "" {
		return ""
	}
	return " on court " + string(id)
}
