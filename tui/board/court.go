package board

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/session/public"
	"club/quadrille/tui/line"
	"club/quadrille/tui/widget"
)

// card is a court as it is drawn: the number at the left, beside it who plays, over all of it a line with the
// state in words.
type card struct {
	width, height int
	size          widget.Size // of the names
	beside        bool        // the teams stand beside each other, and not below
	number        int         // cells for the number
}

// gap is the room between a number and names, and between two teams.
const gap = 2

// cards finds out how the cards of some courts are drawn in a room, with names as large as they can be.
func (p pen) cards(courts []public.Court, width, height int) card {
	best := card{width: width, height: height}
	number := 0
	for _, c := range courts {
		s := p.numberSize(c.Name, width, height)
		if w, ok := p.width(c.Name, s); ok {
			number = max(number, w)
		}
	}
	best.number = number
	names := namesOn(courts)
	room := width - number - gap
	for _, s := range widget.Sizes {
		if teamsBelow(s) <= height-1 && p.most(names, s, room) {
			best.size = s
			break
		}
	}
	for _, s := range widget.Sizes {
		if larger(s, best.size) && stacked(2, s) <= height-1 && p.most(names, s, (room-gap)/2) {
			best.size, best.beside = s, true
			break
		}
	}
	return best
}

// teamsBelow is how many lines the names of two teams take below each other, with the net between them.
func teamsBelow(s widget.Size) int { return 2*stacked(2, s) + 1 }

// larger tells which of two sizes is read from further away: the higher one, or of equals the wider.
func larger(a, b widget.Size) bool {
	if a.Rows() != b.Rows() || b == none {
		return a != none && (b == none || a.Rows() > b.Rows())
	}
	return a.X > b.X
}

// numberSize is the size of a court's number: it may take a fifth of the card.
func (p pen) numberSize(name string, width, height int) widget.Size {
	return p.fit(name, max(width/5, 3), numberRoom(height), widget.Sizes[0])
}

// numberRoom is how many lines of a card a number may take: where it can, it leaves some for the sign below.
func numberRoom(height int) int {
	if rest := height - 1 - signSize.Rows() - 1; rest >= signSize.Rows() {
		return rest
	}
	return height - 1
}

// usual is how many letters of a text must have room wherever it stands. A longer one, or one in a script that has
// no letters here, must not make all others small, and is drawn smaller.
const usual = 11

// most tells whether nearly all texts have room, and all that are not unusually long.
func (p pen) most(texts []string, s widget.Size, width int) bool {
	fit, known := 0, 0
	for _, t := range texts {
		if _, ok := p.measure(t); !ok {
			continue
		}
		known++
		if w, ok := p.width(t, s); ok && w <= width {
			fit++
		} else if len(t) <= usual {
			return false
		}
	}
	return fit > 0 && 10*fit >= 9*known
}

// namesOn are the names that stand on some courts.
func namesOn(courts []public.Court) []string {
	var out []string
	for _, c := range courts {
		out = append(append(out, c.A...), c.B...)
	}
	return out
}

// small tells whether a card has no room for letters: then two lines of text are all there is.
func (k card) small() bool { return k.size == none }

// leastText is the height of a card of ordinary text.
const leastText = 3

// court draws a court on as many lines as the card has.
func (b *Board) court(c public.Court, k card, note string) []string {
	out := []string{b.headline(c, k, note)}
	if k.small() {
		out = append(out, b.textTeam(c, c.A, "a", k.width), b.textTeam(c, c.B, "b", k.width))
	} else {
		number := b.numberAndSign(c, k)
		names := b.teams(c, k)
		out = append(out, line.Beside(number, names, k.number, gap)...)
	}
	for len(out) < k.height {
		out = append(out, "")
	}
	for i, l := range out[:k.height] {
		out[i] = line.Fit(l, k.width)
	}
	return out[:k.height]
}

// signSize is that of the sign below a court's number.
var signSize = widget.Size{X: 1, Y: 1}

// numberAndSign is the number of a court, and below it, where there is room, in a word what it is in.
func (b *Board) numberAndSign(c public.Court, k card) []string {
	sign, room := signOf(c), numberRoom(k.height)
	out := b.pen.draw(c.Name, k.number, b.pen.fit(c.Name, k.number, room, widget.Sizes[0]), b.accent(c))
	if w, ok := b.pen.width(sign, signSize); !ok || w > k.number || room == k.height-1 {
		return out
	}
	return append(append(out, ""), b.pen.draw(sign, k.number, signSize, b.accent(c))...)
}

// signOf is the shortest word for what a court is in: the score, the minutes, or what to do.
func signOf(c public.Court) string {
	switch score := scoreOf(c); {
	case c.State == public.Called:
		return "go"
	case c.State == public.Planned:
		return "next"
	case score != "":
		return score
	case c.State == public.Playing:
		return fmt.Sprintf("%d'", c.Minutes)
	}
	return ""
}

// headline is the line over a court: its state in words, the number where it has no room of its own, and at the
// right end a note.
func (b *Board) headline(c public.Court, k card, note string) string {
	text := stateWord(c)
	if k.small() {
		text = strings.TrimSpace("Court " + c.Name + " " + text)
	}
	rule := "─"
	style := b.theme.Frame
	if c.State == public.Called {
		rule, style = "━", b.theme.FrameOn
	}
	if text != "" {
		text = " " + line.Cut(text, k.width-4) + " "
	}
	tail := max(0, k.width-2-line.Width(text))
	if room := tail - line.Width(note) - 4; note != "" && room > 0 {
		return style.Render(strings.Repeat(rule, 2)) + b.accent(c).Render(text) + style.Render(strings.Repeat(rule, room)) +
			" " + b.theme.Dim.Render(note) + " " + style.Render(strings.Repeat(rule, 2))
	}
	return style.Render(strings.Repeat(rule, 2)) + b.accent(c).Render(text) + style.Render(strings.Repeat(rule, tail))
}

