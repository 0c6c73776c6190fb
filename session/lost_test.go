package session

import (
	"encoding/json"
	"testing"
)

// A log in which a rescue has marked a lost record still opens: what does not rest on the lost
// record stands, what does is skipped and named, and the night goes on.
func TestRescuedLogOpensWithoutWhatIsLost(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 1, 5, Rounds)
	playRound(t, d, clock)
	playRound(t, d, clock)
	for i, r := range log.records {
		if r.Kind != "RoundCalled" {
			continue
		}
		log.records[i].Kind, log.records[i].Version, log.records[i].Payload = "RecordLost", 1, json.RawMessage(`{}`)
		break
	}
	again, err := NewDesk(log, clock.Now, d.newID)
	if err != nil {
		t.Fatal(err)
	}
	l := again.Ledger()
	if !l.Lossy() || len(l.Skipped()) == 0 {
		t.Fatalf("lossy %v, skipped %v", l.Lossy(), l.Skipped())
	}
	if n := l.Night(); n == nil || n.Count(Here) != 5 || len(n.Games) != 0 {
		t.Fatalf("the night after the rescue: %+v", n)
	}
	must(t, again, CallRound{}, Undo{}, Redo{})
	reread, err := Load(log.Records(1))
	if err != nil || stateOf(t, reread) != stateOf(t, again.Ledger()) {
		t.Errorf("a rescued log reads differently the second time: %v", err)
	}
}
