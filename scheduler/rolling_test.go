package scheduler

import (
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestNextIsValidOrTooFew draws any moment and compares a refusal with a search over all games.
func TestNextIsValidOrTooFew(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.AnyProblem(t)
		p.MaxRun, p.History = 0, nil
		for i := range p.People {
			p.People[i].Arrive, p.People[i].Leave = 0, 0
		}
		if len(p.Courts) == 0 || nighttest.Contradictory(p) {
			return
		}
		p.Courts = p.Courts[:1]
		p.Courts[0].Open, p.Courts[0].Close = 0, 0
		for i := range p.People {
			p.People[i].Courts = nil
		}
		r := Rolling{
			People: p.People, Courts: p.Courts, Format: p.Format, Together: p.Together,
			NeverPartner: p.NeverPartner, NeverMeet: p.NeverMeet, LevelLimit: p.LevelLimit, Seed: p.Seed,
		}
		for i := range p.People {
			r.Waiting = append(r.Waiting, Waiting{
				Player: Player(i), Waited: float64(rapid.IntRange(0, 30).Draw(t, "waited")), Present: 60,
				Games: rapid.IntRange(0, 5).Draw(t, "games"),
			})
		}
		for _, next := range []func(Rolling) (Game, error){Next, QueueNext} {
			g, err := next(r)
			var conflict *Conflict
			switch {
			case errors.Is(err, ErrTooFew):
				if nighttest.FirstGame(p) {
					t.Fatal("refused although a game exists")
				}
			case errors.As(err, &conflict):
				if !nighttest.Contradictory(p) {
					t.Fatalf("refused: %v", err)
				}
			case err != nil:
				t.Fatal(err)
			default:
				out := slices.DeleteFunc((&night.Night{People: len(p.People)}).Everybody(), func(i Player) bool { return slices.Contains(g.Players(), i) })
				q := p
				q.Together = slices.DeleteFunc(slices.Clone(p.Together), func(w Pair) bool { return w.Times > 0 })
				for _, v := range Audit(q, []Round{{Games: []Game{g}, Out: out}}) {
					t.Fatalf("invalid: %s", v.Text)
				}
			}
		}
	})
}
