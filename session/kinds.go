package session

import (
	"encoding/json"
	"reflect"
)

// Layout is how events of a kind are written into records.
type Layout struct {
	Kind    string       // name of the event, "RallyWon"
	Version uint16       // the newest version of the payload
	Payload reflect.Type // whose JSON the payload is
}

// Layouts lists the kinds of events that this program writes and reads.
func Layouts() []Layout {
	out := make([]Layout, len(kinds))
	for i, k := range kinds {
		e, err := k.read(json.RawMessage("{}"))
		if err != nil {
			panic("session: no event of kind " + k.name + " can be empty: " + err.Error())
		}
		out[i] = Layout{k.name, k.version, reflect.TypeOf(e)}
	}
	return out
}
