package session

import (
	"fmt"
	"slices"
	"strconv"

	"club/quadrille/scoring"
)

// OpenNight begins a night on so many courts of a venue, as they are kept there ([Club.CourtsAt]), or on those that
// are named.
type OpenNight struct {
	Name     string
	Settings Settings
	Courts   int
	Named    []CourtID // in place of a number
	Venue    string    // HomeVenue for a club with only one place
}

// MaxCourts is the most courts that a night may have.
const MaxCourts = 250

func (c OpenNight) decide(l *Ledger, env Env) ([]Event, error) {
	if l.Night() != nil {
		return nil, ErrNightOpen
	}
	if err := c.Settings.Validate(); err != nil {
		return nil, err
	}
	if c.Courts > MaxCourts {
		return nil, fmt.Errorf("a night needs 1 to %d courts, not %d", MaxCourts, c.Courts)
	}
	venue := l.club.VenueNamed(c.Venue)
	courts := l.club.CourtsAt(venue, c.Courts)
	if len(c.Named) > 0 {
		courts = nil
		for _, id := range c.Named {
			courts = append(courts, l.club.CourtAt(venue, id))
		}
	}
	if err := checkCourts(courts); err != nil {
		return nil, err
	}
	c.Settings.Chosen = true
	e := NightOpened{
		Night: NightID(len(l.club.Nights) + 1), ID: string(env.NewID()),
		Name: CleanText(c.Name, MaxName), Settings: c.Settings, Venue: venue,
	}
	for _, k := range courts {
		if e.Courts = append(e.Courts, k.ID); k != (VenueCourt{ID: k.ID}) {
			e.Traits = append(e.Traits, k)
		}
	}
	return []Event{e}, nil
}

// EndNight ends the night. Games that go on keep it open, unless they are to be set aside: they
// then count for nothing.
type EndNight struct{ SetAside bool }

func (c EndNight) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	var events []Event
	for _, g := range n.Running() {
		if !c.SetAside {
			return nil, fmt.Errorf("court %s still has a game: enter its score, or make it void, then end the night", g.Court)
		}
		void, err := g.Rules.Final(g.State.Score.A, g.State.Score.B, scoring.Void)
		if err != nil {
			return nil, err
		}
		events = append(events, GameFinished{g.ID, void})
	}
	return append(events, NightClosed{}), nil
}

// ChangeSettings replaces the settings of the night from now on.
type ChangeSettings struct{ Settings Settings }

func (c ChangeSettings) decide(l *Ledger, _ Env) ([]Event, error) {
	if _, err := openNight(l); err != nil {
		return nil, err
	}
	if err := c.Settings.Validate(); err != nil {
		return nil, err
	}
	c.Settings.Chosen = true
	return []Event{SettingsChanged(c)}, nil
}

// OpenCourt adds a court, or opens a closed one again. Without a name it takes the next number.
type OpenCourt struct{ Court CourtID }

func (c OpenCourt) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if c.Court == "" {
		c.Court = n.nextCourt()
	}
	c.Court = cleanCourt(c.Court)
	if c.Court == "" {
		return nil, fmt.Errorf("a court needs a number or a name")
	}
	if k := n.Court(c.Court); k != nil && k.Open {
		return nil, fmt.Errorf("court %s is open already", c.Court)
	}
	if len(n.Courts) >= MaxCourts {
		return nil, fmt.Errorf("a night has at most %d courts", MaxCourts)
	}
	return []Event{CourtOpened(c)}, nil
}

// nextCourt is the lowest number that no court of the night has.
func (n *Night) nextCourt() CourtID {
	for i := 1; ; i++ {
		if id := CourtID(strconv.Itoa(i)); n.Court(id) == nil {
			return id
		}
	}
}

// CloseCourt takes a court out of play. A game that goes on there may end.
type CloseCourt struct{ Court CourtID }

func (c CloseCourt) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	switch k := n.Court(c.Court); {
	case k == nil:
		return nil, fmt.Errorf("tonight has no court %s", c.Court)
	case !k.Open:
		return nil, fmt.Errorf("court %s is closed already", c.Court)
	case len(n.OpenCourts()) == 1:
		return nil, fmt.Errorf("court %s is the only open one: open another first, or hold play", c.Court)
	}
	return []Event{CourtClosed(c)}, nil
}

// HoldPlay stops play for safety, with the reason.
type HoldPlay struct{ Why string }

func (c HoldPlay) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if n.Hold != nil {
		return nil, fmt.Errorf("play is held already: %s", n.Hold.Why)
	}
	why := CleanText(c.Why, 60)
	if why == "" {
		return nil, fmt.Errorf("say why play is held: lightning, heat, an injury, a wet court")
	}
	return []Event{PlayHeld{Why: why}}, nil
}

// ResumePlay ends a hold. The rolling flow fills free courts at once.
type ResumePlay struct{}

func (ResumePlay) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if n.Hold == nil {
		return nil, fmt.Errorf("play is not held")
	}
	return []Event{PlayResumed{}}, nil
}

// held refuses what must wait for the end of a hold.
func (n *Night) held() error {
	if n.Hold != nil {
		return fmt.Errorf("play is held (%s): resume play first", n.Hold.Why)
	}
	return nil
}

// contains tells whether the night's roll has id in one of the given states.
func (n *Night) contains(id PersonID, states ...Presence) bool {
	a := n.Attending(id)
	return a != nil && slices.Contains(states, a.State)
}
