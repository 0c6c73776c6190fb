package session

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// drawLaptop plays some nights of drawn people on a laptop of its own. Half of the names are known on
// every laptop.
func drawLaptop(t *rapid.T, tb testing.TB, name string) (*Desk, *MemoryLog) {
	d, log, clock := laptop(tb, name)
	for range rapid.IntRange(0, 2).Draw(t, "nights of "+name) {
		playDrawnNight(t, tb, d, clock, name)
	}
	return d, log
}

// playDrawnNight plays a night with undos, changes of people and whatever else is drawn, and ends it.
func playDrawnNight(t *rapid.T, tb testing.TB, d *Desk, clock *testClock, name string) {
	s := DefaultSettings(3)
	s.Rounds = 2
	must(tb, d, OpenNight{Name: "night of " + name, Settings: s, Courts: 2})
	for i := range rapid.IntRange(4, 8).Draw(t, "people") {
		who := fmt.Sprintf("Common %d", i)
		if rapid.Bool().Draw(t, "own") {
			who = fmt.Sprintf("%s's %d", name, i)
		}
		if p, ok := d.Ledger().Club().Named(who); ok {
			if !d.Ledger().Night().contains(p.ID, Here) { // two names may be one person by now
				must(tb, d, CheckIn{p.ID})
			}
			continue
		}
		must(tb, d, AddGuest{Name: who})
	}
	for range rapid.IntRange(0, 12).Draw(t, "steps") {
		clock.now = clock.now.Add(time.Minute)
		l := d.Ledger()
		people := l.Club().People
		if len(people) == 0 {
			break // everybody was undone
		}
		p := rapid.SampledFrom(people).Draw(t, "person").clone()
		other := rapid.SampledFrom(people).Draw(t, "other")
		p.Level = rapid.Float64Range(1, 5).Draw(t, "level")
		var running GameID
		if g := l.Night().Running(); len(g) > 0 {
			running = g[0].ID
		}
		_, _ = d.Do(rapid.SampledFrom([]Command{ // refusals are as good as anything
			CallRound{},
			CallRound{},
			FinishGame{Game: running, Final: final(tb, 11, 4)},
			FinishGame{Game: running, Final: final(tb, 11, 9)},
			ChangePerson{p},
			Rest{p.ID},
			Leave{p.ID},
			MergePeople{p.ID, other.ID},
			Undo{},
			Undo{},
			Redo{},
			AddGuest{Name: fmt.Sprintf("Late %d", len(people))},
		}).Draw(t, "command"))
	}
	endNight(tb, d)
}

// gist is what a file comes to, told by names, whatever order it came in: its people and its nights
// with all their games.
func gist(t *rapid.T, l *Ledger) string {
	var lines []string
	for _, p := range l.Club().People {
		lines = append(lines, "person "+strings.ToLower(p.Name))
	}
	for _, n := range l.Club().Nights {
		var games []string
		for i := range n.Games {
			g := &n.Games[i]
			var names []string
			for _, id := range g.Players() {
				names = append(names, l.Club().Name(id))
			}
			games = append(games, fmt.Sprintf("%s on %s: %s, %v", g.Called.Format(time.TimeOnly), g.Court, strings.Join(names, "+"), g.Final))
		}
		roll, err := json.Marshal(len(n.Roll))
		if err != nil {
			t.Fatal(err)
		}
		lines = append(lines, fmt.Sprintf("night %s: %s people; %s", n.UID, roll, strings.Join(games, "; ")))
	}
	slices.Sort(lines)
	return strings.Join(lines, "\n")
}

// joinedTo joins a log to another and gives the ledger. Joining it again must change nothing.
func joinedTo(t *rapid.T, tb testing.TB, d *Desk, log *MemoryLog, theirs []Record, same SameName) *Ledger {
	_, got, err := d.Join(theirs, same)
	if err != nil {
		t.Fatal(err)
	}
	checkReplay(tb, d, log)
	last := log.Last()
	_, again, err := d.Join(theirs, same)
	if err != nil || again.Records != 0 || again.Nights != 0 || again.Known != got.Nights+got.Known || log.Last() != last {
		t.Fatalf("joining twice: %+v, %v", again, err)
	}
	return d.Ledger()
}

// Two files joined in either order come to the same people and the same nights; none of either is
// lost; and joining twice changes nothing.
func TestJoiningInEitherOrderComesToTheSame(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a, logA := drawLaptop(rt, t, "a")
		b, logB := drawLaptop(rt, t, "b")
		recordsA, recordsB := slices.Clone(logA.records), slices.Clone(logB.records)
		nights := len(a.Ledger().Club().Nights) + len(b.Ledger().Club().Nights)
		ab := joinedTo(rt, t, a, logA, recordsB, OneAlike)
		ba := joinedTo(rt, t, b, logB, recordsA, OneAlike)
		if x, y := gist(rt, ab), gist(rt, ba); x != y {
			rt.Fatalf("a and then b is\n%s\nb and then a is\n%s", x, y)
		}
		if len(ab.Club().Nights) != nights {
			rt.Fatalf("%d nights of %d are left", len(ab.Club().Nights), nights)
		}
	})
}

