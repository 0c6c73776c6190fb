package ui

// Cursor is the place of the selected row in a list whose length may change under it.
type Cursor int

// page is how far page up and page down go.
const page = 10

// In is the selected row of a list of n rows, 0 when the list is empty.
func (c Cursor) In(n int) int { return max(0, min(int(c), n-1)) }

// Press moves the cursor of a list of n rows and tells whether the key was about that.
func (c *Cursor) Press(key string, n int) bool {
	by, ok := map[string]int{"up": -1, "down": 1, "pgup": -page, "pgdown": page, "home": -n, "end": n}[key]
	if ok {
		*c = Cursor(Cursor(c.In(n) + by).In(n))
	}
	return ok
}
