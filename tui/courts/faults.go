package courts

import (
	"fmt"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// asked is a rally whose winner is known and whose fault is asked for.
type asked struct {
	game  session.GameID
	rally scoring.Rally
}

// asks tells whether the board waits for the fault of a rally of g.
func (b *board) asks(g *session.Game) bool { return b.asked.game != 0 && b.asked.game == g.ID }

// faultKey is the key of one fault, with its name on the board and at the head of a column.
type faultKey struct {
	key   string
	fault scoring.Fault
	head  string
}

// faultKeys lists the keys of all faults, those that happen most often first.
var faultKeys = []faultKey{
	{"o", scoring.Out, "out"},
	{"n", scoring.Net, "net"},
	{"s", scoring.SecondBounce, "2nd"},
	{"k", scoring.Kitchen, "kitch"},
	{"v", scoring.ServiceFault, "serve"},
	{"t", scoring.FootFault, "foot"},
	{"h", scoring.HitByBall, "hit"},
	{"x", scoring.Other, "other"},
}

// faultWays name the ways to lose a rally.
func faultWays() []ui.Way {
	var out []ui.Way
	for _, f := range faultKeys {
		out = append(out, ui.Way{Key: f.key, Label: "lost by: " + f.fault.String()})
	}
	return out
}

// rallyAnd saves a rally whose fault was not noted, since the next one is here already, and asks
// about that one.
func (s *Courts) rallyAnd(g *session.Game, won, next scoring.Team) ui.Intent {
	do := s.rally(g, scoring.Rally{Won: won}).(ui.Do)
	do.After = func(l *session.Ledger) {
		if l.Club().Night().Game(g.ID).Running() {
			s.board.asked = asked{game: g.ID, rally: scoring.Rally{Won: next}}
		}
	}
	return do
}

// choose notes which of two partners it was; the same key again takes that back.
func (a *asked) choose(g *session.Game, by uint8) {
	switch {
	case g.Rules.Singles:
	case a.rally.By == by:
		a.rally.By = 0
	default:
		a.rally.By = by
	}
}

// question asks how a rally was lost.
func (b *board) question(c ui.Context, g *session.Game) []string {
	loser := g.Team(b.asked.rally.Won.Other())
	head := c.Theme.Next.Render("How did " + c.Names.Team(loser) + " lose it?")
	if !g.Rules.Singles {
		head += "   who: " + b.who(c, loser)
	}
	var words []string
	for _, f := range faultKeys {
		words = append(words, c.Theme.Key.Render(f.key)+" "+f.fault.String())
	}
	half := len(words)/2 + 1
	return []string{"  " + head, "  " + strings.Join(words[:half], "   "), "  " + strings.Join(words[half:], "   ") + "   " + c.Theme.Key.Render("enter") + " not noted"}
}

// who offers the two players of a team; the chosen one stands in brackets.
func (b *board) who(c ui.Context, s session.Team) string {
	var out []string
	for i, id := range s {
		text := fmt.Sprintf("%d %s", i+1, c.Names.Short(id))
		if int(b.asked.rally.By) == i+1 {
			text = c.Theme.Strong.Render("[" + text + "]")
		}
		out = append(out, text)
	}
	return strings.Join(out, "  ")
}

// faultsPage is what was noted of one game by side, and of the night by person.
func faultsPage(game session.GameID) ui.Dialog {
	return dialog.NewPage("Faults of tonight", func(c ui.Context) []string {
		var out []string
		if g := c.Night().Game(game); g != nil {
			t := scoring.TallyFaults(g.Rallies)
			for _, side := range []scoring.Team{scoring.A, scoring.B} {
				out = append(out, fmt.Sprintf("Court %s, %s: %s", g.Court, c.Names.Team(g.Team(side)), inWords(t.Side[side])))
			}
			out = append(out, "")
		}
		people, untold := c.Night().Faults()
		if len(people) == 0 && untold.Total() == 0 {
			return append(out, "No fault was noted yet. On a court's board F makes each rally ask for one.")
		}
		out = append(out, c.Theme.Strong.Render(faultRow("", headings(), "all")))
		for _, p := range people {
			out = append(out, faultRow(c.Names.Full(p.Person), numbers(p.Count), fmt.Sprint(p.Count.Total())))
		}
		if untold.Total() > 0 {
			out = append(out, faultRow("nobody noted who", numbers(untold), fmt.Sprint(untold.Total())))
		}
		return out
	})
}

// faultRow lays one line of the table out: 72 cells, the inside of a box on a terminal of 80.
func faultRow(name string, cells []string, all string) string {
	out := line.Fit(name, 20)
	for _, text := range cells {
		out += line.Right(text, 6)
	}
	return out + line.Right(all, 4)
}

func headings() []string {
	var out []string
	for _, f := range faultKeys {
		out = append(out, f.head)
	}
	return out
}

func numbers(count session.FaultCount) []string {
	var out []string
	for _, f := range faultKeys {
		text := ""
		if n := count[f.fault]; n > 0 {
			text = fmt.Sprint(n)
		}
		out = append(out, text)
	}
	return out
}

// inWords lists faults with their numbers.
func inWords(count session.FaultCount) string {
	var out []string
	for _, f := range faultKeys {
		if n := count[f.fault]; n > 0 {
			out = append(out, fmt.Sprintf("%s %d", f.fault, n))
		}
	}
	if len(out) == 0 {
		return "none noted"
	}
	return strings.Join(out, ", ")
}
