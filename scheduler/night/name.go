package night

import (
	"strconv"
)

// personName returns the person's name, or a numbered stand-in for people without one.
func personName(people []Person, i Player) string {
	if name := people[i].Name; name != "" {
		return name
	}
	return "person " + strconv.Itoa(int(i)+1)
}

// courtName returns "court" with the court's name or, without one, its number.
func courtName(courts []CourtSpec, c Court) string {
	if name := courts[c].Name; name != "" {
		return "court " + name
	}
	return "court " + strconv.Itoa(int(c)+1)
}

// One counts a condition.
func One(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
