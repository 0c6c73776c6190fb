package scheduler

// night is a problem made ready for planning: who is there in each round, who is bound to whom, and
// what each two people may do together.
type night struct {
	p      *Problem
	people int
	first  int        // first round to plan; those before it were played
	here   [][]Player // for each round of the night, who is there, in ascending order
	mate   []Player   // the partner whom somebody always has, or Nobody
	side   []int      // Mixed: each person's group, 0 or 1; else nil
	walls  []bool     // at person·courts + court: the person must not play there; nil = no walls
	wishes *wishes    // nil when nothing is asked of any two people
	bands  bool       // a court prefers a band of levels
	widest int        // the greatest difference of team levels, in tenths, within the level limit
}

// newNight makes the problem ready. Players and courts of the problem must be in range; see
// contradictions.
func newNight(p *Problem) *night {
	n := &night{p: p, people: len(p.People), first: len(p.History)}
	n.here = make([][]Player, p.total())
	for r := range n.here {
		n.here[r] = n.whoIsThere(r)
	}
	n.side = n.sides()
	n.mate = n.mates()
	n.walls = n.courtWalls()
	n.wishes = newWishes(n)
	n.widest = widestGap(p.LevelLimit)
	for _, c := range p.Courts {
		n.bands = n.bands || !c.Strict && (c.MinLevel > 0 || c.MaxLevel > 0)
	}
	return n
}

// whoIsThere lists the people of round r: for a played round those it names, else those whose time
// includes it.
func (n *night) whoIsThere(r int) []Player {
	var here []Player
	if r >= n.first {
		for i, person := range n.p.People {
			if person.present(r) {
				here = append(here, Player(i))
			}
		}
		return here
	}
	named := make([]bool, n.people)
	for _, i := range n.p.History[r].named() {
		if i >= 0 && int(i) < n.people {
			named[i] = true
		}
	}
	for i, yes := range named {
		if yes {
			here = append(here, Player(i))
		}
	}
	return here
}

// named lists everybody whom the round names, playing or not.
func (r Round) named() []Player {
	var out []Player
	for _, g := range r.Games {
		out = append(out, g.Players()...)
	}
	return append(out, r.Out...)
}

// sides numbers the two groups of a mixed night in the order of their appearance.
func (n *night) sides() []int {
	if n.p.Format != Mixed {
		return nil
	}
	side := make([]int, n.people)
	for i, person := range n.p.People {
		if person.Group != n.p.People[0].Group {
			side[i] = 1
		}
	}
	return side
}

// mates finds who is always whose partner: the couples of Together and, in Pairs, whoever is left
// over in the order of the roster.
func (n *night) mates() []Player {
	mate := make([]Player, n.people)
	for i := range mate {
		mate[i] = Nobody
	}
	for _, t := range n.p.Together {
		if t.Times == 0 {
			mate[t.A], mate[t.B] = t.B, t.A
		}
	}
	if n.p.Format != Pairs {
		return mate
	}
	open := Nobody
	for i := range mate {
		switch {
		case mate[i] != Nobody:
		case open == Nobody:
			open = Player(i)
		default:
			mate[i], mate[open] = open, Player(i)
			open = Nobody
		}
	}
	return mate
}

// courtWalls notes who must not play where: people bound to certain courts, and strict bands.
func (n *night) courtWalls() []bool {
	courts := len(n.p.Courts)
	walls := make([]bool, n.people*courts)
	any := false
	for i, person := range n.p.People {
		for c, spec := range n.p.Courts {
			bound := len(person.Courts) > 0
			for _, own := range person.Courts {
				bound = bound && int(own) != c
			}
			if bound || spec.Strict && !spec.suits(person.Level) {
				walls[i*courts+c] = true
				any = true
			}
		}
	}
	if !any {
		return nil
	}
	return walls
}

// fits tells whether the person may play on the court.
func (n *night) fits(i Player, c Court) bool {
	return n.walls == nil || !n.walls[int(i)*len(n.p.Courts)+int(c)]
}

// fresh tells whether nothing was played yet.
func (n *night) fresh() bool { return n.first == 0 && len(n.p.Met) == 0 }

// bound tells whether the person's partner is fixed and present in round r, so that both play or
// neither does.
func (n *night) bound(i Player, r int) bool {
	m := n.mate[i]
	return m != Nobody && n.p.People[m].present(r)
}

// openCourts lists the courts that can be used in round r.
func (n *night) openCourts(r int) []Court {
	var open []Court
	for c, spec := range n.p.Courts {
		if spec.open(r) {
			open = append(open, Court(c))
		}
	}
	return open
}

// everybody lists all people of the problem.
func (n *night) everybody() []Player {
	all := make([]Player, n.people)
	for i := range all {
		all[i] = Player(i)
	}
	return all
}
