package standings

import (
	"fmt"
	"slices"
)

// criterion is one way of parting people who are level.
type criterion struct {
	by      Criterion
	figures func(r Row, group []Row) Figures
	fits    func(group []Row) bool
	value   func(r Row, group []Row) ratio
	why     func(r Row, group []Row) string
}

// criteria are tried in turn; each time one parts a group, the parts begin again with the first,
// because head to head means something else among fewer people. A part is smaller than its group,
// so this ends, and a group is only ever sorted by one number, so no circle can arise: three who
// beat each other in a ring have equal numbers and pass on to the next criterion.
func (t *tally) criteria() []criterion {
	against := func(r Row, g []Row) Figures { return t.against(r, g).figures() }
	return []criterion{
		{
			by: ByHeadToHead, figures: against,
			fits:  t.comparable,
			value: func(r Row, g []Row) ratio { m := t.against(r, g); return ratio{m.points, 2 * m.games} },
			why: func(r Row, g []Row) string {
				if len(g) == 2 {
					return "won head to head against " + other(r, g)
				}
				return fmt.Sprintf("head to head among the %d who are level", len(g))
			},
		},
		{
			by: ByDifference, figures: func(r Row, _ []Row) Figures { return r.figures() },
			fits:  func([]Row) bool { return true },
			value: func(r Row, _ []Row) ratio { return ratio{r.Difference, r.Games} },
			why:   func(r Row, _ []Row) string { return fmt.Sprintf("difference per game %+.2f", r.PerGame()) },
		},
		{
			by: ByHeadDifference, figures: against,
			fits:  t.comparable,
			value: func(r Row, g []Row) ratio { m := t.against(r, g); return ratio{m.difference, m.games} },
			why:   func(r Row, g []Row) string { return "head-to-head point difference" },
		},
	}
}

func other(r Row, group []Row) string {
	if group[0].Name == r.Name {
		return group[1].Name
	}
	return group[0].Name
}

// order parts a group of people with equal win share into those who stay level.
func (t *tally) order(group []Row, lots []string) [][]Row {
	if len(group) == 1 {
		return [][]Row{group}
	}
	for _, c := range t.criteria() {
		if !c.fits(group) {
			continue
		}
		parts := split(group, func(r Row) ratio { return c.value(r, group) })
		if len(parts) == 1 {
			continue
		}
		var out [][]Row
		for i, part := range parts {
			if i < len(parts)-1 {
				for j := range part {
					part[j].Why = c.why(part[j], group)
				}
			}
			ordered := t.order(part, lots)
			if i > 0 {
				t.part(out[len(out)-1], ordered[0], c.by, len(group), func(r Row) Figures { return c.figures(r, group) })
			}
			out = append(out, ordered...)
		}
		return out
	}
	return t.byLot(group, lots)
}

// byLot parts a group by a recorded draw; who was not drawn stays level behind those who were.
func (t *tally) byLot(group []Row, lots []string) [][]Row {
	place := func(r Row) ratio {
		if i := slices.Index(lots, r.Name); i >= 0 {
			return ratio{-i, 1}
		}
		return ratio{-len(lots), 1}
	}
	parts := split(group, place)
	if len(parts) == 1 {
		for i := range group {
			group[i].Why = fmt.Sprintf("level with %d more", len(group)-1)
		}
		return [][]Row{group}
	}
	for k, part := range parts[:len(parts)-1] {
		t.part(part, parts[k+1], ByLot, len(group), Row.figures)
		for i := range part {
			part[i].Why = "drawn by lot"
		}
	}
	return parts
}
