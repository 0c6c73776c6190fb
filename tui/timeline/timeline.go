// Package timeline is the page of the night by its courts: a row a court, a block a game, with what stood idle,
// what was held or closed, and what the pace foretells until closing time.
package timeline

import (
	"fmt"
	"slices"
	"time"

	"club/quadrille/session"
	"club/quadrille/session/timeline"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Page is the timeline of the newest night.
type Page struct {
	night  timeline.Timeline
	known  bool
	row    int
	game   session.GameID // under the cursor, 0 for the newest block of the row
	future int            // the forecast under the cursor, from 1; 0 for none
	whole  bool           // all of the night is shown, however short the blocks get
}

// New makes the page.
func New() *Page { return &Page{} }

// Typing implements ui.Screen.
func (p *Page) Typing() bool { return false }

// Survey implements ui.Surveyor.
func (p *Page) Survey(c ui.Context) {
	var ahead []session.PlannedRound
	if c.Rotation.Ready && c.Rotation.Err == nil {
		ahead = c.Rotation.Rounds
	}
	p.night, p.known = timeline.Of(c.Ledger, ahead, c.Now)
}

// at is the row and the block under the cursor; block is -1 in a row without any.
func (p *Page) at() (row, block int) {
	row = max(0, min(p.row, len(p.night.Rows)-1))
	blocks := p.night.Rows[row].Blocks
	if p.future > 0 {
		k := 0
		for i, b := range blocks {
			if b.Kind == timeline.Forecast {
				if k++; k == p.future {
					return row, i
				}
			}
		}
	}
	newest := -1
	for i, b := range blocks {
		switch {
		case b.Kind == timeline.Forecast:
		case b.Game == p.game:
			return row, i
		default:
			newest = i
		}
	}
	if newest < 0 && len(blocks) > 0 {
		newest = 0
	}
	return row, newest
}

// choose puts the cursor on a block.
func (p *Page) choose(row, block int) {
	p.row, p.game, p.future = row, 0, 0
	if block < 0 {
		return
	}
	blocks := p.night.Rows[row].Blocks
	if p.game = blocks[block].Game; blocks[block].Kind == timeline.Forecast {
		for _, b := range blocks[:block+1] {
			if b.Kind == timeline.Forecast {
				p.future++
			}
		}
	}
}

// near is the block of a row that is nearest to a time, -1 in a row without any.
func (p *Page) near(row int, when time.Time) int {
	best, least := -1, time.Duration(0)
	for i, b := range p.night.Rows[row].Blocks {
		away := max(b.From.Sub(when), when.Sub(b.Until), 0)
		if best < 0 || away < least {
			best, least = i, away
		}
	}
	return best
}

// Actions implements ui.Screen.
func (p *Page) Actions(c ui.Context) []ui.Action {
	back := ui.Ask(ui.Bind("back", "esc", "esc"), ui.Back{}).Explained("back to where the page was opened")
	if !p.known || len(p.night.Rows) == 0 {
		return []ui.Action{back}
	}
	row, block := p.at()
	closed := ""
	if !p.night.Night.IsOpen() {
		closed = "this night is over: its courts are not played on"
	}
	width := "whole night"
	if p.whole {
		width = "closer"
	}
	return []ui.Action{
		{Key: ui.Bind("game", "←→", "left", "right", "home", "end"), About: "the game before and the next on this court; home and end all the way", Do: func(key string) ui.Intent {
			p.along(row, block, key)
			return nil
		}},
		{Key: ui.Bind("court", "↑↓", "up", "down", "pgup", "pgdown"), About: "the court above or below; page up and page down go ten", Do: func(key string) ui.Intent {
			p.across(row, block, key)
			return nil
		}},
		ui.Ask(ui.Bind("to the court", "enter", "enter"), ui.GoCourt{Court: p.night.Rows[row].Court}).Because(closed).Explained("go to this court in the hall"),
		ui.Act(ui.Bind(width, "z", "z"), func() ui.Intent {
			p.whole = !p.whole
			return nil
		}).Explained("show all of the night, or so much that scores can be read"),
		back,
	}
}

// along moves along a row.
func (p *Page) along(row, block int, key string) {
	k := len(p.night.Rows[row].Blocks)
	switch key {
	case "left":
		block--
	case "right":
		block++
	case "home":
		block = 0
	case "end":
		block = k - 1
	}
	if k > 0 {
		p.choose(row, max(0, min(block, k-1)))
	}
}

// across moves to another row, to the block that is nearest in time.
func (p *Page) across(row, block int, key string) {
	when := p.night.Now
	if block >= 0 {
		b := p.night.Rows[row].Blocks[block]
		when = b.From.Add(b.Until.Sub(b.From) / 2)
	}
	cursor := ui.Cursor(row)
	cursor.Press(key, len(p.night.Rows))
	to := cursor.In(len(p.night.Rows))
	p.choose(to, p.near(to, when))
}

// Click implements ui.Screen: a click chooses the game that is nearest, a click on the chosen one goes to its court.
func (p *Page) Click(c ui.Context, x, y int) ui.Intent {
	if !p.known || len(p.night.Rows) == 0 {
		return nil
	}
	s := p.scale(c)
	row, ok := s.rowAt(y)
	if !ok || x < labelWidth || x >= labelWidth+s.cells {
		return nil
	}
	block := p.near(row, s.time(x-labelWidth))
	if was, at := p.at(); was == row && at == block && p.night.Night.IsOpen() {
		return ui.GoCourt{Court: p.night.Rows[row].Court}
	}
	p.choose(row, block)
	return nil
}

// Next implements ui.Adviser: it says what is under the cursor in full.
func (p *Page) Next(c ui.Context) (string, bool) {
	if !p.known || len(p.night.Rows) == 0 {
		return "", false
	}
	row, block := p.at()
	r := p.night.Rows[row]
	if block < 0 {
		return fmt.Sprintf("court %s: nobody has played here", r.Court), true
	}
	b := r.Blocks[block]
	clock := func(t time.Time) string { return t.In(c.Now.Location()).Format("15:04") }
	text := fmt.Sprintf("court %s, ", r.Court)
	if b.Round > 0 {
		text += fmt.Sprintf("round %d, ", b.Round)
	}
	switch b.Kind {
	case timeline.Forecast:
		text += fmt.Sprintf("about %s to %s", clock(b.From), clock(b.Until))
	case timeline.Going:
		text += clock(b.From) + " to now"
	default:
		text += fmt.Sprintf("%s to %s, %d min", clock(b.From), clock(b.Until), int(b.Until.Sub(b.From).Minutes()+0.5))
	}
	if b.A[0] == "" {
		return text + ": who plays is decided when the court frees", true
	}
	between := " v "
	if score := p.score(b); score != "" {
		between = " " + score + " "
	}
	return text + ": " + c.Names.FullTeam(b.A) + between + c.Names.FullTeam(b.B), true
}

// score is what a block has of a score.
func (p *Page) score(b timeline.Block) string {
	g := p.night.Night.Game(b.Game)
	switch {
	case g == nil:
		return ""
	case g.Final != nil:
		return session.ScoreText(*g.Final)
	case len(g.Rallies) > 0:
		return fmt.Sprintf("%d-%d", g.State.Score.A, g.State.Score.B)
	}
	return ""
}

// Lines implements ui.Screen.
func (p *Page) Lines(c ui.Context) []string {
	if !p.known {
		return []string{"", "  No night was opened yet."}
	}
	if len(p.night.Rows) == 0 {
		return []string{"", "  This night has no courts."}
	}
	s := p.scale(c)
	out := []string{p.head(c), s.clocks(c)}
	for i := s.first; i < s.first+s.rows; i++ {
		out = append(out, p.rowLines(c, s, i)...)
	}
	foot := p.foot(c, s)
	for len(out) < c.Height-len(foot) {
		out = append(out, "")
	}
	return append(out[:min(len(out), max(0, c.Height-len(foot)))], foot...)
}

// wideHead is the least width at which the head has room for all that it says.
const wideHead = 100

// head says what is seen.
func (p *Page) head(c ui.Context) string {
	day := p.night.Night.Opened.In(c.Now.Location()).Format("2 January")
	signs := "; a block is a game, dots are idle, dashes are foretold"
	if c.Width < wideHead {
		signs = "; dots: idle, dashes: foretold"
	}
	return line.Spread(c.Theme.Title.Render("The night by its courts")+c.Theme.Dim.Render("  "+day+signs), c.Theme.Dim.Render("idle"), c.Width)
}

// foot sums the night up.
func (p *Page) foot(c ui.Context, s scale) []string {
	t := p.night
	var out []string
	for _, h := range t.Holds {
		until := h.Until.In(c.Now.Location()).Format("15:04")
		if t.Night.Hold != nil && h.Until.Equal(t.Now) {
			until = "now"
		}
		out = append(out, fmt.Sprintf("held: %s, %s to %s", h.Why, h.From.In(c.Now.Location()).Format("15:04"), until))
	}
	if len(out) > 2 {
		out = append(out[:1], fmt.Sprintf("and %d more holds", len(out)-1))
	}
	text := fmt.Sprintf("Courts idle %d min in all, %.0f %% of their time. A game takes about %d min.", int(t.Idle.Minutes()+0.5), 100*t.IdleShare(), int(t.Expected.Minutes()+0.5))
	if !t.Closing.IsZero() && t.Night.IsOpen() {
		text += " Closing " + t.Closing.In(c.Now.Location()).Format("15:04") + "."
		if fit, ok := t.Night.Fit(t.Now); ok {
			text += fmt.Sprintf(" More rounds until then: %d nearly sure, %d with an even chance.", fit.Sure, fit.Even)
		}
	}
	if more := len(t.Rows) - s.rows; more > 0 {
		word := "courts"
		if more == 1 {
			word = "court"
		}
		text = fmt.Sprintf("%d more %s (↑↓). ", more, word) + text
	}
	lines := slices.Concat(out, line.Wrap(text, c.Width))
	for i := range lines {
		lines[i] = c.Theme.Dim.Render(line.Cut(lines[i], c.Width))
	}
	if c.Height > 20 {
		return slices.Concat([]string{"", s.use(c, t)}, lines)
	}
	return lines[max(0, len(lines)-max(1, c.Height/4)):]
}
