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
	var best, past, open, unknown []string
	for _, m := range c.Measures() {
		switch {
		case m.Rests && !rounds:
		case m.Open:
			unknown = append(unknown, m.Name)
		case m.Gap() > 0 && m.Left() <= 0:
			past = append(past, fmt.Sprintf("%s, %d above its bound", m.Name, m.Gap()))
		case m.Played > 0:
			open = append(open, fmt.Sprintf("%s by at most %d besides %d that lie in rounds already played", m.Name, m.Left(), m.Played))
		case m.Gap() > 0:
			open = append(open, fmt.Sprintf("%s by at most %d", m.Name, m.Gap()))
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
	if over := c.BenchedTwice.Left(); over > 0 && rounds {
		words = append(words, fmt.Sprintf("Sit-outs right after a sit-out are %d more than must be. They are weighed against meeting others again, so what to ask is whether people meet more for them.", over))
	}
	if !rounds {
		words = append(words, "The bounds let anybody meet anybody, also those who were never here together, so part of a gap may be nobody's fault.")
	}
	return words
}

// listed joins words as a sentence does.
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
