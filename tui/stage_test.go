package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"club/quadrille/session"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// evening is when test nights begin.
var evening = time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)

// stage is the desk with somebody in front of it, without a terminal: messages go in by hand, and
// commands run when the test lets them.
type stage struct {
	t     testing.TB
	m     *Model
	desk  *session.Desk
	log   *session.MemoryLog
	now   time.Time
	theme *theme.Theme
	slow  bool      // commands wait for release, as on a disk that takes its time
	held  []tea.Cmd // the commands that wait
	quit  bool      // the desk has asked to end

	slices int // the desk plans as it does for an organiser, with so many slices behind the screen; 0 for plan
}

// newStage opens the desk on an empty log, 80 by 24, without colour.
func newStage(t testing.TB) *stage {
	t.Helper()
	s := &stage{t: t, log: &session.MemoryLog{}, now: evening, theme: theme.Plain()}
	people := 0
	desk, err := session.NewDesk(s.log, func() time.Time { return s.now }, func() session.PersonID {
		people++
		return session.PersonID(fmt.Sprintf("p%03d", people))
	})
	if err != nil {
		t.Fatal(err)
	}
	s.desk = desk
	s.reopen()
	return s
}

// reopen starts the desk anew on what its log holds.
func (s *stage) reopen() *stage {
	s.m = New(s.desk, Options{Theme: s.theme, ReadFile: os.ReadFile, NewSeed: func() uint64 { return 7 }, Slices: s.slices})
	s.m.rest, s.m.patience = 0, 0
	s.plan()
	return s.resize(80, 24)
}

// do gives the session commands that have to be accepted, past the screens.
func (s *stage) do(commands ...session.Command) *stage {
	s.t.Helper()
	for _, c := range commands {
		l, err := s.desk.Do(c)
		if err != nil {
			s.t.Fatalf("%T: %v", c, err)
		}
		s.m.take(l)
	}
	s.plan()
	return s
}

// send gives the desk a message and lets what follows from it happen.
func (s *stage) send(msg tea.Msg) *stage {
	s.t.Helper()
	if _, ok := msg.(doneMsg); ok && s.slices == 0 {
		s.plan()
	}
	_, cmd := s.m.Update(msg)
	if _, ok := msg.(tickMsg); !ok { // the next tick would come in ten seconds
		s.run(cmd)
	}
	return s
}

// run lets a command happen, now or at the next release.
func (s *stage) run(cmd tea.Cmd) {
	s.t.Helper()
	switch {
	case cmd == nil:
	case s.slow:
		s.held = append(s.held, cmd)
	default:
		switch msg := cmd().(type) {
		case nil:
		case tea.QuitMsg:
			s.quit = true
		case tea.BatchMsg:
			for _, c := range msg {
				s.run(c)
			}
		default:
			s.send(msg)
		}
	}
}

// release lets the oldest command that waits happen.
func (s *stage) release() *stage {
	s.t.Helper()
	if len(s.held) == 0 {
		s.t.Fatal("no command waits")
	}
	cmd := s.held[0]
	s.held, s.slow = s.held[1:], false
	msg := cmd()
	s.slow = true
	switch msg := msg.(type) {
	case tea.QuitMsg:
		s.quit = true
		return s
	case tea.BatchMsg:
		s.held = append([]tea.Cmd(msg), s.held...)
		return s
	}
	return s.send(msg)
}

// plan gives the desk a rotation at once, so that no test of a screen depends on how good rotations
// are made: people take their places in the order of the roll, moved on by one every round.
func (s *stage) plan() {
	if s.slices > 0 {
		s.run(s.m.replan())
		return
	}
	l := s.desk.Ledger()
	s.m.planKey = l.DrawKey()
	s.m.plan = ui.Rotation{Ready: true}
	defer s.m.survey()
	n := l.Night()
	if n == nil || n.Settings.Flow != session.Rounds {
		return
	}
	s.m.plan.Rounds = n.Plan
	if len(n.Plan) == 0 {
		for r := len(n.Rounds); r < max(n.Settings.Rounds, len(n.Rounds)+1); r++ {
			s.m.plan.Rounds = append(s.m.plan.Rounds, turned(n, r))
		}
	}
}

// turned is the round number r (from 0) of the rotation that plan gives.
func turned(n *session.Night, r int) session.PlannedRound {
	var here []session.PersonID
	for _, a := range n.Roll {
		if a.State == session.Here {
			here = append(here, a.Person)
		}
	}
	var out session.PlannedRound
	if len(here) == 0 {
		return out
	}
	first := slices.Concat(here[r%len(here):], here[:r%len(here)])
	for _, c := range n.OpenCourts() {
		if len(first) < 4 {
			break
		}
		out.Games = append(out.Games, session.PlannedGame{Court: c, A: session.Team{first[0], first[3]}, B: session.Team{first[1], first[2]}})
		first = first[4:]
	}
	out.Out = first
	return out
}

