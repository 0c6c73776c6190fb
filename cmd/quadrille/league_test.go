package main

import (
	"strings"
	"testing"

	"club/quadrille/session"
)

// As many nights count as the desk has it, unless the command is told otherwise.
func TestTheLeagueCountsAsTheDeskHasIt(t *testing.T) {
	path, _ := oldFile(t, "club.qdb")
	league := func(args ...string) string {
		out, errs, code := quadrille(t, "", append([]string{"standings", "--league", "--data", path}, args...)...)
		if code != exitFine {
			t.Fatal(errs)
		}
		return strings.Join(strings.Fields(out), " ")
	}
	all, one := league(), league("--best", "1")
	if all == one {
		t.Fatalf("one night or all: %s", all)
	}
	keep(t, path, session.ChooseLeague{Best: 1})
	if got := league(); got != one {
		t.Errorf("the desk counts one night, and the command prints %s", got)
	}
}
