package courts

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// outlook fills the room under the cards, where there is any, with what people ask next: who waits,
// who plays next, who leads.
func outlook(c ui.Context, room int) []string {
	const least, columnWidth = 5, 48
	if room < least {
		return nil
	}
	blocks := [][]string{waiting(c), coming(c), leaders(c)}
	columns := max(1, min(len(blocks), c.Width/columnWidth))
	width := c.Width/columns - 2
	var out []string
	for i := 0; i < len(blocks); i += columns {
		row := blocks[i]
		for j, b := range blocks[i+1 : min(len(blocks), i+columns)] {
			row = line.Beside(row, b, (width+2)*(j+1)-2, 2)
		}
		out = append(out, "")
		out = append(out, row...)
	}
	return out[:min(len(out), room)]
}

// waiting lists the bench, the longest wait first.
func waiting(c ui.Context) []string {
	bench := c.Night().Bench()
	out := []string{c.Theme.Strong.Render(fmt.Sprintf("On the bench: %d", len(bench)))}
	for i, a := range bench {
		if i == maxListed && len(bench) > maxListed+1 {
			return append(out, fmt.Sprintf("  and %d more (b shows the bench)", len(bench)-maxListed))
		}
		out = append(out, fmt.Sprintf("  %s  %d min", line.Fit(c.Names.Full(a.Person), 24), int(a.Waited(c.Now).Minutes())))
	}
	return out
}

// maxListed is how many people a list of the outlook names.
const maxListed = 8

// coming lists the games of the next round, or the next game of the rolling flow.
func coming(c ui.Context) []string {
	n := c.Night()
	if n.Settings.Flow == session.Rolling {
		return comingRolling(c, n)
	}
	if !c.Rotation.Ready || len(c.Rotation.Rounds) == 0 {
		return nil
	}
	r := c.Rotation.Rounds[0]
	when := "not called yet"
	if len(n.Rounds) >= n.Settings.Rounds {
		when = "if you play on"
	}
	out := []string{c.Theme.Strong.Render(fmt.Sprintf("Round %d, %s", len(n.Rounds)+1, when))}
	for _, g := range r.Games {
		out = append(out, fmt.Sprintf("%3s  %s  v  %s", g.Court, c.Names.Side(g.A), c.Names.Side(g.B)))
	}
	if len(r.Out) > 0 {
		out = append(out, "  out: "+c.Names.List(r.Out))
	}
	return out
}

func comingRolling(c ui.Context, n *session.Night) []string {
	open := n.OpenCourts()
	if len(open) == 0 || n.LastCall {
		return nil
	}
	out := []string{c.Theme.Strong.Render("Next free court")}
	g, err := session.NextGame(c.Club(), n, open[0], c.Now)
	if err != nil {
		return append(out, "  "+err.Error())
	}
	return append(out, "  "+c.Names.Side(g.A)+"  v  "+c.Names.Side(g.B))
}

// leaders lists the head of the standings.
func leaders(c ui.Context) []string {
	rows := session.Standings(c.Club(), c.Night())
	if len(rows) == 0 {
		return nil
	}
	out := []string{c.Theme.Strong.Render("Leading")}
	for _, r := range rows[:min(len(rows), maxListed)] {
		out = append(out, fmt.Sprintf("%3d  %s %d of %d  %+d", r.Rank, line.Fit(r.Name, 24), r.Wins, r.Games, r.Difference))
	}
	return out
}
