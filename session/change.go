package session

import (
	"fmt"
	"slices"
	"strings"
)

// Change says what a new plan left of the one that people have seen.
type Change struct {
	Games  int // games that were shown for the rounds to come
	Kept   int // those of them that are still planned: in the same round, on the same court, in the same teams
	Rounds []ChangedRound
}

// ChangedRound is a round to come that is not as it was shown.
type ChangedRound struct {
	Number int
	Moved  []Move
}

// Move is somebody who is elsewhere in a round than was shown: on another court, or with other people on it.
type Move struct {
	Person   PersonID
	From, To CourtID // "" for who sat out, or was not in the round
}

// Changed compares rounds to come with those that were shown before. First is the number of the first of them.
func Changed(shown, rounds []PlannedRound, first int) Change {
	var c Change
	for r := range min(len(shown), len(rounds)) {
		round := ChangedRound{Number: first + r}
		kept := 0
		for _, g := range shown[r].Games {
			if slices.ContainsFunc(rounds[r].Games, g.same) {
				kept++
			}
		}
		c.Games, c.Kept = c.Games+len(shown[r].Games), c.Kept+kept
		if kept == len(shown[r].Games) && len(rounds[r].Games) == kept {
			continue
		}
		was, is := shown[r].places(), rounds[r].places()
		for _, id := range rounds[r].everybody() {
			if was[id] != is[id] {
				round.Moved = append(round.Moved, Move{id, was[id], is[id]})
			}
		}
		c.Rounds = append(c.Rounds, round)
	}
	for _, r := range shown[min(len(shown), len(rounds)):] {
		c.Games += len(r.Games)
	}
	return c
}

// same tells whether two games are of the same teams on the same court, whichever team is named first.
func (g PlannedGame) same(o PlannedGame) bool {
	team := func(a, b Team) bool { return a == b || a == Team{b[1], b[0]} }
	return g.Court == o.Court && (team(g.A, o.A) && team(g.B, o.B) || team(g.A, o.B) && team(g.B, o.A))
}

// places are the courts on which people play.
func (r PlannedRound) places() map[PersonID]CourtID {
	out := map[PersonID]CourtID{}
	for _, g := range r.Games {
		for _, id := range []PersonID{g.A[0], g.A[1], g.B[0], g.B[1]} {
			if id != "" {
				out[id] = g.Court
			}
		}
	}
	return out
}

// everybody lists whom the round names, in the order of the courts.
func (r PlannedRound) everybody() []PersonID {
	var out []PersonID
	for _, g := range r.Games {
		for _, id := range []PersonID{g.A[0], g.A[1], g.B[0], g.B[1]} {
			if id != "" {
				out = append(out, id)
			}
		}
	}
	return append(out, r.Out...)
}

// mostChanged is how many rounds a change tells about before it only counts them.
const mostChanged = 2

// Words say what changed, with people by the names that they are given. It is empty where nothing was shown.
func (c Change) Words(name func(PersonID) string) string {
	if c.Games == 0 {
		return ""
	}
	text := fmt.Sprintf("%d of %s stay", c.Kept, Counted(c.Games, "coming game"))
	switch c.Kept {
	case c.Games:
		text = "all of " + Counted(c.Games, "coming game") + " stay"
	case 0:
		text = "none of " + Counted(c.Games, "coming game") + " stays"
	case 1:
		text += "s"
	}
	var parts []string
	for k, r := range c.Rounds {
		if k == mostChanged {
			parts = append(parts, Counted(len(c.Rounds)-k, "more round")+" changed")
			break
		}
		parts = append(parts, r.words(name))
	}
	return strings.Join(append([]string{text}, parts...), "; ")
}

// words say what changed in a round.
func (r ChangedRound) words(name func(PersonID) string) string {
	text := fmt.Sprintf("round %d: ", r.Number)
	if len(r.Moved) == 0 {
		return text + "other partners on the same courts"
	}
	a := r.Moved[0]
	switch len(r.Moved) {
	case 1:
		return text + name(a.Person) + " " + a.words()
	case 2:
		b := r.Moved[1]
		switch swap := a.From == b.To && a.To == b.From; {
		case swap && a.From != "" && a.To != "":
			return text + name(a.Person) + " and " + name(b.Person) + " swap courts"
		case swap && a.From == "":
			return text + name(a.Person) + " plays for " + name(b.Person)
		case swap:
			return text + name(b.Person) + " plays for " + name(a.Person)
		}
		return text + name(a.Person) + " " + a.words() + ", " + name(b.Person) + " " + b.words()
	}
	return text + fmt.Sprintf("%d people move", len(r.Moved))
}

// words say where somebody goes.
func (m Move) words() string {
	switch {
	case m.To == "":
		return "sits out"
	case m.From == "":
		return "plays on court " + string(m.To)
	}
	return "goes to court " + string(m.To)
}
