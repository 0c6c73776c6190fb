package session

import (
	"fmt"
	"strconv"
	"strings"
)

// ParseCourts reads which courts a night has: how many there are ("4"), or their names with commas between them
// ("1, 2, Centre").
func ParseCourts(text string) (count int, named []CourtID, err error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return 0, nil, fmt.Errorf("courts: say how many there are, or their names such as 1, 2, Centre")
	}
	if n, err := strconv.Atoi(text); err == nil {
		return n, nil, nil
	}
	if !strings.ContainsAny(text, ",;") {
		return 0, nil, fmt.Errorf("courts: %q is no number; names have commas between them, such as 1, 2, Centre", text)
	}
	for _, part := range splitCourts(text) {
		id := cleanCourt(CourtID(part))
		if string(id) != strings.Join(strings.Fields(part), " ") {
			return 0, nil, fmt.Errorf("courts: %q is no name of a court: 8 letters at most, with commas between names", strings.TrimSpace(part))
		}
		if id != "" {
			named = append(named, id)
		}
	}
	if len(named) == 0 {
		return 0, nil, fmt.Errorf("courts: %q names none: say how many there are, or names such as 1, 2, Centre", text)
	}
	return 0, named, nil
}

// CourtsText is what [ParseCourts] reads as these courts: their number where that is all there is to say.
func CourtsText(courts []VenueCourt) string {
	numbered := true
	names := make([]string, len(courts))
	for i, c := range courts {
		names[i] = string(c.ID)
		numbered = numbered && names[i] == strconv.Itoa(i+1)
	}
	if numbered {
		return strconv.Itoa(len(courts))
	}
	if len(names) == 1 {
		return names[0] + ","
	}
	return strings.Join(names, ", ")
}

// splitCourts parts names of courts, which have commas or semicolons between them.
func splitCourts(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' })
}
