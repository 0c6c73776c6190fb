// Package bench is the screen of those who wait: who, how long, and who is next.
package bench

import (
	"fmt"
	"math"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/hand"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// Bench is the screen of the people on the bench.
type Bench struct {
	cursor ui.Cursor
	asked  session.PersonID // who wants to know why not, empty for nobody
	head   string           // over what is answered
	why    []string         // what is answered
	facts  facts
}

// New makes the screen.
func New() *Bench { return &Bench{} }

// Typing implements ui.Screen.
func (b *Bench) Typing() bool { return false }

// Actions implements ui.Screen.
func (b *Bench) Actions(c ui.Context) []ui.Action {
	n := c.Night()
	if n == nil {
		return nil
	}
	people := waiting(n)
	of := func(do func(session.Attendance) ui.Intent) func() ui.Intent {
		return func() ui.Intent { return do(people[b.cursor.In(len(people))]) }
	}
	nobody := ""
	if len(people) == 0 {
		nobody = "nobody waits, and nobody rests"
	}
	return []ui.Action{
		b.move(c, len(people)),
		ui.Act(ui.Bind("page", "enter", "enter"), of(func(a session.Attendance) ui.Intent {
			return ui.ShowPerson{Person: a.Person, Among: ids(people)}
		})).Because(nobody).Explained("the person's page: the night, sit-outs, whom met, rating"),
		ui.Act(ui.Bind("why not me?", "y", "y"), of(func(a session.Attendance) ui.Intent {
			if b.asked == a.Person {
				b.asked = "" // asked again, the answer goes
			} else {
				b.asked = a.Person
			}
			b.head, b.why = answer(c, b.asks(c))
			return nil
		})).Because(nobody).Explained("why this person is not called next, with figures; again takes the answer away"),
		ui.Act(ui.Bind("put first", "p", "p"), of(func(a session.Attendance) ui.Intent { return hand.First(a.Person) })).
			Because(nobody).Explained("by the organiser's decision this person plays next; what it costs is shown before, and history notes it"),
		ui.Act(ui.Bind("these two next", "+", "+"), func() ui.Intent { return hand.Partners(c) }).
			Explained("two people play next, as partners: what it costs is shown before").Quietly(),
		ui.Act(ui.Bind("rest / back", "space", " "), of(toggle)).Because(nobody),
		ui.Act(ui.Bind("leave", "l", "l"), of(leave)).Because(nobody),
	}
}

// move goes through the list. An answer to somebody else's question goes.
func (b *Bench) move(c ui.Context, rows int) ui.Action {
	a := b.cursor.Move(rows)
	move := a.Do
	a.Do = func(key string) ui.Intent {
		b.asked = ""
		i := move(key)
		if !wide(c) {
			b.why = nil
			return i
		}
		asked := b.asks(c)
		return ui.Own{Do: func() tea.Cmd { // why the person under the cursor is not called next stands beside the list
			return func() tea.Msg {
				head, why := answer(c, asked)
				return ui.Worked{Take: func() {
					if b.asks(c) == asked {
						b.head, b.why = head, why
					}
				}}
			}
		}}
	}
	return a
}

// Leave implements ui.Leaver.
func (b *Bench) Leave() { b.asked, b.why = "", nil }

func ids(people []session.Attendance) []session.PersonID {
	out := make([]session.PersonID, len(people))
	for i, a := range people {
		out[i] = a.Person
	}
	return out
}

func leave(a session.Attendance) ui.Intent {
	return ui.Do{Command: session.Leave{Person: a.Person}}
}

// toggle lets somebody on the bench rest, or brings somebody who rests back.
func toggle(a session.Attendance) ui.Intent {
	if a.State == session.Resting {
		return ui.Do{Command: session.CheckIn{Person: a.Person}}
	}
	return ui.Do{Command: session.Rest{Person: a.Person}}
}

// waiting lists the bench and then those who rest.
func waiting(n *session.Night) []session.Attendance {
	out := n.Bench()
	for _, a := range n.Roll {
		if a.State == session.Resting {
			out = append(out, a)
		}
	}
	return out
}

// Click implements ui.Screen: a click selects, a click on what is selected shows the page.
func (b *Bench) Click(c ui.Context, x, y int) ui.Intent {
	if c.Night() == nil {
		return nil
	}
	people := waiting(c.Night())
	from, until := line.Window(len(people), listHeight(c, b.under(c)), b.cursor.In(len(people)))
	i := from + y - listTop
	switch {
	case i < from || i >= until || x >= listWidth(c):
		return nil
	case i == b.cursor.In(len(people)):
		return ui.ShowPerson{Person: people[i].Person, Among: ids(people)}
	}
	b.cursor, b.asked, b.why = ui.Cursor(i), "", nil
	return nil
}

// listTop is the line on which the list begins.
const listTop = 2

// listHeight is how many people fit above what is said about the next call.
func listHeight(c ui.Context, coming []string) int {
	return max(1, c.Height-listTop-len(coming)-1)
}

// Lines implements ui.Screen.
func (b *Bench) Lines(c ui.Context) []string {
	if c.Night() == nil {
		return nil
	}
	if !wide(c) {
		below := b.below(c)
		out := b.list(c, below)
		for len(out) < c.Height-len(below) {
			out = append(out, "")
		}
		return append(out, below...)
	}
	left, right := c, c
	left.Width = listWidth(c)
	right.Width = c.Width - left.Width - 3
	shares := b.sharesOf(left)
	rows, beside := append(b.list(left, shares), shares...), b.beside(right)
	out := make([]string, c.Height)
	for y := range out {
		text := ""
		if y < len(rows) {
			text = rows[y]
		}
		out[y] = line.Fit(text, left.Width) + c.Theme.Frame.Render(" │ ")
		if y < len(beside) {
			out[y] += line.Cut(beside[y], right.Width)
		}
	}
	return out
}

// wide tells whether there is room for what comes next beside the list.
func wide(c ui.Context) bool { return c.Width >= 160 }

// listWidth is how wide the list is.
func listWidth(c ui.Context) int {
	if wide(c) {
		return c.Width/2 - 2
	}
	return c.Width
}

// list is the bench, as many of it as fit above what is said under it.
func (b *Bench) list(c ui.Context, under []string) []string {
	n := c.Night()
	people := waiting(n)
	width := min(c.Width, 100)
	out := []string{c.Theme.Dim.Render(columns("", fmt.Sprintf("on the bench: %d", len(n.Bench())), "waits", "plays in", "games", "sat out", "", width)), ""}
	if len(people) == 0 {
		out = append(out, "Nobody waits: everybody who is here plays.")
	}
	cursor := b.cursor.In(len(people))
	from, until := line.Window(len(people), listHeight(c, under), cursor)
	barred := notCalled(c)
	for i, a := range people[from:until] {
		text := b.row(c, n, a, width, barred[a.Person])
		if from+i == cursor {
			text = c.Theme.Selected.Render(">" + text[1:])
		}
		out = append(out, text)
	}
	return out
}

// under is what stands under the list: an answer and who is called next, or where that stands beside it, how often
// everybody sat out.
func (b *Bench) under(c ui.Context) []string {
	if wide(c) {
		c.Width = listWidth(c)
		return b.sharesOf(c)
	}
	return b.below(c)
}

// notCalled is everybody who waits and is not called until something is put right.
func notCalled(c ui.Context) map[session.PersonID]bool {
	out := map[session.PersonID]bool{}
	for _, b := range c.Advice.Barred {
		for _, id := range b.People {
			out[id] = true
		}
	}
	return out
}

func (b *Bench) row(c ui.Context, n *session.Night, a session.Attendance, width int, barred bool) string {
	w := b.facts.waits[a.Person]
	wait, turn := fmt.Sprintf("%d min", int(w.Waited.Minutes())), ""
	pin, first := n.PinOf(a.Person)
	switch {
	case a.State == session.Resting:
		wait = "rests"
	case barred:
		turn = "not called"
	case n.LastCall:
		turn = "no more"
	case first && pin.Out:
		turn = "out, by hand"
	case first:
		turn = "next, by hand"
	case len(n.Running()) > 0 && n.Settings.Flow == session.Rolling:
		turn = fmt.Sprintf("%d-%d min", int(w.Turn.Early.Minutes()), int(w.Turn.Late.Minutes()))
	}
	had := b.facts.turns[a.Person]
	name := c.Names.Full(a.Person)
	if b.facts.longest > 0 && width >= 90 && a.State != session.Resting {
		bar := widget.Blocks(waitBar, math.Floor(w.Waited.Minutes()), b.facts.longest)
		wait = line.Fit(bar, waitBar) + line.Right(wait, 7)
	}
	return columns("", name, wait, turn, fmt.Sprint(had.Games), fmt.Sprint(had.SatOut), had.Also(), width)
}

// waitBar is the length of the longest wait.
const waitBar = 16

// columns lays out one line of the list. What else there was of somebody's games stands beside the name, for
// it is rare.
func columns(mark, name, wait, turn, games, out, also string, width int) string {
	waits := 8
	if width >= 90 {
		waits += waitBar // the wait as a length
	}
	numbers := waits + 14 + 7 + 9
	names := max(8, width-2-numbers)
	if also != "" {
		name = line.Spread(name, also, names)
	}
	return line.Fit(mark, 2) + line.Fit(name, names) + line.Right(wait, waits) +
		line.Right(turn, 14) + line.Right(games, 7) + line.Right(out, 9)
}
