package night

// Night is a problem made ready for planning: who is there in each round, who is bound to whom, and
// what each two people may do together.
type Night struct {
	Problem *Problem
	People  int
	First   int        // first round to plan; those before it were played
	Here    [][]Player // for each round of the night, who is there, in ascending order
	Mate    []Player   // the partner whom somebody always has, or Nobody
	Side    []int      // Mixed: each person's group, 0 or 1; else nil
	Walls   []bool     // at person·courts + court: the person must not play there; nil = no walls
	Wishes  *Wishes    // nil when nothing is asked of any two people
	Bands   bool       // a court prefers a band of levels
	Widest  int        // the greatest difference of team levels, in tenths, within the level limit
}

// New makes the problem ready. Players and courts of the problem must be in range; see
// [Contradictions].
func New(p *Problem) *Night {
	n := &Night{Problem: p, People: len(p.People), First: len(p.History)}
	n.Here = make([][]Player, p.TotalRounds())
	for r := range n.Here {
		n.Here[r] = n.whoIsThere(r)
	}
	n.Side = n.sides()
	n.Mate = n.mates()
	n.Walls = n.courtWalls()
	n.Wishes = newWishes(n)
	_, limit := p.Even()
	n.Widest = widestGap(limit)
	for _, c := range p.Courts {
		n.Bands = n.Bands || c.MinLevel > 0 || c.MaxLevel > 0
	}
	return n
}

// whoIsThere lists the people of round r: for a played round those it names, else those whose time
// includes it.
func (n *Night) whoIsThere(r int) []Player {
	var here []Player
	if r >= n.First {
		for i, person := range n.Problem.People {
			if person.PresentIn(r) {
				here = append(here, Player(i))
			}
		}
		return here
	}
	named := make([]bool, n.People)
	for _, i := range n.Problem.History[r].Named() {
		if i >= 0 && int(i) < n.People {
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

// Named lists everybody whom the round names, playing or not.
func (r Round) Named() []Player {
	var out []Player
	for _, g := range r.Games {
		out = append(out, g.Players()...)
	}
	return append(out, r.Out...)
}

// sides numbers the two groups of a mixed night in the order of their appearance.
func (n *Night) sides() []int {
	if n.Problem.Format != Mixed {
		return nil
	}
	side := make([]int, n.People)
	for i, person := range n.Problem.People {
		if person.Group != n.Problem.People[0].Group {
			side[i] = 1
		}
	}
	return side
}

// mates finds who is always whose partner: the couples of Together and, in Pairs, whoever is left
// over, in the order of the roster as far as they may be partners.
func (n *Night) mates() []Player {
	mate := make([]Player, n.People)
	for i := range mate {
		mate[i] = Nobody
	}
	for _, t := range n.Problem.Together {
		if t.Times == 0 {
			mate[t.A], mate[t.B] = t.B, t.A
		}
	}
	if n.Problem.Format != Pairs {
		return mate
	}
	var left []Player
	for i, m := range mate {
		if m == Nobody {
			left = append(left, Player(i))
		}
	}
	for _, t := range inOrder(left, func(a, b Player) bool {
		return HasPair(n.Problem.NeverPartner, Pair{A: a, B: b}) || HasPair(n.Problem.NeverMeet, Pair{A: a, B: b})
	}) {
		mate[t[0]], mate[t[1]] = t[1], t[0]
	}
	return mate
}

// courtWalls notes who must not play where: people bound to certain courts.
func (n *Night) courtWalls() []bool {
	courts := len(n.Problem.Courts)
	walls := make([]bool, n.People*courts)
	any := false
	for i, person := range n.Problem.People {
		for c := range n.Problem.Courts {
			bound := len(person.Courts) > 0
			for _, own := range person.Courts {
				bound = bound && int(own) != c
			}
			if bound {
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

// MayPlayOn tells whether the person may play on the court.
func (n *Night) MayPlayOn(i Player, c Court) bool {
	return n.Walls == nil || !n.Walls[int(i)*len(n.Problem.Courts)+int(c)]
}

// Free tells whether anybody may play in anybody's stead: nobody is bound to a partner or a court, and nobody
// needs a rest. On mixed nights that is so within each group.
func (n *Night) Free() bool {
	for _, m := range n.Mate {
		if m != Nobody {
			return false
		}
	}
	return n.Walls == nil && n.Problem.MaxRun == 0
}

// Fresh tells whether nothing was played yet.
func (n *Night) Fresh() bool { return n.First == 0 && len(n.Problem.Met) == 0 }

// HasMate tells whether the person's partner is fixed and present in round r, so that both play or
// neither does.
func (n *Night) HasMate(i Player, r int) bool {
	m := n.Mate[i]
	return m != Nobody && n.Problem.People[m].PresentIn(r)
}

// OpenCourts lists the courts that can be used in round r.
func (n *Night) OpenCourts(r int) []Court {
	var open []Court
	for c, spec := range n.Problem.Courts {
		if spec.OpenIn(r) {
			open = append(open, Court(c))
		}
	}
	return open
}

// Everybody lists all people of the problem.
func (n *Night) Everybody() []Player {
	all := make([]Player, n.People)
	for i := range all {
		all[i] = Player(i)
	}
	return all
}

// PastOuts counts the sit-outs of the history.
func (n *Night) PastOuts() []int {
	outs := make([]int, n.People)
	for _, round := range n.Problem.History {
		for _, i := range n.OnlyKnown(round.Out) {
			outs[i]++
		}
	}
	return outs
}

// Intersect returns the people who are in both lists.
func Intersect(a, b []Player) []Player {
	in := make(map[Player]bool, len(b))
	for _, i := range b {
		in[i] = true
	}
	var both []Player
	for _, i := range a {
		if in[i] {
			both = append(both, i)
			delete(in, i)
		}
	}
	return both
}
