// Package roster reads lists of people as clubs have them.
//
// A roster is a table that a spreadsheet has saved as CSV, with a header, or a plain list of names, one a line.
// Only the column name is required, or first name and surname; group, level, arrive, leave, partner_with,
// keep_apart, not_partner and courts are understood, in any order and under the words that people use for them. What any other column
// is called is said beside the entries.
package roster

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// MaxEntries is the most people that a roster may have.
const MaxEntries = 10_000

// MaxGroup is how wide the word for a group may be, in terminal cells.
const MaxGroup = 12

// MaxCourt is how wide the name of a court may be, in terminal cells.
const MaxCourt = 8

// Entry is one line of a roster.
type Entry struct {
	Line        int // in the file, for messages
	Name        string
	Group       string
	Level       float64 // 0 when not stated
	Arrive      Moment
	Leave       Moment
	PartnerWith []Partner
	KeepApart   []string
	NotPartner  []string // who may be opponents
	Courts      []string // the only ones that the person plays on, empty for any
}

// Partner asks for games with somebody, by name.
type Partner struct {
	Name  string
	Times int // 0 for all games of the night
}

// Moment is when somebody comes or goes: a time of day, or a round of the night. The zero value
// says nothing.
type Moment struct {
	Clock   time.Duration // of a time of day: hours and minutes as a clock shows them
	Round   int           // from 1, 0 when the moment is a time of day or is not stated
	IsClock bool
}

// IsZero tells whether the moment says nothing.
func (m Moment) IsZero() bool { return m == Moment{} }

// After is how long after start, by the clock, a time of day comes: from six hours before it to eighteen
// hours after, so that a night may go on past midnight.
func (m Moment) After(start Moment) time.Duration {
	const day, before = 24 * time.Hour, 6 * time.Hour
	return (m.Clock-start.Clock+day+before)%day - before
}

// ParseMoment reads a time of day such as 19:40 or the number of a round such as 3.
func ParseMoment(text string) (Moment, error) {
	if text == "" {
		return Moment{}, nil
	}
	hours, minutes, clock := strings.Cut(text, ":")
	if !clock {
		round, err := strconv.Atoi(text)
		if err != nil || round < 1 || round > 999 {
			return Moment{}, fmt.Errorf("%q is neither a time such as 19:40 nor a round such as 3", text)
		}
		return Moment{Round: round}, nil
	}
	h, errH := strconv.Atoi(hours)
	m, errM := strconv.Atoi(minutes)
	if errH != nil || errM != nil || h < 0 || h > 23 || m < 0 || m > 59 || len(minutes) != 2 {
		return Moment{}, fmt.Errorf("%q is no time of day: write it as 19:40", text)
	}
	return Moment{Clock: time.Duration(h)*time.Hour + time.Duration(m)*time.Minute, IsClock: true}, nil
}
