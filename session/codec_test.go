package session

import (
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session/care"
)

// samples has one event of every kind.
func samples(t testing.TB) []Event {
	at := time.Date(2026, 11, 20, 19, 30, 0, 0, time.UTC)
	return []Event{
		PersonAdded{Person{ID: "p1", Name: "Ada", Group: "x", Level: 3.5, Together: []Together{{With: "p2", Times: 2}}, KeepApart: []PersonID{"p3"}, NotPartner: []PersonID{"p4"}, Courts: []CourtID{"2"}, Shown: "Countess", Hidden: true}},
		PersonChanged{Person{ID: "p1", Name: "Ada B"}},
		NightOpened{Night: 1, ID: "night-1", Name: "n", Settings: DefaultSettings(5), Courts: []CourtID{"1", "2"}, Venue: "hall", Traits: []VenueCourt{{"2", "slow", 2, 0}}},
		NightClosed{},
		SettingsChanged{DefaultSettings(6)},
		UsualKept{Usual{DefaultSettings(6), 3}},
		CourtOpened{"3"},
		CourtClosed{"3"},
		CourtLeveled{"3", 3.5, 4.25},
		CourtNoted{"3", "uneven at the net"},
		VenueKept{Venue{"hall", []VenueCourt{{"1", "slow", 2, 3}, {ID: "Centre"}}}},
		UsualNightKept{UsualNight{"Tuesday doubles", "Tuesday", "hall", 4, DefaultSettings(0), "21:30"}},
		UsualNightDropped{"Tuesday doubles"},
		PeopleMerged{"p1", "p2"},
		PersonExpected{"p1", Stay{at, at.Add(time.Hour), 3, 5}},
		PersonArrived{"p1"},
		PersonRested{"p1"},
		PersonReturned{"p1"},
		PersonLeft{"p1"},
		RotationPlanned{[]PlannedRound{{Games: []PlannedGame{{"1", Team{"p1", "p2"}, Team{"p3", "p4"}}}, Out: []PersonID{"p5"}}}},
		WayPicked{Way{scheduler.MixedBench, 12, "even"}, []PlannedRound{{Games: []PlannedGame{{"1", Team{"p1", "p2"}, Team{"p3", "p4"}}}}}},
		RoundCalled{1, []PlannedGame{{"1", Team{"p1", "p2"}, Team{"p3", "p4"}}}, []PersonID{"p5"}, DefaultSettings(1).Terms()},
		PlayBegun{Rolling},
		CallsEnded{},
		GameCalled{1, "1", Team{"p1"}, Team{"p2"}, sampleTerms()},
		PlayerReplaced{1, "p1", "p2"},
		Pinned{[]Pin{{Round: 2, A: Team{"p1", "p2"}, B: Team{"p3", "p4"}, Court: "1"}, {A: Team{"p5"}}, {Round: 2, A: Team{"p6"}, Out: true}}, SwappedPeople, []PersonID{"p1", "p5"}},
		PlayersExchanged{"p1", "p2"},
		GameMoved{1, "2", 3},
		RallyWon{1, scoring.Rally{Won: scoring.B}},
		GameNoted{1, sampleEntry(), 7},
		GameFinished{1, final(t, 11, 7)},
		ScoreCorrected{1, final(t, 9, 11)},
		LotsDrawn{[]Team{{"p1"}, {"p2"}}},
		PlayHeld{"heat"},
		PlayResumed{},
		MessagePosted{Message{"m1", "pizza at 20:30", at}},
		MessageEnded{"m1"},
		LeagueChosen{8},
		CourtScoresChosen{CourtScores{true, BothSent, "000102030405060708090a0b0c0d0e0f"}},
		ScoreProposed{3, scoring.B, final(t, 11, 7)},
		ProposalTaken{3, scoring.A},
		ProposalsRefused{3},
		NamingChosen{AsChosen},
		ThunderHeard{},
		CourtsTold{[]CourtID{"1", "12"}},
		RemindersChosen{true},
		CardWritten{"hall", sampleCard},
		HeatMeasured{care.Air{Fahrenheit: 91.4, Humidity: 60}},
		PersonHurt{"p1", 1, true, "fell on the baseline"},
		PersonCleared{"p1", "Dr Vale, physician"},
		ClockMoved{-10800000, true},
		RecordLost{},
		Undone{4, []uint64{3}},
		Redone{4, []uint64{2}, []uint64{3, 1}},
	}
}

// sampleCard has every field of a card set.
var sampleCard = EmergencyCard{"12 Mill Lane", "by the yard", "in the hall", "in the kitchen", "warden 555 0100", true}

