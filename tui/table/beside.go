package table

import (
	"fmt"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// beside is what stands beside the table: the line under the cursor with its games, and everybody's places
// through the night.
func (f *facts) beside(c ui.Context, at, width int) []string {
	p := f.places[at]
	out := []string{c.Theme.Title.Render(line.Cut(p.Name, width)), standing(p, len(f.places))}
	if why := f.reason(c, at); why != "" {
		out = append(out, line.Wrap(why, width)...)
	}
	if at > 0 {
		out = append(out, line.Wrap("behind "+short(c, f.places[at-1])+", who stands "+f.reason(c, at-1), width)...)
	}
	low, high := p.Interval()
	out = append(out, fmt.Sprintf("points %d to %d · win share %s, 95 %% range %s", p.PointsFor, p.PointsAgainst, line.Percent(p.WinShare), line.Range(low, high)), "")
	if len(p.People) > 0 {
		out = append(out, f.gamesOf(c, p.People[0], width)...)
	}
	out = append(out, "")
	return append(out, f.through(c, at, width, c.Height-len(out))...)
}

// standing is the place in words.
func standing(p session.Place, all int) string {
	text := fmt.Sprintf("place %d of %d", p.Rank, all)
	if p.Was > 0 && p.Was != p.Rank {
		text += fmt.Sprintf(", %d before the last round", p.Was)
	}
	return text
}

// gamesOf lists somebody's games.
func (f *facts) gamesOf(c ui.Context, id session.PersonID, width int) []string {
	out := []string{c.Theme.Strong.Render("Games")}
	for _, gid := range f.games[id] {
		out = append(out, line.Cut(f.gameLine(c, f.night.Game(gid), id), width))
	}
	return out
}

func (f *facts) gameLine(c ui.Context, g *session.Game, id session.PersonID) string {
	us, them, score := g.A, g.B, g.State.Score
	side := scoring.A
	if g.B.Has(id) {
		us, them, side = g.B, g.A, scoring.B
	}
	mark, points := "○", "on court"
	if g.Final != nil {
		score = g.Final.Score()
		mark = "·"
		if w, ok := g.Final.Winner(); ok && w == side {
			mark = "✓"
		} else if !ok {
			mark = "="
		}
		points = fmt.Sprintf("%d-%d", score.A, score.B)
		if side == scoring.B {
			points = fmt.Sprintf("%d-%d", score.B, score.A)
		}
		if g.Final.How() != scoring.Played {
			points += " " + g.Final.How().String()
		}
	}
	when := "court " + string(g.Court)
	if g.Round > 0 {
		when = fmt.Sprintf("round %d", g.Round)
	}
	with := ""
	for _, other := range us {
		if other != id && other != "" {
			with = "with " + c.Names.Short(other) + " "
		}
	}
	return fmt.Sprintf("%s %s %s %sv %s", line.Fit(when, 9), mark, line.Fit(points, 9), with, c.Names.Team(them))
}

// roundWidth is the room of a round in the places through the night.
const roundWidth = 4

// through are the places of everybody after each round, around the line under the cursor.
func (f *facts) through(c ui.Context, at, width, height int) []string {
	if height < 4 || f.stages == 0 {
		return nil
	}
	name := 18
	rounds := min(f.stages, max(1, (width-name-12)/roundWidth))
	from := f.stages - rounds
	head := line.Fit("", name)
	for k := from; k < f.stages; k++ {
		head += line.Right(fmt.Sprint(k+1), roundWidth)
	}
	out := []string{c.Theme.Strong.Render("Places through the night") + c.Theme.Dim.Render("  after each round"), c.Theme.Dim.Render(head)}
	first, until := line.Window(len(f.places), height-len(out), at)
	for i := first; i < until; i++ {
		p := f.places[i]
		text := line.Fit(short(c, p), name)
		var run []float64
		for k, rank := range f.course[p.Name] {
			if rank > 0 {
				run = append(run, -float64(rank))
			}
			if k < from {
				continue
			}
			text += line.Right(strings.TrimPrefix(fmt.Sprint(rank), "0"), roundWidth)
		}
		text = line.Fit(text, name+rounds*roundWidth) + "  " + widget.Run(8, run)
		if i == at {
			text = c.Theme.Strong.Render(text)
		}
		out = append(out, text)
	}
	return out
}
