// Package bench is the screen of those who wait: who, how long, and who is next.
package bench

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Bench is the screen of the people on the bench.
type Bench struct {
	cursor ui.Cursor
	asked  session.PersonID // who wants to know why not, empty for nobody
	head   string           // over what is answered
	why    []string         // what is answered
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
		b.move(len(people)),
		ui.Act(ui.Bind("page", "enter", "enter"), of(func(a session.Attendance) ui.Intent {
			return ui.ShowPerson{Person: a.Person, Among: ids(people)}
		})).Because(nobody).Explained("the person's page: the night, sit-outs, whom met, rating"),
		ui.Act(ui.Bind("why not me?", "y", "y"), of(func(a session.Attendance) ui.Intent {
			if b.asked == a.Person {
				b.asked = "" // asked again, the answer goes
			} else {
				b.asked = a.Person
			}
			b.Survey(c)
			return nil
		})).Because(nobody).Explained("why this person is not called next, with figures; again takes the answer away"),
		ui.Act(ui.Bind("rest / back", "space", " "), of(toggle)).Because(nobody),
		ui.Act(ui.Bind("leave", "l", "l"), of(leave)).Because(nobody),
	}
}

// move goes through the list. An answer to somebody else's question goes.
func (b *Bench) move(rows int) ui.Action {
	a := b.cursor.Move(rows)
	move := a.Do
	a.Do = func(key string) ui.Intent {
		b.asked, b.why = "", nil
		return move(key)
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
func (b *Bench) Click(c ui.Context, _, y int) ui.Intent {
	if c.Night() == nil {
		return nil
	}
	people := waiting(c.Night())
	from, until := line.Window(len(people), listHeight(c, b.below(c)), b.cursor.In(len(people)))
	i := from + y - listTop
	switch {
	case i < from || i >= until:
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
	n := c.Night()
	if n == nil {
		return nil
	}
	people := waiting(n)
	width := min(c.Width, 90)
	head := columns("", fmt.Sprintf("on the bench: %d", len(n.Bench())), "waits", "plays in", "games", "sat out", "", width)
	out := []string{c.Theme.Dim.Render(head), ""}
	if len(people) == 0 {
		out = append(out, "Nobody waits: everybody who is here plays.")
	}
	coming := b.below(c) // worked out once a frame: what it says about time takes the machine a while
	cursor := b.cursor.In(len(people))
	from, until := line.Window(len(people), listHeight(c, coming), cursor)
	barred := notCalled(c)
	for i, a := range people[from:until] {
		text := row(c, n, a, from+i, width, barred[a.Person])
		if from+i == cursor {
			text = c.Theme.Selected.Render(">" + text[1:])
		}
		out = append(out, text)
	}
	for len(out) < c.Height-len(coming) {
		out = append(out, "")
	}
	return append(out, coming...)
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

func row(c ui.Context, n *session.Night, a session.Attendance, place, width int, barred bool) string {
	wait, turn := fmt.Sprintf("%d min", int(a.Waited(c.Now).Minutes())), ""
	switch {
	case a.State == session.Resting:
		wait = "rests"
	case barred:
		turn = "not called"
	case n.LastCall:
		turn = "no more"
	case len(n.Running()) > 0 && n.Settings.Flow == session.Rolling:
		w := n.NextTurn(place, c.Now)
		turn = fmt.Sprintf("%d-%d min", int(w.Early.Minutes()), int(w.Late.Minutes()))
	}
	had := n.TurnsOf(a.Person)
	return columns("", c.Names.Full(a.Person), wait, turn, fmt.Sprint(had.Games), fmt.Sprint(had.SatOut), had.Also(), width)
}

// columns lays out one line of the list. What else there was of somebody's games stands beside the name, for
// it is rare.
func columns(mark, name, wait, turn, games, out, also string, width int) string {
	const numbers = 8 + 12 + 7 + 9
	names := max(8, width-2-numbers)
	if also != "" {
		name = line.Spread(name, also, names)
	}
	return line.Fit(mark, 2) + line.Fit(name, names) + line.Right(wait, 8) +
		line.Right(turn, 12) + line.Right(games, 7) + line.Right(out, 9)
}
