package session

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"time"

	"club/quadrille/scheduler"
)

// Barred is why some people who are here are not called: without a word from the organiser no game
// could have them.
type Barred struct {
	Cause  Cause // NoGroup or Contradiction
	People []PersonID
	Text   string // the contradiction in words, empty for people without a group
}

// Groups are the two groups of a mixed night, as they are written: those that most people have who are
// here or expected. There are fewer where people have fewer.
func (n *Night) Groups(club *Club) []string {
	type group struct {
		word   string
		people int
	}
	var groups []group
	for _, a := range n.Roll {
		p, _ := club.Person(a.Person)
		if a.State == Gone || p.Group == "" {
			continue
		}
		i := slices.IndexFunc(groups, func(g group) bool { return sameGroup(g.word, p.Group) })
		if i < 0 {
			i, groups = len(groups), append(groups, group{word: p.Group})
		}
		groups[i].people++
	}
	slices.SortStableFunc(groups, func(a, b group) int { return cmp.Compare(b.people, a.people) })
	var out []string
	for _, g := range groups[:min(2, len(groups))] {
		out = append(out, g.word)
	}
	return out
}

// GroupChoice are two groups to choose from for somebody without one, in the order of the alphabet, so that
// their places stay: tonight's, or else the club's, or else A and B.
func (n *Night) GroupChoice(club *Club) []string {
	choice := n.Groups(club)
	for _, p := range club.People {
		if p.Group != "" {
			choice = append(choice, p.Group)
		}
	}
	choice = append(choice, "A", "B")
	var out []string
	for _, g := range choice {
		if !slices.ContainsFunc(out, func(o string) bool { return sameGroup(o, g) }) {
			out = append(out, g)
		}
	}
	out = out[:2]
	slices.SortFunc(out, func(a, b string) int { return strings.Compare(strings.ToLower(a), strings.ToLower(b)) })
	return out
}

// NeedsGroups tells whether teams of the night are made of two groups.
func (n *Night) NeedsGroups() bool { return n.Settings.Format == scheduler.Mixed }

// Grouped tells whether somebody can be in a team of the night, as far as groups go.
func (n *Night) Grouped(club *Club, id PersonID) bool {
	return !n.NeedsGroups() || isOf(n.Groups(club), club, id)
}

func isOf(groups []string, club *Club, id PersonID) bool {
	p, _ := club.Person(id)
	return slices.ContainsFunc(groups, func(g string) bool { return sameGroup(g, p.Group) })
}

// sameGroup compares groups as the scheduler is given them.
func sameGroup(a, b string) bool {
	lower := strings.ToLower // as the scheduler does, and not all that Unicode folds
	return lower(a) == lower(b)
}

// lineup is who may be called to a court that is free now. Only people count who are here: those who
// have gone or rest are not in the draw, and their places in the games that were played are empty.
type lineup struct {
	*draw
	bench  []Attendance // everybody who waits
	queue  []Attendance // those of them who may be called
	barred []Barred
}

// newLineup numbers the people who may be called, and says who may not and why.
func newLineup(club *Club, n *Night, now time.Time) *lineup {
	u := &lineup{bench: n.Bench()}
	out := map[PersonID]bool{}
	u.needGroups(club, n, out)
	for {
		u.draw = newCallDraw(club, n, now, out)
		clashes := u.hall().Clashes()
		named := 0
		for _, c := range clashes {
			u.bar(c, out)
			named += len(c.People)
		}
		if named == 0 { // whatever is left is about everybody, and the choice of a game says so
			break
		}
	}
	for _, a := range u.bench {
		if !out[a.Person] {
			u.queue = append(u.queue, a)
		}
	}
	return u
}

// needGroups bars whoever is in none of the two groups of a mixed night.
func (u *lineup) needGroups(club *Club, n *Night, out map[PersonID]bool) {
	if !n.NeedsGroups() {
		return
	}
	b, groups := Barred{Cause: NoGroup}, n.Groups(club)
	for _, a := range n.Roll {
		if a.State == Here && !isOf(groups, club, a.Person) {
			b.People = append(b.People, a.Person)
		}
		out[a.Person] = !isOf(groups, club, a.Person)
	}
	if len(b.People) > 0 {
		u.barred = append(u.barred, b)
	}
}

