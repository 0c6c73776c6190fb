// Package roster reads lists of people as a spreadsheet saves them.
//
// A roster is CSV with a header. Only the column name is required; group, level, arrive, leave,
// partner_with and keep_apart are understood, in any order, and any other column is left alone.
package roster

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"golang.org/x/text/unicode/norm"

	"club/quadrille/session/spreadsheet"
)

// MaxEntries is the most people that a roster may have.
const MaxEntries = 2000

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
}

// Partner asks for games with somebody, by name.
type Partner struct {
	Name  string
	Times int // 0 for all games of the night
}

// Moment is when somebody comes or goes: a time of day, or a round of the night. The zero value
// says nothing.
type Moment struct {
	Clock   time.Duration // since midnight
	Round   int           // from 1, 0 when the moment is a time of day or is not stated
	IsClock bool
}

// IsZero tells whether the moment says nothing.
func (m Moment) IsZero() bool { return m == Moment{} }

// On is the moment on the day of a date, in its place; zero for rounds and unstated moments.
func (m Moment) On(day time.Time) time.Time {
	if !m.IsClock {
		return time.Time{}
	}
	return time.Date(day.Year(), day.Month(), day.Day(), 0, 0, 0, 0, day.Location()).Add(m.Clock)
}

// layout is what a roster looks like.
var layout = spreadsheet.Layout{
	The: "the roster", Is: "is", Has: "has",
	Columns:  []string{"name", "group", "level", "arrive", "leave", "partner_with", "keep_apart"},
	Required: []string{"name"},
	Header:   "name,group,level,arrive,leave,partner_with,keep_apart",
}

// Parse reads a roster. Every error names the line and says what to do; no entry is dropped
// silently.
func Parse(r io.Reader) ([]Entry, error) {
	var out []Entry
	for row, err := range layout.Rows(r) {
		if err != nil {
			return nil, err
		}
		e, err := entry(func(column string) string { return spreadsheet.Plain(row.Cell(column)) })
		if err != nil {
			return nil, fmt.Errorf("roster line %d: %w", row.Line, err)
		}
		e.Line = row.Line
		if out = append(out, e); len(out) > MaxEntries {
			return nil, fmt.Errorf("the roster has more than %d people", MaxEntries)
		}
	}
	return out, check(out)
}

func entry(cell func(column string) string) (Entry, error) {
	e := Entry{Name: oneSpelling(cell("name")), Group: cell("group"), KeepApart: names(cell("keep_apart"))}
	if e.Name == "" {
		return e, fmt.Errorf("the name is missing")
	}
	var err error
	if e.Level, err = level(cell("level")); err != nil {
		return e, err
	}
	if e.Arrive, err = ParseMoment(cell("arrive")); err != nil {
		return e, fmt.Errorf("arrive: %w", err)
	}
	if e.Leave, err = ParseMoment(cell("leave")); err != nil {
		return e, fmt.Errorf("leave: %w", err)
	}
	for _, text := range names(cell("partner_with")) {
		p, err := partner(text)
		if err != nil {
			return e, err
		}
		e.PartnerWith = append(e.PartnerWith, p)
	}
	return e, nil
}

func level(text string) (float64, error) {
	if text == "" {
		return 0, nil
	}
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil || !(v >= 0 && v <= 10) {
		return 0, fmt.Errorf("level %q is no number from 0 to 10", text)
	}
	return v, nil
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

// partner reads "Name" or "Name*2".
func partner(text string) (Partner, error) {
	name, times, limited := strings.Cut(text, "*")
	p := Partner{Name: oneSpelling(name)}
	if !limited {
		return p, nil
	}
	n, err := strconv.Atoi(strings.TrimSpace(times))
	if err != nil || n < 1 || n > 99 {
		return p, fmt.Errorf("partner_with %q: write how often as Name*2", text)
	}
	p.Times = n
	return p, nil
}

// names splits a cell of names at semicolons.
func names(cell string) []string {
	var out []string
	for name := range strings.SplitSeq(cell, ";") {
		if name = oneSpelling(name); name != "" {
			out = append(out, name)
		}
	}
	return out
}

// oneSpelling writes a name with single blanks and composed accents, so that two spellings that look
// alike are one name.
func oneSpelling(name string) string {
	blank := func(r rune) bool { return r == ' ' || r == '\u00a0' }
	return norm.NFC.String(strings.Join(strings.FieldsFunc(name, blank), " "))
}
