//go:build !windows

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// settingsIn writes a desk.toml and gives the environment that leads to it.
func settingsIn(t *testing.T, text string) []string {
	t.Helper()
	folder := t.TempDir()
	if err := os.MkdirAll(filepath.Join(folder, "quadrille"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, "quadrille", "desk.toml"), []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return []string{"XDG_CONFIG_HOME=" + folder, "LANG=en_GB.UTF-8"}
}

// TestTheDeskTakesItsSettings from the file: glyphs, keys and the bell.
func TestTheDeskTakesItsSettings(t *testing.T) {
	env := settingsIn(t, "glyphs = \"ascii\"\nbell = true\n[keys]\nhelp = \"j\"\n")
	s := build(t).open(t, 80, 24, env, "demo")
	s.Shows("Quadrille", "j help").Press("j").Shows("- Keys ").Press("esc").Hides("- Keys ")
	if strings.Contains(s.Raw(), "─") {
		t.Error("lines are drawn with glyphs beyond ASCII")
	}
	before := strings.Count(s.Raw(), "\a")
	s.Press("!").Shows("Hold play").Press("h").Shows("No game goes on").until("the bell", func(string) bool { return strings.Count(s.Raw(), "\a") > before })
	if code := s.Quit("ctrl+c"); code != 0 {
		t.Errorf("exit code %d", code)
	}
}

// TestTheDeskOpensWithWrongSettings, and says what is wrong with which line.
func TestTheDeskOpensWithWrongSettings(t *testing.T) {
	s := build(t).open(t, 80, 24, settingsIn(t, "theme = \"blue\"\n"), "demo")
	s.Shows("Quadrille", `desk.toml, line 1, theme: "blue" is no theme`).Press("esc").Hides("blue")
	if code := s.Quit("q"); code != 0 {
		t.Errorf("exit code %d", code)
	}
}
