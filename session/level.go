package session

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ParseLevel reads a level as people write it, with a point or a comma; nothing is 0, no level.
func ParseLevel(text string) (float64, error) {
	text = strings.Replace(strings.TrimSpace(text), ",", ".", 1)
	if text == "" {
		return 0, nil
	}
	level, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(level) { // "nan" is a number to the parser and to nobody else
		return 0, fmt.Errorf("level %q is no number: write it as 3.5, or leave it empty", text)
	}
	return level, nil
}

// LevelText is a level as people write it, empty for none.
func LevelText(level float64) string {
	if level == 0 {
		return ""
	}
	return strconv.FormatFloat(level, 'f', -1, 64)
}

// validLevels refuses two ends between which there are no levels; 0 is no end.
func validLevels(low, high float64) error {
	switch {
	case !(low >= 0 && low <= 10) || !(high >= 0 && high <= 10):
		return fmt.Errorf("a level lies between 0 and 10: leave an end empty where there is none")
	case high > 0 && low > high:
		return fmt.Errorf("levels from %g to %g are none: the lower one comes first", low, high)
	}
	return nil
}

// levelRange is the levels between two ends in words.
func levelRange(low, high float64) string {
	switch {
	case low > 0 && high > 0:
		return fmt.Sprintf("levels %g to %g", low, high)
	case low > 0:
		return fmt.Sprintf("levels from %g", low)
	case high > 0:
		return fmt.Sprintf("levels to %g", high)
	}
	return "any level"
}
