// Package hand is how the organiser decides by hand what is called next: whom to choose, what it costs, and then to
// take it or leave it. What it costs is worked out beside the screen before anything is done.
package hand

import (
	"fmt"
	"strings"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// Menu lists what can be decided by hand. Round is the round to come that it is about, 0 for the next one.
func Menu(c ui.Context, round int) ui.Intent {
	n := c.Night()
	rolling, court := "", ""
	if n.Settings.Flow == session.Rolling {
		rolling = "tonight is rolling: there are no rounds to come"
	} else if round <= len(n.Rounds) {
		round = len(n.Rounds) + 1
	}
	if rolling == "" && plannedRound(c, round) == nil {
		rolling = "the rotation is being worked out"
	}
	if len(n.Running()) == 0 {
		court = "nobody is on court"
	}
	free := ""
	decisions := c.Ledger.Decisions()
	if len(decisions) == 0 {
		free = "nothing is"
	}
	in := fmt.Sprintf(" in round %d", round)
	items := []dialog.Item{
		{Key: "t", Label: "these two next: partners", Intent: Partners(c)},
		{Key: "f", Label: "put somebody first", Intent: ui.Show{Dialog: dialog.NewPick("Put first: who?", "weigh", present, func(id session.PersonID) ui.Intent { return First(id) })}},
		{Key: "e", Label: "exchange two players who are on court", Intent: Exchange(c), Why: court},
		{Key: "m", Label: "move a game that goes on to another court", Intent: moveRunning(c), Why: court},
		{Key: "s", Label: "swap two people" + in, Intent: swap(c, round), Why: rolling},
		{Key: "p", Label: "put a planned game on another court" + in, Intent: movePlanned(c, round), Why: rolling},
		{Key: "k", Label: "keep a planned game as it is" + in, Intent: keep(c, round), Why: rolling},
		{Key: "r", Label: "release what is decided by hand", Intent: release(decisions), Why: free},
	}
	return ui.Show{Dialog: dialog.NewMenu("By hand", items...).Noting("What it costs is shown before it is done. Undo takes it back (u).")}
}

// release asks which decision shall no longer hold.
func release(decisions []session.Decision) ui.Intent {
	var labels []string
	for _, d := range decisions {
		labels = append(labels, d.Words)
	}
	return choice("Release which?", labels, func(i int) ui.Intent {
		return ui.Do{Command: session.UndoAction{Action: decisions[i].Action}}
	})
}

// Partners asks for two people who play next as partners.
func Partners(c ui.Context) ui.Intent {
	return two(c, "These two next: who?", "and with whom?", present, func(a, b session.PersonID) session.Command {
		return session.PinPartners{A: a, B: b}
	})
}

// First puts somebody first.
func First(id session.PersonID) ui.Intent { return ui.Weigh{Command: session.PutFirst{Person: id}} }

// Exchange asks for two players who take each other's place on court.
func Exchange(c ui.Context) ui.Intent {
	return two(c, "Exchange: which player?", "and which other player?", onCourt, func(a, b session.PersonID) session.Command {
		return session.ExchangePlayers{One: a, Other: b}
	})
}

// two asks for one person and then for another one.
func two(c ui.Context, first, second string, people func(ui.Context) []dialog.Candidate, command func(a, b session.PersonID) session.Command) ui.Intent {
	return ui.Show{Dialog: dialog.NewPick(first, "this one", people, func(a session.PersonID) ui.Intent {
		others := func(c ui.Context) []dialog.Candidate {
			var out []dialog.Candidate
			for _, x := range people(c) {
				if x.ID != a {
					out = append(out, x)
				}
			}
			return out
		}
		return ui.Show{Dialog: dialog.NewPick(c.Names.Full(a)+" "+second, "weigh", others, func(b session.PersonID) ui.Intent {
			return ui.Weigh{Command: command(a, b)}
		})}
	})}
}

// present lists who is here, the bench first.
func present(c ui.Context) []dialog.Candidate {
	n := c.Night()
	var out []dialog.Candidate
	for _, a := range n.Bench() {
		out = append(out, dialog.Candidate{ID: a.Person, Note: fmt.Sprintf("bench, %d min", int(a.Waited(c.Now).Minutes()))})
	}
	out = append(out, onCourt(c)...)
	for _, a := range n.Roll {
		if a.State == session.Resting {
			out = append(out, dialog.Candidate{ID: a.Person, Note: "rests"})
		}
	}
	return out
}

// onCourt lists who plays, court by court.
func onCourt(c ui.Context) []dialog.Candidate {
	var out []dialog.Candidate
	for _, g := range c.Night().Running() {
		for _, id := range g.Players() {
			us := g.A
			if g.B.Has(id) {
				us = g.B
			}
			note := "court " + string(g.Court)
			for _, p := range us {
				if p != id && p != "" {
					note += " with " + c.Names.Short(p)
				}
			}
			out = append(out, dialog.Candidate{ID: id, Note: note})
		}
	}
	return out
}

// plannedRound is a round to come as it is shown, nil if there is none.
func plannedRound(c ui.Context, round int) *session.PlannedRound {
	at := round - len(c.Night().Rounds) - 1
	if !c.Rotation.Ready || c.Rotation.Err != nil || at < 0 || at >= len(c.Rotation.Rounds) {
		return nil
	}
	return &c.Rotation.Rounds[at]
}

// swap asks which two people of a round to come take each other's place.
func swap(c ui.Context, round int) ui.Intent {
	people := func(c ui.Context) []dialog.Candidate {
		r := plannedRound(c, round)
		if r == nil {
			return nil
		}
		var out []dialog.Candidate
		for _, g := range r.Games {
			for _, t := range [2]session.Team{g.A, g.B} {
				for k, id := range t {
					if id == "" {
						continue
					}
					note := "court " + string(g.Court)
					if t[1-k] != "" {
						note += " with " + c.Names.Short(t[1-k])
					}
					out = append(out, dialog.Candidate{ID: id, Note: note})
				}
			}
		}
		for _, id := range r.Out {
			out = append(out, dialog.Candidate{ID: id, Note: "sits out"})
		}
		return out
	}
	shown := c.Rotation.Rounds
	return two(c, fmt.Sprintf("Swap in round %d: who?", round), "with whom?", people, func(a, b session.PersonID) session.Command {
		return session.SwapPlanned{Round: round, A: a, B: b, Shown: shown}
	})
}

// keys are the letters of a list of games or courts.
const keys = "123456789abcdefghijklmnopqrstuvwxyz"

// choice asks for one of some things; each has what follows.
func choice(heading string, labels []string, follow func(int) ui.Intent) ui.Intent {
	var items []dialog.Item
	for i, label := range labels[:min(len(labels), len(keys))] {
		items = append(items, dialog.Item{Key: keys[i : i+1], Label: label, Intent: follow(i)})
	}
	return ui.Show{Dialog: dialog.NewMenu(heading, items...)}
}

func gameLabel(c ui.Context, court session.CourtID, a, b session.Team) string {
	return fmt.Sprintf("court %s: %s v %s", court, c.Names.Team(a), c.Names.Team(b))
}

// keep asks which planned game stays as it is.
func keep(c ui.Context, round int) ui.Intent {
	return plannedGames(c, round, "Keep which game?", func(g session.PlannedGame) ui.Intent {
		return ui.Weigh{Command: session.PinGame{Round: round, Court: g.Court, Shown: c.Rotation.Rounds}}
	})
}

// movePlanned asks which planned game goes to which court.
func movePlanned(c ui.Context, round int) ui.Intent {
	return plannedGames(c, round, "Which game?", func(g session.PlannedGame) ui.Intent {
		return courts(c, g.Court, func(to session.CourtID) ui.Intent {
			return ui.Weigh{Command: session.MovePlanned{Round: round, From: g.Court, To: to, Shown: c.Rotation.Rounds}}
		})
	})
}

func plannedGames(c ui.Context, round int, heading string, follow func(session.PlannedGame) ui.Intent) ui.Intent {
	r := plannedRound(c, round)
	if r == nil {
		return nil
	}
	var labels []string
	for _, g := range r.Games {
		labels = append(labels, gameLabel(c, g.Court, g.A, g.B))
	}
	return choice(heading, labels, func(i int) ui.Intent { return follow(r.Games[i]) })
}

// moveRunning asks which game that goes on moves to which court.
func moveRunning(c ui.Context) ui.Intent {
	running := c.Night().Running()
	var labels []string
	for _, g := range running {
		labels = append(labels, gameLabel(c, g.Court, g.A, g.B))
	}
	return choice("Which game?", labels, func(i int) ui.Intent {
		return courts(c, running[i].Court, func(to session.CourtID) ui.Intent {
			return ui.Weigh{Command: session.MoveGame{Game: running[i].ID, Court: to}}
		})
	})
}

// courts asks for a court other than one.
func courts(c ui.Context, but session.CourtID, follow func(session.CourtID) ui.Intent) ui.Intent {
	var labels []string
	var ids []session.CourtID
	for _, k := range c.Night().Courts {
		if k.ID == but || !k.Open {
			continue
		}
		label := "court " + string(k.ID)
		if g := c.Night().Game(k.Game); g != nil {
			label += ", where " + strings.ReplaceAll(c.Names.Team(g.A)+" v "+c.Names.Team(g.B), "  ", " ") + " play"
		}
		labels, ids = append(labels, label), append(ids, k.ID)
	}
	return choice("To which court?", labels, func(i int) ui.Intent { return follow(ids[i]) })
}
