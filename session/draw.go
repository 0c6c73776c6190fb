package session

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// draw translates between a night and the scheduler, which knows people and courts by number.
type draw struct {
	night   *Night
	club    *Club
	now     time.Time
	people  []PersonID
	number  map[PersonID]scheduler.Player // of each of people, made when it is asked for
	courts  []CourtID
	problem scheduler.Problem
	levels  map[PersonID]float64 // by ratings, nil where people's own count

	unpinned []unpinned // what was decided by hand and cannot be kept
}

// newDraw states the night's rounds still to come as a scheduling problem: who is here or
// announced and for how long, which courts are open, and what was played.
func newDraw(club *Club, n *Night, now time.Time) *draw {
	d := &draw{night: n, club: club, now: now, levels: n.levels(club)}
	played := len(n.Rounds)
	d.problem = scheduler.Problem{
		Format: n.Settings.Format,
		Rounds: max(1, n.Settings.Rounds-played),
		MaxRun: n.Settings.MaxRun,

		Seed: n.Settings.Seed + uint64(played),

		LevelLimit:      n.Settings.Balance,
		LeftoverSingles: n.Settings.Singles,
	}
	n.Way().follow(&d.problem)
	for _, a := range n.Roll {
		if from, until, ok := d.window(a); ok && !d.strange(a) {
			p, _ := club.Person(a.Person)
			d.people = append(d.people, a.Person)
			d.problem.People = append(d.problem.People, scheduler.Person{
				Name: p.Name, Group: strings.ToLower(p.Group), Level: d.levelOf(p), Arrive: from, Leave: until,
			})
		}
	}
	bound := n.bound(club)
	for _, c := range n.Courts {
		spec := scheduler.CourtSpec{Name: string(c.ID), MinLevel: c.Low, MaxLevel: c.High}
		switch {
		case c.Open:
		case played > 0:
			spec.Close = played
		case slices.Contains(bound, c.ID):
			spec.Open = d.problem.Rounds // never: whoever plays only there sits out, and is told of
		default:
			continue
		}
		d.courts = append(d.courts, c.ID)
		d.problem.Courts = append(d.problem.Courts, spec)
	}
	d.bind()
	for _, r := range n.Rounds {
		d.problem.History = append(d.problem.History, d.round(r))
	}
	d.problem.Met = d.rolled()
	d.wishes()
	d.letGo()
	d.met()
	d.takePins()
	return d
}

// strange tells whether somebody who is not here is in neither group of a mixed night: nobody has to wait
// for that one.
func (d *draw) strange(a Attendance) bool {
	return a.State != Here && !d.night.Grouped(d.club, a.Person)
}

// letGo drops the wishes of people who have gone or rest where they contradict others: only who is here
// counts.
func (d *draw) letGo() {
	if len(d.problem.Together)+len(d.problem.NeverMeet)+len(d.problem.NeverPartner) == 0 {
		return
	}
	for _, c := range scheduler.Clashes(d.problem) {
		for _, p := range c.People {
			if a := d.night.Attending(d.person(p)); a.State == Gone || a.State == Resting {
				names := func(t scheduler.Pair) bool { return t.A == p || t.B == p }
				d.problem.Together = slices.DeleteFunc(d.problem.Together, names)
				d.problem.NeverMeet = slices.DeleteFunc(d.problem.NeverMeet, names)
				d.problem.NeverPartner = slices.DeleteFunc(d.problem.NeverPartner, names)
			}
		}
	}
}

// rolled lists the games that belong to no round, of a night that began by rolling.
func (d *draw) rolled() []scheduler.Game {
	return d.gamesThat(func(g *Game) bool { return g.Round == 0 })
}

// games lists the games of a night.
func (d *draw) games() []scheduler.Game {
	return d.gamesThat(func(*Game) bool { return true })
}

// gamesThat lists games of some kind, but those that were set aside.
func (d *draw) gamesThat(are func(*Game) bool) []scheduler.Game {
	var out []scheduler.Game
	for i := range d.night.Games {
		if g := &d.night.Games[i]; are(g) && (g.Final == nil || g.Final.How() != scoring.Void) {
			out = append(out, d.game(g))
		}
	}
	return out
}

// took tells whether a person was in a round that was called, on court or out, or in a game of no round.
func (d *draw) took(id PersonID) bool {
	if slices.ContainsFunc(d.night.Games, func(g Game) bool { return g.Round == 0 && g.Has(id) }) {
		return true
	}
	return slices.ContainsFunc(d.night.Rounds, func(r CalledRound) bool {
		return slices.Contains(r.Out, id) || slices.ContainsFunc(r.Games, func(g GameID) bool { return d.night.Game(g).Has(id) })
	})
}

