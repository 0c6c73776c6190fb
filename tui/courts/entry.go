package courts

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"club/quadrille/scoring"
)

// entry is a final score on its way from the keyboard: digits, how the game ended, and which team
// the first number belongs to.
type entry struct {
	text    string       // digits and at most one blank
	how     scoring.How  // zero for a game played to its end
	named   bool         // of a retired game: it is said which team retired
	retired scoring.Team // that team
	swapped bool         // the first number is team B's
	refused bool         // Enter was pressed and this is no final score
	sure    bool         // Enter was pressed for a game that has only begun
	timeUp  bool         // the time of the game is up: what is no score of a game to its end is one by the clock
}

// maxEntry keeps a cat on the keyboard from filling the line.
const maxEntry = 5

func (e *entry) empty() bool { return e.text == "" && e.how == 0 }

// press takes a key and tells whether it belonged to the entry.
func (e *entry) press(key string) bool {
	if e.refused && len(key) == 1 && key[0] >= '0' && key[0] <= '9' {
		e.text = "" // whoever was refused types the score again
	}
	e.refused = false
	switch key {
	case "0", "1", "2", "3", "4", "5", "6", "7", "8", "9":
		if len(e.text) < maxEntry {
			e.text += key
		}
	case " ", "-", ":", ".", ",", "/":
		if e.text != "" && !strings.Contains(e.text, " ") {
			e.text += " "
		}
	case "backspace":
		switch {
		case e.named:
			e.named = false
		case e.how != 0:
			e.how = 0
		case e.text != "":
			e.text = e.text[:len(e.text)-1]
		default:
			return false
		}
	case "tab":
		e.swapped = !e.swapped
	default:
		return e.ending(key)
	}
	return true
}

// ending marks a game that did not end by playing to the target. The score does not tell which team retired,
// since it may be the one ahead: a or b says it. The same key again takes the mark back.
func (e *entry) ending(key string) bool {
	switch {
	case key == "t" && e.how != scoring.Timed:
		e.how, e.named = scoring.Timed, false
	case key == "r" && e.how != scoring.Retired:
		e.how, e.named = scoring.Retired, false
	case key == "t", key == "r":
		e.how, e.named = 0, false
	case key == "a" && e.how == scoring.Retired:
		e.named, e.retired = true, scoring.A
	case key == "b" && e.how == scoring.Retired:
		e.named, e.retired = true, scoring.B
	default:
		return false
	}
	return true
}

// asks tells whether it must still be said which team retired.
func (e *entry) asks() bool { return e.how == scoring.Retired && !e.named }

// errWhoRetired tells that a score is complete but for the team that retired.
var errWhoRetired = errors.New("say which team retired: a or b")

// errAmbiguous tells that digits can be parted in more than one way.
var errAmbiguous = errors.New("put a blank between the two numbers")

// score parts the digits into the two numbers as team A and team B have them.
func (e *entry) score(rules scoring.Rules) (a, b int, err error) {
	pairs := e.pairs()
	fit := e.fit(rules, pairs, false)
	if len(fit) == 0 {
		fit = e.fit(rules, pairs, e.timeUp)
		if len(fit) > 0 && e.unfinished() {
			return 0, 0, fmt.Errorf("%s may be the first number only: %w", e.text, errAmbiguous)
		}
	}
	switch {
	case len(pairs) == 0:
		return 0, 0, fmt.Errorf("type both numbers, such as 11 7")
	case len(fit) == 1:
		return fit[0].a, fit[0].b, nil
	case len(fit) == 0 && len(pairs) == 1:
		return pairs[0].a, pairs[0].b, nil // the rules say best what is wrong with it
	}
	if len(fit) == 0 {
		fit = pairs
	}
	return 0, 0, fmt.Errorf("%s can be %s: %w", e.text, either(fit), errAmbiguous)
}

// unfinished tells whether two digits may be one number, of which the other is still to come.
func (e *entry) unfinished() bool { return e.how == 0 && len(e.text) == 2 && e.text[0] == '1' }

