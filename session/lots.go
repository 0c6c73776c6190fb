package session

import (
	"cmp"
	"fmt"
	"hash/fnv"
	"slices"

	"club/quadrille/scheduler"
)

// lots are the names in the order in which they were drawn.
func (n *Night) lots(name func(PersonID) string) []string {
	out := make([]string, len(n.Lots))
	for i, s := range n.Lots {
		out[i] = rowName(s, name)
	}
	return out
}

// DrawLots orders those whom nothing else parts, by a draw that is kept with the night.
type DrawLots struct{}

func (DrawLots) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	rows := Standings(l.club, n)
	level := map[string]bool{}
	for i, r := range rows {
		if i > 0 && rows[i-1].Rank == r.Rank {
			level[r.Name], level[rows[i-1].Name] = true, true
		}
	}
	if len(level) == 0 {
		return nil, fmt.Errorf("nobody is level: there is no lot to draw")
	}
	lots := slices.Clone(n.Lots)
	for _, s := range n.sides(l.club.Name) {
		if level[rowName(s, l.club.Name)] {
			lots = append(lots, s)
		}
	}
	drawn := lots[len(n.Lots):]
	slices.SortStableFunc(drawn, func(a, b Team) int {
		return cmp.Compare(lotNumber(n.Settings.Seed, l.last, a), lotNumber(n.Settings.Seed, l.last, b))
	})
	return []Event{LotsDrawn{lots}}, nil
}

// lotNumber is what a team draws: it depends on the night's seed and on the moment of the draw, so
// that nobody can know it before, and anybody can check it after.
func lotNumber(seed, moment uint64, s Team) uint64 {
	h := fnv.New64a()
	fmt.Fprintf(h, "%d %d %s %s", seed, moment, s[0], s[1])
	return h.Sum64()
}

// sides lists who has a row of their own in the table: persons, or set pairs.
func (n *Night) sides(name func(PersonID) string) []Team {
	var out []Team
	seen := map[string]bool{}
	add := func(s Team) {
		if key := rowName(s, name); !seen[key] {
			seen[key] = true
			out = append(out, s)
		}
	}
	for i := range n.Games {
		for _, s := range []Team{n.Games[i].A, n.Games[i].B} {
			if n.Games[i].Format == scheduler.Pairs && s[1] != "" {
				add(s)
				continue
			}
			for _, id := range s {
				if id != "" {
					add(Team{id})
				}
			}
		}
	}
	return out
}
