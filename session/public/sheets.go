package public

import (
	"fmt"

	"club/quadrille/session"
)

// Names says how the people of a night are called where others see it too, and who of them is hidden. Names are unlike
// each other: where several people are hidden, each is somebody with a number.
func Names(club *session.Club, n *session.Night) (called func(session.PersonID) string, hidden func(session.PersonID) bool) {
	shown := namesOf(club, n)
	covered := map[session.PersonID]string{}
	for _, a := range n.Roll {
		if _, ok := shown[a.Person]; !ok {
			covered[a.Person] = Somebody
			if k := len(covered); k > 1 {
				covered[a.Person] = fmt.Sprintf("%s %d", Somebody, k)
			}
		}
	}
	called = func(id session.PersonID) string {
		if text, ok := covered[id]; ok {
			return text
		}
		return shown.player(id)
	}
	return called, func(id session.PersonID) bool { return covered[id] != "" }
}
