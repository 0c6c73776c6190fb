package rolling

import (
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// BenchmarkNext chooses the next four of 200 who wait.
func BenchmarkNext(b *testing.B) {
	r := moment(200)
	for b.Loop() {
		if _, err := Next(r); err != nil {
			b.Fatal(err)
		}
	}
}

// hall plays a rolling night: courts free in turn, everybody who is not on court waits.
type hall struct {
	people, courts int
	played         []night.Game
	running        []night.Game
	freed          []float64 // when each person came off, in minutes
	games          []int
	now            float64
	longest        float64 // wait
}

// play calls so many games, one court freeing each minute, with a way to choose, and returns the number
// of partner repeats.
func (h *hall) play(t testing.TB, calls int, next func(Moment) (night.Game, error)) (repeats int) {
	t.Helper()
	h.freed, h.games = make([]float64, h.people), make([]int, h.people)
	p := nighttest.Club(h.people, h.courts, 0)
	met := make(map[[2]night.Player]int)
	for k := range calls {
		court := night.Court(k % h.courts)
		if k >= h.courts {
			for _, i := range h.running[0].Players() {
				h.freed[i] = h.now
			}
			h.running = h.running[1:]
		}
		g, err := next(Moment{
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
		for _, team := range [2]night.Team{g.A, g.B} {
			key := [2]night.Player{min(team[0], team[1]), max(team[0], team[1])}
			repeats += night.One(met[key] > 0)
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
		if !slices.ContainsFunc(h.running, func(g night.Game) bool { return slices.Contains(g.Players(), night.Player(i)) }) {
			w = append(w, Waiting{night.Player(i), h.now - h.freed[i], h.now, h.games[i]})
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
	p := nighttest.Club(8, 1, 0)
	r := Moment{People: p.People, Courts: p.Courts}
	for i := range night.Player(8) {
		r.Waiting = append(r.Waiting, Waiting{i, 20 - float64(i), 60, 3})
	}
	r.Together = []night.Pair{{A: 0, B: 7}}
	r.NeverMeet = []night.Pair{{A: 0, B: 1}}
	r.NeverPartner = []night.Pair{{A: 2, B: 3}}
	g, err := Next(r)
	if err != nil {
		t.Fatal(err)
	}
	if !g.Partners(0, 7) || slices.Contains(g.Players(), 1) || g.Partners(2, 3) {
		t.Errorf("%+v breaks a wish", g)
	}
	r.Running = []night.Game{{Court: 0, A: night.Team{7, 6}, B: night.Team{5, 4}}}
	r.Waiting = r.Waiting[:4]
	if _, err = Next(r); !errors.Is(err, ErrTooFew) {
		t.Errorf("the partner plays and two must not be partners nor two meet, but the error is %v", err)
	}
	r.NeverMeet = append(r.NeverMeet, night.Pair{A: 3, B: 3})
	var conflict *night.Conflict
	if _, err = Next(r); !errors.As(err, &conflict) {
		t.Errorf("a senseless wish gives %v", err)
	}
}

func TestQueueNextTakesTheFirstFour(t *testing.T) {
	p := nighttest.Club(6, 1, 0)
	r := Moment{People: p.People, Courts: p.Courts}
	for i := range night.Player(6) {
		r.Waiting = append(r.Waiting, Waiting{Player: i, Waited: float64(i)})
	}
	g, err := QueueNext(r)
	if want := (night.Game{Court: 0, A: night.Team{5, 4}, B: night.Team{3, 2}}); err != nil || g != want {
		t.Errorf("got %+v, %v, want %+v", g, err, want)
	}
}

// moment is a hall of so many people waiting and four courts running.
func moment(people int) Moment {
	p := nighttest.Club(people+16, 5, 0)
	r := Moment{People: p.People, Courts: p.Courts, Court: 4, Seed: 1}
	d := dice.New(1, 1)
	for i := range people {
		p.People[i].Level = 2.5 + float64(i%5)/2
		r.Waiting = append(r.Waiting, Waiting{night.Player(i), float64(d.Roll(30)), 120, 4 + d.Roll(3)})
	}
	for range people * 5 / 4 {
		a := d.Roll(people - 4)
		r.Played = append(r.Played, night.Game{Court: 0, A: night.Team{night.Player(a), night.Player(a + 1)}, B: night.Team{night.Player(a + 2), night.Player(a + 3)}})
	}
	for k := range 4 {
		a := night.Player(people + 4*k)
		r.Running = append(r.Running, night.Game{Court: night.Court(k), A: night.Team{a, a + 1}, B: night.Team{a + 2, a + 3}})
	}
	return r
}

// TestTheLongestWaitAlwaysEnds: whoever waited longest is called, whomever the others have met.
func TestTheLongestWaitAlwaysEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		people := rapid.IntRange(4, 24).Draw(t, "people")
		p := nighttest.Club(people, 2, 0)
		r := Moment{People: p.People, Courts: p.Courts, Seed: rapid.Uint64().Draw(t, "seed")}
		longest := 0.0
		for i := range people {
			w := Waiting{night.Player(i), float64(rapid.IntRange(0, 40).Draw(t, "waited")), 60, rapid.IntRange(0, 6).Draw(t, "games")}
			longest = max(longest, w.Waited)
			r.Waiting = append(r.Waiting, w)
		}
		for range rapid.IntRange(0, 30).Draw(t, "played") {
			a := rapid.IntRange(0, people-4).Draw(t, "first of four")
			r.Played = append(r.Played, night.Game{Court: 0, A: night.Team{night.Player(a), night.Player(a + 1)}, B: night.Team{night.Player(a + 2), night.Player(a + 3)}})
		}
		g, err := Next(r)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(g.Players(), func(i night.Player) bool { return r.Waiting[i].Waited == longest }) {
			t.Fatalf("%+v leaves who waited %v minutes on the bench", g, longest)
		}
	})
}
