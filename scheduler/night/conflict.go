package night

import (
	"fmt"
	"strings"
)

// Conflict is the error of a problem that no plan can solve: the wishes contradict each other, or
// too few people or courts are there. Each reason is a sentence that says what clashes and by
// how much.
type Conflict struct {
	Reasons []string
}

// Error joins the reasons.
func (c *Conflict) Error() string { return strings.Join(c.Reasons, "; ") }

// Clash is one reason why a problem is impossible, in words, and the people whom it is about: none where
// it is about all of them.
type Clash struct {
	Text   string
	People []Player
}

// Contradictions lists in words what makes the problem impossible before any planning.
func Contradictions(p *Problem) []string { return texts(Clashes(p)) }

func texts(clashes []Clash) []string {
	var out []string
	for _, c := range clashes {
		out = append(out, c.Text)
	}
	return out
}

// Clashes lists what makes the problem impossible before any planning.
func Clashes(p *Problem) []Clash {
	c := &clash{p: p}
	c.numbers()
	if len(c.reasons) == 0 {
		c.groups()
		c.partners()
		c.pairs()
	}
	if len(c.reasons) == 0 {
		c.pins()
	}
	if len(c.reasons) == 0 && p.Rounds > 0 {
		n := New(p)
		if r := n.First; n.MostGames(r, len(n.OpenCourts(r))) == 0 {
			for _, text := range n.WhyNoGame(r) {
				c.say("%s", text)
			}
		}
	}
	return c.reasons
}

// Misnumbered lists the numbers of the problem that are out of range, so that nothing could be looked up.
func Misnumbered(p *Problem) []string {
	c := &clash{p: p}
	c.numbers()
	return texts(c.reasons)
}

// clash collects reasons.
type clash struct {
	p       *Problem
	reasons []Clash
}

func (c *clash) say(format string, args ...any) { c.about(nil, format, args...) }

// about says a reason and whom it is about.
func (c *clash) about(people []Player, format string, args ...any) {
	c.reasons = append(c.reasons, Clash{fmt.Sprintf(format, args...), people})
}

// numbers checks what a program, and not an organiser, would get wrong, so that nothing later runs
// into it.
func (c *clash) numbers() {
	p := c.p
	if p.Rounds < 0 {
		c.say("%d rounds cannot be planned: ask for 0 or more", p.Rounds)
	}
	if p.MaxRun < 0 {
		c.say("at most %d games running is no limit: use 0 for none, or 1 and more", p.MaxRun)
	}
	if l := p.LevelLimit; l != 0 && !(l >= 0.5 && l < 1) {
		c.say("a level limit of %v cannot be kept, as somebody always has a chance of one half: choose from 0.5 to below 1", l)
	}
	for _, list := range [3][]Pair{p.Together, p.NeverPartner, p.NeverMeet} {
		for _, t := range list {
			switch {
			case t.A < 0 || t.B < 0 || int(t.A) >= len(p.People) || int(t.B) >= len(p.People):
				c.say("a wish names person %d and person %d, but there are %d people", t.A+1, t.B+1, len(p.People))
			case t.A == t.B:
				c.say("%s cannot be paired with or kept apart from the same person", p.NameOf(t.A))
			case t.Times < 0:
				c.say("%s and %s cannot be partners %d times", p.NameOf(t.A), p.NameOf(t.B), t.Times)
			}
		}
	}
	c.misnumberedPins()
	for i, person := range p.People {
		for _, court := range person.Courts {
			if court < 0 || int(court) >= len(p.Courts) {
				c.say("%s is bound to court number %d, but there are %d courts", p.NameOf(Player(i)), court+1, len(p.Courts))
			}
		}
	}
}

// groups checks that a mixed night has two groups.
func (c *clash) groups() {
	if c.p.Format != Mixed {
		return
	}
	var names []string
	for i, person := range c.p.People {
		known := false
		for _, name := range names {
			known = known || name == person.Group
		}
		switch {
		case known:
		case len(names) == 2:
			c.about([]Player{Player(i)}, "mixed teams need two groups, but %s is of a third, %q, beside %q and %q",
				c.p.NameOf(Player(i)), person.Group, names[0], names[1])
			return
		default:
			names = append(names, person.Group)
		}
	}
	if len(names) < 2 {
		c.say("mixed teams need two groups, but all %d people are of one: give each person a group", len(c.p.People))
	}
}

