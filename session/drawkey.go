package session

import (
	"encoding/json"
	"hash/fnv"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// DrawKey is a fingerprint of everything that the rotation depends on, apart from the time of day:
// while it stays the same, so does the rotation. It is 0 when no night is open.
func (l *Ledger) DrawKey() uint64 {
	n := l.Night()
	if n == nil {
		return 0
	}
	key, err := l.club.drawKey(n, n.Plan)
	if err != nil {
		return l.last // cannot happen: all parts are plain data; planning anew is always right
	}
	return key
}

// drawKey is a fingerprint of what the rotation of a night of the club depends on, where these rounds are planned.
func (c *Club) drawKey(n *Night, plan []PlannedRound) (uint64, error) {
	type part struct {
		Person Person
		State  Presence
		Stay   Stay
	}
	var basis struct {
		Settings Settings
		Courts   []Court
		Roll     []part
		Rounds   []CalledRound
		Plan     []PlannedRound
		Pins     []Pin
		Changes  int
		Picked   *Way
		Void     []GameID
		Rolled   []PlannedGame // games called that belong to no round, with whoever was put in since
		Results  []string      // of the games of a ladder, where they decide on the next round
	}
	basis.Settings, basis.Rounds, basis.Plan = n.Settings, n.Rounds, plan
	basis.Pins, basis.Changes = n.Pins, n.Changes
	basis.Picked = n.Picked
	for _, court := range n.Courts {
		basis.Courts = append(basis.Courts, Court{ID: court.ID, Open: court.Open, Low: court.Low, High: court.High})
	}
	for _, a := range n.Roll {
		p, _ := c.Person(a.Person)
		p = p.unseen()
		basis.Roll = append(basis.Roll, part{p, a.State, a.Stay})
	}
	for i := range n.Games {
		g := &n.Games[i]
		if g.Round == 0 {
			basis.Rolled = append(basis.Rolled, PlannedGame{g.Court, g.A, g.B})
		}
		if f := g.Final; f != nil && f.How() == scoring.Void {
			basis.Void = append(basis.Void, g.ID)
		}
	}
	if n.Settings.Format == scheduler.Ladder {
		for i := range n.Games {
			if f := n.Games[i].Final; f != nil {
				basis.Results = append(basis.Results, f.String())
			}
		}
	}
	h := fnv.New64a()
	err := json.NewEncoder(h).Encode(basis)
	return h.Sum64(), err
}
