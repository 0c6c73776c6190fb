package scoring

import (
	"fmt"
	"strconv"
	"strings"
)

// ParseFinal reads a final score as an organiser types it: "11-7", "11 7" or "11:7", followed where it was
// not played to the end by "timed" (t), "retired" (r) or "void" (v). After "retired" may stand the side
// that gave up, "9-6 retired a"; without it that is the side behind. A score of points is not needed for
// "walkover a" (w a), with the side that came and so wins, and for "void".
func (r Rules) ParseFinal(text string) (Final, error) {
	words := strings.FieldsFunc(strings.ToLower(text), func(c rune) bool {
		return c == '-' || c == ':' || c == ' ' || c == '\t' || c == '–' || c == ','
	})
	var points []int
	for len(words) > 0 && len(points) < 2 {
		n, err := strconv.ParseUint(words[0], 10, 16)
		if err != nil {
			break
		}
		points = append(points, int(n))
		words = words[1:]
	}
	if len(words) > 2 {
		return Final{}, unreadable(text)
	}
	words = append(words, "", "")[:2]
	return r.finalOf(text, points, words[0], words[1])
}

// finalOf puts a typed score together: its points, the word for how the game ended, and a team.
func (r Rules) finalOf(text string, points []int, how, side string) (Final, error) {
	var who Team
	named := side != ""
	if named && who.UnmarshalText([]byte(side)) != nil {
		return Final{}, unreadable(text)
	}
	if err := r.Validate(); err != nil {
		return Final{}, err
	}
	switch how {
	case "walkover", "w", "wo", "w/o":
		if !named {
			return Final{}, fmt.Errorf("a walkover needs the team that came and wins: write \"walkover a\" or \"walkover b\"")
		}
		return r.Walkover(who), nil
	case "void", "v":
		if len(points) == 0 {
			points = []int{r.StartA, r.StartB}
		}
	}
	if len(points) != 2 || named && how != "retired" && how != "r" {
		return Final{}, unreadable(text)
	}
	switch a, b := points[0], points[1]; how {
	case "":
		return r.Final(a, b, Played)
	case "timed", "t":
		return r.Final(a, b, Timed)
	case "retired", "r":
		if named {
			return r.Retire(a, b, who)
		}
		return r.Final(a, b, Retired)
	case "void", "v":
		return r.Final(a, b, Void)
	}
	return Final{}, unreadable(text)
}

func unreadable(text string) error {
	return fmt.Errorf("%q is no final score: write 11-7, 9-6 timed, 9-6 retired b, walkover a or void", text)
}
