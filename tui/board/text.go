package board

import (
	"strings"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/tui/line"
	"club/quadrille/tui/widget"
)

// none is the size of ordinary text.
var none = widget.Size{}

// rowsOf is how many lines a text of a size takes.
func rowsOf(s widget.Size) int {
	if s == none {
		return 1
	}
	return s.Rows()
}

// leading is the room between two lines of a size. Ordinary text has it, and so have letters of an odd number of
// half lines.
func leading(s widget.Size) int {
	if s == none || s.Y == 1 {
		return 0
	}
	return 1
}

// stacked is how many lines some lines of a size take.
func stacked(k int, s widget.Size) int { return k*rowsOf(s) + (k-1)*leading(s) }

// pen draws text for one kind of terminal.
type pen struct {
	ascii bool
	dots  map[string]int // how wide texts are in letters, -1 where they cannot be drawn; measured once
}

func newPen(ascii bool) pen { return pen{ascii, map[string]int{}} }

// mostMeasured is how many texts are remembered: those of a large night, some times over.
const mostMeasured = 4096

// measure is how many dots wide a text is in letters. Ok is false when it cannot be drawn so.
func (p pen) measure(text string) (dots int, ok bool) {
	dots, known := p.dots[text]
	if !known {
		if dots, ok = widget.LettersDots(bare(text)); !ok {
			dots = -1
		}
		if len(p.dots) >= mostMeasured {
			clear(p.dots)
		}
		p.dots[text] = dots
	}
	return max(0, dots), dots >= 0
}

// width is how many cells a text takes in a size, and whether it can be drawn so.
func (p pen) width(text string, s widget.Size) (int, bool) {
	if s == none {
		return line.Width(text), true
	}
	if p.ascii && (s.X%2 != 0 || s.Y%2 != 0) {
		return 0, false
	}
	dots, ok := p.measure(text)
	return s.Cells(dots), ok
}

// bare is a text without the full stop at its end, which letters that are read from afar do without.
func bare(text string) string { return strings.TrimSuffix(text, ".") }

// fit is the largest size in which a text has room, at most a given one.
func (p pen) fit(text string, width, height int, most widget.Size) widget.Size {
	for _, s := range widget.Sizes {
		if s.Rows() > rowsOf(most) || s.X > most.X || s.Rows() > height {
			continue
		}
		if w, ok := p.width(text, s); ok && w <= width {
			return s
		}
	}
	return none
}

// draw is a text in a size, or in the largest below it that has room, on as many lines as the size has. What has
// room in no size is ordinary text, with blanks between the letters where they have room.
func (p pen) draw(text string, width int, s widget.Size, style lipgloss.Style) []string {
	height := rowsOf(s)
	out := make([]string, height)
	if fits := p.fit(text, width, height, s); fits != none {
		lines, _ := widget.Letters(bare(text), fits, p.ascii)
		top := (height - len(lines)) / 2
		for i, l := range lines {
			out[top+i] = style.Render(l)
		}
		return out
	}
	if apart := spaced(text); height > 1 && line.Width(apart) <= width {
		text = apart
	}
	out[height/2] = style.Bold(true).Render(line.Cut(text, width))
	return out
}

// spaced has a blank between the letters: where letters cannot be large they can at least be far apart.
func spaced(text string) string {
	var out []string
	for _, word := range strings.Fields(strings.ToUpper(text)) {
		out = append(out, strings.Join(strings.Split(word, ""), " "))
	}
	return strings.Join(out, "   ")
}

// largest is as large as a text of its own can be drawn in some room: in the middle, and broken into lines
// where that makes it larger.
func (p pen) largest(text string, width, height int, style lipgloss.Style) []string {
	best, broken := none, []string{text}
	for parts := 1; parts <= 4; parts++ {
		lines := balanced(text, parts)
		each := (height - (len(lines) - 1)) / len(lines)
		s := p.common(lines, width, each)
		if s.Y*1000+s.X > best.Y*1000+best.X {
			best, broken = s, lines
		}
	}
	if best == none {
		broken = line.Wrap(text, width)
	}
	var out []string
	for i, l := range broken {
		if i > 0 && best != none {
			out = append(out, "")
		}
		for _, drawn := range p.draw(l, width, best, style) {
			out = append(out, centred(drawn, width))
		}
	}
	return out[:min(len(out), max(0, height))]
}

// common is the largest size in which all of some texts have room.
func (p pen) common(texts []string, width, height int) widget.Size {
	for _, s := range widget.Sizes {
		if s.Rows() > height {
			continue
		}
		all := true
		for _, t := range texts {
			w, ok := p.width(t, s)
			all = all && ok && w <= width
		}
		if all {
			return s
		}
	}
	return none
}

// balanced breaks a text at blanks into at most so many lines of about equal length.
func balanced(text string, parts int) []string {
	words := strings.Fields(text)
	if parts > len(words) {
		parts = max(1, len(words))
	}
	for width := max(1, line.Width(text)/parts); ; width++ {
		var out []string
		for _, w := range words {
			if k := len(out); k > 0 && line.Width(out[k-1])+1+line.Width(w) <= width {
				out[k-1] += " " + w
				continue
			}
			out = append(out, w)
		}
		if len(out) <= parts {
			return out
		}
	}
}

func centred(text string, width int) string {
	return strings.Repeat(" ", max(0, (width-line.Width(text))/2)) + text
}
