package timeline

import (
	"time"

	"club/quadrille/session"
)

// forecast puts the games to come on their courts, as the pace foretells them: of the rounds that are planned, or
// in the rolling flow one after the other. Nothing is foretold while play is held, and no game that would begin
// after closing time.
func (t *Timeline) forecast(n *session.Night, ahead []session.PlannedRound) {
	switch {
	case n.Hold != nil || t.Expected <= 0:
	case n.Settings.Flow == session.Rolling:
		t.foretellRolling(n)
	default:
		t.foretellRounds(n, ahead)
	}
}

func (t *Timeline) foretellRounds(n *session.Night, ahead []session.PlannedRound) {
	begin, begins := t.Now, n.RoundsBegin(len(ahead), t.Now)
	for i, r := range ahead {
		if begins[i].Known {
			begin = t.Now.Add(begins[i].In)
		}
		if t.late(begin) {
			return
		}
		for _, g := range r.Games {
			t.foretell(g.Court, Block{Round: len(n.Rounds) + 1 + i, From: begin, A: g.A, B: g.B})
		}
	}
}

// mostAhead is how many games a court is foretold in the rolling flow where no closing time is set.
const mostAhead = 2

func (t *Timeline) foretellRolling(n *session.Night) {
	if n.LastCall || !n.Rolls {
		return
	}
	for _, c := range n.Courts {
		if !c.Open {
			continue
		}
		begin := t.Now
		if g := n.Game(c.Game); g != nil {
			left := n.Clock().Remaining(n.GameTime(g, t.Now).Minutes(), 0.5)
			begin = t.Now.Add(time.Duration(left*float64(time.Minute)) + session.ChangeTime)
		}
		for k := 0; !t.late(begin) && (k < mostAhead || !t.Closing.IsZero()); k++ {
			t.foretell(c.ID, Block{From: begin})
			begin = begin.Add(t.Expected + session.ChangeTime)
		}
	}
}

// late tells whether a game would begin at or after closing time.
func (t *Timeline) late(begin time.Time) bool { return !t.Closing.IsZero() && !begin.Before(t.Closing) }

func (t *Timeline) foretell(court session.CourtID, b Block) {
	b.Kind, b.Until = Forecast, b.From.Add(t.Expected)
	for i := range t.Rows {
		if t.Rows[i].Court == court {
			t.Rows[i].Blocks = append(t.Rows[i].Blocks, b)
			if b.Until.After(t.Until) {
				t.Until = b.Until
			}
		}
	}
}
