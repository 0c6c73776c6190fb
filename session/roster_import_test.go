package session

import (
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