// sampleTerms has every field of terms set.
func sampleTerms() Terms {
	return Terms{Flow: Rolling, Format: scheduler.Pairs, Rules: scoring.Rules{Scoring: scoring.RallyScoring, To: 15, WinBy: 2}, Stopped: true}
}

// sampleEntry has every field of an entry set.
func sampleEntry() scoring.Entry {
	a2, b2 := scoring.Seat{Index: 1}, scoring.Seat{Team: scoring.B, Index: 1}
	return scoring.Entry{
		Kind: scoring.SetRight, Rally: scoring.Rally{Won: scoring.B, Fault: scoring.Kitchen, By: 2}, At: 3, Team: scoring.B,
		Setting: scoring.Setting{Score: scoring.Score{A: 4, B: 5}, Serving: scoring.B, Server: b2, Number: 1, Right: [2]scoring.Seat{a2, b2}},
		Waited:  4, Grace: 5, Note: "wrong server since 3-5",
	}
}

func TestEveryKindOfEventSurvivesItsRecord(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range samples(t) {
		r, err := encode(e)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Decode(r)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(back, e) {
			t.Errorf("%s came back as %+v, want %+v", r.Kind, back, e)
		}
		seen[r.Kind] = true
	}
	for _, k := range kinds {
		if !seen[k.name] {
			t.Errorf("no sample of %s", k.name)
		}
	}
}

// TestDecisionsAreWrittenAsBeforeWhereTheyCanBe: only that somebody sits out is new to an older program, which then
// refuses the file and does not let that person play.
func TestDecisionsAreWrittenAsBeforeWhereTheyCanBe(t *testing.T) {
	for version, pin := range map[uint16]Pin{1: {Round: 2, A: Team{"p5"}}, 2: {Round: 2, A: Team{"p5"}, Out: true}} {
		r, err := encode(Pinned{Pins: []Pin{{Round: 2, A: Team{"p1", "p2"}}, pin}})
		if err != nil || r.Version != version {
			t.Errorf("%+v: version %d, %v", pin, r.Version, err)
		}
	}
}

func TestNewerRecordsAreRefused(t *testing.T) {
	for name, r := range map[string]Record{
		"unknown kind":  {Seq: 3, Kind: "CourtPainted", Version: 1, Payload: json.RawMessage(`{}`)},
		"newer version": {Seq: 3, Kind: "PersonArrived", Version: 2, Payload: json.RawMessage(`{}`)},
	} {
		if _, err := Decode(r); !errors.Is(err, ErrNewer) || !strings.Contains(err.Error(), "event 3") {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

// FuzzDecode feeds payloads that no Quadrille wrote: they must be refused or applied, never panic.
func FuzzDecode(f *testing.F) {
	for _, e := range samples(f) {
		r, err := encode(e)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(r.Kind, []byte(r.Payload))
	}
	f.Fuzz(func(t *testing.T, kind string, payload []byte) {
		l := playing(t)
		if next, err := l.Extend([]Record{{Seq: l.Last() + 1, Action: l.Last() + 1, Kind: kind, Version: 1, Payload: payload}}); err == nil {
			_ = next.NextStep(evening)
			_ = next.DrawKey()
			_ = Describe(next.Club(), next.Actions()[len(next.Actions())-1])
			if n := next.Club().Night(); n != nil && len(n.Games) > 0 {
				_, _ = n.Faults()
			}
		}
	})
}

// playing is the state of a night with one game going on, on court 1.
func playing(t testing.TB) *Ledger {
	t.Helper()
	people := []PersonID{"p1", "p2", "p3", "p4", "p5"}
	events := []Event{NightOpened{Night: 1, Settings: DefaultSettings(5), Courts: []CourtID{"1"}}}
	for _, id := range people {
		events = append(events, PersonAdded{Person{ID: id, Name: string(id)}}, PersonArrived{id})
	}
	events = append(events, GameCalled{Game: 1, Court: "1", A: Team(people[:2]), B: Team(people[2:4])}, RallyWon{1, scoring.Rally{Won: scoring.A}})
	l := NewLedger()
	records, err := record(l, evening, events)
	if err != nil {
		t.Fatal(err)
	}
	if l, err = l.Extend(records); err != nil {
		t.Fatal(err)
	}
	return l
}

// TestARecordWithoutAKind is told as what it is, and not as one of a newer program.
func TestARecordWithoutAKind(t *testing.T) {
	if _, err := Decode(Record{Seq: 1}); err == nil || errors.Is(err, ErrNewer) || !strings.Contains(err.Error(), "no kind") {
		t.Errorf("got %v", err)
	}
}
