package rotation

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/sessiontest"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// evening is a night of nine people on two courts with two rounds called and some planned: the
// first is played, the second goes on.
func evening(t *testing.T, planned int) ui.Context {
	t.Helper()
	d := sessiontest.New(t)
	d.Must(session.OpenNight{Settings: session.DefaultSettings(1), Courts: 2})
	var p []session.PersonID
	for i := range 9 {
		d.Must(session.AddGuest{Name: string(rune('A' + i))})
		p = append(p, d.Ledger().Club().People[i].ID)
	}
	round := session.PlannedRound{
		Games: []session.PlannedGame{
			{Court: "1", A: session.Team{p[0], p[1]}, B: session.Team{p[2], p[3]}},
			{Court: "2", A: session.Team{p[4], p[5]}, B: session.Team{p[6], p[7]}},
		},
		Out: p[8:],
	}
	d.Must(session.CallRound{Plan: []session.PlannedRound{round}})
	for id := range session.GameID(2) {
		d.Finish(d.Night().Game(id+1), 11, 7, scoring.Played)
	}
	d.Must(session.CallRound{Plan: []session.PlannedRound{round}})
	l := d.Ledger()
	c := ui.Context{Ledger: l, Names: ui.NewNames(l.Club()), Now: d.Clock, Theme: theme.Plain(), Width: 80, Height: 17}
	c.Rotation.Ready = true
	for range planned {
		c.Rotation.Rounds = append(c.Rotation.Rounds, round)
	}
	return c
}

// TestRoundsSideBySide: every round stands once, in order, in as many columns as fit.
func TestRoundsSideBySide(t *testing.T) {
	for _, c := range []struct{ width, columns int }{{40, 1}, {80, 1}, {119, 1}, {120, 2}, {200, 3}, {600, 6}} {
		cx := evening(t, 4)
		cx.Width = c.width
		if got := columnsFor(cx, len(blocksOf(cx))); got != c.columns {
			t.Errorf("%d cells have %d columns, want %d", c.width, got, c.columns)
		}
		text := strings.Join(layout(cx), "\n")
		at := -1
		for round := range 6 {
			title := fmt.Sprintf("Round %d ", round+1)
			if strings.Count(text, title) != 1 {
				t.Errorf("%d cells: %q stands %d times in\n%s", c.width, title, strings.Count(text, title), text)
			}
			if next := strings.Index(text, title); next < at {
				t.Errorf("%d cells: %q stands before the round before it", c.width, title)
			} else {
				at = next
			}
		}
		for _, l := range layout(cx) {
			if ansi.StringWidth(l) > c.width {
				t.Errorf("%d cells: a line of %d: %q", c.width, ansi.StringWidth(l), l)
			}
		}
	}
}