// Where people of one name are two, nobody is lost and no two have one name.
func TestPeopleOfOneNameStayTwoWhateverTheyDid(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a, logA := drawLaptop(rt, t, "a")
		b, logB := drawLaptop(rt, t, "b")
		people := len(a.Ledger().Club().People) + len(b.Ledger().Club().People)
		joined := joinedTo(rt, t, a, logA, slices.Clone(logB.records), TwoAlike)
		names := map[string]bool{}
		for _, p := range joined.Club().People {
			names[strings.ToLower(p.Name)] = true
		}
		if len(joined.Club().People) != people || len(names) != people {
			rt.Fatalf("%d people with %d names, want %d", len(joined.Club().People), len(names), people)
		}
	})
}

// Two laptops that went on with the same night: the night stays as it is here and the difference is
// told; who came to it only there is known here, so that later nights fit.
func TestANightThatWentOnTwiceIsTold(t *testing.T) {
	a, logA, clockA := laptop(t, "a")
	must(t, a, OpenNight{Name: "shared", Settings: DefaultSettings(5), Courts: 1})
	for _, name := range []string{"Ada", "Ben", "Cy", "Di"} {
		must(t, a, AddGuest{Name: name})
	}
	b, logB, clockB := laptop(t, "b")
	if _, _, err := b.Join(logA.records, AskSame); err != nil {
		t.Fatal(err)
	}
	clockB.now = clockB.now.Add(time.Minute)
	playRound(t, a, clockA)
	must(t, a, EndNight{})
	must(t, b, AddGuest{Name: "Eve"})
	playRound(t, b, clockB)
	playRound(t, b, clockB)
	must(t, b, EndNight{})
	fullNight(t, b, clockB, "Ada", "Ben", "Eve", "Di")

	_, got, err := a.Join(logB.records, AskSame)
	if err != nil || got.Known != 1 || got.Nights != 1 || got.People != 1 {
		t.Fatalf("%+v, %v", got, err)
	}
	if len(got.Differ) != 1 || !strings.Contains(got.Differ[0], "2026-11-20 went on otherwise") || !strings.Contains(got.Differ[0], "2 finished games") {
		t.Errorf("told is %q", got.Differ)
	}
	if n := a.Ledger().Club().Nights[0]; len(n.Games) != 1 {
		t.Errorf("our night has %d games, want the one it had", len(n.Games))
	}
	if _, ok := a.Ledger().Club().Named("Eve"); !ok {
		t.Error("Eve, who came to the shared night there only, is unknown")
	}
	checkReplay(t, a, logA)
	if _, again, err := a.Join(logB.records, AskSame); err != nil || again.Records != 0 {
		t.Errorf("joining again: %+v, %v", again, err)
	}
}

// A rescued file joins a whole one without what rests on its lost records, and an empty one as it is.
func TestARescuedFileCanBeJoined(t *testing.T) {
	b, logB, clockB := laptop(t, "b")
	fullNight(t, b, clockB, "Ada", "Ben", "Cy", "Di")
	for i, r := range logB.records {
		if r.Kind == "RoundCalled" {
			logB.records[i].Kind, logB.records[i].Version, logB.records[i].Payload = "RecordLost", 1, json.RawMessage(`{}`)
			break
		}
	}
	a, logA, clockA := laptop(t, "a")
	fullNight(t, a, clockA, "Zoe", "Yan", "Xi", "Wim")
	_, got, err := a.Join(logB.records, AskSame)
	if err != nil || got.Nights != 1 || got.People != 4 || got.Left == 0 || a.Ledger().Lossy() {
		t.Fatalf("%+v, %v", got, err)
	}
	checkReplay(t, a, logA)
	empty, copied, _ := laptop(t, "c")
	if _, got, err = empty.Join(logB.records, AskSame); err != nil || got.Left != 0 || copied.Last() != logB.Last() || !empty.Ledger().Lossy() {
		t.Fatalf("%+v, %v", got, err)
	}
	checkReplay(t, empty, copied)
}

// A log that is does not make nights is refused whole.
func TestAFileThatCannotHaveHappenedIsNotJoined(t *testing.T) {
	b, logB, clockB := laptop(t, "b")
	fullNight(t, b, clockB, "Ada", "Ben", "Cy", "Di")
	for name, change := range map[string]func([]Record) []Record{
		"an event missing": func(r []Record) []Record { return append(r[:3:3], r[4:]...) },
		"no opening":       func(r []Record) []Record { r[0].Kind = "NightClosed"; return r },
		"newer":            func(r []Record) []Record { r[5].Version = 9; return r },
		"no payload":       func(r []Record) []Record { r[5].Payload = nil; return r },
	} {
		t.Run(name, func(t *testing.T) {
			a, logA, clockA := laptop(t, "a")
			fullNight(t, a, clockA, "Zoe", "Yan", "Xi", "Wim")
			before := logA.Last()
			if _, _, err := a.Join(change(slices.Clone(logB.records)), AskSame); err == nil {
				t.Error("it was joined")
			}
			if logA.Last() != before {
				t.Error("something of it was taken")
			}
		})
	}
	a, _, _ := laptop(t, "a")
	must(t, a, OpenNight{Settings: DefaultSettings(1), Courts: 1})
	if _, _, err := a.Join(logB.records, AskSame); !errors.Is(err, errNightOpenHere) {
		t.Errorf("into an open night: %v", err)
	}
}
