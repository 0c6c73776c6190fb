package ui

// Cursor is the place of the selected row in a list whose length may change under it.
type Cursor int

// page is how far page up and page down go.
const page = 10

// In is the selected row of a list of n rows, 0 when the list is empty.
func (c Cursor) In(n int) int { return max(0, min(int(c), n-1)) }

// Press moves the cursor of a list of n rows and tells whether the key was about that.
func (c *Cursor) Press(key string, n int) bool {
	by, ok := steps(page, n)[key]
	if ok {
		*c = Cursor(Cursor(c.In(n) + by).In(n))
	}
	return ok
}

// steps is how far the keys go that move in a list of n rows, of which a page is shown.
func steps(page, n int) map[string]int {
	return map[string]int{"up": -1, "down": 1, "pgup": -page, "pgdown": page, "home": -n, "end": n}
}

// moves are the keys of steps.
var moves = []string{"up", "down", "pgup", "pgdown", "home", "end"}

// Move is the action that moves the cursor of a list of n rows.
func (c *Cursor) Move(n int) Action {
	return Action{
		Key:   Bind("choose", "↑↓", moves...),
		About: "choose; page up and page down go ten rows, home and end all the way",
		Quiet: n == 0,
		Do: func(key string) Intent {
			c.Press(key, n)
			return nil
		},
	}
}

// Scroll is the action that moves the first row shown of rows, of which room fit on the screen.
func Scroll(top *int, rows, room int) Action {
	return Action{
		Key:   Bind("scroll", "↑↓", append(moves[:len(moves):len(moves)], " ")...),
		About: "scroll; page up, page down and space go a screen, home and end all the way",
		Do: func(key string) Intent {
			last := max(0, rows-room)
			by := steps(room, rows)
			by[" "] = room
			*top = max(0, min(last, min(last, *top)+by[key]))
			return nil
		},
	}
}

// Scroller is which lines of a page are seen that is longer than its space.
type Scroller struct{ top int }

// Actions is the action that scrolls the page; none where all of its rows fit.
func (s *Scroller) Actions(rows, room int) []Action {
	if rows <= room {
		return nil
	}
	return []Action{Scroll(&s.top, rows, room)}
}

// Seen are the lines that are seen.
func (s *Scroller) Seen(lines []string, room int) []string {
	top := min(s.top, max(0, len(lines)-room))
	return lines[top:min(len(lines), top+room)]
}
