package design

import "slices"

// withGuests lets guests into rounds of people in which all play and nobody meets twice. A guest
// takes the place of another person at one table of each round but one; that person, each time
// another one, sits out, and the guest meets three people whom he has not met. So nobody sits out
// more than once and still nobody meets twice. The guests have the numbers from people up. ok is
// false if no arrangement is found quickly.
func withGuests(rounds [][]Table, people, guests int) (with [][]Table, ok bool) {
	for attempt := range maxAttempts {
		g := newGuestList(rounds, people, attempt)
		guest := people
		for guest < people+guests && g.admit(guest) {
			guest++
		}
		if guest == people+guests {
			return g.rounds, true
		}
	}
	return nil, false
}

// The search for guests' places is begun anew, in another order, when it has tried so often for
// one guest: most attempts are quick or hopeless.
const (
	maxAttempts = 24
	maxTries    = 150
)

// guestList is the state of the search for one guest's tables.
type guestList struct {
	rounds  [][]Table
	people  int
	turn    int    // where each round's list of tables is begun
	benched []bool // people who sit out in some round
	met     []bool // people whom the guest meets
	placed  []bool // rounds in which the guest has a place
	tries   int
}

func newGuestList(rounds [][]Table, people, turn int) *guestList {
	g := &guestList{people: people, turn: turn, benched: make([]bool, people)}
	g.rounds = make([][]Table, len(rounds))
	for r, round := range rounds {
		g.rounds[r] = slices.Clone(round)
	}
	return g
}

// admit finds a place for the guest in each round but one.
func (g *guestList) admit(guest int) bool {
	g.met = make([]bool, g.people)
	g.placed = make([]bool, len(g.rounds))
	g.tries = 0
	return g.place(guest, len(g.rounds)-1)
}

// place finds the guest places in so many more rounds, always in the round with the fewest tables
// left to choose from.
func (g *guestList) place(guest, more int) bool {
	if more == 0 {
		return true
	}
	if g.tries++; g.tries > maxTries {
		return false
	}
	round, fewest, without := -1, 0, 0
	for r := range g.rounds {
		if g.placed[r] {
			continue
		}
		n := len(g.choices(r, few<<(g.turn%4)))
		if n == 0 {
			without++
			continue
		}
		if round < 0 || n < fewest {
			round, fewest = r, n
		}
	}
	if round < 0 || without > 1 {
		return false
	}
	g.placed[round] = true
	for _, c := range g.choices(round, 4*len(g.rounds[round])) {
		g.sit(guest, round, c, true)
		if g.place(guest, more-1) {
			return true
		}
		g.sit(guest, round, c, false)
	}
	g.placed[round] = false
	return false
}

// choice is a seat that the guest may take, and the person who leaves it.
type choice struct{ table, seat, person int }

// few choices make a round worth filling early; more need not be counted. Later attempts count more.
const few = 12

// choices lists the seats of a round that the guest may take, up to about so many.
func (g *guestList) choices(round, most int) (list []choice) {
	tables := len(g.rounds[round])
	for k := range tables {
		if len(list) >= most {
			break
		}
		i := (k + g.turn*(round+1)) % tables
		t := g.rounds[round][i]
		for seat, p := range t {
			if p < g.people && !g.benched[p] && g.strangers(t, seat) {
				list = append(list, choice{i, seat, p})
			}
		}
	}
	return list
}

// strangers tells whether the guest has met nobody of the table but perhaps the one who leaves, and
// no other guest sits there.
func (g *guestList) strangers(t Table, leaves int) bool {
	for seat, p := range t {
		if seat != leaves && (p >= g.people || g.met[p]) {
			return false
		}
	}
	return true
}

// sit seats the guest, or undoes that.
func (g *guestList) sit(guest, round int, c choice, seated bool) {
	t := &g.rounds[round][c.table]
	t[c.seat] = c.person
	if seated {
		t[c.seat] = guest
	}
	g.benched[c.person] = seated
	for seat, p := range t {
		if seat != c.seat {
			g.met[p] = seated
		}
	}
}
