package session

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
	"time"

	"club/quadrille/session/spreadsheet"
)

// peopleHeader names the columns of ExportPeople. The first five are those of a roster, so that the
// file can be taken in as one; a roster does not mind the others.
var peopleHeader = []string{"name", "group", "level", "partner_with", "keep_apart", "not_partner", "courts", "nights", "games", "last_night"}

// ExportPeople writes everybody the club knows as CSV for a spreadsheet: what the club knows of them,
// how many nights and games they played, and the date of the last one in the given zone. Wishes about
// somebody whom the club no longer knows are left out.
func ExportPeople(w io.Writer, club *Club, zone *time.Location) error {
	played := map[PersonID]*attended{}
	for _, n := range club.Nights {
		for _, a := range n.Roll {
			games := n.GamesOf(a.Person)
			if games == 0 {
				continue
			}
			if played[a.Person] == nil {
				played[a.Person] = &attended{}
			}
			p := played[a.Person]
			p.nights, p.games, p.last = p.nights+1, p.games+games, n.Opened
		}
	}
	out := csv.NewWriter(w)
	_ = out.Write(peopleHeader) // a failed write is kept by the writer and told by Error
	for _, p := range club.People {
		_ = out.Write(append(club.rosterRow(p), played[p.ID].cells(zone)...))
	}
	out.Flush()
	return out.Error()
}

// attended is what somebody played, over all nights.
type attended struct {
	nights, games int
	last          time.Time
}

// cells writes a, which is nil for somebody who never played.
func (a *attended) cells(zone *time.Location) []string {
	if a == nil {
		return []string{"0", "0", ""}
	}
	return []string{strconv.Itoa(a.nights), strconv.Itoa(a.games), a.last.In(zone).Format(time.DateOnly)}
}

// rosterRow writes somebody as a roster does.
func (c *Club) rosterRow(p Person) []string {
	var with []string
	for _, t := range p.Together {
		if other, ok := c.Person(t.With); ok {
			name := other.Name
			if t.Times > 0 {
				name += "*" + strconv.Itoa(t.Times)
			}
			with = append(with, name)
		}
	}
	names := func(ids []PersonID) string {
		var out []string
		for _, id := range ids {
			if other, ok := c.Person(id); ok {
				out = append(out, other.Name)
			}
		}
		return spreadsheet.Text(strings.Join(out, "; "))
	}
	return []string{
		spreadsheet.Text(p.Name), spreadsheet.Text(p.Group), LevelText(p.Level),
		spreadsheet.Text(strings.Join(with, "; ")), names(p.KeepApart), names(p.NotPartner), spreadsheet.Text(OwnCourtsText(p.Courts)),
	}
}
