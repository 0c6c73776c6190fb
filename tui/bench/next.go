package bench

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// next says who is called next and who sits out then.
func (b *Bench) next(c ui.Context) []string {
	n := c.Night()
	if n.Settings.Flow == session.Rolling {
		out := nextRolling(c, n, b.facts.none)
		for _, text := range b.facts.decided {
			out = append(out, line.Wrap(text, c.Width)...)
		}
		return out
	}
	switch r := c.Rotation; {
	case r.Err != nil:
		return line.Wrap("No next round: "+r.Err.Error(), c.Width)
	case !r.Ready:
		return []string{c.Theme.Dim.Render("working out the next round…")}
	case len(r.Rounds) == 0:
		return []string{c.Theme.Dim.Render("no round is left in tonight's plan")}
	default:
		text := fmt.Sprintf("Round %d%s: ", len(n.Rounds)+1, b.begins(n))
		if out := r.Rounds[0].Out; len(out) > 0 {
			verb := " sit out"
			if len(out) == 1 {
				verb = " sits out"
			}
			return line.Wrap(text+c.Names.List(out)+verb, c.Width)
		}
		return []string{text + "everybody plays"}
	}
}

// begins says when the next round is likely to be called, while one goes on.
func (b *Bench) begins(n *session.Night) string {
	if len(n.Running()) == 0 {
		return ""
	}
	w := b.facts.round
	return fmt.Sprintf(", likely in %d to %d min", int(w.Early.Minutes()), int(w.Late.Minutes()))
}

func nextRolling(c ui.Context, n *session.Night, none string) []string {
	if len(n.OpenCourts()) == 0 {
		return nil
	}
	if n.LastCall {
		return []string{"The games on court are the last ones."}
	}
	if len(c.Hall.Next) == 0 {
		return line.Wrap("Next free court: "+none, c.Width)
	}
	g := c.Hall.Next[0]
	return line.Wrap(fmt.Sprintf("Next free court: %s  v  %s", c.Names.FullTeam(g.A), c.Names.FullTeam(g.B)), c.Width)
}