// bar takes those out whose wishes contradict each other: nobody else has to wait for them.
func (u *lineup) bar(c scheduler.Clash, out map[PersonID]bool) {
	b := Barred{Cause: Contradiction, Text: c.Text}
	for _, p := range c.People {
		id := u.person(p)
		if out[id] = true; !slices.Contains(b.People, id) {
			b.People = append(b.People, id)
		}
	}
	if len(b.People) > 0 {
		u.barred = append(u.barred, b)
	}
}

// newCallDraw numbers those who are here, and all courts, without regard to rounds. Of set pairs it also
// numbers who rests, since the other one waits for that partner.
func newCallDraw(club *Club, n *Night, now time.Time, out map[PersonID]bool) *draw {
	return newDrawOf(club, n, now, func(a Attendance) bool {
		there := a.State == Here || n.Playing(a.Person) != nil ||
			a.State == Resting && n.Settings.Format == scheduler.Pairs
		return there && !out[a.Person]
	})
}

// hall states who is here and what they and the organiser ask, without the games.
func (u *lineup) hall() scheduler.Rolling {
	n := u.night
	r := scheduler.Rolling{
		People:    u.problem.People,
		Courts:    u.problem.Courts,
		Format:    n.Settings.Format,
		Together:  u.problem.Together,
		NeverMeet: u.problem.NeverMeet, NeverPartner: u.problem.NeverPartner,
		Lately: u.problem.Lately,

		Leveling:   n.Settings.Leveling(),
		LevelLimit: n.Settings.Balance,
		ByWait:     n.Settings.ByWait,

		Seed: n.Settings.Seed + uint64(len(n.Games)),
	}
	for _, p := range n.Pins {
		switch {
		case p.whole() || p.Out:
		case p.A[1] == "":
			r.First = append(r.First, u.player(p.A[0]))
		default:
			r.Pinned = append(r.Pinned, scheduler.Pair{A: u.player(p.A[0]), B: u.player(p.A[1])})
		}
	}
	return r
}

// rolling states the moment in which a court is free.
func (u *lineup) rolling(court CourtID) scheduler.Rolling {
	n, r := u.night, u.hall()
	r.Court = scheduler.Court(slices.Index(u.courts, court))
	r.Played = u.games()
	r.Running, r.Free = u.running()
	games := n.gamesOfAll()
	longest := math.Inf(1)
	for _, a := range u.queue {
		longest = min(longest, u.now.Sub(a.Waiting).Minutes()) // the bench is in order, whatever the clock says
		r.Waiting = append(r.Waiting, scheduler.Waiting{
			Player:  u.player(a.Person),
			Waited:  longest,
			Present: a.PresentFor(u.now).Minutes(),
			Games:   games[a.Person],
		})
	}
	return r
}

// running lists the games on court, the one expected to be over soonest first, and in how many minutes each is.
func (u *lineup) running() (games []scheduler.Game, left []float64) {
	type going struct {
		game *Game
		left float64
	}
	var line []going
	clock := u.night.Clock()
	for _, g := range u.night.Running() {
		line = append(line, going{g, clock.Remaining(u.night.GameTime(g, u.now).Minutes(), 0.5)})
	}
	slices.SortFunc(line, func(a, b going) int { return cmp.Or(cmp.Compare(a.left, b.left), cmp.Compare(a.game.ID, b.game.ID)) })
	for _, x := range line {
		games, left = append(games, u.game(x.game)), append(left, x.left)
	}
	return games, left
}

// next chooses who plays next on a court.
func (u *lineup) next(court CourtID, pick Picker) (PlannedGame, error) {
	g, err := pick(u.rolling(court))
	if err != nil {
		return PlannedGame{}, err
	}
	return u.planned(g), nil
}
