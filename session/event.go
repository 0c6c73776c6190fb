package session

import (
	"encoding/json"
	"fmt"
	"slices"
	"time"

	"club/quadrille/session/jsontext"
)

// Event is something that happened. Events are facts: once in the log they are never changed, and
// what follows from them is worked out by folding.
type Event interface {
	// apply changes the state that is being folded. An error means that the event cannot have
	// happened in this state; the state may then be half changed and must be thrown away.
	apply(f *fold, at time.Time) error
}

// fold is the state under change by one action.
type fold struct {
	club   *Club
	action uint64 // whose event is folded: the order of actions is the order of everything, whatever clocks say
}

// night is the night that goes on; events of a night are impossible without one.
func (f *fold) night() (*Night, error) {
	if n := f.club.OpenNight(); n != nil {
		return n, nil
	}
	return nil, ErrNoNight
}

// court is a court of the night that goes on.
func (f *fold) court(id CourtID) (*Night, *Court, error) {
	n, err := f.night()
	if err != nil {
		return nil, nil, err
	}
	c := n.Court(id)
	if c == nil {
		return nil, nil, fmt.Errorf("tonight has no court %s", id)
	}
	return n, c, nil
}

// kind is how an event is written in a record.
type kind struct {
	name    string
	version uint16
	read    func(json.RawMessage) (Event, error)
	is      func(Event) bool
}

// kindOf describes an event type. The name is part of the file format and never changes.
func kindOf[E Event](name string, version uint16) kind {
	return kind{
		name:    name,
		version: version,
		read: func(payload json.RawMessage) (Event, error) {
			var e E
			err := json.Unmarshal(payload, &e)
			return e, err
		},
		is: func(e Event) bool { _, ok := e.(E); return ok },
	}
}

// kinds lists every kind of event with the newest version of its layout.
var kinds = []kind{
	kindOf[PersonAdded]("PersonAdded", 1),
	kindOf[PersonChanged]("PersonChanged", 1),
	kindOf[NightOpened]("NightOpened", 2),
	kindOf[NightClosed]("NightClosed", 1),
	kindOf[SettingsChanged]("SettingsChanged", 1),
	kindOf[UsualKept]("UsualKept", 1),
	kindOf[VenueKept]("VenueKept", 1),
	kindOf[UsualNightKept]("UsualNightKept", 1),
	kindOf[UsualNightDropped]("UsualNightDropped", 1),
	kindOf[CourtOpened]("CourtOpened", 1),
	kindOf[CourtClosed]("CourtClosed", 1),
	kindOf[CourtLeveled]("CourtLeveled", 1),
	kindOf[CourtNoted]("CourtNoted", 1),
	kindOf[PeopleMerged]("PeopleMerged", 1),
	kindOf[PersonExpected]("PersonExpected", 1),
	kindOf[PersonArrived]("PersonArrived", 1),
	kindOf[PersonRested]("PersonRested", 1),
	kindOf[PersonReturned]("PersonReturned", 1),
	kindOf[PersonLeft]("PersonLeft", 1),
	kindOf[RotationPlanned]("RotationPlanned", 1),
	kindOf[WayPicked]("WayPicked", 1),
	kindOf[RoundCalled]("RoundCalled", 2),
	kindOf[PlayBegun]("PlayBegun", 2),
	kindOf[CallsEnded]("CallsEnded", 1),
	kindOf[GameCalled]("GameCalled", 2),
	kindOf[PlayerReplaced]("PlayerReplaced", 1),
	kindOf[Pinned]("Pinned", 2),
	kindOf[PlayersExchanged]("PlayersExchanged", 1),
	kindOf[GameMoved]("GameMoved", 1),
	kindOf[RallyWon]("RallyWon", 1),
	kindOf[GameNoted]("GameNoted", 1),
	kindOf[GameFinished]("GameFinished", 1),
	kindOf[ScoreCorrected]("ScoreCorrected", 1),
	kindOf[LotsDrawn]("LotsDrawn", 1),
	kindOf[PlayHeld]("PlayHeld", 1),
	kindOf[PlayResumed]("PlayResumed", 1),
	kindOf[MessagePosted]("MessagePosted", 1),
	kindOf[MessageEnded]("MessageEnded", 1),
	kindOf[NamingChosen]("NamingChosen", 1),
	kindOf[LeagueChosen]("LeagueChosen", 1),
	kindOf[ThunderHeard]("ThunderHeard", 1),
	kindOf[CourtsTold]("CourtsTold", 1),
	kindOf[RemindersChosen]("RemindersChosen", 1),
	kindOf[CardWritten]("CardWritten", 1),
	kindOf[HeatMeasured]("HeatMeasured", 1),
	kindOf[PersonHurt]("PersonHurt", 1),
	kindOf[PersonCleared]("PersonCleared", 1),
	kindOf[CourtScoresChosen]("CourtScoresChosen", 1),
	kindOf[ScoreProposed]("ScoreProposed", 1),
	kindOf[ProposalTaken]("ProposalTaken", 1),
	kindOf[ProposalsRefused]("ProposalsRefused", 1),
	kindOf[ClockMoved]("ClockMoved", 1),
	kindOf[RecordLost]("RecordLost", 1),
	kindOf[Undone]("Undone", 2),
	kindOf[Redone]("Redone", 2),
}

// older is an event that an older layout may hold as well. Such an event is written in that layout, so
// that what was taken in from an older file is written as it stood there.
type older interface {
	older() uint16 // the version of that layout, 0 for none
}

// encode writes an event into the parts of a record that it owns.
func encode(e Event) (Record, error) {
	i := slices.IndexFunc(kinds, func(k kind) bool { return k.is(e) })
	if i < 0 {
		return Record{}, fmt.Errorf("event %T has no kind", e)
	}
	payload, err := json.Marshal(e)
	if err != nil {
		return Record{}, fmt.Errorf("event %s: %w", kinds[i].name, err)
	}
	version := kinds[i].version
	if o, ok := e.(older); ok && o.older() > 0 {
		version = o.older()
	}
	return Record{Kind: kinds[i].name, Version: version, Payload: payload}, nil
}

// Decode reads the event of a record. A kind or a version that this program does not know is an
// error that wraps ErrNewer: such a record is never skipped, or the state would be wrong. Texts of the
// event are fit for a screen, whoever wrote the record.
func Decode(r Record) (Event, error) {
	if r.Kind == "" {
		return nil, fmt.Errorf("event %d says no kind: it is no event of a night", r.Seq)
	}
	i := slices.IndexFunc(kinds, func(k kind) bool { return k.name == r.Kind })
	if i < 0 || r.Version > kinds[i].version {
		return nil, fmt.Errorf("event %d (%s, version %d): %w", r.Seq, r.Kind, r.Version, ErrNewer)
	}
	payload, err := cleanRecordText(r.Payload)
	if err != nil {
		return nil, fmt.Errorf("event %d (%s): %w", r.Seq, r.Kind, err)
	}
	e, err := kinds[i].read(payload)
	if err != nil {
		return nil, fmt.Errorf("event %d (%s): %s", r.Seq, r.Kind, jsontext.Why(err))
	}
	return e, nil
}
