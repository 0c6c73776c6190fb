//go:build !windows

package main

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"

	"club/quadrille/session"
	"club/quadrille/store"
	pastes "club/quadrille/tui/terminal"
)

// TestDeskOnATerminal drives the real program on a pseudo-terminal.
func TestDeskOnATerminal(t *testing.T) {
	bin := build(t)
	for _, c := range []struct {
		claim string
		test  func(*testing.T, program)
	}{
		{"the first frame waits for no answer of the terminal", testFirstFrame},
		{"a newcomer finishes a round of the demo by the screen alone", testDemo},
		{"a whole night, left and reopened in the middle of a round", testWholeNight},
		{"the same at 80 by 24, with another size before each key", testRestlessNight},
		{"without colour the selection is still marked", testNoColour},
		{"a click of the mouse selects a court", testMouse},
		{"a night by the mouse, with resizes between any two clicks", testNightByMouse},
		{"a paste that lost its end leaves the keys alone", testLostPaste},
		{"quitting right after a score keeps the score", testQuitAfterScore},
		{"the end by SIGTERM loses nothing that was shown", testTerminated},
		{"a terminal that is closed loses nothing that was shown", testHangUp},
		{"a second desk on the same file is refused", testSecondDesk},
		{"resizing with dialogs open garbles nothing", testResize},
	} {
		t.Run(c.claim, func(t *testing.T) {
			t.Parallel() // a desk mostly waits for keys
			c.test(t, bin)
		})
	}
}

// fullHall makes a club file with a round called on some courts, all of them with a game.
func fullHall(t testing.TB, courts int) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "club.qdb")
	kept, err := store.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer kept.Close()
	desk, err := session.NewDesk(kept, time.Now, newPersonID)
	if err != nil {
		t.Fatal(err)
	}
	do := func(c session.Command) {
		if _, err := desk.Do(c); err != nil {
			t.Fatal(err)
		}
	}
	do(session.OpenNight{Name: "Full hall", Settings: session.DefaultSettings(1), Courts: courts})
	var round session.PlannedRound
	for i := range courts {
		for seat := range 4 {
			do(session.AddGuest{Name: fmt.Sprintf("Person %c%d", 'A'+seat, i+1)})
		}
		p := desk.Ledger().Club().People[4*i:]
		court := session.CourtID(fmt.Sprint(i + 1))
		round.Games = append(round.Games, session.PlannedGame{Court: court, A: session.Team{p[0].ID, p[1].ID}, B: session.Team{p[2].ID, p[3].ID}})
	}
	do(session.CallRound{Plan: []session.PlannedRound{round}})
	return path
}

// asks are the questions that a program may put to a terminal and then wait for: its colours, its
// place, its kind.
var asks = regexp.MustCompile(`\x1b\][0-9;]*;\?|\x1b\[[?>=]?[0-9]*[cn]|\x1b\[[?>]*[0-9;]*\$p|\x1bP[+$]q`)

// The desk may ask the terminal for its background, but only once it runs: what Bubble Tea would ask
// while the program starts, it would wait for.
func testFirstFrame(t *testing.T, bin program) {
	desk := bin.open(t, 80, 24, nil, "--data", fullHall(t, 4)).Shows("Full hall", "q quit")
	desk.Quit("q")
	start, _, running := strings.Cut(desk.Raw(), "\x1b[?1049h") // a program that runs has a screen of its own
	if question := asks.FindString(start); question != "" || !running {
		t.Errorf("the desk asks the terminal %q before it runs: one that never answers would keep it waiting", question)
	}
}

// hue finds a sequence that sets a colour, and weight one that sets bold and reverse.
var (
	hue    = regexp.MustCompile(`\x1b\[(?:\d+;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;\d+)*m`)
	weight = regexp.MustCompile(`\x1b\[1;7m`)
)

