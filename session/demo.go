package session

import (
	"time"

	"club/quadrille/session/roster"
)

// demoSeed makes every demonstration draw the same rounds.
const demoSeed = 20

// demoPeople are invented: no club and nobody real is meant.
var demoPeople = []roster.Entry{
	{Name: "Agnes Vale", Group: "x", Level: 3},
	{Name: "Bram Okoro", Group: "y", Level: 3.5},
	{Name: "Cleo Hart", Group: "x", Level: 2.5},
	{Name: "Dario Finch", Group: "y", Level: 4},
	{Name: "Edda Noll", Group: "x", Level: 3},
	{Name: "Finn Noll", Group: "y", Level: 3},
	{Name: "Greta Umber", Group: "x", Level: 3.5},
	{Name: "Hugo Pask", Group: "y", Level: 3.5},
	{Name: "Iris Quell", Group: "x", Level: 2.5},
	{Name: "Jonas Reed", Group: "y", Level: 4.5},
	{Name: "Kaya Storm", Group: "x", Level: 3},
	{Name: "Lio Tamm", Group: "y", Level: 2.5},
	{Name: "Maud Ember", Group: "x", Level: 4},
	{Name: "Nils Corran", Group: "y", Level: 3},
	{Name: "Oona Birch", Group: "x", Level: 3.5},
	{Name: "Pavel Dray", Group: "y", Level: 3},
	{Name: "Quinn Ashby", Group: "x", Level: 2.5},
	{Name: "Rosa Lindgren", Group: "y", Level: 3.5},
}

// demoLate is how many of the last demo people are still on their way.
const demoLate = 2

// OpenDemo opens an invented night: four courts, sixteen people checked in, two on their way.
func OpenDemo(d *Desk) error {
	s := DefaultSettings(demoSeed)
	if _, err := d.Do(OpenNight{Name: "Demo night at the old mill", Settings: s, Courts: 4}); err != nil {
		return err
	}
	present := len(demoPeople) - demoLate
	if _, err := d.Do(ImportRoster{Entries: demoPeople[:present], Arrived: true}); err != nil {
		return err
	}
	if _, err := d.Do(ImportRoster{Entries: demoPeople[present:]}); err != nil {
		return err
	}
	now := d.Now().Truncate(time.Minute)
	for i, e := range demoPeople[present:] {
		p, _ := d.Ledger().Club().Named(e.Name)
		if _, err := d.Do(Expect{Person: p.ID, Due: now.Add(time.Duration(20+5*i) * time.Minute)}); err != nil {
			return err
		}
	}
	return nil
}
