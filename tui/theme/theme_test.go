package theme

import (
	"io"
	"reflect"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
)

// styles are all styles of a theme by their names.
func styles(t *testing.T, th *Theme) map[string]lipgloss.Style {
	t.Helper()
	out := map[string]lipgloss.Style{}
	v := reflect.ValueOf(*th)
	for i := range v.NumField() {
		s, ok := v.Field(i).Interface().(lipgloss.Style)
		if !ok {
			t.Fatalf("field %s is no style", v.Type().Field(i).Name)
		}
		out[v.Type().Field(i).Name] = s
	}
	return out
}

// TestPlainWritesNothingButText: no colour and no weight.
func TestPlainWritesNothingButText(t *testing.T) {
	for name, s := range styles(t, Plain()) {
		if got := s.Render("text"); got != "text" {
			t.Errorf("%s writes %q", name, got)
		}
	}
}

// TestStylesFollowTheEnvironment: colours where they are wanted, none with NO_COLOR, and neither
// ever changes the text or its width.
func TestStylesFollowTheEnvironment(t *testing.T) {
	t.Setenv("CLICOLOR_FORCE", "1")
	for _, noColour := range []string{"", "1"} {
		t.Setenv("NO_COLOR", noColour)
		styled := 0
		for name, s := range styles(t, New(io.Discard)) {
			got := s.Render("text")
			if !strings.Contains(got, "text") || lipgloss.Width(got) != 4 {
				t.Errorf("%s changes the text to %q", name, got)
			}
			if got != "text" {
				styled++
			}
		}
		if noColour != "" && styled > 0 || noColour == "" && styled < 8 {
			t.Errorf("with NO_COLOR=%q %d styles write more than text", noColour, styled)
		}
	}
}
