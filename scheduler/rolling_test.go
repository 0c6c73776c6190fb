package scheduler

import (
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// hall plays a rolling night: courts free in turn, everybody who is not on court waits.
type hall struct {
	people, courts int
	played         []Game
	running        []Game
	freed          []float64 // when each person came off, in minutes
	games          []int
	now            float64
	longest        float64 // wait
}

// play calls so many games, one court freeing each minute, with a way to choose, and returns the number
// of partner repeats.
func (h *hall) play(t testing.TB, calls int, next func(Rolling) (Game, error)) (repeats int) {
	t.Helper()
	h.freed, h.games = make([]float64, h.people), make([]int, h.people)
	p := club(h.people, h.courts, 0)
	met := make(map[[2]Player]int)
	for k := range calls {
		court := Court(k % h.courts)
		if k >= h.courts {
			for _, i := range h.running[0].Players() {
				h.freed[i] = h.now
			}
			h.running = h.running[1:]
		}
		g, err := next(Rolling{
			People: p.People, Courts: p.Courts, Played: h.played, Running: h.running,
			Waiting: h.waiting(), Court: court, Seed: uint64(k),
		})
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range g.Players() {
			h.longest = max(h.longest, h.now-h.freed[i])
			h.games[i]++
		}
		for _, team := range [2]Team{g.A, g.B} {
			key := [2]Player{min(team[0], team[1]), max(team[0], team[1])}
			repeats += one(met[key] > 0)
			met[key]++
		}
		h.played, h.running = append(h.played, g), append(h.running, g)
		h.now++
	}
	return repeats
}

func (h *hall) waiting() []Waiting {
	var w []Waiting
	for i := range h.people {
		if !slices.ContainsFunc(h.running, func(g Game) bool { return slices.Contains(g.Players(), Player(i)) }) {
			w = append(w, Waiting{Player(i), h.now - h.freed[i], h.now, h.games[i]})
		}
	}
	return w
}

// TestRollingBeatsTheQueue compares with taking the first four in the queue.
func TestRollingBeatsTheQueue(t *testing.T) {
	for _, c := range []struct{ people, courts, calls int }{{37, 7, 70}, {18, 4, 36}, {26, 4, 40}} {
		ours := hall{people: c.people, courts: c.courts}
		queue := hall{people: c.people, courts: c.courts}
		a, b := ours.play(t, c.calls, Next), queue.play(t, c.calls, QueueNext)
		if b < 5*a {
			t.Errorf("%d people: %d partner repeats, the queue has %d", c.people, a, b)
		}
		if spread := slices.Max(ours.games) - slices.Min(ours.games); spread > 2 {
			t.Errorf("%d people: games from %d to %d", c.people, slices.Min(ours.games), slices.Max(ours.games))
		}
		if ours.longest > queue.longest {
			t.Errorf("%d people: somebody waits %.0f minutes, in the queue %.0f", c.people, ours.longest, queue.longest)
		}
		t.Logf("%d people: repeats %d and %d, longest wait %.0f and %.0f, games %d-%d", c.people, a, b, ours.longest, queue.longest, slices.Min(ours.games), slices.Max(ours.games))
	}
}

func TestNextKeepsWhatPeopleAsk(t *testing.T) {
	p := club(8, 1, 0)
	r := Rolling{People: p.People, Courts: p.Courts}
	for i := range Player(8) {
		r.Waiting = append(r.Waiting, Waiting{i, 20 - float64(i), 60, 3})
	}
	r.Together = []Pair{{A: 0, B: 7}}
	r.NeverMeet = []Pair{{A: 0, B: 1}}
	r.NeverPartner = []Pair{{A: 2, B: 3}}
	g, err := Next(r)
	if err != nil {
		t.Fatal(err)
	}
	if !partners(g, 0, 7) || slices.Contains(g.Players(), 1) || partners(g, 2, 3) {
		t.Errorf("%+v breaks a wish", g)
	}
	r.Running = []Game{{0, Team{7, 6}, Team{5, 4}}}
	r.Waiting = r.Waiting[:4]
	if _, err = Next(r); !errors.Is(err, ErrTooFew) {
		t.Errorf("the partner plays and two must not be partners nor two meet, but the error is %v", err)
	}
	r.NeverMeet = append(r.NeverMeet, Pair{A: 3, B: 3})
	var conflict *Conflict
	if _, err = Next(r); !errors.As(err, &conflict) {
		t.Errorf("a senseless wish gives %v", err)
	}
}

func TestQueueNextTakesTheFirstFour(t *testing.T) {
	p := club(6, 1, 0)
	r := Rolling{People: p.People, Courts: p.Courts}
	for i := range Player(6) {
		r.Waiting = append(r.Waiting, Waiting{Player: i, Waited: float64(i)})
	}
	g, err := QueueNext(r)
	if want := (Game{0, Team{5, 4}, Team{3, 2}}); err != nil || g != want {
		t.Errorf("got %+v, %v, want %+v", g, err, want)
	}
}

// TestNextIsValidOrTooFew draws any moment and compares a refusal with a search over all games.
func TestNextIsValidOrTooFew(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyProblem(t)
		p.MaxRun, p.History = 0, nil
		for i := range p.People {
			p.People[i].Arrive, p.People[i].Leave = 0, 0
		}
		if len(p.Courts) == 0 || contradictory(p) {
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
				if firstGame(p) {
					t.Fatal("refused although a game exists")
				}
			case errors.As(err, &conflict):
				if !contradictory(p) {
					t.Fatalf("refused: %v", err)
				}
			case err != nil:
				t.Fatal(err)
			default:
				out := slices.DeleteFunc((&night{people: len(p.People)}).everybody(), func(i Player) bool { return slices.Contains(g.Players(), i) })
				q := p
				q.Together = slices.DeleteFunc(slices.Clone(p.Together), func(w Pair) bool { return w.Times > 0 })
				for _, v := range Audit(q, []Round{{Games: []Game{g}, Out: out}}) {
					t.Fatalf("invalid: %s", v.Text)
				}
			}
		}
	})
}

