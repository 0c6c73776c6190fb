package courts

import (
	"fmt"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// sentActions are the keys for a score that the court sent.
func (s *Courts) sentActions(c ui.Context, court session.Court) []ui.Action {
	sent := c.Night().ProposalsOf(court.Game)
	if court.Game == 0 || len(sent) == 0 {
		return nil
	}
	return []ui.Action{
		ui.Act(ui.Bind("take it", "y", "y"), func() ui.Intent { return s.takeSent(c, sent) }).Explained("take the score that the court sent"),
		ui.Ask(ui.Bind("refuse it", "Y", "Y"), ui.Do{Command: session.RefuseProposals{Game: court.Game}}).Explained("refuse what the court sent; another score can be sent"),
	}
}

// takeSent takes what a court sent, or asks which where its teams do not agree.
func (s *Courts) takeSent(c ui.Context, sent []session.Proposal) ui.Intent {
	court := c.Night().Game(sent[0].Game).Court
	take := func(p session.Proposal) ui.Intent {
		return ui.Do{Command: session.TakeProposal{Game: p.Game, By: p.By}, After: func(l *session.Ledger) {
			s.saved = c.Now
			s.next(l.Night(), court)
		}}
	}
	if agree(sent) {
		return take(sent[0])
	}
	g := c.Night().Game(sent[0].Game)
	var items []dialog.Item
	for i, p := range sent {
		items = append(items, dialog.Item{Key: fmt.Sprint(i + 1), Label: fmt.Sprintf("%s, sent by %s", sentText(c, g, p), c.Names.Team(g.Team(p.By))), Intent: take(p)})
	}
	return ui.Show{Dialog: dialog.NewMenu(fmt.Sprintf("Court %s sent two scores", court), items...)}
}

// agree tells whether all that a court sent is one score.
func agree(sent []session.Proposal) bool {
	for _, p := range sent {
		if p.Final != sent[0].Final {
			return false
		}
	}
	return true
}

// TakeSent is what takes the score that a court sent, nil where there is none, or more than one.
func TakeSent(c ui.Context, court session.CourtID) ui.Intent {
	sent := sentOn(c, court)
	if len(sent) == 0 || !agree(sent) {
		return nil
	}
	return ui.Do{Command: session.TakeProposal{Game: sent[0].Game, By: sent[0].By}}
}

// RefuseSent is what refuses all that a court sent, nil where that is nothing.
func RefuseSent(c ui.Context, court session.CourtID) ui.Intent {
	sent := sentOn(c, court)
	if len(sent) == 0 {
		return nil
	}
	return ui.Do{Command: session.RefuseProposals{Game: sent[0].Game}}
}

func sentOn(c ui.Context, id session.CourtID) []session.Proposal {
	n := c.Night()
	if n == nil {
		return nil
	}
	if court := n.Court(id); court != nil && court.Game != 0 {
		return n.ProposalsOf(court.Game)
	}
	return nil
}

// sentNote says on a court's card what it sent.
func sentNote(sent []session.Proposal) string {
	if !agree(sent) {
		return "sent two scores"
	}
	return "sent " + sent[0].Final.Score().String()
}

// sentText is a score that was sent, with the names of the teams.
func sentText(c ui.Context, g *session.Game, p session.Proposal) string {
	text := fmt.Sprintf("%s %v %s", c.Names.Team(g.A), p.Final.Score(), c.Names.Team(g.B))
	if how := p.Final.How(); how != scoring.Played {
		text += ", " + how.String()
	}
	return text
}

// sentPanel says what the selected court sent, and how it is taken.
func sentPanel(c ui.Context, k *hall.Court) []string {
	g := c.Night().Game(k.Game)
	var scores []string
	for _, p := range k.Sent {
		text := sentText(c, g, p)
		if agree(k.Sent) && len(scores) > 0 {
			continue
		}
		scores = append(scores, text)
	}
	who := "sent by " + c.Names.Team(g.Team(k.Sent[0].By))
	switch {
	case len(scores) > 1:
		who = "the teams do not agree"
	case len(k.Sent) > 1:
		who = "sent by both teams"
	}
	head := c.Theme.Next.Render(fmt.Sprintf("Court %s: a score was sent", k.ID)) + c.Theme.Dim.Render("   y takes it · Y refuses it · "+who)
	return []string{line.Cut(head, c.Width), line.Cut(c.Theme.Strong.Render("  "+strings.Join(scores, "  or  ")), c.Width)}
}
