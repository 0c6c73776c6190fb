package session

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"club/quadrille/session/roster"
)

// TestARosterKnowsOneNameHoweverItIsSpelt: two people of one name would share a line of the table.
func TestARosterKnowsOneNameHoweverItIsSpelt(t *testing.T) {
	for _, text := range []string{
		"name\nAda  Alder\nAda Alder\n",
		"name\nJose\u0301\nJos\u00e9\n",
		"name\nAda\u200b\nAda\n",
	} {
		d, _, _ := newTestDesk(t)
		must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1})
		entries, err := roster.Parse(strings.NewReader(text))
		if err == nil {
			_, err = d.Do(ImportRoster{Entries: entries})
		}
		if err == nil || !strings.Contains(err.Error(), "stands on line 2 already") {
			t.Errorf("%q: %v, want a refusal that names line 2", text, err)
		}
	}
	entries, err := roster.Parse(strings.NewReader("name,partner_with\nAda  Alder,Jose\u0301\nJos\u00e9,Ada Alder\n"))
	if err != nil {
		t.Fatal(err)
	}
	d, _, _ := newTestDesk(t)
	must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1}, ImportRoster{Entries: entries})
	ada, jose := d.Ledger().Club().People[0], d.Ledger().Club().People[1]
	if len(ada.Together) != 1 || ada.Together[0].With != jose.ID || len(jose.Together) != 1 || jose.Together[0].With != ada.ID {
		t.Errorf("%+v and %+v, want a couple", ada, jose)
	}
}

// bigRoster is a roster of invented people, who have names of two words.
func bigRoster(people int) []roster.Entry {
	out := make([]roster.Entry, people)
	for i := range out {
		out[i] = roster.Entry{Line: i + 2, Name: fmt.Sprintf("%s %s%s", syllables(i/40), syllables(i), syllables(i*7+3)), Level: 3.5}
	}
	return out
}

// syllables are a word for a number, another for each up to 1,000.
func syllables(i int) string {
	return string("BCDFGHKLMN"[i%10]) + strings.Fields("a e i o u ai ea io ou ue")[i/10%10] + string("rstlnmvkzp"[i/100%10])
}

// However many people a roster has, nobody is searched for in a list of all: the lists that are gone through, or made
// anew, come to a few times the people, whether they are taken in, opened again, or taken in once more.
func TestLargeRostersAreTakenInWithoutSearching(t *testing.T) {
	was, steps := searched, 0
	searched = func(length int) { steps += length }
	defer func() { searched = was }()
	const people = 10_000
	entries := bigRoster(people)
	d, log, _ := newTestDesk(t)
	must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1}, ImportRoster{Entries: entries, Same: TwoAlike})
	if n := d.Ledger().Night(); n.Count(Expected) != people {
		t.Fatalf("%d of %d people are expected", n.Count(Expected), people)
	}
	if _, err := Load(log.Records(1)); err != nil {
		t.Fatal(err)
	}
	for i := range entries {
		entries[i].Level = 4
	}
	must(t, d, ImportRoster{Entries: entries}, Undo{})
	if steps > 20*people {
		t.Errorf("%d people took %d steps of searching", people, steps)
	}
}

func BenchmarkImportRoster(b *testing.B) {
	for _, people := range []int{100, 1000, 10_000} {
		b.Run(strconv.Itoa(people), func(b *testing.B) {
			entries := bigRoster(people)
			for b.Loop() {
				d, _, _ := newTestDesk(b)
				must(b, d, OpenNight{Settings: DefaultSettings(1), Courts: 1}, ImportRoster{Entries: entries, Same: TwoAlike})
			}
		})
	}
}

// Whoever is nearly called as somebody else is asked about, on a roster and at the door, and the answer is taken.
func TestNamesThatAreAlikeAreAskedAbout(t *testing.T) {
	known := func(t *testing.T) *Desk {
		d, _, _ := newTestDesk(t)
		must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1}, AddGuest{Name: "Hans Müller"}, AddGuest{Name: "Anna Berg"})
		return d
	}
	entries := func(names ...string) (out []roster.Entry) {
		for i, name := range names {
			out = append(out, roster.Entry{Line: i + 2, Name: name})
		}
		return out
	}
	d := known(t)
	new4 := entries("Anna Bergh", "Müller, Hans", "Cy Crane", "Cy Krane")
	refused(t, d, ImportRoster{Entries: new4}, `"Anna Bergh" on line 2 is nearly Anna Berg, whom the club knows; "Müller, Hans" on line 3 is nearly Hans Müller`)
	refused(t, d, ImportRoster{Entries: new4}, `"Cy Krane" on line 5 is nearly "Cy Crane" on line 4`)
	refused(t, d, ImportRoster{Entries: new4, Same: OneAlike}, "Cy Krane stands on line 4 as Cy Crane already: take one of the two out")
	_, err := d.Do(ImportRoster{Entries: new4, Lines: map[int]SameName{3: OneAlike, 5: TwoAlike}})
	var alike *AlikeError
	if !errors.As(err, &alike) || len(alike.Pairs) != 1 || alike.Pairs[0].Line != 2 || alike.Pairs[0].Known.Name != "Anna Berg" {
		t.Fatalf("asked: %v", err)
	}
	must(t, d, ImportRoster{Entries: new4, Lines: map[int]SameName{2: TwoAlike, 3: OneAlike, 5: TwoAlike}})
	var names []string
	for _, p := range d.Ledger().Club().People {
		names = append(names, p.Name)
	}
	if got := strings.Join(names, ", "); got != "Hans Müller, Anna Berg, Anna Bergh, Cy Crane, Cy Krane" {
		t.Errorf("the club knows %s", got)
	}
	refused(t, d, ImportRoster{Entries: entries("Anna Berg", "anna  berg")}, "stands on line 2 already")
	refused(t, known(t), ImportRoster{Entries: entries("Anna Berg", "Berg, Anna"), Same: OneAlike}, "roster line 3: Anna Berg stands on line 2 already")

	d = known(t)
	refused(t, d, AddGuest{Name: "Ana Berg"}, `"Ana Berg" is nearly Anna Berg: say whether that is one person or two`)
	must(t, d, AddGuest{Name: "Ana Berg", Sure: true})
	refused(t, d, AddGuest{Name: "Ana Berg", Sure: true}, "the club already has a Ana Berg")
}