// partners checks that nobody always has two partners, and that fixed partners may be a team.
func (c *clash) partners() {
	mate := make(map[Player]Player)
	for _, t := range c.p.Together {
		if t.Times > 0 {
			continue
		}
		for _, x := range [2][2]Player{{t.A, t.B}, {t.B, t.A}} {
			if other, ok := mate[x[0]]; ok && other != x[1] {
				c.about([]Player{x[0], other, x[1]}, "%s cannot always be the partner of both %s and %s", c.p.NameOf(x[0]), c.p.NameOf(other), c.p.NameOf(x[1]))
			}
			mate[x[0]] = x[1]
		}
	}
}

// pairs checks each pair who shall be partners against everything else that is asked of them.
func (c *clash) pairs() {
	p := c.p
	n := New(p)
	for _, t := range p.Together {
		a, b, both := p.NameOf(t.A), p.NameOf(t.B), []Player{t.A, t.B}
		if HasPair(p.NeverPartner, t) {
			c.about(both, "%s and %s shall be partners and never be partners", a, b)
		}
		if HasPair(p.NeverMeet, t) {
			c.about(both, "%s and %s shall be partners and never meet", a, b)
		}
		if p.Format == Mixed && p.People[t.A].Group == p.People[t.B].Group {
			c.about(both, "%s and %s shall be partners but are both of group %q on a mixed night", a, b, p.People[t.A].Group)
		}
		if len(p.Courts) > 0 && !n.shareCourt(t.A, t.B) {
			c.about(both, "%s and %s shall be partners but no court suits both", a, b)
		}
		if t.Times > 0 && (n.Mate[t.A] != Nobody && n.Mate[t.A] != t.B || n.Mate[t.B] != Nobody && n.Mate[t.B] != t.A) {
			c.about(both, "%s and %s shall be partners %d times, but one of them always has another partner", a, b, t.Times)
		}
	}
	if p.Format == Pairs {
		for i, m := range n.Mate {
			t := Pair{A: Player(i), B: m}
			if m > Player(i) && (HasPair(p.NeverPartner, t) || HasPair(p.NeverMeet, t)) {
				c.about([]Player{t.A, t.B}, "%s and %s are a set pair by their places in the list but shall not be: name their partners", p.NameOf(t.A), p.NameOf(t.B))
			}
		}
	}
}

// HasPair tells whether a list names the two people of t.
func HasPair(list []Pair, t Pair) bool {
	for _, x := range list {
		if x.Is(t.A, t.B) {
			return true
		}
	}
	return false
}

// shareCourt tells whether some court suits both.
func (n *Night) shareCourt(a, b Player) bool {
	for c := range n.Problem.Courts {
		if n.MayPlayOn(a, Court(c)) && n.MayPlayOn(b, Court(c)) {
			return true
		}
	}
	return false
}

// WhyNoGame says why round r of the night has no game.
func (n *Night) WhyNoGame(r int) []string {
	here, open := len(n.Here[r]), len(n.OpenCourts(r))
	switch {
	case open == 0:
		return []string{fmt.Sprintf("no court is open in round %d: open one", r+1)}
	case here < 4:
		return []string{fmt.Sprintf("round %d has %d of the 4 people that a game needs: start later, or check more people in", r+1, here)}
	case n.Side != nil && n.MostGames(r, open) == 0:
		pools := n.Pools(r)
		return []string{fmt.Sprintf("a mixed game needs two of each group, but round %d has %d and %d", r+1, len(pools[0]), len(pools[1]))}
	case n.Problem.Format == Pairs && n.MostGames(r, open) == 0:
		return []string{fmt.Sprintf("a game needs two set pairs, but in round %d only %d people have their partner there", r+1, len(n.Pools(r)[0]))}
	}
	return []string{fmt.Sprintf("of the %d people of round %d no four may play together on a court: loosen a keep-apart, a court band or the limit of games running", here, r+1)}
}
