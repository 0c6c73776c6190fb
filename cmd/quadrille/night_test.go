//go:build !windows

package main

import (
	"encoding/json"
	"fmt"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
	"club/quadrille/store"
)

// hall is an environment in whose time zone it is between six and seven in the evening, so that
// the times of a roster mean the same whenever the test is run.
func hall() []string {
	ahead := 18 - time.Now().UTC().Hour()
	return []string{fmt.Sprintf("TZ=Etc/GMT%+d", -ahead)} // these zones count westwards
}

// stateIn reads what is on disk, whether the desk has the file open or not.
func stateIn(t *testing.T, path string) *session.Ledger {
	t.Helper()
	kept, err := store.Look(path)
	if err != nil {
		t.Fatal(err)
	}
	ledger, err := session.Load(kept.Records(1))
	if err != nil {
		t.Fatal(err)
	}
	return ledger
}

// inJSON is a state as text, to compare two of them.
func inJSON(t *testing.T, l *session.Ledger) string {
	t.Helper()
	text, err := json.Marshal(l.Club())
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// rosterPath is the invented evening of 18 that the whole night is played with.
func rosterPath(t *testing.T) string {
	t.Helper()
	path, err := filepath.Abs("../../testdata/roster18.csv")
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// output is what a command without a terminal prints, while the desk is open or not.
func (p program) output(t *testing.T, args ...string) string {
	t.Helper()
	out, err := exec.Command(string(p), args...).Output()
	if err != nil {
		t.Fatalf("quadrille %s: %v", strings.Join(args, " "), err)
	}
	return string(out)
}

// passing is what a screen shows that time changes: the clock and the minutes of the games. How long they last is
// drawn in bars too, and when a round should be over in large digits.
var (
	passing = regexp.MustCompile(`\d\d:\d\d|─* *\d+ min|\d+′`)
	bars    = strings.NewReplacer("━", "─", "╌", "─", "▇", " ", "█", " ", "▀", " ", "▄", " ")
)

// lasting is a screen without what time changes and without the line of what was done last.
func lasting(screen string) string {
	lines := strings.Split(passing.ReplaceAllString(bars.Replace(screen), "…"), "\n")
	for i, text := range lines {
		if lines[i] = strings.TrimRight(text, " "); strings.HasPrefix(text, "Saved: ") {
			lines[i] = ""
		}
	}
	return strings.Join(lines, "\n")
}

// fill puts text into the field of a form that has this label.
func (s *terminal) fill(label, text string) *terminal {
	s.t.Helper()
	for range 40 {
		at := field(s.until("a field of a form", func(screen string) bool { return field(screen) != "" }).Screen())
		if at == label || strings.HasPrefix(at, label+" ") {
			return s.Press("ctrl+u").Type(text).Shows("> " + label)
		}
		s.Press("down").until("the field after "+at, func(screen string) bool { return field(screen) != "" && field(screen) != at })
	}
	s.t.Fatalf("the form has no field %q:\n%s", label, s.Screen())
	return s
}

// field is the field of a form that the cursor is on.
func field(screen string) string {
	_, after, _ := strings.Cut(screen, "│ > ")
	at, _, _ := strings.Cut(after, "│")
	return strings.TrimRight(at, " ")
}

// scores calls a round and types what was noted at its courts, all in one piece.
func (s *terminal) scores(round int, typed string) *terminal {
	s.t.Helper()
	s.Shows(fmt.Sprintf("call round %d of", round)).Press("n")
	s.Shows(fmt.Sprintf("round %d called", round))
	return s.Press("home").Type(typed)
}

// playedNight is what the typed scores of the night below come to, by rounds and courts.
var playedNight = [6][4]string{
	{"11-7", "11-9", "11-0", "4-11"},
	{"12-10", "7-11", "15-13", "11-2"},
	{"11-2", "11-3", "9-6 timed", "11-8"},
	{"11-9", "11-9", "11-9", "11-9"},
	{"11-5", "11-6", "10-5 retired, B won", "11-4"},
	{"3-11", "11-1", "0-11", "11-7"},
}

func testWholeNight(t *testing.T, bin program) { wholeNight(t, bin, 100, 32, false) }

// testRestlessNight is the same at 80 by 24 with another size of the terminal before each key.
func testRestlessNight(t *testing.T, bin program) { wholeNight(t, bin, 80, 24, true) }

func wholeNight(t *testing.T, bin program, width, height int, restless bool) {
	open := func(env []string, args ...string) *terminal {
		s := bin.open(t, width, height, env, args...)
		if restless {
			s.restless = [2]int{width, height}
		}
		return s
	}
	path := filepath.Join(t.TempDir(), "club.qdb")
	env := hall()
	desk := open(env, "--data", path)

	// Before: the night is opened with one form.
	desk.Shows("No night is open").Press("n").Shows("Open tonight")
	desk.fill("Night", "Club night").fill("Courts", "4").fill("Rounds", "6").Press("enter")
	desk.Shows("[Door]", "Club night")

	// Door: a roster, then people come in as fast as they can be typed.
	desk.Press("ctrl+o").Shows("Open a roster").fill("File", rosterPath(t)).Press("enter").Shows("0 here", "18 expected")
	desk.Type("agn\rbra\rcle\rdar\redd\rfin\rgre\rhug\r").Shows("8 here", "10 expected")
	for i, typed := range []string{"iris", "jon", "kaya", "lio", "maud", "nils", "oona", "pav", "rosa"} {
		desk.Type(typed).Press("enter").Shows(fmt.Sprintf("%d here", 9+i))
	}

	// Two rounds; the first scores come in one piece with the keys that save them.
	desk.Press("esc").Shows("[Courts]")
	desk.scores(1, "117\r11 9\r110\r4 11\r")
	desk.scores(2, "1210\r").Type("117\t\r").Type("15 13\r").Type("112\r")

	// Somebody leaves, and the next round is without that person.
	desk.Shows("call round 3 of").Press("d").Type("jonas").Press("right").Shows("leave for tonight").Press("l").Shows("Saved: Jonas Reed left")
	desk.Press("esc").Shows("[Courts]", "16 here")

	// A game is scored rally by rally in bursts, while somebody arrives.
	desk.scores(3, "\r").Shows("Call: 0 - 0 - 2").Type("aaab").Shows("Call: 0 - 3 - 1")
	desk.Type("bbaa").Shows("Call: 3 - 2 - 1").Type("b").Shows("Call: 3 - 2 - 2").Press("backspace").Shows("Call: 3 - 2 - 1")
	desk.Press("esc").Shows("[Courts]").Press("d").Shows("[Door]").Type("qui\r").Shows("Saved: Quinn Ashby checked in").Press("esc").Shows("[Courts]")
	desk.Press("home", "enter").Shows("Call: 3 - 2 - 1").Type("aaaaaaaa").Shows("11-2").Press("esc").Hides("side-out to 11")
	desk.Type("113\r9 6t\r").Type("118\r").Shows("call round 4 of", "17 here")

	// A wrong score is undone and redone; then it is set right.
	desk.scores(4, "119\r119\r119\r117\r").Shows("call round 5 of")
	desk.Press("u").Shows("undid: court 4").Press("U").Shows("redid: court 4").Press("u").Shows("Undo this?").Press("y").Shows("undid: court 4")
	desk.Press("end").Type("119\r").Shows("call round 5 of")

	// Standings, and out of the program in the middle of a round.
	desk.scores(5, "115\r").Type("116\r").Shows("; 2 to come")
	desk.Press("s").Shows("[Standings]", "Order:", "last 5").Press("esc").Shows("[Courts]")
	stands := []string{"▌ 1 ", "\nCourt 1: "}
	if !restless {
		stands = append(stands, "Round 6  not called yet") // there is room for what comes next
	}
	before := desk.Press("home").Shows(stands...).settle(width, height)
	if code := desk.Quit("q"); code != 0 {
		t.Fatalf("quitting gives exit code %d, want 0", code)
	}
	left, kept := stateIn(t, path), bin.output(t, "export", "--data", path)
	desk = open(env, "--data", path).Shows("[Courts]", "; 2 to come")
	desk.until("the screen as it was left\n"+before, func(screen string) bool { return lasting(screen) == before })
	if got, want := inJSON(t, left), inJSON(t, stateIn(t, path)); got != want {
		t.Errorf("the state after reopening differs\n got %s\nwant %s", got, want)
	}

	if got := bin.output(t, "export", "--data", path); got != kept {
		t.Errorf("the export after reopening differs\n got %s\nwant %s", got, kept)
	}

	// The rest of the night.
	desk.Press("home", "down").Type("105ra\r").Type("114\r")
	desk.scores(6, "3 11\r11 1\r").Type("0 11\r117\r")
	desk.Shows("press n to end the night").Press("n").Shows(" e  end the night").Press("e").Shows("in short").Press("esc").Shows("No night is open")
	if code := desk.Quit("q"); code != 0 {
		t.Fatalf("quitting gives exit code %d, want 0", code)
	}
	checkPlayedNight(t, stateIn(t, path))
	var table []struct {
		Name  string
		Games int
	}
	if err := json.Unmarshal([]byte(bin.output(t, "standings", "--json", "--data", path)), &table); err != nil {
		t.Fatal(err)
	}
	games := 0
	for _, row := range table {
		games += row.Games
	}
	if want := 4 * (6*4 - 1); len(table) != 18 || games != want { // the game given up is left out
		t.Errorf("the standings have %d people with %d games, want 18 with %d", len(table), games, want)
	}
}

// checkPlayedNight compares what is in the file with what was typed.
func checkPlayedNight(t *testing.T, l *session.Ledger) {
	t.Helper()
	n := l.Club().Night()
	if n.IsOpen() || len(n.Rounds) != len(playedNight) {
		t.Fatalf("open %v with %d rounds, want a closed night of %d", n.IsOpen(), len(n.Rounds), len(playedNight))
	}
	for _, r := range n.Rounds {
		called := map[session.PersonID]bool{}
		for i, id := range r.Games {
			g := n.Game(id)
			if got, want := g.Final.String(), playedNight[r.Number-1][i]; got != want {
				t.Errorf("round %d, court %s: %s, but %s was typed", r.Number, g.Court, got, want)
			}
			for _, p := range g.Players() {
				called[p] = true
			}
		}
		if len(called) != 16 {
			t.Errorf("round %d has %d people on 4 courts, want 16", r.Number, len(called))
		}
	}
	if g := n.Game(n.Rounds[2].Games[0]); len(g.Rallies) != 16 {
		t.Errorf("%d rallies stand of the game scored rally by rally, want 16", len(g.Rallies))
	}
	jonas, _ := l.Club().Named("Jonas Reed")
	quinn, _ := l.Club().Named("Quinn Ashby")
	if got := n.Attending(jonas.ID).State; got != session.Gone {
		t.Errorf("Jonas left and is %s", got)
	}
	if before, after := playedIn(n, jonas.ID, 1, 2), playedIn(n, jonas.ID, 3, 6); before < 1 || after != 0 {
		t.Errorf("Jonas left after round 2 and played %d games until then and %d after it", before, after)
	}
	if before, after := playedIn(n, quinn.ID, 1, 3), playedIn(n, quinn.ID, 4, 6); before != 0 || after < 2 {
		t.Errorf("Quinn came in round 3 and played %d games until then and %d after it", before, after)
	}
}

// playedIn counts somebody's games of some rounds.
func playedIn(n *session.Night, id session.PersonID, from, until int) int {
	k := 0
	for _, g := range n.Games {
		if g.Round >= from && g.Round <= until && g.Has(id) {
			k++
		}
	}
	return k
}
