package session

import (
	"fmt"
	"slices"
	"strings"
)

// Differences lists in words what two clubs that share people know otherwise about them: name, group and
// level. People are compared by identity; those of one club alone are no difference.
func Differences(ours, theirs *Club) (out []string) {
	for _, p := range ours.People {
		i := slices.IndexFunc(theirs.People, func(q Person) bool { return q.ID == p.ID })
		if i < 0 {
			continue
		}
		var what []string
		tell := func(name, here, there string) {
			if here != there {
				what = append(what, fmt.Sprintf("%s %s here, %s there", name, here, there))
			}
		}
		q := theirs.People[i]
		tell("called", p.Name, q.Name)
		tell("group", orNone(p.Group), orNone(q.Group))
		tell("level", levelWords(p.Level), levelWords(q.Level))
		if len(what) > 0 {
			out = append(out, p.Name+": "+strings.Join(what, "; "))
		}
	}
	return out
}

func orNone(text string) string {
	if text == "" {
		return "none"
	}
	return text
}

func levelWords(level float64) string {
	if level == 0 {
		return "none"
	}
	return fmt.Sprint(level)
}
