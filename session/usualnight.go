package session

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"club/quadrille/session/roster"
)

// UsualNight is a night as the club has it again and again: with one enter such a night is opened.
type UsualNight struct {
	Name     string   `json:"name"`
	Day      string   `json:"day,omitempty"` // of the week, as [time.Weekday] says it; empty for any
	Venue    string   `json:"venue,omitempty"`
	Courts   int      `json:"courts"`
	Settings Settings `json:"settings"`          // without closing time and seed, which are of one night
	Closing  string   `json:"closing,omitempty"` // when play ends on the clock of the hall, "21:30"; empty if open
}

// MaxUsualNights is how many usual nights a club may keep: more would not be found at once.
const MaxUsualNights = 9

// Words is what matters of the night, the most important first.
func (u UsualNight) Words() string {
	text := Counted(u.Courts, "court") + at(u.Venue)
	if u.Closing != "" {
		text += " until " + u.Closing
	}
	return text + fmt.Sprintf(", %s, %s, %s", u.Settings.Flow, u.Settings.Format.Words(), u.Settings.Scoring)
}

// Called is the name of the night with its day, where the name does not say it.
func (u UsualNight) Called() string {
	if u.Day == "" || strings.Contains(foldName(u.Name), foldName(u.Day)) {
		return u.Name
	}
	return u.Name + " (" + u.Day + ")"
}

// ParseDay reads a day of the week by its name or the beginning of it, of two letters or more; nothing is any day.
func ParseDay(text string) (string, error) {
	text = strings.ToLower(strings.TrimSpace(text))
	if text == "" || text == "any" {
		return "", nil
	}
	const letters = 2
	for d := time.Sunday; d <= time.Saturday; d++ {
		if len(text) >= letters && strings.HasPrefix(strings.ToLower(d.String()), text) {
			return d.String(), nil
		}
	}
	return "", fmt.Errorf("%q is no day of the week: write one such as Tuesday, or nothing for any", text)
}

// turn is when the night is offered: today's first, then one of any day, then by how soon its day comes.
func (u UsualNight) turn(now time.Time) int {
	const anyDay = 1
	for days := range 7 {
		if now.AddDate(0, 0, days).Weekday().String() == u.Day {
			return days + min(days, anyDay)
		}
	}
	return anyDay
}

// validate refuses what is no night.
func (u UsualNight) validate() error {
	if err := u.Settings.Validate(); err != nil {
		return err
	}
	if u.Name == "" {
		return fmt.Errorf("a usual night needs a name, such as Tuesday doubles")
	}
	if day, err := ParseDay(u.Day); err != nil || day != u.Day {
		return cmp.Or(err, fmt.Errorf("%q is no day of the week", u.Day))
	}
	if m, err := roster.ParseMoment(u.Closing); err != nil || u.Closing != "" && !m.IsClock {
		return fmt.Errorf("closing time %q: write a time such as 21:30", u.Closing)
	}
	if u.Courts < 1 || u.Courts > MaxCourts {
		return fmt.Errorf("a night has 1 to %d courts, not %d", MaxCourts, u.Courts)
	}
	return nil
}

// clean is the night as it is kept.
func (u UsualNight) clean() UsualNight {
	u.Name, u.Venue = CleanText(u.Name, MaxName), CleanText(u.Venue, MaxName)
	u.Settings.Closing, u.Settings.Seed, u.Settings.Chosen = time.Time{}, 0, true
	return u
}

// UsualNightKept keeps a night as one that the club has again and again; one of the same name was so until now.
type UsualNightKept struct {
	Night UsualNight `json:"night"`
}

func (e UsualNightKept) apply(f *fold, _ time.Time) error {
	u := e.Night.clean()
	if err := u.validate(); err != nil {
		return err
	}
	f.club.UsualNights = replaced(f.club.UsualNights, f.club.usualNight(u.Name), u)
	return nil
}

// UsualNightDropped says that the club does not have such nights any more.
type UsualNightDropped struct {
	Name string `json:"name"`
}

func (e UsualNightDropped) apply(f *fold, _ time.Time) error {
	i := f.club.usualNight(e.Name)
	if i < 0 {
		return fmt.Errorf("no usual night is called %q", e.Name)
	}
	f.club.UsualNights = slices.Delete(slices.Clone(f.club.UsualNights), i, i+1)
	return nil
}

// usualNight is where a usual night stands, -1 for none of that name.
func (c *Club) usualNight(name string) int {
	return slices.IndexFunc(c.UsualNights, func(u UsualNight) bool { return sameName(u.Name, name) })
}

// NightsOffered are the club's usual nights, that of today's day of the week first, then those of any day, then
// those that come soonest.
func (c *Club) NightsOffered(now time.Time) []UsualNight {
	out := slices.Clone(c.UsualNights)
	slices.SortStableFunc(out, func(a, b UsualNight) int { return cmp.Compare(a.turn(now), b.turn(now)) })
	return out
}

// Opening is the command that opens such a night now, with a seed of its own.
func (u UsualNight) Opening(now time.Time, seed uint64) OpenNight {
	s := u.Settings
	s.Seed = seed
	if m, err := roster.ParseMoment(u.Closing); err == nil {
		s.Closing = TimeOfDay(m, now)
	}
	return OpenNight{Name: u.Name + " " + now.Format("2 January"), Settings: s, Courts: u.Courts, Venue: u.Venue}
}

// KeepUsualNight keeps tonight as one that the club has again and again: settings, venue, number of courts and
// closing time, and the courts of the venue as they are.
type KeepUsualNight struct {
	Name string
	Day  string         // of the week, see [ParseDay]
	Zone *time.Location // of the hall, in which the closing time is kept
}

func (c KeepUsualNight) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	day, err := ParseDay(c.Day)
	if err != nil {
		return nil, err
	}
	u := UsualNight{Name: c.Name, Day: day, Venue: n.Venue, Courts: len(n.OpenCourts()), Settings: n.Settings}
	if at := n.Settings.Closing; !at.IsZero() {
		u.Closing = at.In(c.Zone).Format("15:04")
	}
	u = u.clean()
	if err := u.validate(); err != nil {
		return nil, err
	}
	i, courts := l.club.usualNight(u.Name), l.keepsCourts(n)
	switch {
	case i < 0 && len(l.club.UsualNights) >= MaxUsualNights:
		return nil, fmt.Errorf("the club has %d usual nights: take the name of one that tonight shall replace", MaxUsualNights)
	case i >= 0 && l.club.UsualNights[i] == u && len(courts) == 0:
		return nil, fmt.Errorf("%s is kept just so already", u.Name)
	}
	return append(courts, UsualNightKept{u}), nil
}

// keepsCourts is the event that keeps tonight's courts for their venue, none where they are kept so already.
func (l *Ledger) keepsCourts(n *Night) []Event {
	now := n.courtsNow()
	if slices.Equal(now, l.club.CourtsAt(n.Venue, len(now))) {
		return nil
	}
	return []Event{VenueKept{Venue{n.Venue, now}}}
}

// DropUsualNight says that the club does not have such nights any more. It needs no night.
type DropUsualNight struct{ Name string }

func (c DropUsualNight) decide(l *Ledger, _ Env) ([]Event, error) {
	i := l.club.usualNight(CleanText(c.Name, MaxName))
	if i < 0 {
		return nil, fmt.Errorf("no usual night is called %q", c.Name)
	}
	return []Event{UsualNightDropped{l.club.UsualNights[i].Name}}, nil
}
