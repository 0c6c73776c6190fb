package background

import (
	"testing"

	"github.com/charmbracelet/lipgloss"
)

func TestDark(t *testing.T) {
	for _, c := range []struct {
		own, colorfgbg string
		want           bool
	}{
		{"", "", true},
		{"light", "", false},
		{"LIGHT", "15;0", false},
		{"dark", "0;15", true},
		{"purple", "0;15", false},
		{"", "15;0", true},
		{"", "0;15", false},
		{"", "0;default;15", false},
		{"", "15;default", true},
		{"", "12;8", true},
		{"", "0;7", false},
		{"", "nonsense", true},
	} {
		env := map[string]string{"QUADRILLE_BACKGROUND": c.own, "COLORFGBG": c.colorfgbg}
		if got := Dark(func(name string) string { return env[name] }); got != c.want {
			t.Errorf("with %v the background is dark: %v, want %v", env, got, c.want)
		}
	}
}

// TestTheBackgroundIsSetWhenTheProgramStarts: the libraries were told before anybody could ask.
func TestTheBackgroundIsSetWhenTheProgramStarts(t *testing.T) {
	before := lipgloss.HasDarkBackground()
	lipgloss.SetHasDarkBackground(!before)
	if lipgloss.HasDarkBackground() == before {
		t.Fatal("lipgloss does not keep what it is told")
	}
	lipgloss.SetHasDarkBackground(before)
}
