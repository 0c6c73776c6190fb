package rotation

import (
	"club/quadrille/scheduler"
)

// Document is a rotation with its certificate. The names of its fields are fixed: scripts and
// other programs read and write them.
type Document struct {
	Format      scheduler.Format      `json:"format"`
	Seed        uint64                `json:"seed"`
	Players     []string              `json:"players"`
	Courts      []string              `json:"courts"`
	Rounds      []Round               `json:"rounds"`
	Certificate scheduler.Certificate `json:"certificate"`
	Roster      []Person              `json:"roster,omitempty"` // what is known of people besides their names
}

// Round is one round: its games and who is there and does not play.
type Round struct {
	Round int      `json:"round"` // from 1
	Games []Game   `json:"games"`
	Out   []string `json:"out"`
}

// Game is two teams on a court; a team of singles has one name.
type Game struct {
	Court string   `json:"court"`
	A     []string `json:"a"`
	B     []string `json:"b"`
}

// Person is what a rotation must respect about somebody. The fields are the columns of a roster.
type Person struct {
	Name        string    `json:"name"`
	Group       string    `json:"group,omitempty"`
	Level       float64   `json:"level,omitempty"`
	Arrive      int       `json:"arrive,omitempty"` // first round that the person can play, from 1; 0 for the first
	Leave       int       `json:"leave,omitempty"`  // last round that the person can play; 0 for the last
	PartnerWith []Partner `json:"partner_with,omitempty"`
	KeepApart   []string  `json:"keep_apart,omitempty"`
	NotPartner  []string  `json:"not_partner,omitempty"`
	Courts      []string  `json:"courts,omitempty"` // the only ones that the person plays on
}

// plain tells whether nothing but the name is known.
func (p Person) plain() bool {
	return p.Group == "" && p.Level == 0 && p.Arrive == 0 && p.Leave == 0 && len(p.PartnerWith) == 0 && len(p.KeepApart) == 0 && len(p.NotPartner) == 0 && len(p.Courts) == 0
}

// Partner asks for games in one team.
type Partner struct {
	Name  string `json:"name"`
	Times int    `json:"times,omitempty"` // so many games; 0 for all
}

// New writes rounds that were planned for p, with their certificate.
func New(p scheduler.Problem, rounds []scheduler.Round) Document {
	d := Document{
		Format:      p.Format,
		Seed:        p.Seed,
		Certificate: scheduler.Certify(p, rounds),
		Players:     make([]string, len(p.People)),
		Courts:      make([]string, len(p.Courts)),
		Rounds:      make([]Round, len(rounds)),
		Roster:      rosterOf(p),
	}
	for i, person := range p.People {
		d.Players[i] = person.Name
	}
	for i, court := range p.Courts {
		d.Courts[i] = court.Name
	}
	for i, r := range rounds {
		d.Rounds[i] = d.round(i+1, r)
	}
	return d
}

func (d *Document) round(number int, r scheduler.Round) Round {
	out := Round{Round: number, Games: make([]Game, len(r.Games)), Out: make([]string, len(r.Out))}
	for i, g := range r.Games {
		out.Games[i] = Game{Court: d.Courts[g.Court], A: d.team(g.A), B: d.team(g.B)}
	}
	for i, p := range r.Out {
		out.Out[i] = d.Players[p]
	}
	return out
}

func (d *Document) team(t scheduler.Team) []string {
	names := make([]string, 0, len(t))
	for _, p := range t {
		if p != scheduler.Nobody {
			names = append(names, d.Players[p])
		}
	}
	return names
}

// rosterOf lists people of whom more than the name is known.
func rosterOf(p scheduler.Problem) []Person {
	people := make([]Person, len(p.People))
	for i, person := range p.People {
		people[i] = Person{Name: person.Name, Group: person.Group, Level: person.Level, Leave: person.Leave}
		if person.Arrive > 0 {
			people[i].Arrive = person.Arrive + 1
		}
		for _, c := range person.Courts {
			people[i].Courts = append(people[i].Courts, p.Courts[c].Name)
		}
	}
	for _, t := range p.Together {
		people[t.A].PartnerWith = append(people[t.A].PartnerWith, Partner{p.People[t.B].Name, t.Times})
	}
	for _, t := range p.NeverMeet {
		people[t.A].KeepApart = append(people[t.A].KeepApart, p.People[t.B].Name)
	}
	for _, t := range p.NeverPartner {
		people[t.A].NotPartner = append(people[t.A].NotPartner, p.People[t.B].Name)
	}
	var out []Person
	for _, person := range people {
		if !person.plain() {
			out = append(out, person)
		}
	}
	return out
}
