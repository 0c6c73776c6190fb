// Package background tells the terminal libraries what the background is before they ask.
//
// Bubble Tea v1 asks the terminal for its background colour while the program's packages
// initialise, and waits five seconds on a terminal that never answers, eating keys meanwhile. Once
// the answer is set, the question is not asked. Packages initialise in the order of their import
// paths, so this package's path must sort before github.com/charmbracelet/bubbletea, and it must
// import nothing that imports Bubble Tea. A test of the command holds that this works.
package background

import (
	"os"
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"
)

func init() { lipgloss.SetHasDarkBackground(Dark(os.Getenv)) }

// Dark decides without asking the terminal: QUADRILLE_BACKGROUND=light or dark wins, then
// COLORFGBG, which some terminals set ("15;0": light on dark); everything else is taken as dark.
func Dark(getenv func(string) string) bool {
	switch strings.ToLower(getenv("QUADRILLE_BACKGROUND")) {
	case "light":
		return false
	case "dark":
		return true
	}
	parts := strings.Split(getenv("COLORFGBG"), ";")
	bg, err := strconv.Atoi(parts[len(parts)-1])
	if err != nil {
		return true
	}
	return bg < 7 || bg == 8
}
