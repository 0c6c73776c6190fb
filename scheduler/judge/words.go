package judge

import (
	"fmt"
	"strings"
)

// Words says in sentences what the certificate proves and what it does not, for people who have to defend the
// rotation. Of a night without rounds nothing is said of sitting out.
func (c Certificate) Words(rounds bool) []string {
	if rounds && c.Perfect() {
		return []string{"Every gap is 0: none that shares the sit-outs like this one can be fairer."}
	}
	var best, past, open, unknown, traded []string
	weighed := rounds && c.BenchedTwice.Left() > 0
	for _, m := range c.Measures() {
		switch {
		case m.Rests && !rounds:
		case m.Open:
			unknown = append(unknown, m.Name)
		case m.Gap() > 0 && m.Left() <= 0:
			past = append(past, fmt.Sprintf("%s, %d above its bound", m.Name, m.Gap()))
		case weighed && m.Traded && m.Gap() > 0:
			traded = append(traded, m.Name+" by up to "+besides(m))
		case m.Gap() > 0:
			open = append(open, m.Name+" by at most "+besides(m))
		default:
			best = append(best, m.Name)
		}
	}
	family := "No rotation with as many games that shares the sit-outs like this one can be below a bound."
	if !rounds {
		family = "No way to fill the courts in which everybody has as many games as here can be below a bound."
	}
	words := []string{family + " Each bound holds by itself: what betters one measure may worsen another."}
	if len(best) > 0 {
		words = append(words, "At the bound, so proved best of these: "+listed(best)+".")
	}
	if len(past) > 0 {
		words = append(words, "No better any more: "+listed(past)+". The rounds already played make that certain, whatever follows them.")
	}
	if len(open) > 0 {
		words = append(words, "Not proved best: "+listed(open)+"; the bound may be too low.")
	}
	if len(unknown) > 0 {
		words = append(words, "No bound is known for "+listed(unknown)+".")
	}
	if weighed {
		words = append(words, "Above the bound, as they are weighed against meeting others again: "+listed(traded)+
			". What to ask is whether people meet more for it.")
	}
	if !rounds {
		words = append(words, "The bounds let anybody meet anybody, also those who were never here together, so part of a gap may be nobody's fault.")
	}
	return words
}

// besides is how far a measure may lie above what can be reached, and how much is past mending.
func besides(m Measure) string {
	if m.Played > 0 {
		return fmt.Sprintf("%d besides %d that lie in rounds already played", m.Left(), m.Played)
	}
	return fmt.Sprint(m.Gap())
}

// listed joins words as a sentence does.
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