// round is a called round as history. A game that was set aside counts as if its people sat out.
func (d *draw) round(r CalledRound) scheduler.Round {
	var out scheduler.Round
	for _, id := range r.Games {
		g := d.night.Game(id)
		if g.Final != nil && g.Final.How() == scoring.Void {
			out.Out = append(out.Out, d.players(g.Players())...)
			continue
		}
		out.Games = append(out.Games, d.game(g))
	}
	out.Out = append(out.Out, d.players(r.Out)...)
	return out
}

func (d *draw) game(g *Game) scheduler.Game {
	return scheduler.Game{Court: scheduler.Court(slices.Index(d.courts, g.Court)), A: d.team(g.A), B: d.team(g.B)}
}

func (d *draw) team(s Team) scheduler.Team {
	return scheduler.Team{d.player(s[0]), d.player(s[1])}
}

// player is a person's number; people without one, and empty places, are nobody.
func (d *draw) player(id PersonID) scheduler.Player {
	if len(d.number) != len(d.people) {
		d.number = make(map[PersonID]scheduler.Player, len(d.people))
		for i, id := range d.people {
			d.number[id] = scheduler.Player(i)
		}
	}
	if i, ok := d.number[id]; ok {
		return i
	}
	return scheduler.Nobody
}

func (d *draw) players(ids []PersonID) []scheduler.Player {
	var out []scheduler.Player
	for _, id := range ids {
		if p := d.player(id); p != scheduler.Nobody {
			out = append(out, p)
		}
	}
	return out
}

// wishes states who shall be partners, who shall not, and who shall never meet among the people of the draw, each pair
// once.
func (d *draw) wishes() {
	var together, apart, noTeam []scheduler.Pair
	add := func(list []scheduler.Pair, a, b scheduler.Player, times int) []scheduler.Pair {
		if a == scheduler.Nobody || b == scheduler.Nobody || a == b {
			return list
		}
		pair := scheduler.Pair{A: min(a, b), B: max(a, b), Times: times}
		if slices.ContainsFunc(list, func(p scheduler.Pair) bool { return p.A == pair.A && p.B == pair.B }) {
			return list
		}
		return append(list, pair)
	}
	for i, id := range d.people {
		p, _ := d.club.Person(id)
		for _, t := range p.Together {
			together = add(together, scheduler.Player(i), d.player(t.With), t.Times)
		}
		for _, other := range p.KeepApart {
			apart = add(apart, scheduler.Player(i), d.player(other), 0)
		}
		for _, other := range p.NotPartner {
			noTeam = add(noTeam, scheduler.Player(i), d.player(other), 0)
		}
	}
	if d.problem.Format == scheduler.Pairs {
		together = d.setPairs(together, slices.Concat(apart, noTeam))
	}
	d.problem.Together, d.problem.NeverMeet, d.problem.NeverPartner = together, apart, noTeam
}

// setPairs adds the pairs that have played to the couples of a night of set pairs. The scheduler pairs
// the rest in the order of the roll; without this, somebody who comes late or back from a rest would
// stand between those who were paired before, and part them all. The newest game that was called for set
// pairs counts, but not one in which somebody was put in.
func (d *draw) setPairs(together, apart []scheduler.Pair) []scheduler.Pair {
	bound := map[scheduler.Player]bool{scheduler.Nobody: true}
	for _, p := range together {
		if p.Times == 0 {
			bound[p.A], bound[p.B] = true, true
		}
	}
	for _, g := range slices.Backward(d.night.Games) {
		if g.Format != scheduler.Pairs || len(g.Replaced) > 0 {
			continue
		}
		for _, s := range []Team{g.A, g.B} {
			a, b := d.player(s[0]), d.player(s[1])
			a, b = min(a, b), max(a, b)
			parted := slices.ContainsFunc(apart, func(p scheduler.Pair) bool { return p.A == a && p.B == b })
			if bound[a] || bound[b] || parted {
				continue
			}
			bound[a], bound[b] = true, true
			together = slices.DeleteFunc(together, func(p scheduler.Pair) bool { return p.A == a && p.B == b })
			together = append(together, scheduler.Pair{A: a, B: b})
		}
	}
	return together
}

// person is the identity of a player, empty for nobody.
func (d *draw) person(p scheduler.Player) PersonID {
	if p == scheduler.Nobody {
		return ""
	}
	return d.people[p]
}

func (d *draw) side(t scheduler.Team) Team { return Team{d.person(t[0]), d.person(t[1])} }

func (d *draw) planned(g scheduler.Game) PlannedGame {
	return PlannedGame{Court: d.courts[g.Court], A: d.side(g.A), B: d.side(g.B)}
}

// rounds translates a plan back to people and courts.
func (d *draw) rounds(plan []scheduler.Round) []PlannedRound {
	out := make([]PlannedRound, 0, len(plan))
	for _, r := range plan {
		var pr PlannedRound
		for _, g := range r.Games {
			pr.Games = append(pr.Games, d.planned(g))
		}
		for _, p := range r.Out {
			pr.Out = append(pr.Out, d.person(p))
		}
		out = append(out, pr)
	}
	return out
}

