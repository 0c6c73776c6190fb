package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/spf13/cobra"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/simulation"
	"club/quadrille/store"
	"club/quadrille/tui"
)

// selftest plays a small night on a club file of its own, draws the desk on it without a terminal, and looks
// the file over: what a system can do wrong shows there.
func selftest(cmd *cobra.Command) (err error) {
	folder, err := os.MkdirTemp("", "quadrille-selftest-")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	path := filepath.Join(folder, "night.qdb")
	night := simulation.Night{
		People: simulation.Invented(13, 1), Courts: 3, Rounds: 4, Flow: session.Rounds, ByRally: 1, Seed: 1,
		Scoring: scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2},
	}
	kept, err := openClub(path)
	if err != nil {
		return err
	}
	played, err := simulation.Run(cmd.Context(), kept, night, nil)
	if err == nil {
		err = drawn(kept)
	}
	if err := errors.Join(err, kept.Close()); err != nil {
		return err
	}
	report, err := store.Check(path)
	if err != nil {
		return err
	}
	if !report.Sound() {
		return fmt.Errorf("the club file that was just written is damaged:\n%s", report)
	}
	view, err := store.Look(path)
	if err != nil {
		return err
	}
	if err := replay(cmd, view); err != nil {
		return err
	}
	say(cmd, "fine: quadrille %s played %s, drew the desk, and kept %s\n", buildVersion(), counted(played.Games, "game", "games"), counted(int(view.Last()), "event", "events"))
	return nil
}

// drawn draws the desk on a log as a terminal of 80 by 24 would show it.
func drawn(log session.Log) error {
	const width, height = 80, 24
	desk, err := session.NewDesk(log, time.Now, newPersonID)
	if err != nil {
		return err
	}
	var m tea.Model = tui.New(desk, tui.Options{NewSeed: newSeed})
	m, _ = m.Update(tea.WindowSizeMsg{Width: width, Height: height})
	frame := m.View()
	if strings.TrimSpace(frame) == "" || lipgloss.Width(frame) > width || lipgloss.Height(frame) > height {
		return fmt.Errorf("the desk does not fit a terminal of %d by %d:\n%s", width, height, frame)
	}
	return nil
}
