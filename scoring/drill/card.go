package drill

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Section is one thing a newcomer has to know.
type Section struct {
	Title string
	Text  string
	Rule  string // numbers in the USA Pickleball rulebook, 2025 edition unless it says otherwise
}

// Sections are the rules of side-out doubles that a first evening needs, in our words.
func Sections() []Section {
	return []Section{
		{"Start", "One server in the first turn of the game: 0-0-2.", "4.B.6; 2026: 5.B"},
		{"Call", "Your score, theirs, and which server you are, 1 or 2.", "4.A.1"},
		{"Boxes", "Own score even: your starting server stands right. Odd: left.", "4.B.4; 2026: 5.B.3"},
		{"Lines", "All are in, but a serve on the kitchen line is out.", "2.A, 7.D, 4.M; 2026: 7.E.1-4, 10.C.1"},
		{"Serve", "Underhand, from behind the baseline, into the box diagonally across. The ball may touch the net on its way there.", "4.A, 4.M"},
		{"Two bounces", "Serve and return bounce first. A volley is a hit before the bounce.", "7.A, section 3; 2026: 10.A"},
		{"Kitchen (non-volley zone)", "No volley in it or on its line, nor carried into it.", "9.B to 9.D; 2026: 11.A"},
		{"Fault", "Ball out, in the net, bounced twice, on your body; you touching the net.", "7.B to 7.H; 2026: 10.B, 10.C, 13.G"},
		{"Point", "Only the serving team scores. Partners change boxes, same server again.", "4.A, 4.B.4; 2026: 4.A"},
		{"Side out", "Lose the first serve: your partner serves from where they stand. Lose the second: the other team serves, first whoever stands in its right box.", "4.B.6; 2026: 5.B.2, 5.B.6"},
		{"Game", "To 11, ahead by 2. At 6 the teams switch ends.", "12.B; 2026: 21.B"},
	}
}

// Closing is the last line of the card.
const Closing = "The rulebook and your venue decide."

// The card fits a terminal of 80 columns and 24 rows, with a row to spare for a prompt.
const cardWidth = 80

// Card is a court to scale with its lines named and what a newcomer needs to know, in at most 23 lines of at most
// 80 columns, plain ASCII.
func Card() []string { return CardBeside(namedCourt(), Length+1, cardWidth) }

// CardBeside is the card with some other drawing of the court, of so many columns, in lines of at most width
// columns.
func CardBeside(court []string, courtWidth, width int) []string {
	sideWidth := width - courtWidth - 2
	size := fmt.Sprintf("%d x %d ft (13.41 x 6.10 m). Kitchen %d ft (2.13 m). Net %d in (0.91 m) at the sidelines, %d in (0.86 m) in the middle.",
		Length, Width, Kitchen, NetSide, NetCentre)
	side := wrap("Court: "+size, sideWidth)
	sections := Sections()
	for len(sections) > 0 {
		next := wrap(sections[0].line(), sideWidth)
		if len(side)+len(next) > len(court) {
			break
		}
		side = append(side, next...)
		sections = sections[1:]
	}
	var out []string
	for i, row := range court {
		if i < len(side) {
			row += strings.Repeat(" ", courtWidth+2-utf8.RuneCountInString(row)) + side[i]
		}
		out = append(out, row)
	}
	for _, s := range sections {
		out = append(out, wrap(s.line(), width)...)
	}
	return append(out, Closing)
}

func (s Section) line() string { return s.Title + ": " + s.Text }

// namedCourt is the court with the names of its parts, each written at the part.
func namedCourt() []string {
	c := newCourt(0)
	const right = Length/2 + Kitchen
	c.text(0, 16, "sideline")
	c.text(2, 4, "left box")
	c.text(8, 4, "right box")
	c.text(2, right+3, "right box")
	c.text(8, right+3, "left box")
	c.text(5, 2, "centre line")
	c.text(5, right+2, "centre line")
	for i, word := range []string{"kit-", "chen"} {
		c.text(4+i, Length/2-Kitchen+2, word)
		c.text(4+i, Length/2+2, word)
	}
	above := fmt.Sprintf("%-*s%-*s%*s", Length/2-1, "baseline", Kitchen, "net", Length/2-Kitchen+2, "baseline")
	below := fmt.Sprintf("%*s%*s", Length/2-1, "kitchen line", Kitchen*2, "kitchen line")
	return append(append([]string{above}, c.lines()...), below)
}

// wrap breaks words into lines of at most width columns.
func wrap(words string, width int) []string {
	var out []string
	line := ""
	for _, w := range strings.Fields(words) {
		switch {
		case line == "":
			line = w
		case len(line)+1+len(w) <= width:
			line += " " + w
		default:
			out = append(out, line)
			line = w
		}
	}
	return append(out, line)
}
