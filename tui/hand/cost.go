package hand

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Cost is the box that shows what a decision costs, and takes it.
type Cost struct {
	command session.Command
	cost    session.HandCost
	title   string
	scroll  ui.Scroller
}

// NewCost makes the box.
func NewCost(c ui.Context, command session.Command, cost session.HandCost) *Cost {
	return &Cost{command: command, cost: cost, title: title(c, command)}
}

// title says what is decided.
func title(c ui.Context, command session.Command) string {
	name := c.Names.Short
	switch d := command.(type) {
	case session.PinPartners:
		return fmt.Sprintf("%s & %s next, as partners?", name(d.A), name(d.B))
	case session.PutFirst:
		return fmt.Sprintf("Put %s first?", name(d.Person))
	case session.SwapPlanned:
		return fmt.Sprintf("Swap %s and %s in round %d?", name(d.A), name(d.B), d.Round)
	case session.MovePlanned:
		return fmt.Sprintf("Round %d: court %s to court %s?", d.Round, d.From, d.To)
	case session.PinGame:
		return fmt.Sprintf("Keep the game on court %s in round %d?", d.Court, d.Round)
	case session.ExchangePlayers:
		return fmt.Sprintf("Exchange %s and %s?", name(d.One), name(d.Other))
	case session.MoveGame:
		return fmt.Sprintf("Move the game to court %s?", d.Court)
	}
	return "By hand?"
}

// Title implements ui.Dialog.
func (k *Cost) Title() string { return k.title }

// Actions implements ui.Dialog.
func (k *Cost) Actions(c ui.Context) []ui.Action {
	return append([]ui.Action{
		ui.Ask(ui.Bind("do it", "enter", "enter"), ui.Do{Command: session.WithPlan(k.command, k.cost.Plan)}),
		ui.Ask(ui.Bind("leave it", "esc", "esc"), ui.Close{}),
	}, k.scroll.Actions(len(k.lines(c)), c.Height)...)
}

// Lines implements ui.Dialog.
func (k *Cost) Lines(c ui.Context) []string { return k.scroll.Seen(k.lines(c), c.Height) }

func (k *Cost) lines(c ui.Context) []string {
	var out []string
	for _, text := range k.games(c) {
		out = append(out, c.Theme.Strong.Render(line.Cut(text, c.Width)))
	}
	out = append(out, "")
	for _, text := range k.cost.Words {
		out = append(out, line.Wrap(text, c.Width)...)
	}
	out = append(out, "", c.Theme.Dim.Render(line.Fit("", 20)+line.Right("now", 6)+line.Right("then", 7)+line.Right("bound", 7)))
	then := map[string]int{}
	for _, m := range k.cost.After.Measures() {
		then[m.Name] = m.Value.Value
	}
	rests := c.Night().Settings.Flow == session.Rounds
	for _, m := range k.cost.Before.Measures() {
		if m.Rests && !rests {
			continue
		}
		bound := fmt.Sprint(m.Bound)
		if m.Open {
			bound = "?"
		}
		text := line.Fit(m.Name, 20) + line.Right(fmt.Sprint(m.Value.Value), 6) + line.Right(fmt.Sprint(then[m.Name]), 7) + line.Right(bound, 7)
		switch {
		case then[m.Name] > m.Value.Value:
			text = c.Theme.Warn.Render(text + "  worse")
		case then[m.Name] < m.Value.Value:
			text = c.Theme.Good.Render(text + "  better")
		default:
			text = c.Theme.Dim.Render(text)
		}
		out = append(out, text)
	}
	return out
}

// games are the games of the round or the call that the decision is about, as they would be.
func (k *Cost) games(c ui.Context) []string {
	var people []session.PersonID
	round := len(c.Night().Rounds) + 1
	switch d := k.command.(type) {
	case session.PinPartners:
		people = []session.PersonID{d.A, d.B}
	case session.PutFirst:
		people = []session.PersonID{d.Person}
	case session.SwapPlanned:
		people, round = []session.PersonID{d.A, d.B}, d.Round
	default:
		return nil
	}
	games, head := []session.PlannedGame{k.cost.Next}, "Next free court: "
	if at := round - len(c.Night().Rounds) - 1; c.Night().Settings.Flow == session.Rounds && at < len(k.cost.Plan) {
		games, head = k.cost.Plan[at].Games, ""
	}
	var out []string
	for _, g := range games {
		for _, id := range people {
			if !g.A.Has(id) && !g.B.Has(id) {
				continue
			}
			text := fmt.Sprintf("%s v %s", c.Names.Team(g.A), c.Names.Team(g.B))
			if head == "" {
				text = fmt.Sprintf("Round %d, court %s: ", round, g.Court) + text
			}
			out = append(out, head+text)
			break
		}
	}
	return out
}

// Next implements ui.Adviser.
func (*Cost) Next(ui.Context) (string, bool) {
	return "enter does it, and later plans keep it; esc leaves all as it is", true
}
