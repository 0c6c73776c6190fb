// Package rotation is the screen of the plan: the rounds played and to come, by courts, with the
// certificate of how fair they are.
package rotation

import (
	"fmt"
	"slices"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/hand"
	"club/quadrille/tui/line"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// view is what a screen that is too narrow for all shows.
type view int

const (
	roundsView view = iota // the rounds played and to come
	metView                // who met whom
	fairView               // how fair that is
	views
)

// Rotation is the screen of the plan.
type Rotation struct {
	top   int
	moved bool // the organiser has scrolled; until then the screen follows the night

	view  view
	who   ui.Cursor // on a person of the map
	left  int       // the first column of the map that is shown
	past  bool      // the map counts only what was called
	facts facts
	laid  laid
}

// laid are the rounds as they were laid out last, with what that was made from: a key press asks for them several times.
type laid struct {
	ledger *session.Ledger
	plan   *session.PlannedRound
	width  int
	theme  *theme.Theme
	rows   []string
}

// layout is the rounds laid out.
func (r *Rotation) layout(c ui.Context) []string {
	if l := r.laid; l.ledger != c.Ledger || l.plan != firstAhead(c) || l.width != c.Width || l.theme != c.Theme {
		r.laid = laid{c.Ledger, firstAhead(c), c.Width, c.Theme, layout(c)}
	}
	return r.laid.rows
}

// New makes the screen.
func New() *Rotation { return &Rotation{} }

// Typing implements ui.Screen.
func (r *Rotation) Typing() bool { return false }

// Click implements ui.Screen.
func (r *Rotation) Click(ui.Context, int, int) ui.Intent { return nil }

// Actions implements ui.Screen.
func (r *Rotation) Actions(c ui.Context) []ui.Action {
	if c.Night() == nil {
		return nil
	}
	wide := c.Width >= wideFrom
	var out []ui.Action
	switch {
	case wide:
		out = append(out, r.person(c))
		if len(heights(c)) > 0 { // a rolling night has none, unless some were played before
			out = append(out, r.byRound(c))
		}
	case r.view == metView:
		out = append(out, r.person(c), r.sideways(c))
	case r.view == roundsView:
		out = append(out, r.scroll(c))
	}
	if wide || r.view == metView {
		nobody := ""
		if len(r.facts.people) == 0 {
			nobody = "nobody is here yet"
		}
		out = append(out, ui.Act(ui.Bind("page", "enter", "enter"), func() ui.Intent {
			return ui.ShowPerson{Person: r.facts.people[r.who.In(len(r.facts.people))], Among: r.facts.people}
		}).Because(nobody).Explained("the person's page: the night, sit-outs, whom met, rating"))
	} else {
		out = append(out, ui.Ask(ui.Bind("how fair is it?", "enter", "enter"), r.fairPage()))
	}
	if !wide {
		out = append(out, ui.Act(ui.Bind("turn over", "v", "v"), func() ui.Intent {
			r.view = (r.view + 1) % views
			return nil
		}).Explained("the rounds, who met whom, and how fair it is"))
	}
	out = append(out,
		ui.Act(ui.Bind("these two next", "+", "+"), func() ui.Intent { return hand.Partners(c) }).
			Explained("two people play next, as partners: what it costs is shown before"),
		ui.Act(ui.Bind("by hand", "x", "x"), func() ui.Intent { return hand.Menu(c, 0) }).
			Explained("decide by hand: partners, who plays first, swap, exchange, another court, keep a game"),
	)
	if wide || r.view == metView {
		out = append(out, ui.Act(ui.Bind("played or planned", "w", "w"), func() ui.Intent {
			r.past = !r.past
			return nil
		}).Explained("count in the map what was played, or also what is planned").Quietly())
	}
	if wide || r.view == metView {
		out = append(out, ui.Ask(ui.Bind("how fair is it?", "y", "y"), r.fairPage()))
	}
	out = append(out, ui.Act(ui.Bind("will it fit?", "p", "p"), func() ui.Intent { return ui.Show{Dialog: newFit(c)} }))
	return append(out, ways(c)...)
}

// fairPage opens the certificate in figures.
func (r *Rotation) fairPage() ui.Intent {
	return ui.Show{Dialog: dialog.NewPage("How fair is this rotation?", r.certificatePage)}
}

// person moves the cursor of the map.
func (r *Rotation) person(c ui.Context) ui.Action { return r.who.Move(len(r.facts.people)) }

// sideways moves the columns of a map that is wider than the screen.
func (r *Rotation) sideways(c ui.Context) ui.Action {
	columns, _ := r.facts.heatShown(c)
	last := len(r.facts.people) - columns
	return ui.Action{
		Key: ui.Bind("columns", "←→", "left", "right"), Quiet: last <= 0, About: "the columns of a map that is wider than the screen",
		Do: func(key string) ui.Intent {
			by := columns / 2
			if key == "left" {
				by = -by
			}
			r.left = max(0, min(last, min(r.left, max(0, last))+by))
			return nil
		},
	}
}

// byRound moves the rounds beside the map, a round at a time.
func (r *Rotation) byRound(c ui.Context) ui.Action {
	right := c
	right.Width = blockWidth
	return ui.Action{
		Key: ui.Bind("round", "←→", "left", "right"), Quiet: !r.longer(c), About: "the round before, and the one after",
		Do: func(key string) ui.Intent {
			rows := heights(right)
			at, k := 0, 0
			now := r.current(right)
			if r.moved {
				now = r.top
			}
			for k < len(rows)-1 && at+rows[k] <= now {
				at += rows[k]
				k++
			}
			if key == "left" {
				at -= rows[max(0, k-1)] * min(1, k)
			} else if k < len(rows)-1 {
				at += rows[k]
			}
			r.top, r.moved = at, true
			return nil
		},
	}
}

// scroll moves the rounds; from then on the screen stays where it is and does not follow the night.
func (r *Rotation) scroll(c ui.Context) ui.Action {
	a := ui.Scroll(&r.top, 0, 0)
	a.Quiet = len(r.layout(c)) <= r.room(c) // all of it is seen
	a.Do = func(key string) ui.Intent {
		r.top, r.moved = r.first(c), true
		return ui.Scroll(&r.top, len(r.layout(c)), r.room(c)).Do(key)
	}
	return a
}

// Lines implements ui.Screen.
func (r *Rotation) Lines(c ui.Context) []string {
	n := c.Night()
	if n == nil {
		return nil
	}
	switch {
	case c.Width >= wideFrom:
		return r.wide(c)
	case r.view == metView:
		return r.heat(c)
	case r.view == fairView:
		return r.fairness(c)
	}
	rows, from := r.layout(c), r.first(c)
	return append(r.head(c), rows[from:min(len(rows), from+r.room(c))]...)
}

// head is what stands above the rounds: how fair they are, and in the rolling flow why there are no more.
func (r *Rotation) head(c ui.Context) []string {
	k, ok := r.certificate(c)
	n, out := c.Night(), summary(c, k, ok)
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
func (r *Rotation) room(c ui.Context) int { return max(0, c.Height-len(r.head(c))) }

// first is the first line shown: where the organiser scrolled to, or else the round that goes on,
// but no line so late that the screen would be half empty.
func (r *Rotation) first(c ui.Context) int {
	rows, room := r.layout(c), r.room(c)
	return r.firstOf(c, rows, room)
}

// firstOf is first for rows that are laid out, of which so many fit.
func (r *Rotation) firstOf(c ui.Context, rows []string, room int) int {
	last := max(0, len(rows)-room)
	if r.moved {
		return min(r.top, last)
	}
	return min(r.current(c), last)
}

// current is the line of the round that goes on.
func (r *Rotation) current(c ui.Context) int {
	n := c.Night()
	rows := heights(c)
	columns := columnsFor(c, len(rows))
	at := 0
	for i := 0; i < min(len(n.Rounds)-1, len(rows)); i += columns {
		at += slices.Max(rows[i:min(len(rows), i+columns)])
	}
	return at
}

// heights are the lines that the blocks of blocksOf have.
func heights(c ui.Context) []int {
	const around = 2 // its head, and the blank line after it
	var out []int
	for _, r := range c.Night().Rounds {
		out = append(out, len(r.Games)+around)
	}
	if c.Rotation.Ready && c.Rotation.Err == nil {
		for _, r := range c.Rotation.Rounds {
			out = append(out, len(r.Games)+around)
		}
	}
	return out
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
		number, state := len(n.Rounds)+1+i, "planned"
		if i == 0 {
			state = "next"
		}
		b := block{c.Theme.Strong.Render(fmt.Sprintf("Round %d", number)) + "  " + state + sitOut(c, r.Out)}
		if held := n.HeldOut(number, r.Out); len(held) > 0 {
			b[0] += c.Theme.Warn.Render("  ◆ " + c.Names.List(held) + " by hand")
		}
		for _, g := range r.Games {
			text := gameLine(c, g.Court, g.A, g.B, "v")
			if _, pinned := n.PinOn(number, g); pinned {
				text += c.Theme.Warn.Render("  ◆ by hand")
			}
			b = append(b, text)
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
