package tui

import (
	"regexp"
	"strings"
	"testing"
)

// defers matches what stands beside every advice; the frame of a box may part its words.
var defers = regexp.MustCompile(`(?i)qualified[^a-z]+(people|person|help)|local rules|your venue`)

// TestEveryAdviceDefers opens whatever gives advice about what can hurt, on each size of screen.
func TestEveryAdviceDefers(t *testing.T) {
	for name, c := range map[string]struct {
		keys []string
		box  string // a text that is nowhere else
	}{
		"held for lightning": {[]string{"!", "l"}, "Go indoors"},
		"held for heat":      {[]string{"!", "h"}, "Shade"},
		"held for an injury": {[]string{"!", "i"}, "Keep clear"},
		"held for wet":       {[]string{"!", "w"}, "wet court"},
		"held otherwise":     {[]string{"!", "o"}, "organiser's call"},
		"may play go on":     {[]string{"!", "l", "!"}, "May play go on?"},
		"opening":            {nil, "Usual caution"},
		"heat, asked":        {[]string{"o", "h"}, "How hot is it?"},
		"heat":               {[]string{"o", "h", "9", "1", "F", "down", "6", "0", "enter"}, "In full sun"},
		"card":               {[]string{"C"}, "Defibrillator "},
		"card in a hold":     {[]string{"!", "o", "f4"}, "Defibrillator "},
		"card of an injury":  {[]string{"home", "m", "i", "e"}, "Defibrillator "},
		"who is hurt":        {[]string{"home", "m", "i"}, "who is hurt?"},
		"how":                {[]string{"home", "m", "i", "1"}, "hurt otherwise"},
		"what now":           {[]string{"home", "m", "i", "1", "o", "enter"}, "what now?"},
		"head, what now":     {[]string{"home", "m", "i", "1", "h", "enter"}, "what now?"},
		"out for tonight":    {[]string{"home", "m", "i", "1", "h", "enter", "z", "m", "1", "i"}, "stays out for tonight"},
		"cleared":            {[]string{"home", "m", "i", "1", "h", "enter", "z", "m", "1", "i", "c"}, "Cleared by"},
	} {
		for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
			s := called(t, 2, 10)
			if c.keys == nil {
				s = newStage(t).press("n")
			}
			s.resize(size[0], size[1])
			view := oneLine(s.press(c.keys...).m.View())
			if !strings.Contains(view, c.box) || !defers.MatchString(view) {
				t.Errorf("%s at %v is not shown, or defers to nobody:\n%s", name, size, s.m.View())
			}
		}
	}
}
