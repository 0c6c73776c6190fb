package history

import (
	"fmt"
	"slices"

	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// row is a line of the screen: an action, or the rallies of a game in one.
type row struct {
	action session.Action // of rallies the newest
	text   string
	quiet  bool           // taken back, or what takes back
	game   session.GameID // whose rallies these are
	folds  int            // how many actions are in this line, 0 for one that stands for itself
}

// rowsOf lists the actions, the newest first, with the rallies of a game in one line where the newest of them
// is. Under those of a game that is open they are listed one by one.
func rowsOf(c ui.Context, open map[session.GameID]bool) []row {
	list := c.Ledger.Actions()
	slices.Reverse(list)
	rallies := map[session.GameID][]session.Action{}
	games := make([]session.GameID, len(list))
	for i, a := range list {
		if games[i] = rallyOf(c, a); games[i] != 0 {
			rallies[games[i]] = append(rallies[games[i]], a)
		}
	}
	var out []row
	seen := map[session.GameID]bool{}
	for i, a := range list {
		id := games[i]
		switch folded := rallies[id]; {
		case id == 0 || len(folded) == 1:
			out = append(out, single(c, a, ""))
		case !seen[id]:
			seen[id] = true
			out = append(out, row{action: a, text: foldText(c, id, folded, open[id]), game: id, folds: len(folded)})
			if open[id] {
				for _, r := range folded {
					out = append(out, single(c, r, "    "))
				}
			}
		}
	}
	return out
}

// single is an action in a line of its own.
func single(c ui.Context, a session.Action, indent string) row {
	text := indent + c.Ledger.Describe(a)
	if a.Undone && !a.IsUndo() {
		text += "  (undone)"
	}
	return row{action: a, text: text, quiet: a.Undone || a.IsUndo()}
}

// rallyOf is the game whose rally an action is, or takes back or brings back; 0 for any other action. The rally
// that ends a game is its score, and stands for itself.
func rallyOf(c ui.Context, a session.Action) session.GameID {
	switch e := a.Events[0].(type) {
	case session.RallyWon:
		if len(a.Events) == 1 {
			return e.Game
		}
	case session.Undone:
		if of, ok := c.Ledger.Action(e.Action); ok && len(a.Events) == 1 && !of.IsUndo() {
			return rallyOf(c, of)
		}
	case session.Redone:
		if of, ok := c.Ledger.Action(e.Action); ok && len(a.Events) == 1 && !of.IsUndo() {
			return rallyOf(c, of)
		}
	}
	return 0
}

// foldText says in one line what the rallies of a game came to.
func foldText(c ui.Context, id session.GameID, all []session.Action, open bool) string {
	stand, mark := 0, "+"
	if open {
		mark = "−"
	}
	for _, a := range all {
		if !a.IsUndo() && !a.Undone {
			stand++
		}
	}
	n := c.Club().Night()
	if n == nil || n.Game(id) == nil {
		return fmt.Sprintf("%s %d rallies of a game that was taken back", mark, len(all))
	}
	g := n.Game(id)
	text := fmt.Sprintf("%s court %s: %d rallies, %s v %s", mark, g.Court, stand, c.Names.FullTeam(g.A), c.Names.FullTeam(g.B))
	if g.Running() {
		text += fmt.Sprintf(", %d-%d", g.State.Score.A, g.State.Score.B)
	}
	return text
}
