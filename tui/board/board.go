// Package board draws a night for everybody in the hall, on a screen that hangs on the wall: who plays where now
// and next, who waits, who leads, what the organiser says. It is told what there is to see and decides nothing;
// letters are as large as the screen allows.
package board

import (
	"fmt"
	"strings"
	"time"

	"club/quadrille/session/public"
	"club/quadrille/tui/line"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/widget"
)

// Board is a board at a moment.
type Board struct {
	view *public.View // nil before the first one
	away bool         // the desk is not there, and view is how it stood
	why  string       // why the board cannot follow the desk, "" if it could
	file string       // the club file that the board is about
	code func(text string, width, height int) []string

	theme         *theme.Theme
	pen           pen
	width, height int
	passed        time.Duration // since people were called last, or the board was opened: whose turn it is
}

// wide is the width from which lists stand beside the courts.
const wide = 120

// Lines draws the board: as many lines as it is high, none wider than it is wide.
func (b *Board) Lines() []string {
	var out []string
	switch v := b.view; {
	case b.why != "":
		out = b.only("", b.why)
	case v == nil:
		out = b.only("Waiting for the desk", "Open quadrille on "+b.file+" on this computer.")
	case !v.Open:
		out = b.only(v.Clock, "No night is open.")
	case v.Hold != nil:
		out = b.held(v)
	default:
		out = b.night(v)
	}
	if b.away && b.view != nil && b.why == "" {
		out = b.below(out, "The desk is not open. This is how it stood at "+b.view.Clock+".")
	}
	for len(out) < b.height {
		out = append(out, "")
	}
	out = out[:b.height]
	for i, l := range out {
		out[i] = b.theme.Finish(line.Cut(l, b.width))
	}
	return out
}

// below puts a line in the place of the last one.
func (b *Board) below(lines []string, text string) []string {
	if len(lines) >= b.height {
		lines = lines[:max(0, b.height-1)]
	}
	for len(lines) < b.height-1 {
		lines = append(lines, "")
	}
	return append(lines, b.theme.Selected.Render(line.Fit(" "+text, b.width)))
}

// only draws one thing in the middle of the screen, with some words below.
func (b *Board) only(large, small string) []string {
	words := line.Wrap(small, max(1, b.width-2))
	room := max(1, b.height-len(words)-2)
	var out []string
	if large != "" {
		out = b.pen.largest(large, b.width-2, room, b.theme.Strong)
	}
	out = append(out, "")
	for _, w := range words {
		out = append(out, centred(b.theme.Strong.Render(w), b.width))
	}
	return append(make([]string, max(0, (b.height-len(out))/2)), out...)
}

// held stands over everything: play is stopped for safety.
func (b *Board) held(v *public.View) []string {
	below := []string{fmt.Sprintf("For %d min so far. Stay off the courts until the organiser says so.", v.Hold.Minutes)}
	for _, m := range v.Messages {
		below = append(below, m.Text)
	}
	var words []string
	for _, text := range below {
		words = append(words, line.Wrap(text, b.width-2)...)
	}
	room := b.height - len(words) - 3
	why := b.pen.largest(v.Hold.Why, b.width-2, room*2/5, b.theme.Strong)
	out := b.pen.largest("Play held", b.width-2, room-len(why), b.theme.Bad)
	out = append(append(out, ""), why...)
	out = append(out, "")
	for _, w := range words {
		out = append(out, centred(b.theme.Strong.Render(w), b.width))
	}
	return append(make([]string, max(0, (b.height-len(out))/2)), out...)
}

// night draws a night that goes on: the head, the messages, and below them the courts with the lists beside
// them or in turns.
func (b *Board) night(v *public.View) []string {
	var messages []string
	for _, m := range v.Messages {
		messages = append(messages, b.message(m)...)
	}
	head := b.head(v, "")
	height := b.height - len(head) - len(messages)
	if b.away {
		height--
	}
	const apart = 3
	side := 0
	lists := b.turnsOfLists(v, b.width/3-apart, height)
	if b.width >= wide && len(lists) > 0 {
		side = b.width / 3
	}
	turns := b.turnsOfCourts(v, b.width-side, height)
	if side == 0 && !called(v) {
		turns = between(turns, b.turnsOfLists(v, b.width, height))
	}
	now := turns[whose(b.passed, turns)]
	if now.title != "" {
		head = b.head(v, now.title)
	}
	out := append(head, messages...)
	if side == 0 {
		return append(out, now.draw()...)
	}
	beside := lists[whose(b.passed, lists)].draw()
	return append(out, line.Beside(now.draw(), beside, b.width-side, apart)...)
}

// head is the round, or what is shown in its place, how much time is left, and the time of day.
func (b *Board) head(v *public.View, title string) []string {
	var parts []string
	if title != "" {
		parts = append(parts, title)
	} else if v.Round > 0 {
		parts = append(parts, fmt.Sprintf("Round %d of %d", v.Round, v.Rounds))
	}
	switch {
	case v.Closing != "" && v.Left > 0:
		parts = append(parts, fmt.Sprintf("%d min left", v.Left))
	case v.Closing != "":
		parts = append(parts, "Closing time")
	}
	parts = append(parts, v.Clock)
	size := none
	for _, s := range []widget.Size{{X: 4, Y: 2}, {X: 2, Y: 2}, {X: 2, Y: 1}, {X: 1, Y: 1}} {
		sum, ok := len(parts)*gap*2, true
		for _, p := range parts {
			w, drawn := b.pen.width(p, s)
			sum, ok = sum+w, ok && drawn
		}
		if ok && sum <= b.width && s.Rows()*8 <= b.height {
			size = s
			break
		}
	}
	if size == none {
		return []string{line.Spread(b.theme.Title.Render(v.Night), b.theme.Strong.Render(strings.Join(parts, " · ")), b.width)}
	}
	return b.spread(parts, size)
}

// spread draws texts over the width, the first at the left end and the last at the right.
func (b *Board) spread(parts []string, s widget.Size) []string {
	sum := 0
	for _, p := range parts {
		w, _ := b.pen.width(p, s)
		sum += w
	}
	between := (b.width - sum) / max(1, len(parts)-1)
	if len(parts) == 1 {
		between = b.width - sum
	}
	out := make([]string, s.Rows())
	at := 0
	for i, p := range parts {
		w, _ := b.pen.width(p, s)
		if len(parts) == 1 || i == len(parts)-1 {
			at = b.width - w
		}
		out = line.Beside(out, b.pen.draw(p, w, s, b.theme.Title), at, 0)
		at += w + between
	}
	return out
}

// message is a line of the organiser, as large as an eighth of the screen takes.
func (b *Board) message(m public.Message) []string {
	size := b.pen.fit(m.Text, b.width-2, max(1, b.height/8), widget.Sizes[0])
	var out []string
	for _, l := range b.pen.draw(m.Text, b.width-2, size, b.theme.Warn.Bold(true)) {
		out = append(out, centred(l, b.width))
	}
	return out
}
