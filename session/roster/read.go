package roster

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"club/quadrille/session/name"
	"club/quadrille/session/spreadsheet"
)

// Roster is a roster that was read.
type Roster struct {
	Entries []Entry
	Notes   []string // what whoever took it in must be told, a sentence each
}

// layout is what a roster looks like.
var layout = spreadsheet.Layout{
	The: "the roster", Is: "is", Has: "has",
	Columns: []spreadsheet.Column{
		{
			Name: "name", Required: true, Instead: []string{"first name", "surname"},
			Words: []string{"names", "full name", "player", "players", "player name", "person", "people", "participant", "participants"},
		},
		{Name: "first name", Words: []string{"firstname", "first", "given name", "forename"}},
		{Name: "surname", Words: []string{"last name", "lastname", "last", "family name"}},
		{Name: "group", Words: []string{"gender", "sex"}},
		{Name: "level", Words: []string{"rating", "skill", "skill level", "grade"}},
		{Name: "arrive", Words: []string{"arrives", "arrival", "arrival time", "from", "comes", "start"}},
		{Name: "leave", Words: []string{"leaves", "departure", "departure time", "until", "till", "to", "end"}},
		{Name: "partner_with", Words: []string{"partner", "partners", "plays with", "with"}},
		{Name: "keep_apart", Words: []string{"keep apart from", "apart", "not with", "avoid"}},
		{Name: "not_partner", Words: []string{"not partner", "never partner", "no partner", "not partners"}},
		{Name: "courts", Words: []string{"court", "own courts", "only on"}},
	},
	Quiet:  []string{"nights", "games", "last night"}, // of an export of people
	Header: "name,group,level,arrive,leave,partner_with,keep_apart,not_partner,courts",
	List:   "name",
	MaxMiB: 4,
}

// Parse is Read for whoever has nobody to tell the notes to.
func Parse(r io.Reader) ([]Entry, error) {
	read, err := Read(r)
	return read.Entries, err
}

// Read reads a roster. Every error names the line and says what to do; no entry and no column is
// dropped silently.
func Read(r io.Reader) (Roster, error) {
	table, err := layout.Read(r)
	if err != nil {
		return Roster{}, err
	}
	out := Roster{Notes: table.Notes}
	if err := out.nameColumns(table); err != nil {
		return Roster{}, err
	}
	for row, err := range table.Rows() {
		if err != nil {
			return Roster{}, err
		}
		e, err := entry(table, func(column string) string { return spreadsheet.Plain(row.Cell(column)) })
		if err != nil {
			return Roster{}, fmt.Errorf("roster line %d: %w", row.Line, err)
		}
		e.Line = row.Line
		if out.Entries = append(out.Entries, e); len(out.Entries) > MaxEntries {
			return Roster{}, fmt.Errorf("the roster has more than %d people: take in a part of it at a time", MaxEntries)
		}
	}
	out.turn()
	if err := check(out.Entries); err != nil {
		return Roster{}, err
	}
	return out, nil
}

// nameColumns says which of the columns that could be names are.
func (r *Roster) nameColumns(table *spreadsheet.Table) error {
	first, last := table.Has("first name"), table.Has("surname")
	switch {
	case !table.Has("name") || !first && !last:
		return nil
	case first && last:
		r.Notes = append(r.Notes, "not used: the columns of first names and surnames, since there is one of names")
		return nil
	}
	return fmt.Errorf("the roster has a column name beside one of half names: call it surname or first name if it is the other half, or take the half names out")
}

func entry(table *spreadsheet.Table, cell func(column string) string) (Entry, error) {
	e := Entry{Group: name.Text(cell("group"), ansi.StringWidth(cell("group"))), KeepApart: names(cell("keep_apart")), NotPartner: names(cell("not_partner")), Courts: names(cell("courts"))}
	full := cell("name")
	if !table.Has("name") {
		full = cell("first name") + " " + cell("surname")
	}
	if strings.TrimSpace(full) == "" {
		return e, fmt.Errorf("the name is missing")
	}
	for _, court := range e.Courts {
		if ansi.StringWidth(court) > MaxCourt {
			return e, fmt.Errorf("%s %q is too long: the name of a court has at most %d letters", table.Called("courts"), court, MaxCourt)
		}
	}
	var err error
	if e.Name, err = name.Clean(full); err != nil {
		return e, err
	}
	if ansi.StringWidth(e.Group) > MaxGroup {
		return e, fmt.Errorf("%s %q is too long: a word of at most %d letters", table.Called("group"), e.Group, MaxGroup)
	}
	if e.Level, err = level(cell("level")); err != nil {
		return e, fmt.Errorf("%s %w", table.Called("level"), err)
	}
	if e.Arrive, err = ParseMoment(cell("arrive")); err != nil {
		return e, fmt.Errorf("%s: %w", table.Called("arrive"), err)
	}
	if e.Leave, err = ParseMoment(cell("leave")); err != nil {
		return e, fmt.Errorf("%s: %w", table.Called("leave"), err)
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
		return 0, fmt.Errorf("%q is no number from 0 to 10", text)
	}
	return v, nil
}

// turn writes names in the order in which people say them, if all of them are written surname first: "Noll,
// Edda" in a whole column of such is Edda Noll.
func (r *Roster) turn() {
	for _, e := range r.Entries {
		if _, ok := turned(e.Name); !ok {
			return
		}
	}
	if len(r.Entries) < 2 {
		return
	}
	for i := range r.Entries {
		e := &r.Entries[i]
		e.Name, _ = turned(e.Name)
		for j := range e.PartnerWith {
			e.PartnerWith[j].Name, _ = turned(e.PartnerWith[j].Name)
		}
		for j := range e.KeepApart {
			e.KeepApart[j], _ = turned(e.KeepApart[j])
		}
		for j := range e.NotPartner {
			e.NotPartner[j], _ = turned(e.NotPartner[j])
		}
	}
	r.Notes = append(r.Notes, fmt.Sprintf("names written surname first were turned round: %s, %s…", r.Entries[0].Name, r.Entries[1].Name))
}

// turned is "First Last" of "Last, First", and the text as it is if it is not of this form.
func turned(text string) (string, bool) {
	last, first, ok := strings.Cut(text, ",")
	first, last = strings.TrimSpace(first), strings.TrimSpace(last)
	if !ok || first == "" || last == "" || strings.Contains(first, ",") {
		return text, false
	}
	return first + " " + last, true
}

// partner reads "Name" or "Name*2".
func partner(text string) (Partner, error) {
	who, times, limited := strings.Cut(text, "*")
	p := Partner{Name: name.Text(who, name.Max)}
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
	for text := range strings.SplitSeq(cell, ";") {
		if text = name.Text(text, name.Max); text != "" {
			out = append(out, text)
		}
	}
	return out
}