// accent is how a court's number and state are set off.
func (b *Board) accent(c public.Court) lipgloss.Style {
	switch c.State {
	case public.Called:
		return b.theme.Selected
	case public.Over, public.Closed, public.Free:
		return b.theme.Dim
	case public.Planned:
		return b.theme.Next
	}
	return b.theme.Strong
}

// stateWord says what a court is in.
func stateWord(c public.Court) string {
	switch c.State {
	case public.Called:
		return "GO NOW"
	case public.Planned:
		return "NEXT"
	case public.Over:
		return strings.TrimSpace("over " + scoreOf(c))
	case public.Playing:
		return strings.TrimSpace(fmt.Sprintf("%d min %s", c.Minutes, scoreOf(c)))
	}
	return c.State
}

func scoreOf(c public.Court) string {
	if len(c.Score) != 2 {
		return ""
	}
	return fmt.Sprintf("%d-%d", c.Score[0], c.Score[1])
}

// teams are the names of a court, below or beside each other.
func (b *Board) teams(c public.Court, k card) []string {
	room := k.width - k.number - gap
	if len(c.A) == 0 {
		return nil
	}
	if k.beside {
		half := (room - gap) / 2
		return line.Beside(b.team(c, c.A, "a", half, k.size), b.team(c, c.B, "b", half, k.size), half, gap)
	}
	out := b.team(c, c.A, "a", room, k.size)
	out = append(out, b.theme.Frame.Render(strings.Repeat("╌", room)))
	return append(out, b.team(c, c.B, "b", room, k.size)...)
}

// team is a name below the other.
func (b *Board) team(c public.Court, names []string, side string, width int, s widget.Size) []string {
	var out []string
	for i, n := range names {
		if i > 0 && leading(s) > 0 {
			out = append(out, "")
		}
		out = append(out, b.pen.draw(n, width, s, b.teamStyle(c, side))...)
	}
	return out
}

// textTeam is a team on one line.
func (b *Board) textTeam(c public.Court, names []string, side string, width int) string {
	text := strings.Join(names, " & ")
	if c.Winner == side {
		text += " ✓"
	}
	return b.teamStyle(c, side).Bold(c.State != public.Over).Render(line.Cut(" "+text, width))
}

// teamStyle tells the teams apart by hue, which their places do too, and puts back what is over but for the winner.
func (b *Board) teamStyle(c public.Court, side string) lipgloss.Style {
	switch {
	case c.State == public.Over && c.Winner != side:
		return b.theme.Dim
	case side == "a":
		return b.theme.TeamA
	}
	return b.theme.TeamB
}

// grid is how courts share a room: on so many pages, each with rows of cards.
type grid struct {
	card            card
	columns, rows   int
	pages, fromEach int // how many pages, and courts on each
}

// mostPages is on how many pages the courts may stand: nobody waits for more.
const mostPages = 8

// readable is how high letters are that can be read across a hall, as a part of the screen: a screen half a
// metre high that hangs ten metres away shows them 4 cm high.
const readable = 14

// arrange finds the grid: one page if names on it can be read across the hall, else as many as it takes, up to
// mostPages, and otherwise the one with the largest names.
func (p pen) arrange(courts []public.Court, width, height, screen int) grid {
	var best grid
	for pages := 1; pages <= min(mostPages, max(1, len(courts))); pages++ {
		g := p.page(courts, width, height, pages)
		if pages == 1 || larger(g.card.size, best.card.size) {
			best = g
		}
		if best.card.size.Rows()*readable >= screen {
			break
		}
	}
	if best.card.small() {
		best = p.text(courts, width, height)
	}
	return best
}

// page finds the grid with the largest names for a number of pages.
func (p pen) page(courts []public.Court, width, height, pages int) grid {
	each := (len(courts) + pages - 1) / pages
	var best grid
	for columns := 1; columns <= max(1, each); columns++ {
		rows := (each + columns - 1) / columns
		k := p.cards(courts, (width-(columns-1)*gap)/columns, height/max(1, rows))
		if columns == 1 || larger(k.size, best.card.size) {
			best = grid{k, columns, rows, pages, each}
		}
	}
	return best
}

// text is the grid of ordinary text: as many courts on a page as have room.
func (p pen) text(courts []public.Court, width, height int) grid {
	const narrow = 34
	columns := max(1, (width+gap)/(narrow+gap))
	rows := max(1, height/leastText)
	columns = min(columns, max(1, len(courts)))
	each := columns * rows
	pages := max(1, (len(courts)+each-1)/each)
	return grid{card{width: (width - (columns-1)*gap) / columns, height: leastText}, columns, rows, pages, each}
}

// courts draws one page of some courts.
func (b *Board) courts(all []public.Court, g grid, page int) []string {
	var out []string
	from := min(page*g.fromEach, len(all))
	shown := all[from:min(from+g.fromEach, len(all))]
	note := ""
	if g.pages > 1 {
		note = fmt.Sprintf("page %d of %d", page+1, g.pages)
	}
	for row := range slices.Chunk(shown, max(1, g.columns)) {
		var lines []string
		for i, c := range row {
			drawn := b.court(c, g.card, note)
			note = ""
			if i == 0 {
				lines = drawn
				continue
			}
			lines = line.Beside(lines, drawn, i*(g.card.width+gap)-gap, gap)
		}
		out = append(out, lines...)
	}
	return out
}