// stroke is the message of a key by its name, as Bubble Tea names it; anything longer that is no
// name is letters that came glued together in one read.
func stroke(name string) tea.KeyMsg {
	for t := tea.KeyCtrlA - 1; t < 128; t++ {
		if k := (tea.KeyMsg{Type: t}); k.String() == name {
			return k
		}
	}
	for t := tea.KeyRunes; t > tea.KeyRunes-80; t-- {
		if k := (tea.KeyMsg{Type: t}); t != tea.KeyRunes && k.String() == name {
			return k
		}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// press presses keys one after the other.
func (s *stage) press(names ...string) *stage {
	s.t.Helper()
	for _, name := range names {
		s.send(stroke(name))
	}
	return s
}

// click presses the left mouse button at a cell.
func (s *stage) click(x, y int) *stage {
	s.t.Helper()
	return s.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
}

// clickOn clicks the first letter of a text on the screen.
func (s *stage) clickOn(text string) *stage {
	s.t.Helper()
	for y, l := range s.lines() {
		if before, _, ok := strings.Cut(l, text); ok {
			return s.click(ansi.StringWidth(before), y)
		}
	}
	s.t.Fatalf("nothing to click on: the screen has no %q\n%s", text, s.m.View())
	return s
}

func (s *stage) resize(width, height int) *stage {
	s.t.Helper()
	return s.send(tea.WindowSizeMsg{Width: width, Height: height})
}

// pass lets minutes pass.
func (s *stage) pass(minutes int) *stage {
	s.now = s.now.Add(time.Duration(minutes) * time.Minute)
	return s
}

func (s *stage) lines() []string { return strings.Split(s.m.View(), "\n") }

// shows fails unless the screen shows all of the texts, on one line or broken over several.
func (s *stage) shows(texts ...string) *stage {
	s.t.Helper()
	view := s.m.View()
	for _, text := range texts {
		if !strings.Contains(view, text) && !strings.Contains(oneLine(view), text) {
			s.t.Fatalf("the screen does not show %q:\n%s", text, s.m.View())
		}
	}
	return s
}

// hides fails if the screen shows one of the texts.
func (s *stage) hides(texts ...string) *stage {
	s.t.Helper()
	for _, text := range texts {
		if strings.Contains(s.m.View(), text) {
			s.t.Fatalf("the screen shows %q:\n%s", text, s.m.View())
		}
	}
	return s
}

func (s *stage) night() *session.Night { return s.desk.Ledger().Night() }

// final is the score of a game as it reads, empty while it goes on.
func (s *stage) final(game session.GameID) string {
	if f := s.desk.Ledger().Club().Night().Game(game).Final; f != nil {
		return f.String()
	}
	return ""
}

// invented names: first and last ones make up to 50 people.
var (
	firstNames = []string{"Agnes", "Bram", "Cleo", "Dario", "Edda", "Finn", "Greta", "Hugo", "Iris", "Jonas"}
	lastNames  = []string{"Vale", "Okoro", "Hart-Lindqvist", "Ōno", "Núñez"}
)

// inventedName is the name of person i of at most 50.
func inventedName(i int) string {
	return firstNames[i%len(firstNames)] + " " + lastNames[i/len(firstNames)%len(lastNames)]
}

// people opens a night with invented people checked in.
func (s *stage) people(courts, people int, change func(*session.Settings)) *stage {
	s.t.Helper()
	settings := session.DefaultSettings(7)
	if change != nil {
		change(&settings)
	}
	s.do(session.OpenNight{Name: "Club night", Settings: settings, Courts: courts})
	for i := range people {
		s.do(session.AddGuest{Name: inventedName(i)})
	}
	s.m.active = ui.Courts
	return s
}

// roster opens a night and imports one of the rosters in testdata, all of them here who do not
// come later.
func (s *stage) roster(courts int, file string) *stage {
	s.t.Helper()
	s.do(session.OpenNight{Name: "Club night", Settings: session.DefaultSettings(7), Courts: courts})
	read, err := readRoster(os.ReadFile, filepath.Join("..", "testdata", file))
	if err != nil {
		s.t.Fatal(err)
	}
	s.do(session.ImportRoster{Entries: read.Entries, Arrived: true})
	s.m.active = ui.Courts
	return s
}

// called is a stage on which the first round has just been called, shown on the courts.
func called(t testing.TB, courts, people int) *stage {
	t.Helper()
	return newStage(t).people(courts, people, nil).press("n").shows("round 1 called")
}
