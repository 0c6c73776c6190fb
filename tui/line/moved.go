package line

import "fmt"

// Moved is how many places somebody went up or down, "=" for none and "new" where there was no place before.
func Moved(up int, before bool) string {
	switch {
	case !before:
		return "new"
	case up > 0:
		return fmt.Sprintf("↑%d", up)
	case up < 0:
		return fmt.Sprintf("↓%d", -up)
	}
	return "="
}
