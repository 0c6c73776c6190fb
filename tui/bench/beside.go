package bench

import (
	"fmt"
	"strings"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// beside is what comes next, beside the list: who plays, why the person under the cursor does not, and which courts
// free when.
func (b *Bench) beside(c ui.Context) []string {
	out := b.coming(c)
	out = append(out, "")
	if len(b.why) > 0 {
		out = append(out, c.Theme.Strong.Render(line.Cut(b.head, c.Width)))
		for _, text := range b.why {
			out = append(out, line.Wrap(text, c.Width)...)
		}
		out = append(out, "")
	}
	return append(out, frees(c, max(0, c.Height-len(out)))...)
}

// courtWidth and courtHeight are the size of the court with the next four.
const (
	courtWidth  = 44
	courtHeight = 9
)

// coming is the next round, or the next four on a court.
func (b *Bench) coming(c ui.Context) []string {
	out := b.next(c)
	if len(c.Hall.Next) == 0 {
		return out
	}
	if c.Night().Settings.Flow == session.Rolling {
		g := c.Hall.Next[0]
		spot := func(id session.PersonID) widget.Spot {
			if id == "" {
				return widget.Spot{}
			}
			return widget.Spot{Name: c.Names.Short(id)}
		}
		court := widget.Court{
			Left:  [2]widget.Spot{spot(g.A[0]), spot(g.A[1])},
			Right: [2]widget.Spot{spot(g.B[0]), spot(g.B[1])},
			Line:  c.Theme.Frame.Render,
		}
		return append(out, court.Lines(courtWidth, courtHeight)...)
	}
	n := c.Night()
	for _, g := range c.Hall.Next {
		text := fmt.Sprintf("%4s  %s v %s", g.Court, c.Names.Team(g.A), c.Names.Team(g.B))
		if _, pinned := n.PinOn(len(n.Rounds)+1, g); pinned {
			text += c.Theme.Warn.Render("  ◆ by hand")
		}
		out = append(out, text)
	}
	return out
}

// frees lists the courts that free next, with the time played of the time such games take.
func frees(c ui.Context, room int) []string {
	courts := c.Hall.FreesNext()
	if len(courts) == 0 || room < 3 {
		return nil
	}
	out := []string{c.Theme.Strong.Render("Frees next") + c.Theme.Dim.Render("  time played of the time that a game takes tonight")}
	for _, k := range courts[:min(len(courts), room-1)] {
		played, expected := k.Played.Minutes(), k.Expected.Minutes()
		text := line.Fit("court "+string(k.ID), 10) + widget.Progress(24, played, expected) +
			line.Right(fmt.Sprintf("%.0f of ~%.0f min", played, expected), 16) + "  " + c.Names.Team(k.A) + " v " + c.Names.Team(k.B)
		if k.Late {
			text = c.Theme.Warn.Render(text)
		}
		out = append(out, text)
	}
	return out
}

// share is the least room for one person among the turns of all.
const share = 32

// sharesOf is shares, laid out once for a size: it does not change from key to key.
func (b *Bench) sharesOf(c ui.Context) []string {
	if b.facts.width != c.Width || b.facts.height != c.Height {
		b.facts.shares, b.facts.width, b.facts.height = b.shares(c), c.Width, c.Height
	}
	return b.facts.shares
}

// shares is how often everybody who is here sat out and played tonight, under the list: each on a line where there is
// room, and else in columns.
func (b *Bench) shares(c ui.Context) []string {
	people, width := b.facts.all, c.Width
	if len(people) == 0 {
		return nil
	}
	room := max(c.Height/3, c.Height-listTop-max(1, len(waiting(c.Night())))-4)
	columns := max(1, min(width/share, (len(people)+room-1)/room))
	rows := min((len(people)+columns-1)/columns, room)
	cell := width / columns
	about := "  everybody who is here: ◌ sat out, ● played, most sit-outs first"
	if c.Night().Settings.Flow == session.Rolling {
		about = "  everybody who is here: ● a game, fewest first"
	}
	out := []string{"", c.Theme.Strong.Render("Tonight so far") + c.Theme.Dim.Render(about)}
	lines := make([]string, rows)
	for i, id := range people[:min(len(people), rows*columns)] {
		lines[i%rows] += b.turns(c, id, cell)
	}
	return append(out, lines...)
}

// turns is what somebody had tonight, and where there is room where the person is now and plays next.
func (b *Bench) turns(c ui.Context, id session.PersonID, width int) string {
	t := b.facts.turns[id]
	name, where := 14, ""
	if width >= 2*share {
		name, where = 20, b.facts.where[id]
	}
	text := line.Fit(" "+c.Names.Short(id), name) + " "
	if where != "" {
		text += line.Fit(where, width/2-4)
	}
	text = line.Fit(text+dots(t, width-line.Width(text)-1), width-1) + " "
	if _, waits := b.facts.waits[id]; !waits {
		return text
	}
	return c.Theme.Strong.Render(text)
}

// dots are the turns of somebody as marks, in figures where these do not fit.
func dots(t session.Turns, width int) string {
	if t.SatOut+t.Games > width {
		return fmt.Sprintf("%d ◌  %d ●", t.SatOut, t.Games)
	}
	return strings.Repeat("◌", t.SatOut) + strings.Repeat("●", t.Games)
}
