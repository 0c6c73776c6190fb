package session

import (
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// TestCourtsOfAVenueStayAsTheyWereKept: names, notes and levels come back with the next night there, and only there.
func TestCourtsOfAVenueStayAsTheyWereKept(t *testing.T) {
	d, log, _ := newTestDesk(t)
	open := func(venue string, count int, named ...CourtID) {
		must(t, d, OpenNight{Settings: DefaultSettings(1), Venue: venue, Courts: count, Named: named})
		checkReplay(t, d, log)
	}
	open(" Mill  Lane hall", 0, "A", "Centre", "3")
	must(t, d, NoteCourt{"Centre", " slow "}, LevelCourt{"3", 3.5, 0}, CloseCourt{"A"})
	if c := d.Ledger().Night().Court("Centre"); c.Note != "slow" || d.Ledger().Night().Venue != "Mill Lane hall" {
		t.Errorf("noted %+v at %q", c, d.Ledger().Night().Venue)
	}
	want := []string{"court Centre noted: slow (usually with nothing noted)", "court 3 for levels from 3.5 (usually any level)"}
	if got := d.Ledger().Club().Unusual(); !slices.Equal(got[len(got)-2:], want) {
		t.Errorf("for tonight only: %q", got)
	}
	refused(t, d, NoteCourt{"Centre", "slow"}, "court Centre is noted: slow already")
	refused(t, d, NoteCourt{"9", "slow"}, "tonight has no court 9")
	refused(t, d, NoteCourt{"3", strings.Repeat("x", MaxCourtNote+1)}, "at most 40 characters")
	must(t, d, KeepUsual{}, OpenCourt{"A"})
	if got := d.Ledger().Club().Unusual(); !slices.Equal(got, []string{"3 courts (usually 2)"}) {
		t.Errorf("behind keeping: %q", got)
	}
	checkReplay(t, d, log)
	must(t, d, EndNight{})

	open("mill lane HALL", 3)
	courts := []Court{{ID: "Centre", Open: true, Note: "slow"}, {ID: "3", Open: true, Low: 3.5}, {ID: "1", Open: true}}
	if n := d.Ledger().Night(); !slices.Equal(n.Courts, courts) || n.Venue != "Mill Lane hall" {
		t.Errorf("the next night has %+v at %q", n.Courts, n.Venue)
	}
	must(t, d, EndNight{})
	open("", 0, "centre")
	if c := d.Ledger().Night().Courts; !slices.Equal(c, []Court{{ID: "centre", Open: true}}) {
		t.Errorf("another venue has %+v", c)
	}
	if got := d.Ledger().Club().VenueNames(); !slices.Equal(got, []string{"Mill Lane hall"}) {
		t.Errorf("venues: %q", got)
	}
	must(t, d, EndNight{})
	for want, c := range map[string]OpenNight{
		"court a is named twice":                 {Settings: DefaultSettings(1), Named: []CourtID{"A", "a"}},
		"a court needs a number or a name":       {Settings: DefaultSettings(1), Named: []CourtID{"A", " "}},
		"a night needs 1 to 250 courts, not 0":   {Settings: DefaultSettings(1), Venue: "Mill Lane hall"},
		"a night needs 1 to 250 courts, not 251": {Settings: DefaultSettings(1), Courts: MaxCourts + 1},
	} {
		refused(t, d, c, want)
	}
}

// TestNamesOfCourtsAreKeptAsUsual: courts that are named and not kept yet are for tonight only, and what keeps tonight as
// usual keeps them.
func TestNamesOfCourtsAreKeptAsUsual(t *testing.T) {
	d, _, _ := newTestDesk(t)
	must(t, d, OpenNight{Settings: DefaultSettings(1), Named: []CourtID{"1", "2", "Centre"}})
	if got := d.Ledger().Club().Unusual(); !slices.Equal(got, []string{"court Centre (usually 3)"}) {
		t.Errorf("for tonight only: %q", got)
	}
	must(t, d, KeepUsual{})
	if got := d.Ledger().Club().Unusual(); len(got) > 0 {
		t.Errorf("kept as usual, and %q is for tonight only", got)
	}
	refused(t, d, KeepUsual{}, "as they are kept")
	must(t, d, EndNight{}, OpenNight{Settings: DefaultSettings(1), Courts: 3})
	if got := d.Ledger().Night().Courts[2].ID; got != "Centre" {
		t.Errorf("the third court of the next night is %s", got)
	}
}

// TestWithWhatIsKeptUndone: an undo takes back the note, what was kept, and nothing else.
func TestWithWhatIsKeptUndone(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	must(t, d, NoteCourt{"2", "uneven"}, KeepUsual{})
	if v := d.Ledger().Club().Venues; len(v) != 1 || v[0].Courts[1].Note != "uneven" {
		t.Fatalf("kept %+v", v)
	}
	refused(t, d, KeepUsual{}, "its courts as they are kept")
	must(t, d, Undo{})
	if v := d.Ledger().Club().Venues; len(v) > 0 {
		t.Errorf("with that undone %+v is kept", v)
	}
	would, err := d.Ledger().Without(d.Ledger().Last() - 2)
	if err != nil || !slices.Contains(WouldBe(d.Ledger().Club(), would), "court 2 is with nothing noted") {
		t.Errorf("without the note it would be %q (%v)", WouldBe(d.Ledger().Club(), would), err)
	}
	checkReplay(t, d, log)
}

// TestCardsOfVenues: the card is that of the venue of the newest night, also behind its end, and never another's.
func TestCardsOfVenues(t *testing.T) {
	d, _, _ := newTestDesk(t)
	must(t, d, WriteCard{Card: EmergencyCard{Address: "12 Mill Lane"}})
	if got := d.Ledger().Card().Address; got != "12 Mill Lane" {
		t.Errorf("a club without nights has the card of %q", got)
	}
	must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1, Venue: "Dock hall"})
	if got := d.Ledger().Card(); got != (EmergencyCard{}) {
		t.Errorf("a venue without a card sends help to %+v", got)
	}
	must(t, d, WriteCard{Venue: "dock HALL", Card: EmergencyCard{Address: "1 Dock Road"}}, EndNight{})
	if got := d.Ledger().Card().Address; got != "1 Dock Road" || len(d.Ledger().Club().Cards) != 2 {
		t.Errorf("the card says %q, of %d cards", got, len(d.Ledger().Club().Cards))
	}
}

