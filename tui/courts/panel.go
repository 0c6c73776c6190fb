package courts

import (
	"errors"
	"fmt"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// panel says under the courts what the selected one is about, or shows the score being typed.
func (s *Courts) panel(c ui.Context, g grid) []string {
	more := ""
	if g.shown < g.rows {
		more = c.Theme.Dim.Render(fmt.Sprintf("rows %d-%d of %d", g.top+1, g.top+g.shown, g.rows))
	}
	if s.finder.on {
		return s.finderPanel(c)
	}
	k := c.Hall.Courts[s.at(c)]
	if !s.entry.empty() {
		if game := target(c.Night(), *c.Night().Court(k.ID)); game != nil {
			return s.entryPanel(c, game)
		}
	}
	if len(k.Sent) > 0 {
		return sentPanel(c, &k)
	}
	if k.State == hall.Playing || k.State == hall.Called {
		who := fmt.Sprintf("Court %s: %s  v  %s", named(c, k.ID), c.Names.FullTeam(k.A), c.Names.FullTeam(k.B))
		return []string{more, line.Cut(who, c.Width)}
	}
	text := line.Wrap(fmt.Sprintf("Court %s: %s", named(c, k.ID), idleText(c, &k)), c.Width)
	if len(text) > 1 {
		return []string{text[0], line.Cut(strings.Join(text[1:], " "), c.Width)}
	}
	return []string{more, text[0]}
}

// named is a court with what is particular about it.
func named(c ui.Context, court session.CourtID) string {
	if k := c.Night().Court(court); k != nil && k.Note != "" {
		return fmt.Sprintf("%s (%s)", court, k.Note)
	}
	return string(court)
}

// entryPanel shows the score being typed with the names it gives it to.
func (s *Courts) entryPanel(c ui.Context, g *session.Game) []string {
	typed := strings.ReplaceAll(s.entry.text, " ", "-")
	how := ""
	if s.entry.how != 0 {
		how = " " + s.entry.how.String()
	}
	what := "score"
	if !g.Running() {
		what = "corrected to"
	}
	final, err := s.entryAt(c, g).final(g.Rules)
	if err == nil && s.entry.how == 0 && final.How() == scoring.Timed {
		how = " timed, as time is up"
	}
	head := c.Theme.Next.Render(fmt.Sprintf("Court %s %s: %s_%s", g.Court, what, typed, how))
	if s.entry.refused && err != nil && !errors.Is(err, errWhoRetired) {
		return refusal(c, fmt.Sprintf("Court %s %s: %s_%s  ! %v", g.Court, what, typed, how, err))
	}
	switch {
	case errors.Is(err, errWhoRetired):
		question := c.Theme.Dim.Render("   which team retired?")
		if s.entry.refused {
			question = c.Theme.Bad.Render("   ! which team retired? a or b")
		}
		text := fmt.Sprintf("  a  %s    b  %s", c.Names.Team(g.A), c.Names.Team(g.B))
		return []string{line.Cut(head+question, c.Width), line.Cut(c.Theme.Strong.Render(text), c.Width)}
	case err != nil:
		text := c.Names.Team(g.A) + " first"
		if s.entry.swapped {
			text = c.Names.Team(g.B) + " first"
		}
		return []string{line.Cut(head, c.Width), line.Cut("  "+text, c.Width)}
	}
	sc := final.Score()
	text := fmt.Sprintf("  %s %d - %d %s", c.Names.FullTeam(g.A), sc.A, sc.B, c.Names.FullTeam(g.B))
	if s.entry.how == scoring.Retired {
		text = fmt.Sprintf("  %s retired at %d-%d. %s", c.Names.Team(g.Team(s.entry.retired)), sc.A, sc.B, session.RetiredText(g, final))
	}
	return []string{line.Cut(head+c.Theme.Dim.Render("   enter saves · tab if it is the other way round"), c.Width), line.Cut(c.Theme.Strong.Render(text), c.Width)}
}

// refusal says why a score is none, over both lines of the panel, since the way out stands at the end.
func refusal(c ui.Context, text string) []string {
	lines := line.Wrap(text, c.Width)
	if len(lines) > panelRows {
		lines = append(lines[:panelRows-1], line.Cut(strings.Join(lines[panelRows-1:], " "), c.Width))
	}
	for i := range lines {
		lines[i] = c.Theme.Bad.Render(lines[i])
	}
	return lines
}

// idleText says why nothing is played on a court.
func idleText(c ui.Context, k *hall.Court) string {
	free := "free"
	if why := idleOf(c); why != nil {
		if words := why.Words(c.Club(), c.Now.Location()); words != "" {
			free += "; " + words
		}
		if why.Cause == session.TooLate || why.Cause == session.NewPartners {
			free += "; m calls it all the same"
		}
	}
	switch {
	case k.State == hall.Closed:
		return "closed (m opens it again)"
	case k.Held:
		return "free; play is held"
	case k.State == hall.Over && free != "free":
		return free + "; over before: type a score to correct it"
	case k.State == hall.Over:
		return "over; type a score to correct it"
	case k.State == hall.Planned:
		return fmt.Sprintf("%s  v  %s, round %d", c.Names.FullTeam(k.A), c.Names.FullTeam(k.B), c.Hall.Round)
	}
	return free
}

// idleOf is why the free courts are not called, nil when there is nothing to say.
func idleOf(c ui.Context) *session.Idle {
	if c.Hall.IsIdle {
		return &c.Hall.Idle
	}
	return nil
}

// idleFoot is the cause in the few words that a card has room for.
func idleFoot(why *session.Idle) string {
	switch why.Cause {
	case session.TooFew:
		return "needs four: " + why.Waits()
	case session.NoGroup:
		return "a group is missing"
	case session.Contradiction:
		return "wishes clash"
	case session.NoFour:
		return "no four go together"
	case session.NewPartners:
		return "for new partners: m calls"
	case session.TooLate:
		return fmt.Sprintf("%.0f %% in time: m calls", 100*why.Chance)
	case session.PastClosing:
		return "closing time has passed"
	case session.LastGames:
		return "no more games"
	}
	return ""
}
