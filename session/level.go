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
