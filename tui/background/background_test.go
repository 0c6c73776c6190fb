package background

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
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

// TestTheBackgroundIsSetBeforeAnybodyAsks: packages that are ready initialise in the order of their
// import paths, so this one must sort before Bubble Tea and rest on nothing that rests on it.
func TestTheBackgroundIsSetBeforeAnybodyAsks(t *testing.T) {
	const asks = "github.com/charmbracelet/bubbletea"
	out, err := exec.Command("go", "list", "-deps", ".").Output()
	if err != nil {
		t.Fatal(err)
	}
	packages := strings.Fields(string(out))
	if own := packages[len(packages)-1]; own >= asks {
		t.Errorf("%s initialises after %s", own, asks)
	}
	if slices.Contains(packages, asks) {
		t.Errorf("the package rests on %s, which then initialises first", asks)
	}
}
