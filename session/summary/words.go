package summary

import (
	"fmt"
	"strings"
	"time"
)

// Section is a part of the summary in words.
type Section struct {
	Title string
	Lines []string
}

// Words are the summary as somebody reads it, in the zone of the hall.
func (s Summary) Words(zone *time.Location) []Section {
	return []Section{
		{"The night", s.night(zone)},
		{"Who leads", s.lead()},
		{"Fairness", s.fair()},
		{"Courts", s.use()},
		{"Games to remember", s.remember()},
	}
}

func (s Summary) night(zone *time.Location) []string {
	when := s.Opened.In(zone).Format("2 January 2006, 15:04")
	if s.Ended.IsZero() {
		when += ", still open"
	} else {
		when += " to " + s.Ended.In(zone).Format("15:04")
	}
	games := many(s.Games, "game")
	if s.Rounds > 0 {
		games += " in " + many(s.Rounds, "round")
	}
	if s.Void > 0 {
		games += fmt.Sprintf(", %d void", s.Void)
	}
	games += " on " + many(len(s.Courts), "court")
	if s.Running > 0 {
		games += fmt.Sprintf(", %d still going on", s.Running)
	}
	people := many(s.People, "person")
	if s.People != 1 {
		people = fmt.Sprintf("%d people", s.People)
	}
	return []string{when, people + " came; " + games}
}

func (s Summary) lead() []string {
	if len(s.Leaders) == 0 {
		return []string{"no game counts yet"}
	}
	var out []string
	for _, l := range s.Leaders {
		out = append(out, fmt.Sprintf("%d  %s: %d of %d won, %+d points", l.Place, l.Name, l.Wins, l.Games, l.Difference))
	}
	return out
}

func (s Summary) fair() []string {
	between := func(a, b int, word string) string {
		if a == b {
			return many(a, word)
		}
		return fmt.Sprintf("%d to %s", a, many(b, word))
	}
	out := []string{"everybody who came had " + between(s.Fewest, s.Most, "game")}
	if s.Rounds > 0 {
		out = append(out, "everybody sat out "+between(s.SatOut[0], s.SatOut[1], "round"))
	}
	if s.Wait != nil {
		out = append(out, fmt.Sprintf("the longest wait for a game: %s, %d min", s.Wait.Name, s.Wait.Minutes))
	}
	if s.Repeats == 0 {
		return append(out, "nobody was partners twice")
	}
	return append(out, fmt.Sprintf("%s of two who had been partners before, most often %s", many(s.Repeats, "game"), pairs(s.Again)))
}

func (s Summary) use() []string {
	out := []string{fmt.Sprintf("idle %.0f %% of the time that they were open", 100*s.Idle)}
	for _, c := range s.Courts {
		out = append(out, fmt.Sprintf("court %s: %s, idle %d min", c.Court, many(c.Games, "game"), c.Idle))
	}
	return out
}

func (s Summary) remember() []string {
	if s.Closest == nil {
		return []string{"no game was played to its end yet"}
	}
	g := s.Closest
	where := "court " + string(g.Court)
	if g.Round > 0 {
		where += fmt.Sprintf(", round %d", g.Round)
	}
	out := []string{fmt.Sprintf("the closest: %s %s %s (%s)", strings.Join(g.A, " & "), g.Score, strings.Join(g.B, " & "), where)}
	if len(s.Met) > 0 {
		out = append(out, "on one court most often: "+pairs(s.Met))
	}
	return out
}

// pairs names some pairs and how often.
func pairs(all []Pair) string {
	var parts []string
	for _, p := range all[:min(len(all), mostPairs)] {
		parts = append(parts, p.Names[0]+" and "+p.Names[1])
	}
	text := strings.Join(parts, "; ")
	switch more := len(all) - mostPairs; {
	case more == 1:
		text += "; and 1 more pair"
	case more > 1:
		text += fmt.Sprintf("; and %d more pairs", more)
	}
	return fmt.Sprintf("%s (%d times)", text, all[0].Times)
}

func many(k int, word string) string {
	if k == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", k, word)
}
