// Package rotation is the screen of the plan: the rounds played and to come, by courts, with the
// certificate of how fair they are.
package rotation

import (
	"fmt"
	"slices"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Rotation is the screen of the plan.
type Rotation struct {
	top   int
	moved bool // the organiser has scrolled; until then the screen follows the night
}

// New makes the screen.
func New() *Rotation { return &Rotation{} }

// Typing implements ui.Screen.
func (r *Rotation) Typing() bool { return false }

// Click implements ui.Screen.
func (r *Rotation) Click(ui.Context, int, int) ui.Intent { return nil }

// Actions implements ui.Screen.
func (r *Rotation) Actions(c ui.Context) []ui.Action {
	return []ui.Action{
		r.scroll(c),
		ui.Ask(ui.Bind("how fair is it?", "enter", "enter"), ui.Show{Dialog: dialog.NewPage("How fair is this rotation?", certificatePage)}),
		ui.Act(ui.Bind("will it fit?", "p", "p"), func() ui.Intent { return ui.Show{Dialog: newFit(c)} }),
	}
}

// scroll moves the rounds; from then on the screen stays where it is and does not follow the night.
func (r *Rotation) scroll(c ui.Context) ui.Action {
	a := ui.Scroll(&r.top, 0, 0)
	a.Do = func(key string) ui.Intent {
		r.top, r.moved = r.first(c), true
		return ui.Scroll(&r.top, len(layout(c)), room(c)).Do(key)
	}
	return a
}

// Lines implements ui.Screen.
func (r *Rotation) Lines(c ui.Context) []string {
	n := c.Night()
	if n == nil {
		return nil
	}
	rows, from := layout(c), r.first(c)
	return append(head(c), rows[from:min(len(rows), from+room(c))]...)
}

// head is what stands above the rounds: how fair they are, and in the rolling flow why there are no more.
func head(c ui.Context) []string {
	n, out := c.Night(), summary(c)
	if n.Settings.Flow != session.Rolling {
		return out
	}
	about := "Tonight is rolling: there are no rounds."
	if len(n.Rounds) > 0 {
		about = "Tonight is rolling now: no more rounds are planned."
	}
	about += " A court that frees calls the next four from the bench. " +
		"The bench shows who that would be; enter shows how fair the games were so far."
	return append(append(append(out, ""), line.Wrap(about, c.Width)...), "")
}

// room is how many lines the rounds have under the summary, which may take all of a small screen.
func room(c ui.Context) int { return max(0, c.Height-len(head(c))) }

// first is the first line shown: where the organiser scrolled to, or else the round that goes on,
// but no line so late that the screen would be half empty.
func (r *Rotation) first(c ui.Context) int {
	last := max(0, len(layout(c))-room(c))
	if r.moved {
		return min(r.top, last)
	}
	return min(r.current(c), last)
}

// current is the line of the round that goes on.
func (r *Rotation) current(c ui.Context) int {
	n := c.Night()
	blocks := blocksOf(c)
	columns := columnsFor(c, len(blocks))
	at := 0
	for i := 0; i < min(len(n.Rounds)-1, len(blocks)); i += columns {
		at += rowHeight(blocks, i, columns)
	}
	return at
}

// block is the text of one round.
type block []string

// blocksOf makes a block of each round, those played first.
func blocksOf(c ui.Context) []block {
	n := c.Night()
	var out []block
	for _, r := range n.Rounds {
		state := "played"
		if slices.ContainsFunc(r.Games, func(id session.GameID) bool { return n.Game(id).Running() }) {
			state = "on court now"
		}
		b := block{c.Theme.Strong.Render(fmt.Sprintf("Round %d", r.Number)) + "  " + state + sitOut(c, r.Out)}
		for _, id := range r.Games {
			g := n.Game(id)
			b = append(b, gameLine(c, g.Court, g.A, g.B, result(g)))
		}
		out = append(out, append(b, ""))
	}
	if !c.Rotation.Ready || c.Rotation.Err != nil {
		return out
	}
	for i, r := range c.Rotation.Rounds {
		state := "planned"
		if i == 0 {
			state = "next"
		}
		b := block{c.Theme.Strong.Render(fmt.Sprintf("Round %d", len(n.Rounds)+1+i)) + "  " + state + sitOut(c, r.Out)}
		for _, g := range r.Games {
			b = append(b, gameLine(c, g.Court, g.A, g.B, "v"))
		}
		out = append(out, append(b, ""))
	}
	return out
}

func sitOut(c ui.Context, ids []session.PersonID) string {
	if len(ids) == 0 {
		return ""
	}
	return c.Theme.Dim.Render("  out: " + c.Names.List(ids))
}

// result stands between the two sides: the score, or v before there is one.
func result(g *session.Game) string {
	if g.Final == nil {
		return "v"
	}
	if g.Final.How() == scoring.Void {
		return "void"
	}
	return g.Final.Score().String()
}

func gameLine(c ui.Context, court session.CourtID, a, b session.Team, between string) string {
	return fmt.Sprintf("%3s  %s  %s  %s", court, c.Names.Team(a), between, c.Names.Team(b))
}

// blockWidth is the least width in which a round reads well.
const blockWidth = 60

func columnsFor(c ui.Context, blocks int) int {
	return max(1, min(c.Width/blockWidth, blocks))
}

func rowHeight(blocks []block, at, columns int) int {
	h := 0
	for _, b := range blocks[at:min(len(blocks), at+columns)] {
		h = max(h, len(b))
	}
	return h
}

// layout puts the blocks side by side where there is room, read from left to right.
func layout(c ui.Context) []string {
	blocks := blocksOf(c)
	columns := columnsFor(c, len(blocks))
	width := c.Width / columns
	var out []string
	for i := 0; i < len(blocks); i += columns {
		row := make([]string, rowHeight(blocks, i, columns))
		for j, b := range blocks[i:min(len(blocks), i+columns)] {
			for y := range row {
				text := ""
				if y < len(b) {
					text = b[y]
				}
				if j < columns-1 {
					text = line.Fit(text, width)
				}
				row[y] += line.Cut(text, width)
			}
		}
		out = append(out, row...)
	}
	return out
}
