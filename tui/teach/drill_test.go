package teach

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"club/quadrille/scoring"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// answered types an answer, and gives what is shown.
func answered(t *testing.T, d *Drill, text string) string {
	t.Helper()
	c := ui.Context{Width: 80, Height: 24, Theme: theme.Plain()}
	for _, r := range text {
		d.Type(c, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	d.answer()
	return ansi.Strip(strings.Join(d.Lines(c), "\n"))
}

// The first word about an answer is whether it was right.
func TestTheDrillSaysFirstWhetherAnAnswerIsRight(t *testing.T) {
	d, err := NewDrill(1, scoring.Rules{To: 11, WinBy: 2})
	if err != nil {
		t.Fatal(err)
	}
	right := d.lesson.Question().Expected()
	if got := answered(t, d, right.String()); !strings.HasPrefix(got, "Right. ") {
		t.Errorf("after a right answer the screen begins\n%s", got)
	}
	right = d.lesson.Question().Expected()
	wrong := right
	wrong.Server = wrong.Server.Partner()
	if got := answered(t, d, wrong.String()); !strings.HasPrefix(got, "Wrong: it is "+right.String()+". ") {
		t.Errorf("after a wrong answer the screen begins\n%s", got)
	}
	if got := answered(t, d, "what"); !strings.HasPrefix(got, "Wrong: ") || !strings.Contains(got, "is no part of an answer") {
		t.Errorf("what cannot be read is not told:\n%s", got)
	}
}