// schedule translates rounds to come into the scheduler's numbers.
func (d *draw) schedule(rounds []PlannedRound) []scheduler.Round {
	out := make([]scheduler.Round, 0, len(rounds))
	for _, pr := range rounds {
		r := scheduler.Round{Out: d.players(pr.Out)}
		for _, g := range pr.Games {
			r.Games = append(r.Games, d.game(&Game{Court: g.Court, A: g.A, B: g.B}))
		}
		out = append(out, r)
	}
	return out
}

// Rotation is a plan of the rounds to come with the certificate of the whole night: what was
// played and what is planned.
type Rotation struct {
	Rounds      []PlannedRound
	Certificate scheduler.Certificate
	Warnings    []string // what the wishes of people make impossible, in words
	Change      Change   // what it leaves of the rotation that was shown before; zero where none was
}

// PlanRotation works out the rounds to come of the night that goes on. The same night gives the
// same rotation. It takes up to a fraction of a second and stops early when ctx is done.
func PlanRotation(ctx context.Context, l *Ledger, now time.Time) (Rotation, error) {
	return ReplanRotation(ctx, l, now, Shown{})
}

// plan works the rounds to come out, near those that were shown. On a ladder only the next one can be known, since it depends
// on who wins; while results are open there is none.
func (d *draw) plan(ctx context.Context, shown []PlannedRound) ([]PlannedRound, error) {
	if err := d.missingGroups(); err != nil {
		return nil, err
	}
	if d.problem.Format != scheduler.Ladder || len(d.night.Rounds) == 0 {
		plan, err := d.replan(ctx, shown)
		return d.rounds(plan), err
	}
	if len(d.night.Running()) > 0 {
		return nil, fmt.Errorf("the next round of a ladder is known when all scores are in")
	}
	next, err := scheduler.NextLadder(d.problem, d.results())
	return d.rounds([]scheduler.Round{next}), err
}

// replan plans with what was decided by hand. What turns out to be impossible is noted, the newest first, and the
// rounds are planned without it.
func (d *draw) replan(ctx context.Context, shown []PlannedRound) ([]scheduler.Round, error) {
	for {
		plan, _, err := scheduler.Replan(ctx, d.problem, d.schedule(shown), scheduler.Budget{})
		var conflict *scheduler.Conflict
		last := len(d.problem.Pins) - 1
		if !errors.As(err, &conflict) || last < 0 {
			return plan, err
		}
		pin := d.problem.Pins[last]
		d.problem.Pins = d.problem.Pins[:last]
		p := Pin{Round: pin.Round + 1, A: d.side(pin.A), B: d.side(pin.B), Out: pin.Out}
		d.unpinned = append(d.unpinned, unpinned{p, "no valid round was found with it"})
	}
}

// missingGroups names everybody without a group where mixed teams need one.
func (d *draw) missingGroups() error {
	missing := d.groupless()
	if len(missing) == 0 {
		return nil
	}
	return fmt.Errorf("mixed teams need everybody in one of two groups: %s", Barred{Cause: NoGroup, People: missing}.Words(d.club))
}

// groupless lists who is here and in neither group of a mixed night.
func (d *draw) groupless() []PersonID {
	var out []PersonID
	for _, id := range d.people {
		if d.night.contains(id, Here) && !d.night.Grouped(d.club, id) {
			out = append(out, id)
		}
	}
	return out
}

// results are the games of the newest round with who won, for the ladder.
func (d *draw) results() []scheduler.Result {
	if len(d.night.Rounds) == 0 {
		return nil
	}
	var out []scheduler.Result
	for _, id := range d.night.Rounds[len(d.night.Rounds)-1].Games {
		g := d.night.Game(id)
		if g.Final == nil || g.Final.How() == scoring.Void {
			continue
		}
		r := scheduler.Result{Game: d.game(g), Winner: -1}
		if w, ok := g.Final.Winner(); ok {
			r.Winner = int(w)
		}
		out = append(out, r)
	}
	return out
}

func (d *draw) rotation(rounds []PlannedRound) Rotation {
	judged := d.problem
	if d.night.playedFormat(judged.Format) != judged.Format {
		judged.Format = scheduler.Rotating // see playedFormat
	}
	return Rotation{
		Rounds:      rounds,
		Certificate: scheduler.Certify(judged, d.schedule(rounds)),
		Warnings:    append(d.warnings(), scheduler.Unkept(d.problem, d.schedule(rounds))...),
	}
}

// warnings says what wishes and decisions by hand make impossible.
func (d *draw) warnings() []string {
	out := scheduler.Warnings(d.problem)
	for _, u := range d.unpinned {
		out = append(out, u.words(d.club))
	}
	return append(out, d.unbound()...)
}