func testDemo(t *testing.T, bin program) {
	temporary := t.TempDir()
	desk := bin.open(t, 80, 24, []string{"TMPDIR=" + temporary}, "demo").Shows("Next: ", "q quit")
	desk.Shows("press n to call round 1").Press("n").Shows("type its score (11 7), enter; 4 to come")
	for left := 4; left > 0; left-- {
		desk.Shows(fmt.Sprintf("%d to come", left)).Type("11 7").Press("enter")
	}
	desk.Shows("press n to call round 2").Press("s").Shows("100 %")
	if code := desk.Quit("q"); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
	if kept, err := filepath.Glob(filepath.Join(temporary, "*")); err != nil || len(kept) > 0 {
		t.Errorf("the demo leaves %v behind (%v)", kept, err)
	}
}

func testMouse(t *testing.T, bin program) {
	desk := bin.open(t, 80, 24, nil, "--data", fullHall(t, 4)).Shows("▌ 1 ", "  4 ")
	click := func(x, y int) { desk.Type(fmt.Sprintf("\x1b[<0;%d;%dM\x1b[<0;%d;%dm", x, y, x, y)) }
	click(50, 13)
	desk.Shows("▌ 4 ")
	click(30, 2)
	desk.Shows("[Rotation]").Quit("q")
}

// A key after a pause ends a paste whose end mark was lost. The pauses here are longer than that, and more
// than one, since a busy machine may read two of them in one.
func testLostPaste(t *testing.T, bin program) {
	desk := bin.open(t, 80, 24, nil, "--data", fullHall(t, 4)).Shows("[Courts]")
	desk.Type("\x1b[200~117")
	for range 5 {
		time.Sleep(2 * pastes.PastePause)
		desk.Press("h")
	}
	desk.Shows("[History]").Hides("Saved: court")
	desk.Quit("q")
}

func testNoColour(t *testing.T, bin program) {
	path := fullHall(t, 4)
	tour := func(env ...string) string {
		desk := bin.open(t, 80, 24, env, "--data", path).Shows("[Courts]", "▌ 1 ")
		desk.Press("right").Shows("▌ 2 ", "  1 ")
		desk.Press("m").Shows("walkover").Press("down").Shows("│ > ").Press("esc").Hides("walkover")
		desk.Press("h").Shows("[History]", "> ").Press("d").Shows("[Door]").Press("down").Shows("> [x] Person")
		desk.Quit("ctrl+c")
		return desk.Raw()
	}
	plain := tour("NO_COLOR=1")
	if found := hue.FindString(plain); found != "" {
		t.Errorf("with NO_COLOR the program still writes %q", found)
	}
	if !weight.MatchString(plain) {
		t.Error("with NO_COLOR nothing is bold and reversed: the screen that is shown cannot be told")
	}
	if !hue.MatchString(tour()) {
		t.Error("without NO_COLOR nothing has a colour: this test would see none")
	}
}

func testQuitAfterScore(t *testing.T, bin program) {
	const times = 20
	path := fullHall(t, times)
	for i := range times {
		quit := []string{"q", keys["ctrl+c"]}[i%2]
		desk := bin.open(t, 80, 24, nil, "--data", path).Shows("[Courts]")
		desk.Type(strings.Repeat(keys["right"], i) + "117\r" + quit)
		if code := desk.Code(); code != 0 {
			t.Fatalf("exit code %d after score %d, want 0", code, i+1)
		}
		game := stateIn(t, path).Night().Games[i]
		if game.Final == nil || game.Final.String() != "11-7" {
			t.Fatalf("score %d of %d was typed, and the desk quit without it", i+1, times)
		}
	}
}