// moment is a hall of so many people waiting and four courts running.
func moment(people int) Rolling {
	p := club(people+16, 5, 0)
	r := Rolling{People: p.People, Courts: p.Courts, Court: 4, Seed: 1}
	d := newDice(1, 1)
	for i := range people {
		p.People[i].Level = 2.5 + float64(i%5)/2
		r.Waiting = append(r.Waiting, Waiting{Player(i), float64(d.roll(30)), 120, 4 + d.roll(3)})
	}
	for range people * 5 / 4 {
		a := d.roll(people - 4)
		r.Played = append(r.Played, Game{0, Team{Player(a), Player(a + 1)}, Team{Player(a + 2), Player(a + 3)}})
	}
	for k := range 4 {
		a := Player(people + 4*k)
		r.Running = append(r.Running, Game{Court(k), Team{a, a + 1}, Team{a + 2, a + 3}})
	}
	return r
}

// TestTheLongestWaitAlwaysEnds: whoever waited longest is called, whomever the others have met.
func TestTheLongestWaitAlwaysEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		people := rapid.IntRange(4, 24).Draw(t, "people")
		p := club(people, 2, 0)
		r := Rolling{People: p.People, Courts: p.Courts, Seed: rapid.Uint64().Draw(t, "seed")}
		longest := 0.0
		for i := range people {
			w := Waiting{Player(i), float64(rapid.IntRange(0, 40).Draw(t, "waited")), 60, rapid.IntRange(0, 6).Draw(t, "games")}
			longest = max(longest, w.Waited)
			r.Waiting = append(r.Waiting, w)
		}
		for range rapid.IntRange(0, 30).Draw(t, "played") {
			a := rapid.IntRange(0, people-4).Draw(t, "first of four")
			r.Played = append(r.Played, Game{0, Team{Player(a), Player(a + 1)}, Team{Player(a + 2), Player(a + 3)}})
		}
		g, err := Next(r)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(g.Players(), func(i Player) bool { return r.Waiting[i].Waited == longest }) {
			t.Fatalf("%+v leaves who waited %v minutes on the bench", g, longest)
		}
	})
}

// TestMemoryForgets: what was only thought of leaves no trace.
func TestMemoryForgets(t *testing.T) {
	m := newMemory(5, []Game{{0, Team{0, 1}, Team{2, 3}}})
	pair, latest := slices.Clone(m.pair), slices.Clone(m.latest)
	first := m.add(Game{0, Team{0, 2}, Team{4, 3}})
	second := m.add(Game{0, Team{0, 2}, Team{1, Nobody}})
	if m.of(0, 2) != (tally{2, 1}) || !m.last(0, 1) || m.last(0, 4) {
		t.Errorf("0 and 2 met as %+v", m.of(0, 2))
	}
	second()
	first()
	if !slices.Equal(m.pair, pair) || !slices.Equal(m.latest, latest) || m.games != 1 {
		t.Errorf("%v, %v after %d games, want %v, %v", m.pair, m.latest, m.games, pair, latest)
	}
}
