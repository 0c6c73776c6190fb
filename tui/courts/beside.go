package courts

import (
	"fmt"
	"math"
	"time"

	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// below is what people ask next, under the courts: in two lines where there are no more, and else as lists.
func below(c ui.Context, room int) []string {
	const least, columnWidth = 5, 48
	switch {
	case room < 1:
		return nil
	case room < least:
		lines := []string{benchLine(c), leadLine(c)}
		return lines[:min(room, len(lines))]
	}
	blocks := [][]string{bench(c, maxListed, columnWidth-2), coming(c), leaders(c, maxListed)}
	if clock := roundClock(c, columnWidth-2); room >= roomForClock && clock != nil {
		blocks = append([][]string{clock}, blocks...)
	}
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

// roomForClock is how many lines under the courts leave some for the clock of the round.
const roomForClock = 12

// maxListed is how many people a list under the courts names.
const maxListed = 8

// aside is the column beside the courts: what frees next, who waits, what comes next, who leads. Lists
// give way to one another, so that each says something on any screen.
func aside(c ui.Context, width, height int) []string {
	bar := c.Theme.Frame.Render("│") + " "
	clock := roundClock(c, width)
	games := 4 + len(c.Hall.Next) + len(clock)
	left := max(0, height-games-4)
	blocks := [][]string{
		clock,
		freesNext(c, max(1, min(6, left/4)), width),
		bench(c, max(2, left/3), width),
		coming(c),
		leaders(c, max(3, left/3)),
	}
	var out []string
	for _, b := range blocks {
		if len(b) == 0 {
			continue
		}
		for _, text := range append(b, "") {
			out = append(out, bar+line.Cut(text, width))
		}
	}
	for len(out) < height {
		out = append(out, bar)
	}
	return out[:height]
}

// roundClock is by when the round on court should be over, to be read across the hall.
func roundClock(c ui.Context, width int) []string {
	r := c.Hall.Clock
	if !c.Hall.Clocked {
		return nil
	}
	style, says := c.Theme.Strong, fmt.Sprintf("%d min left", int(r.Left().Minutes()))
	switch {
	case c.Night().Hold != nil:
		says = "play is held"
	case r.Over():
		style, says = c.Theme.Next, fmt.Sprintf("over for %d min", int((r.Played-r.Target).Minutes()))
	}
	end := c.Now.Add(r.Target - r.Played).In(c.Now.Location()).Format("15:04")
	rows := widget.Digits(end, false)
	text := []string{fmt.Sprintf("round %d should be over", r.Round), style.Render(says), c.Theme.Dim.Render(fmt.Sprintf("%d min played", int(r.Played.Minutes())))}
	var out []string
	for i, row := range rows {
		out = append(out, style.Render(row)+"  "+text[i])
	}
	return append(out, "  "+style.Render(widget.Progress(max(1, width-4), r.Played.Minutes(), r.Target.Minutes())))
}

// freesNext lists the courts that are played on by how long.
func freesNext(c ui.Context, most, width int) []string {
	courts := c.Hall.FreesNext()
	if len(courts) == 0 {
		return nil
	}
	out := []string{c.Theme.Strong.Render("Frees next")}
	for _, k := range courts[:min(most, len(courts))] {
		note := minutesLeft(k)
		room := max(1, width-12-9)
		text := widget.Progress(room, k.Played.Minutes(), k.Expected.Minutes())
		style := c.Theme.Frame
		if k.Played >= k.Expected {
			style = c.Theme.Next
		}
		out = append(out, line.Fit("court "+string(k.ID), 10)+style.Render(text)+" "+line.Right(note, 9))
	}
	return out
}

// minutesLeft is how much longer a game is likely to take, in words.
func minutesLeft(k hall.Court) string {
	left := k.Expected - k.Played
	switch {
	case k.Held:
		return "stopped"
	case left < time.Minute:
		return "any time"
	}
	return fmt.Sprintf("~%d min", int(left.Minutes()+0.5))
}

// bench lists who waits, the one who plays next first.
func bench(c ui.Context, most, width int) []string {
	people := c.Hall.Bench
	out := []string{c.Theme.Strong.Render(fmt.Sprintf("On the bench: %d", len(people)))}
	longest := time.Duration(0)
	for _, w := range people {
		longest = max(longest, w.Waited)
	}
	for i, w := range people {
		if i == most && len(people) > most+1 {
			return append(out, c.Theme.Dim.Render(fmt.Sprintf("  and %d more (b shows the bench)", len(people)-most)))
		}
		name := max(12, min(24, width-22))
		bar := widget.Blocks(max(0, width-name-10), math.Floor(w.Waited.Minutes()), max(longest.Minutes(), 10))
		out = append(out, fmt.Sprintf("  %s%s", line.Fit(c.Names.Full(w.Person), name), line.Right(fmt.Sprintf("%d′", int(w.Waited.Minutes())), 5))+" "+c.Theme.Frame.Render(bar))
	}
	return out
}

// benchLine is the bench in one line.
func benchLine(c ui.Context) string {
	if len(c.Hall.Bench) == 0 {
		return c.Theme.Strong.Render(" Bench") + c.Theme.Dim.Render("  nobody waits")
	}
	var parts []string
	for _, w := range c.Hall.Bench {
		parts = append(parts, fmt.Sprintf("%s %d′", c.Names.Short(w.Person), int(w.Waited.Minutes())))
	}
	return listed(c, " Bench", parts)
}

// leadLine is the head of the standings in one line.
func leadLine(c ui.Context) string {
	var parts []string
	for _, p := range c.Hall.Leaders[:min(len(c.Hall.Leaders), maxListed)] {
		name := p.Name
		if len(p.People) == 1 {
			name = c.Names.Short(p.People[0])
		}
		parts = append(parts, fmt.Sprintf("%s %d/%d", name, p.Wins, p.Games))
	}
	if len(parts) == 0 {
		return ""
	}
	return listed(c, " Leads", parts)
}

// listed is a heading with as many parts as fit, and how many more there are.
func listed(c ui.Context, heading string, parts []string) string {
	text := ""
	for i, p := range parts {
		more := fmt.Sprintf("  and %d more", len(parts)-i)
		if line.Width(heading+text+"  "+p) > c.Width-line.Width(more) && i < len(parts)-1 || line.Width(heading+text+"  "+p) > c.Width {
			return c.Theme.Strong.Render(heading) + text + c.Theme.Dim.Render(more)
		}
		text += "  " + p
	}
	return c.Theme.Strong.Render(heading) + text
}

// coming lists the games of the next round, or the next game of the rolling flow.
func coming(c ui.Context) []string {
	n := c.Night()
	if n.Settings.Flow == session.Rolling {
		return comingRolling(c, n)
	}
	if c.Hall.Round == 0 {
		return nil
	}
	when := "not called yet"
	if len(n.Rounds) >= n.Settings.Rounds {
		when = "if you play on"
	}
	out := []string{c.Theme.Strong.Render(fmt.Sprintf("Round %d", c.Hall.Round)) + c.Theme.Dim.Render("  "+when)}
	for _, g := range c.Hall.Next {
		out = append(out, fmt.Sprintf("%3s  %s  v  %s", g.Court, c.Names.Team(g.A), c.Names.Team(g.B)))
	}
	if len(c.Hall.Out) > 0 {
		out = append(out, c.Theme.Dim.Render("  out: ")+c.Names.List(c.Hall.Out))
	}
	return out
}

func comingRolling(c ui.Context, n *session.Night) []string {
	if n.LastCall || len(n.OpenCourts()) == 0 {
		return nil
	}
	out := []string{c.Theme.Strong.Render("Next free court")}
	if len(c.Hall.Next) == 0 {
		return append(out, c.Theme.Dim.Render("  waits for four who may play together"))
	}
	g := c.Hall.Next[0]
	return append(out, "  "+c.Names.Team(g.A)+"  v  "+c.Names.Team(g.B))
}

// leaders lists the head of the standings, with who moved since the newest round.
func leaders(c ui.Context, most int) []string {
	rows := c.Hall.Leaders
	if len(rows) == 0 {
		return nil
	}
	out := []string{c.Theme.Strong.Render("Leading")}
	for _, p := range rows[:min(len(rows), most)] {
		out = append(out, fmt.Sprintf("%3d  %s %s %2d/%-2d %+4d", p.Rank, line.Fit(p.Name, 22), line.Fit(line.Moved(p.Moved()), 3), p.Wins, p.Games, p.Difference))
	}
	return out
}
