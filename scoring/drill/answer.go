package drill

import (
	"fmt"
	"strconv"
	"strings"

	"club/quadrille/scoring"
)

// Answer is what a learner says comes next.
type Answer struct {
	Call      string // such as "1-0-2"
	Server    scoring.Seat
	Box       scoring.Box
	Ends      bool // the teams switch ends
	GamePoint bool
	Over      bool // the game is over; nothing else is looked at
}

// String is the answer as [ParseAnswer] reads it: "1-0-2 A1 left", "6-2-1 B1 right ends" or "game".
func (a Answer) String() string {
	if a.Over {
		return "game"
	}
	text := fmt.Sprintf("%s %v %v", a.Call, a.Server, a.Box)
	if a.Ends {
		text += " ends"
	}
	if a.GamePoint {
		text += " point"
	}
	return text
}

// ParseAnswer reads an answer: the call, the seat of the server and the box in any order, "1-0-2 A1 left" or
// "1 0 2 a1 l", with "ends" and "point" (game point) where they are asked for, or "game" alone where the game is over.
func ParseAnswer(text string) (Answer, error) {
	var r reader
	words := strings.FieldsFunc(strings.ToLower(text), func(c rune) bool {
		return c == ' ' || c == ',' || c == '-' || c == '\t' || c == '\n' || c == '\r'
	})
	for _, w := range words {
		if !r.word(w) {
			return Answer{}, fmt.Errorf("%q is no part of an answer: %s", w, form)
		}
	}
	return r.answer()
}

// form is how an answer is written.
const form = `write the call, the server and the box, as in "1-0-2 A1 left", or "game"`

// reader puts an answer together word by word.
type reader struct {
	Answer
	call        []string
	seat, boxed bool
}

// word takes one word in, and reports whether it is part of an answer.
func (r *reader) word(w string) bool {
	switch w {
	case "game", "over":
		r.Over = true
		return true
	case "ends", "switch", "change":
		r.Ends = true
		return true
	case "point":
		r.GamePoint = true
		return true
	case "r", "right", "l", "left":
		r.Box, r.boxed = scoring.Right, true
		if w[0] == 'l' {
			r.Box = scoring.Left
		}
		return true
	}
	if n, err := strconv.ParseUint(w, 10, 8); err == nil && len(r.call) < 3 {
		r.call = append(r.call, strconv.FormatUint(n, 10))
		return true
	}
	r.seat = r.Server.UnmarshalText([]byte(w)) == nil
	return r.seat
}

// answer is the whole, unless something is missing.
func (r *reader) answer() (Answer, error) {
	r.Call = strings.Join(r.call, "-")
	if r.Over && r.GamePoint {
		r.Over = false // "game point" is two words
	}
	switch {
	case r.Over:
		return Answer{Over: true}, nil
	case len(r.call) < 2:
		return Answer{}, fmt.Errorf("the call is missing: %s", form)
	case !r.seat:
		return Answer{}, fmt.Errorf("the server is missing: %s", form)
	case !r.boxed:
		return Answer{}, fmt.Errorf("the box is missing: %s", form)
	}
	return r.Answer, nil
}