func testTerminated(t *testing.T, bin program) {
	path := fullHall(t, 2)
	desk := bin.open(t, 80, 24, nil, "--data", path).Shows("[Courts]")
	desk.Type("117\r").Shows("Saved: court 1")
	// Court 2 is in the middle of a burst of rallies when the end comes.
	desk.Press("end", "enter").Shows("Call: 0 - 0 - 2").Type(strings.Repeat("ab", 40)).Hides("Call: 0 - 0 - 2")
	if code := desk.Signal(syscall.SIGTERM).Code(); code != 0 {
		t.Errorf("exit code %d after SIGTERM, want 0", code)
	}
	n := stateIn(t, path).Night()
	if got := n.Games[0].Final; got == nil || got.String() != "11-7" {
		t.Errorf("the score that was shown as saved is %v in the file", got)
	}
	rallies := n.Games[1].Rallies
	if len(rallies) == 0 {
		t.Error("a rally was shown and is not in the file")
	}
	for i, r := range rallies {
		if int(r.Won) != i%2 {
			t.Fatalf("rally %d went to the wrong side: the file has not what was typed", i+1)
		}
	}
	// The file was let go of, and the night goes on.
	desk = bin.open(t, 80, 24, nil, "--data", path).Shows("[Courts]", "1 to come")
	desk.Press("right", "enter").Shows("Call: ").Quit("ctrl+c")
}

func testHangUp(t *testing.T, bin program) {
	path := fullHall(t, 2)
	desk := bin.open(t, 80, 24, nil, "--data", path).Shows("[Courts]")
	desk.Type("117\r").Shows("Saved: court 1").Signal(syscall.SIGHUP).Code()
	if got := stateIn(t, path).Night().Games[0].Final; got == nil || got.String() != "11-7" {
		t.Errorf("the score that was shown as saved is %v in the file", got)
	}
	bin.open(t, 80, 24, nil, "--data", path).Shows("[Courts]", "1 to come").Quit("q")
}

func testSecondDesk(t *testing.T, bin program) {
	path := fullHall(t, 2)
	first := bin.open(t, 80, 24, nil, "--data", path).Shows("[Courts]")
	second := bin.open(t, 80, 24, nil, "--data", path)
	if code := second.Code(); code != 1 {
		t.Errorf("exit code %d, want 1", code)
	}
	second.Shows(fmt.Sprintf("this file is open in another Quadrille (process %d)", first.cmd.Process.Pid))
	first.Type("117\r").Shows("Saved: court 1").Quit("q")
}

func testResize(t *testing.T, bin program) {
	path := fullHall(t, 12)
	desk := bin.open(t, 200, 60, nil, "--data", path).Shows("[Courts]", "court 1 ", "Round 2")
	for _, open := range [][]string{{}, {"m"}, {"?"}, {"o", "e"}, {"f"}, {"!"}, {"x"}, {"right", "enter"}} {
		for _, key := range open {
			desk.quiet() // what is still being drawn is no answer to the key
			before := desk.Screen()
			desk.Press(key).until("an answer to "+key, func(screen string) bool { return screen != before })
		}
		settled := desk.settle(200, 60)
		for _, size := range [][2]int{{40, 12}, {41, 30}, {30, 8}, {120, 12}, {200, 60}} {
			desk.Resize(size[0], size[1]).settle(size[0], size[1])
		}
		desk.until("the same screen after "+strings.Join(open, " ")+"\n"+settled, func(screen string) bool { return lasting(screen) == settled })
		if len(open) > 0 {
			desk.Press("esc").Hides(settled)
		}
	}
	if code := desk.Quit("ctrl+c"); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
}

// settle waits until a frame of a size stands whole and nothing more comes, and gives it.
func (s *terminal) settle(width, height int) string {
	s.t.Helper()
	s.until(fmt.Sprintf("a whole frame of %d by %d", width, height), func(screen string) bool {
		lines := strings.Split(screen, "\n")
		if width < 40 || height < 12 {
			return strings.HasPrefix(screen, "The desk needs")
		}
		return len(lines) == height && strings.HasPrefix(lines[0], "Quad") && strings.Contains(lines[height-1], " ")
	})
	s.quiet()
	return lasting(s.Screen())
}
