package hold

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

const margin = 2

// Lines implements ui.Dialog: as large as there is room for everything.
func (p *Page) Lines(c ui.Context) []string {
	n := c.Night()
	if n == nil || n.Hold == nil {
		return []string{"", "  Play is not held."}
	}
	var out []string
	for _, size := range []struct{ words, minutes int }{{3, 3}, {2, 2}, {2, 1}, {1, 1}, {0, 1}, {0, 0}} {
		out = p.sized(c, n, size.words, size.minutes)
		if len(out) <= c.Height && widest(out) <= c.Width {
			break
		}
	}
	for i := range out {
		out[i] = line.Cut(out[i], c.Width)
	}
	return out[:min(len(out), c.Height)]
}

// sized is the page with its words and its minutes so many times the smallest that are read from afar; 0 is
// ordinary text.
func (p *Page) sized(c ui.Context, n *session.Night, words, minutes int) []string {
	var out []string
	if words == 0 {
		out = append(out, c.Theme.Bad.Render("  PLAY HELD"))
	} else {
		out = append(append(append(out, ""), poster(c.Theme.Bad, "PLAY HELD", words)...), "")
	}
	h := *n.Hold
	head := fmt.Sprintf("%s · since %s, %d min", h.Why, h.Since.In(c.Now.Location()).Format("15:04"), whole(c.Now.Sub(h.Since)))
	out = append(out, styled(c.Theme.Strong, head, c.Width)...)
	out = append(out, styled(c.Theme.Next, Caution(h.Why), c.Width)...)
	if minutes > 0 {
		out = append(out, "")
	}
	out = append(out, clock(c, h, minutes)...)
	if minutes > 0 {
		out = append(out, "")
	}
	return append(out, p.courts(c, n)...)
}

// clock is the minutes that count: for lightning those that are left, else those of the hold.
func clock(c ui.Context, h session.Hold, size int) []string {
	number, style := whole(c.Now.Sub(h.Since)), c.Theme.Strong
	text := []string{"minutes of the hold so far"}
	if h.Lightning() {
		number = int((h.ThunderLeft(c.Now) + time.Minute - 1) / time.Minute)
		text = thunderText(c, h)
		style = c.Theme.Next
	}
	if size == 0 {
		if !h.Lightning() {
			return nil
		}
		return styled(c.Theme.Next, fmt.Sprintf("%d %s", number, strings.Join(text, "; ")), c.Width)
	}
	rows := poster(style, fmt.Sprint(number), size)
	side := make([]string, (len(rows)-len(text))/2, len(rows))
	return line.Beside(rows, append(side, text...), line.Width(rows[0]), 2)
}

// thunderText is what the minutes that are left mean.
func thunderText(c ui.Context, h session.Hold) []string {
	at := h.LastThunder().In(c.Now.Location()).Format("15:04")
	since := "since the hold began, " + at
	if h.Heard > 0 {
		since = "since the last thunder, " + at
	}
	if h.ThunderLeft(c.Now) > 0 {
		return []string{"minutes of the 30 are left", since, "t at each new thunder"}
	}
	return []string{"minutes are left of the 30", since, "nothing starts by itself"}
}

// passed is how many whole minutes of session.ThunderWait are over.
func passed(h *session.Hold, c ui.Context) int {
	return whole(session.ThunderWait - h.ThunderLeft(c.Now))
}

// courtCell is the room that a court takes in the list of who was told.
const courtCell = 19

// courts lists who was told, and who is to be told.
func (p *Page) courts(c ui.Context, n *session.Night) []string {
	courts, untold := playing(n), n.Untold()
	if len(courts) == 0 {
		return []string{"  " + c.Theme.Dim.Render("No game goes on: nobody on a court needs to be told.")}
	}
	head := fmt.Sprintf("Told to stop: %d of %d courts", len(courts)-len(untold), len(courts))
	out := styled(c.Theme.Strong, head, c.Width)
	columns := max(1, (c.Width-margin)/courtCell)
	row := strings.Repeat(" ", margin)
	for i, k := range courts {
		if i > 0 && i%columns == 0 {
			out, row = append(out, row), strings.Repeat(" ", margin)
		}
		row += p.court(c, n, k, slices.Contains(untold, k.ID), i == p.cursor.In(len(courts)))
	}
	return append(out, row)
}

// court is one of them: its number, its score where it is known, and whether it was told.
func (p *Page) court(c ui.Context, n *session.Night, k session.Court, untold, selected bool) string {
	text, style := "told ✓", c.Theme.Dim
	if untold {
		text, style = "to tell", c.Theme.Strong
	}
	score := ""
	if g := n.Game(k.Game); len(g.Rallies) > 0 {
		score = g.State.Score.String()
	}
	text = line.Fit(line.Right(string(k.ID), 2)+" "+line.Fit(score, 5)+" "+text, courtCell-3)
	if selected && len(n.Untold()) > 0 {
		return c.Theme.Cursor.Render("▌") + c.Theme.Selected.Render(text) + "  "
	}
	return " " + style.Render(text) + "  "
}

// Click implements ui.Clicker: a click on a court chooses it, and on the chosen one notes that it was told.
func (p *Page) Click(c ui.Context, x, y int) ui.Intent {
	n := c.Night()
	if n == nil || n.Hold == nil {
		return nil
	}
	courts := playing(n)
	columns := max(1, (c.Width-margin)/courtCell)
	rows := (len(courts) + columns - 1) / columns
	row := y - (len(p.Lines(c)) - rows)
	at := row*columns + (x-margin)/courtCell
	switch {
	case row < 0 || x < margin || (x-margin)/courtCell >= columns || at >= len(courts):
		return nil
	case at != p.cursor.In(len(courts)):
		p.cursor = ui.Cursor(at)
		return nil
	}
	return p.courtActions(n)[0].Take("enter")
}

// poster is a text in large letters or digits.
func poster(style lipgloss.Style, text string, size int) []string {
	var out []string
	for _, row := range widget.Scaled(widget.Big(text, false), size) {
		out = append(out, "  "+style.Render(row))
	}
	return out
}

func styled(style lipgloss.Style, text string, width int) []string {
	var out []string
	for _, row := range line.Wrap(text, width-2*margin) {
		out = append(out, "  "+style.Render(row))
	}
	return out
}

func widest(lines []string) int {
	w := 0
	for _, l := range lines {
		w = max(w, line.Width(l))
	}
	return w
}

func whole(d time.Duration) int { return max(0, int(d.Minutes())) }

// Caution is the usual advice for a reason to hold play. For lightning see session.ThunderWait; the rest is
// plain caution.
func Caution(why string) string {
	why = strings.ToLower(why)
	switch {
	case session.Hold{Why: why}.Lightning():
		return "Go indoors; wait 30 minutes after the last thunder. Your venue decides."
	case strings.Contains(why, "heat"):
		return "Shade, water, rest; ask qualified people about anybody unwell."
	case strings.Contains(why, "injur"):
		return "Keep clear, get qualified help; in doubt call an ambulance. They decide."
	case strings.Contains(why, "wet"):
		return "Nobody plays on a wet court. Your venue decides."
	}
	return "Your venue's rules decide."
}
