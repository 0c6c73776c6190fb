package judge

import "club/quadrille/scheduler/night"

// Games of two in one team who were so on the last night already. That it is 0 proves itself; else no bound is known.
var _ = add(Kind{
	Name: "last partners", Says: "partners of the last night again", Before: true,
	At: func(c *Certificate) *Value { return &c.LastPartners },
	Judge: func(c *Case) Value {
		again := 0
		for _, g := range c.all {
			for _, t := range [2]night.Team{g.A, g.B} {
				again += night.One(c.remembered[night.Pair{A: min(t[0], t[1]), B: max(t[0], t[1])}])
			}
		}
		return Value{Value: again, Open: again > 0}
	},
})

// remembered are those who were partners on the last night.
func remembered(p *night.Problem) map[night.Pair]bool {
	out := map[night.Pair]bool{}
	for _, r := range p.Lately {
		if r.WerePartners() {
			out[night.Pair{A: min(r.A, r.B), B: max(r.A, r.B)}] = true
		}
	}
	return out
}
