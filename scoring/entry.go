package scoring

import "fmt"

// Kind is what an [Entry] of a sheet notes.
type Kind uint8

// The kinds of entries. The comment tells which fields of the entry they use beside the note.
const (
	RallyWon       Kind = iota + 1 // Rally
	RallyReplayed                  // none: the rally did not count
	RallyInserted                  // Rally, At: it was forgotten, and is played before the rally now number At
	RallyRemoved                   // At: it never counted
	RallyChanged                   // Rally, At: it was noted wrongly
	SetRight                       // Setting: the state stands as told, whatever the rallies say
	TechnicalFoul                  // Side: whose foul
	TimeOut                        // Side
	MedicalTimeOut                 // Side
	RefereeTimeOut                 // none: water on court, blood, heat; charged to nobody
	EndsSwitched                   // none
	TeamRetired                    // Side: who gives up
	NoShow                         // Side, Waited, Grace: who did not come
	TimeUp                         // none: the time limit stops play
	Remark                         // none: a wrong server or box that was put right, a dispute
)

var kindNames = [...]string{
	"", "rally", "replay", "insert", "remove", "change", "set right", "technical foul", "time-out",
	"medical time-out", "referee time-out", "ends changed", "retired", "absent", "time up", "remark",
}

// String is the kind in lower case words.
func (k Kind) String() string {
	if k >= RallyWon && k <= Remark {
		return kindNames[k]
	}
	return fmt.Sprintf("entry kind %d", uint8(k))
}

// MarshalText writes [Kind.String].
func (k Kind) MarshalText() ([]byte, error) {
	if k < RallyWon || k > Remark {
		return nil, fmt.Errorf("there is no entry kind number %d", uint8(k))
	}
	return []byte(kindNames[k]), nil
}

// UnmarshalText reads a kind as [Kind.String] writes it.
func (k *Kind) UnmarshalText(text []byte) error {
	for i := RallyWon; i <= Remark; i++ {
		if kindNames[i] == string(text) {
			*k = i
			return nil
		}
	}
	return fmt.Errorf("no entry of a sheet is called %q", text)
}

// Entry is one line of a sheet: something that happened on court, or was set right afterwards.
type Entry struct {
	Kind    Kind    `json:"kind"`
	Rally   Rally   `json:"rally,omitzero"`
	At      int     `json:"at,omitzero"` // the number of a rally, from 1, as the sheet counts them now
	Team    Team    `json:"side,omitzero"`
	Setting Setting `json:"setting,omitzero"`
	Waited  int     `json:"waited,omitzero"` // minutes since the game was called
	Grace   int     `json:"grace,omitzero"`  // minutes a team may be late
	Note    string  `json:"note,omitempty"`
}