// fit are those of some pairs with which a game can end: played to its end, or also by the clock.
func (e *entry) fit(rules scoring.Rules, pairs []pair, timed bool) []pair {
	as := *e
	as.timeUp = timed
	var out []pair
	for _, p := range pairs {
		if _, err := as.judge(rules, p); err == nil {
			out = append(out, p)
		}
	}
	return out
}

// pair is the two numbers as teams A and B have them.
type pair struct{ a, b int }

func either(ps []pair) string {
	out := make([]string, len(ps))
	for i, p := range ps {
		out[i] = fmt.Sprintf("%d-%d", p.a, p.b)
	}
	return strings.Join(out, " or ")
}

// pairs lists the ways in which what was typed can be two numbers: one way with a blank, several
// without. Numbers have at most two digits; one begins with a zero only where it is plain which digits it has:
// beside a blank, or in four digits such as 1109.
func (e *entry) pairs() []pair {
	var out []pair
	add := func(x, y string) {
		plain := len(x)+len(y) == 4 || strings.Contains(e.text, " ")
		a, okA := number(x, plain)
		b, okB := number(y, plain)
		if !okA || !okB {
			return
		}
		if e.swapped {
			a, b = b, a
		}
		out = append(out, pair{a, b})
	}
	if x, y, ok := strings.Cut(e.text, " "); ok {
		add(x, y)
		return out
	}
	for i := 1; i < len(e.text); i++ {
		add(e.text[:i], e.text[i:])
	}
	return out
}

// number is that of one or two digits, of which the first may be a zero where that is plain.
func number(text string, plain bool) (int, bool) {
	if text == "" || len(text) > 2 || len(text) == 2 && text[0] == '0' && !plain {
		return 0, false
	}
	v, err := strconv.Atoi(text)
	return v, err == nil
}

// final is the score that Enter would send.
func (e *entry) final(rules scoring.Rules) (scoring.Final, error) {
	a, b, err := e.score(rules)
	if err != nil {
		return scoring.Final{}, err
	}
	final, err := e.judge(rules, pair{a, b})
	if err == nil && e.asks() {
		return scoring.Final{}, errWhoRetired
	}
	return final, err
}

// judge asks the rules whether a game can end so.
func (e *entry) judge(rules scoring.Rules, p pair) (scoring.Final, error) {
	switch {
	case e.how == 0:
		final, err := rules.Final(p.a, p.b, scoring.Played)
		if err != nil && e.timeUp {
			return rules.Final(p.a, p.b, scoring.Timed)
		}
		return final, err
	case e.how == scoring.Retired:
		return rules.Retire(p.a, p.b, e.retired)
	}
	return rules.Final(p.a, p.b, e.how)
}

// ParseScore reads a score written in one go: as it is typed on a court (117, 11 7, 9-6 t, 9-6 r b), or in
// the words of scoring.Rules.ParseFinal, of which a retirement must name the team.
func ParseScore(rules scoring.Rules, text string) (scoring.Final, error) {
	if final, ok := typedScore(rules, text); ok {
		return final, nil
	}
	final, err := rules.ParseFinal(text)
	if fields := strings.Fields(strings.ToLower(text)); err == nil && final.How() == scoring.Retired && !isTeam(fields[len(fields)-1]) {
		return scoring.Final{}, fmt.Errorf("say which team retired: write %v retired a, or %v retired b", final.Score(), final.Score())
	}
	return final, err
}

func isTeam(word string) bool { return word == "a" || word == "b" }

// typedScore is what the keys of a text make on a court; false where they make no score.
func typedScore(rules scoring.Rules, text string) (scoring.Final, bool) {
	var e entry
	for _, r := range strings.TrimSpace(text) {
		if e.how != 0 && r == ' ' {
			continue // between the words; the numbers are behind us
		}
		if !e.press(string(r)) {
			return scoring.Final{}, false
		}
	}
	final, err := e.final(rules)
	return final, err == nil
}

// ScoreText is a final score as ParseScore reads it.
func ScoreText(f scoring.Final) string {
	w, _ := f.Winner()
	switch f.How() {
	case scoring.Retired:
		return fmt.Sprintf("%v retired %s", f.Score(), strings.ToLower(w.Other().String()))
	case scoring.Walkover:
		return "walkover " + strings.ToLower(w.String())
	case scoring.Void:
		return "void"
	}
	return f.String()
}
