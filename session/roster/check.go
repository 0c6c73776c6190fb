package roster

import (
	"fmt"
	"slices"
	"strings"

	"club/quadrille/session/name"
)

// check looks at what only the whole roster can tell: names must differ, and wishes must be about
// people of the roster.
func check(entries []Entry) error {
	if len(entries) == 0 {
		return fmt.Errorf("the roster has a header and no people below it")
	}
	lines := map[string]int{}
	for _, e := range entries {
		key := name.Fold(e.Name)
		if first, ok := lines[key]; ok {
			return fmt.Errorf("roster line %d: %s stands on line %d already: add a second name to tell them apart", e.Line, e.Name, first)
		}
		lines[key] = e.Line
	}
	for _, e := range entries {
		others := slices.Concat(e.KeepApart, e.NotPartner)
		for _, p := range e.PartnerWith {
			others = append(others, p.Name)
		}
		for _, other := range others {
			switch _, ok := lines[name.Fold(other)]; {
			case !ok:
				return fmt.Errorf("roster line %d: %s names %s, who is not on the roster", e.Line, e.Name, other)
			case strings.EqualFold(other, e.Name):
				return fmt.Errorf("roster line %d: %s cannot be with or apart from the same person", e.Line, e.Name)
			}
		}
	}
	return nil
}