func TestRoundsSayHowTheyStand(t *testing.T) {
	text := strings.Join(layout(evening(t, 2)), "\n")
	for _, want := range []string{
		"Round 1  played  out: I", "Round 2  on court now  out: I", "Round 3  next", "Round 4  planned",
		"1  A & B  11-7  C & D", "2  E & F  v  G & H",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
}

// TestTheScreenFollowsTheNight until somebody scrolls: the round that goes on is the first shown.
func TestTheScreenFollowsTheNight(t *testing.T) {
	c, r := evening(t, 8), New()
	c.Height = 9
	shown := func() string { return strings.Join(r.Lines(c), "\n") }
	if !strings.Contains(shown(), "Round 2") || strings.Contains(shown(), "Round 1 ") {
		t.Errorf("the round that goes on does not stand first:\n%s", shown())
	}
	for range 99 {
		ui.Press(r, c, tea.KeyMsg{Type: tea.KeyDown})
	}
	if !strings.Contains(shown(), "Round 10") {
		t.Errorf("the last round cannot be reached:\n%s", shown())
	}
	ui.Press(r, c, tea.KeyMsg{Type: tea.KeyUp})
	for range 99 {
		ui.Press(r, c, tea.KeyMsg{Type: tea.KeyPgUp})
	}
	if !strings.Contains(shown(), "Round 1 ") {
		t.Errorf("the first round cannot be reached:\n%s", shown())
	}
}

// TestScrollingBackTakesAsManyPresses: the end of the list swallows no key.
func TestScrollingBackTakesAsManyPresses(t *testing.T) {
	c, r := evening(t, 8), New()
	c.Height = 9
	for range 99 {
		ui.Press(r, c, tea.KeyMsg{Type: tea.KeyDown})
	}
	end := strings.Join(r.Lines(c), "\n")
	if ui.Press(r, c, tea.KeyMsg{Type: tea.KeyUp}); strings.Join(r.Lines(c), "\n") == end {
		t.Error("at the end of the list the first press of up does nothing")
	}
}

// TestManyWarningsLeaveNoRoom: on a small terminal the summary may fill the screen, and that is all.
func TestManyWarningsLeaveNoRoom(t *testing.T) {
	c, r := evening(t, 8), New()
	c.Width = 40
	for i := range 12 {
		c.Rotation.Warnings = append(c.Rotation.Warnings, fmt.Sprintf("couple %d is kept apart by the wish of somebody else", i))
	}
	for c.Height = 1; c.Height < 40; c.Height++ {
		ui.Press(r, c, tea.KeyMsg{Type: tea.KeyDown})
		if got := r.Lines(c); len(got) < min(c.Height, 20) {
			t.Fatalf("%d lines on a screen of %d", len(got), c.Height)
		}
	}
}

// TestTheSummarySaysWhatIsKnown about the rotation: how fair it is, that it is being worked out, or
// why there is none.
func TestTheSummarySaysWhatIsKnown(t *testing.T) {
	c := evening(t, 2)
	c.Rotation.Certificate = scheduler.Certificate{SitoutSpread: scheduler.Value{Value: 3, Bound: 1}, PartnerRepeats: scheduler.Value{Value: 2, Bound: 2}}
	text := func() string {
		return strings.Join(summary(c, c.Rotation.Certificate, c.Rotation.Ready && c.Rotation.Err == nil), " ")
	}
	if got := text(); !strings.Contains(got, "9 of 10") || !strings.Contains(got, "Sit-out spread 3") || !strings.Contains(got, "partner repeats 2") {
		t.Errorf("the summary is %q", got)
	}
	page := strings.Join(New().certificatePage(c), "\n")
	for _, m := range c.Rotation.Certificate.Measures() {
		if !strings.Contains(page, m.Name) {
			t.Errorf("the page has no %s", m.Name)
		}
	}
	c.Rotation.Warnings = []string{"a couple is kept apart"}
	if !strings.Contains(text(), "! a couple is kept apart") {
		t.Errorf("a warning is not told: %q", text())
	}
	c.Rotation.Err = errors.New("too many courts")
	if !strings.Contains(text(), "No rotation: too many courts") {
		t.Errorf("an error is not told: %q", text())
	}
	c.Rotation = ui.Rotation{}
	if !strings.Contains(text(), "working out") {
		t.Errorf("the work is not told: %q", text())
	}
}

// TestCertificateSaysWhatTheCommandLineSays: the sentences below the table and the bars are those of the certificate,
// also where the played rounds are the fault.
func TestCertificateSaysWhatTheCommandLineSays(t *testing.T) {
	c := evening(t, 4)
	c.Width, c.Rotation.Ready = 400, true
	k := scheduler.Certificate{MeetingEvenness: scheduler.Value{Value: 9, Bound: 4, Played: 5}, CourtSpread: scheduler.Value{Value: 3}}
	c.Rotation.Certificate = k
	r := New()
	for name, lines := range map[string][]string{"table": r.certificatePage(c), "bars": r.fairness(c)} {
		text := strings.Join(lines, "\n")
		for _, words := range k.Words(true) {
			if !strings.Contains(text, words) {
				t.Errorf("the %s misses %q:\n%s", name, words, text)
			}
		}
	}
}
