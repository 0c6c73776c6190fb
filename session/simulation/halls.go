package simulation

import (
	"club/quadrille/scoring"
	"club/quadrille/session"
)

// Halls are six kinds of night, from small to large, by which the ways to call free courts are compared: people come late and
// go early as in clubs.
func Halls() []Night {
	kind := func(people, courts, minutes, late, leave int) Night {
		return Night{
			People: Invented(people, 0), Courts: courts, Minutes: minutes, Late: late, Leave: leave,
			Flow: session.Rolling, Scoring: scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2},
		}
	}
	return []Night{
		kind(16, 2, 120, 2, 2),
		kind(18, 4, 120, 2, 2),
		kind(24, 4, 150, 2, 2),
		kind(24, 3, 180, 3, 3),
		kind(30, 5, 150, 3, 3),
		kind(37, 7, 150, 4, 3),
	}
}

// At is a night of this kind with people, chance and a flow of its own.
func (n Night) At(seed uint64, flow session.Flow) Night {
	n.People, n.Seed, n.Flow = Invented(len(n.People), seed), seed, flow
	return n
}