// TestVenuesOfTwoLaptops: a merge brings what is kept of venues that we keep nothing of, and leaves ours.
func TestVenuesOfTwoLaptops(t *testing.T) {
	a, log, clock := laptop(t, "a")
	fullNight(t, a, clock, "Ada", "Ben", "Cy", "Di")
	b, _, _ := laptop(t, "b")
	keep := func(d *Desk, venue, note, night string) {
		must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1, Venue: venue}, NoteCourt{"1", note},
			KeepUsualNight{Name: night, Zone: time.UTC}, EndNight{})
	}
	keep(a, "Dock", "slow", "Dock night")
	keep(a, "Mill", "first theirs", "Mill night")
	keep(a, "Mill", "theirs", "Mill night")
	keep(a, "Old", "gone", "Old night")
	must(t, a, DropUsualNight{"Old night"})
	keep(b, "Mill", "ours", "Mill night")
	for range 2 {
		if _, _, err := b.Join(log.records, AskSame); err != nil {
			t.Fatal(err)
		}
		club := b.Ledger().Club()
		for venue, note := range map[string]string{"Dock": "slow", "Mill": "ours", "Old": "gone"} {
			if got := club.CourtAt(venue, "1").Note; got != note {
				t.Errorf("court 1 at %s is noted %q, want %q", venue, got, note)
			}
		}
		if got := club.UsualNights; len(got) != 2 || got[0].Name != "Mill night" || got[1].Name != "Dock night" {
			t.Errorf("usual nights: %+v", got)
		}
	}
}

// TestVenuesForget: a name that is forgotten is in no note, venue or usual night any more.
func TestVenuesForget(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	name := d.Ledger().Club().People[0].Name
	must(t, d, NoteCourt{"1", name + "'s"}, KeepUsualNight{Name: "Night of " + name, Zone: time.UTC}, EndNight{},
		OpenNight{Settings: DefaultSettings(1), Courts: 1, Venue: "Hall of " + name}, WriteCard{Venue: "Hall of " + name, Card: EmergencyCard{Access: "x"}},
		KeepUsualNight{Name: "Other", Zone: time.UTC}, DropUsualNight{"night of " + name}, EndNight{},
		OpenNight{Settings: DefaultSettings(1), Courts: 1})
	change, _ := forgetting(t, NewForgotten(name), log)
	for r := range log.Records(1) {
		if after := change(r).Payload; strings.Contains(string(after), name) {
			t.Errorf("still known: %s %s", r.Kind, after)
		}
	}
}

// TestCourtsAreReadAsTheyAreShown holds for any names.
func TestCourtsAreReadAsTheyAreShown(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		var courts []VenueCourt
		for _, id := range rapid.SliceOfNDistinct(rapid.StringMatching(`[A-Z0-9]([a-z ]{0,5}[a-z])?`), 1, 9, rapid.ID).Draw(r, "names") {
			courts = append(courts, VenueCourt{ID: cleanCourt(CourtID(id))})
		}
		count, named, err := ParseCourts(CourtsText(courts))
		if err != nil || len(named) > 0 && count != 0 || len(named) == 0 && count != len(courts) {
			r.Fatalf("%+v was read as %d, %q, %v", courts, count, named, err)
		}
		for i, id := range named {
			if id != courts[i].ID {
				r.Fatalf("%q was read as %q", courts[i].ID, id)
			}
		}
	})
}

func TestParseCourts(t *testing.T) {
	for _, c := range []struct {
		text  string
		count int
		named []CourtID
		err   string
	}{
		{" 4 ", 4, nil, ""},
		{"-2", -2, nil, ""},
		{"1, 2 ,Centre", 0, []CourtID{"1", "2", "Centre"}, ""},
		{"A; B;", 0, []CourtID{"A", "B"}, ""},
		{"Hall  A, B", 0, []CourtID{"Hall A", "B"}, ""},
		{"Centre,", 0, []CourtID{"Centre"}, ""},
		{"many", 0, nil, `"many" is no number`},
		{"", 0, nil, "say how many"},
		{" , ;", 0, nil, "names none"},
		{"1 2 3 4 5 6", 0, nil, "is no number"},
		{"1 2 3 4 5, 6", 0, nil, "8 letters at most, with commas"},
	} {
		count, named, err := ParseCourts(c.text)
		if count != c.count || !slices.Equal(named, c.named) || (err == nil) != (c.err == "") || err != nil && !strings.Contains(err.Error(), c.err) {
			t.Errorf("%q is %d, %q, %v", c.text, count, named, err)
		}
	}
}

// FuzzParseCourts: whatever somebody types is a number, names that a night can have but for those named twice, or refused.
func FuzzParseCourts(f *testing.F) {
	for _, text := range []string{"4", "1, 2, Centre", "a;a", "\x00,\u202e", "9999999999999999999999"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		_, named, err := ParseCourts(text)
		if err != nil && len(named) > 0 {
			t.Errorf("%q is refused and names %q", text, named)
		}
		for _, id := range named {
			if id == "" || id != cleanCourt(id) {
				t.Errorf("%q names court %q", text, id)
			}
		}
	})
}
