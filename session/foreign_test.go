package session

import (
	"bytes"
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"
	"unicode"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// hostile is text that would clear a terminal, retitle its window, write from right to left and ring.
const hostile = "\x1b[2J\x1b]0;owned\x07Ada\u009b31m\u202e\x00\x7f"

// hostileRecords are the records of a night that somebody else's program wrote: in every text there
// is something that no screen may get.
func hostileRecords(t *testing.T) []Record {
	t.Helper()
	events := []Event{NightOpened{
		Night: 1, ID: "night" + hostile, Name: hostile, Settings: DefaultSettings(1), Courts: []CourtID{"1" + hostile},
	}}
	var ids []PersonID
	for _, n := range []string{"1", "2", "3", "4"} {
		id := PersonID("id" + n + hostile)
		ids = append(ids, id)
		events = append(events, PersonAdded{Person{ID: id, Name: hostile + n + strings.Repeat("x", 100), Group: hostile}}, PersonArrived{id})
	}
	events = append(events,
		GameCalled{Game: 1, Court: "1" + CourtID(hostile), A: Team(ids[:2]), B: Team(ids[2:])},
		GameNoted{Game: 1, Entry: scoring.Entry{Kind: scoring.Remark, Note: hostile}},
		PlayHeld{hostile},
	)
	records, err := record(NewLedger(), evening, events)
	if err != nil {
		t.Fatal(err)
	}
	return records
}

// safe fails unless a text can be shown on any terminal.
func safe(t *testing.T, what, text string) {
	t.Helper()
	if i := strings.IndexFunc(text, func(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) }); i >= 0 {
		t.Errorf("%s has %q at %d: %q", what, text[i], i, text)
	}
}

// Whatever texts a foreign file holds, what the desk shows of them is fit for a screen, whether the
// file is opened or joined; and so is what is joined of it into the club's own log.
func TestForeignTextNeverReachesAScreenOrOurLog(t *testing.T) {
	records := hostileRecords(t)
	opened, err := Load(inOrder(records))
	if err != nil {
		t.Fatal(err)
	}
	d, log, _ := newTestDesk(t)
	if _, _, err := d.Join(records, AskSame); err != nil {
		t.Fatal(err)
	}
	for what, l := range map[string]*Ledger{"opened": opened, "joined": d.Ledger()} {
		state, err := json.Marshal(l.Club())
		if err != nil {
			t.Fatal(err)
		}
		safe(t, what+" state", string(state))
		if bytes.ContainsAny(state, `\`) {
			t.Errorf("the %s state has something escaped: %s", what, state)
		}
		for _, a := range l.Actions() {
			safe(t, what+" history", Describe(l.Club(), a))
		}
		if p := l.Club().People[0]; !strings.HasPrefix(p.Name, "Ada") || len(p.Name) > MaxName {
			t.Errorf("%s: the name came to %q", what, p.Name)
		}
	}
	for _, r := range log.records {
		safe(t, "our log", string(r.Payload))
		if bytes.Contains(r.Payload, []byte(`\u`)) {
			t.Errorf("our log has something escaped: %s", r.Payload)
		}
	}
}

// An export can be printed, even that of a file that was not cleaned, and means what the file does.
func TestAnExportCanBePrinted(t *testing.T) {
	text := `{"why":"` + "\u009b2J\u202e\U000e0001\u2028é漢" + `"}`
	log := &MemoryLog{records: []Record{{Seq: 1, Kind: "PlayHeld", Version: 1, Payload: json.RawMessage(text)}}}
	var out bytes.Buffer
	if err := ExportEvents(&out, log.Records(1)); err != nil {
		t.Fatal(err)
	}
	for l := range strings.Lines(out.String()) {
		safe(t, "the export", strings.TrimSuffix(l, "\n"))
	}
	if !strings.Contains(out.String(), "é漢") {
		t.Errorf("letters were escaped: %s", out.String())
	}
	_, line, _ := strings.Cut(out.String(), "\n")
	var r Record
	var got, want PlayHeld
	if err := errors.Join(json.Unmarshal([]byte(line), &r), json.Unmarshal(r.Payload, &got), json.Unmarshal([]byte(text), &want)); err != nil {
		t.Fatal(err)
	}
	if got != want {
		t.Errorf("the text came back as %q, want %q", got.Why, want.Why)
	}
}

// What cannot have been written by the desk is refused with a reason, and changes nothing.
func TestForeignRecordsThatMakeNoSenseAreRefused(t *testing.T) {
	people := func(name string) []Event { return []Event{PersonAdded{Person{ID: "p1", Name: name}}} }
	night := func(change func(*NightOpened)) []Event {
		e := NightOpened{Night: 1, Settings: DefaultSettings(1), Courts: []CourtID{"1"}}
		change(&e)
		return []Event{e}
	}
	for name, c := range map[string]struct {
		events []Event
		want   string
	}{
		"a name of nothing":     {people("\x1b[2J\u200b"), "has no name"},
		"somebody twice":        {append(people("A"), people("B")...), "already has a person"},
		"a night of 10⁹ rounds": {night(func(e *NightOpened) { e.Settings.Rounds = 1e9 }), "1 to 60 rounds"},
		"a game to 10⁹":         {night(func(e *NightOpened) { e.Settings.Scoring.To = 1e9 }), ""},
		"300 courts":            {night(func(e *NightOpened) { e.Courts = make([]CourtID, 300) }), "at most 250 courts"},
		"the second night":      {night(func(e *NightOpened) { e.Night = 2 }), "night 2 cannot follow night 0"},
		"other settings":        {append(night(func(*NightOpened) {}), SettingsChanged{Settings{Format: scheduler.Rotating}}), "no flow is called"},
	} {
		t.Run(name, func(t *testing.T) {
			records, err := record(NewLedger(), evening, c.events)
			if err != nil {
				t.Fatal(err)
			}
			d, log, _ := newTestDesk(t)
			if _, _, err := d.Join(records, AskSame); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("joining says %v, want %q", err, c.want)
			}
			if log.Last() != 0 {
				t.Errorf("%d records were taken", log.Last())
			}
		})
	}
}

func TestPayloadsAreRewrittenOnlyWhenTheyAreValid(t *testing.T) {
	upper := func(s string) string { return strings.ToUpper(s) }
	for _, text := range []string{``, `{`, `{} {}`, `{"a":}`, strings.Repeat("[", 1<<20)} {
		if out, err := mapStrings(json.RawMessage(text), upper); err == nil {
			t.Errorf("%.20q gave %.20q", text, out)
		}
	}
	const text = `{"b":["x",1.50,12345678901234567890,null,true,{}],"a":"y"}`
	if out, err := mapStrings(json.RawMessage(text), upper); err != nil || string(out) != `{"b":["X",1.50,12345678901234567890,null,true,{}],"a":"Y"}` {
		t.Errorf("%s, %v", out, err)
	}
	if !slices.Equal([]byte(printableJSON(json.RawMessage(text))), []byte(text)) {
		t.Error("a payload that can be printed was changed")
	}
}
