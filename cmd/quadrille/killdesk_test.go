//go:build !windows

package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
	"club/quadrille/store"
)

// The real desk is killed at 6 random moments (300 with QUADRILLE_LONG=1) while somebody checks people in
// and scores games rally by rally. Whatever the screen called saved must be in the file, which is sound,
// holds whole actions only, and opens again with the next desk.
func TestKilledDeskLosesNothingThatItCalledSaved(t *testing.T) {
	kills := 6
	if os.Getenv("QUADRILLE_LONG") == "1" {
		kills = 300
	}
	bin := build(t)
	path := fullHall(t, 4)
	dice := rand.New(rand.NewPCG(21, 22))
	seen := 0
	for kill := range kills {
		if kill%40 == 39 { // a new night, so that courts do not run out of games
			path = fullHall(t, 4)
		}
		desk := bin.open(t, 100, 30, nil, "--data", path).Shows("q quit")
		typeAlong(desk, dice, kill)
		<-desk.exited
		seen += mustHoldWhatWasSaved(t, path, desk.Raw())
	}
	t.Logf("%d kills; the screens called %d actions saved", kills, seen)
	if seen < kills {
		t.Errorf("only %d actions were seen in %d kills", seen, kills)
	}
}

// typeAlong types what an organiser may, and goes on doing so while the desk is killed: at any moment after
// its screen has called some actions saved, one to four.
func typeAlong(desk *terminal, dice *rand.Rand, kill int) {
	enough, killed := 1+dice.IntN(4), false
	for n := 0; desk.running(); n++ {
		keys := []string{"\x1b[C", fmt.Sprintf("11 %d", dice.IntN(10)), "\r"} // a score of the next court
		if dice.IntN(3) == 0 {
			keys = []string{"d", fmt.Sprintf("Guest K%dN%d", kill, n), "\r", "\t"} // somebody at the door, and back
		}
		for _, key := range keys {
			if _, err := desk.line.WriteString(key); err != nil {
				return
			}
			time.Sleep(time.Duration(4+dice.IntN(12)) * time.Millisecond)
		}
		if !killed && len(saved.FindAllString(desk.Raw(), -1)) >= enough {
			killed = true
			time.AfterFunc(time.Duration(dice.IntN(60_000))*time.Microsecond, func() { _ = desk.cmd.Process.Kill() })
		}
	}
}

// saved finds what the screen calls saved, in the desk's words.
var saved = regexp.MustCompile(`Saved: ([^\x1b\r\n]+)`)

// mustHoldWhatWasSaved checks the file that a killed desk left against all that its screen showed, and gives
// how many actions that were.
func mustHoldWhatWasSaved(t *testing.T, path, raw string) int {
	t.Helper()
	report, err := store.Check(path)
	if err != nil || !report.Sound() {
		t.Fatalf("the file is damaged: %v %s", err, report)
	}
	view, err := store.Look(path)
	if err != nil {
		t.Fatal(err)
	}
	l, err := session.Open(view)
	if err != nil {
		t.Fatal(err)
	}
	var done []string
	for _, a := range l.Actions() {
		done = append(done, l.Describe(a))
	}
	found := map[string]bool{}
	for _, m := range saved.FindAllStringSubmatch(raw, -1) {
		text := strings.TrimRight(m[1], " …")
		if !slices.ContainsFunc(done, func(action string) bool { return strings.HasPrefix(action, text) }) {
			t.Fatalf("the screen says %q is saved, and the file has nothing of it:\n%s", text, strings.Join(done, "\n"))
		}
		found[text] = true
	}
	return len(found)
}
