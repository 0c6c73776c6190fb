package night

import (
	"slices"
)

// Problem states a night: who is there, which courts are open, what was played, what people
// wish. Rounds of the night are counted from 0, those of History first.
type Problem struct {
	Format  Format
	People  []Person
	Courts  []CourtSpec
	Rounds  int     // rounds to plan, after History
	History []Round // rounds played or called, oldest first
	Met     []Game  // games of tonight that belong to no round, as of a rolling hour

	Together     []Pair   // who must be partners: whenever both play, or a number of times tonight
	NeverPartner []Pair   // who must not be in one team
	NeverMeet    []Pair   // who must not share a court
	Pins         []Pin    // what was decided by hand about rounds to come
	Lately       []Recent // who met on the nights before, each two once; it decides only where all else is equal

	Benching        Benching // what sitting out twice running may cost
	TwicePrice      int      // repeated meetings that two sit-outs twice running weigh on a mixed bench; 0 = the usual 3
	MaxRun          int      // most games running without a rest; 0 = no limit
	Leveling        Leveling // how much even games are worth
	LevelLimit      float64  // a game whose predicted winner's chance is above this has a sure winner; 0 = [SureWin]
	LeftoverSingles bool     // two people left over play singles if a court is free

	Seed uint64 // equal seeds give equal plans
}

// Person is somebody who plays for all or part of the night.
type Person struct {
	Name   string  // for messages only
	Group  string  // for Mixed: people have one of exactly two groups
	Level  float64 // strength on the club's scale, see [WinChance]; 0 = not stated
	Arrive int     // first round that the person can play
	Leave  int     // first round that the person can no longer play; 0 = stays to the end
	Courts []Court // the only courts the person can play on; empty = all
}

// CourtSpec is a court and who may play on it when.
type CourtSpec struct {
	Name     string
	Open     int     // first round that the court can be used
	Close    int     // first round that it can no longer be used; 0 = open to the end
	MinLevel float64 // level band: 0 = no lower end
	MaxLevel float64 // level band: 0 = no upper end
}

// Pair is two people of whom something is asked.
type Pair struct {
	A, B  Player
	Times int // for Together: so many times tonight; 0 = always
}

// Is tells whether the pair is these two, in any order.
func (p Pair) Is(x, y Player) bool {
	return p.A == x && p.B == y || p.A == y && p.B == x
}

// PresentIn tells whether the person can play in round r of the night.
func (p Person) PresentIn(r int) bool {
	return r >= p.Arrive && (p.Leave == 0 || r < p.Leave)
}

// OpenIn tells whether the court can be used in round r of the night.
func (c CourtSpec) OpenIn(r int) bool {
	return r >= c.Open && (c.Close == 0 || r < c.Close)
}

// Suits tells whether the level lies in the court's band. People without a level suit everywhere.
func (c CourtSpec) Suits(level float64) bool {
	return level == 0 || level >= c.MinLevel && (c.MaxLevel == 0 || level <= c.MaxLevel)
}

// TotalRounds is the number of rounds of the whole night.
func (p *Problem) TotalRounds() int { return len(p.History) + p.Rounds }

// Earlier lists the games before the rounds to plan. Those of no round count as much as
// the others for who met whom, where, and on which side; only nobody sat out meanwhile.
func (p *Problem) Earlier() []Game {
	games := slices.Clone(p.Met)
	for _, r := range p.History {
		games = append(games, r.Games...)
	}
	return games
}

// NameOf returns what to call a person in messages.
func (p *Problem) NameOf(i Player) string {
	if i < 0 || int(i) >= len(p.People) {
		return "nobody"
	}
	return personName(p.People, i)
}

// NameOfCourt returns what to call a court in messages.
func (p *Problem) NameOfCourt(c Court) string {
	if c < 0 || int(c) >= len(p.Courts) {
		return "no court"
	}
	return courtName(p.Courts, c)
}
