package session

import (
	"fmt"
	"time"
)

// PersonAdded makes somebody known to the club.
type PersonAdded struct {
	Person Person `json:"person"`
}

func (e PersonAdded) apply(f *fold, _ time.Time) error {
	if _, ok := f.club.Person(e.Person.ID); ok || e.Person.ID == "" {
		return fmt.Errorf("the club already has a person with identity %q", e.Person.ID)
	}
	p, err := e.Person.checked()
	if err != nil {
		return err
	}
	f.club.add(p.clone())
	return nil
}

// PersonChanged replaces what the club knows of somebody.
type PersonChanged struct {
	Person Person `json:"person"`
}

func (e PersonChanged) apply(f *fold, _ time.Time) error {
	i := f.club.number(e.Person.ID)
	if i < 0 {
		return fmt.Errorf("the club has no person with identity %q", e.Person.ID)
	}
	p, err := e.Person.checked()
	if err != nil {
		return err
	}
	seen := p.Shown != f.club.People[i].Shown || p.Hidden != f.club.People[i].Hidden
	alike := samePerson(p.unseen(), f.club.People[i].unseen())
	f.club.replace(i, p.clone())
	if n := f.club.OpenNight(); n != nil && !(seen && alike) { // how the hall sees somebody is nothing to the rotation
		n.Plan = nil
	}
	return nil
}

// PersonExpected announces somebody for tonight.
type PersonExpected struct {
	Person PersonID `json:"person"`
	Stay
}

func (e PersonExpected) apply(f *fold, _ time.Time) error {
	return f.attend(e.Person, func(n *Night, a *Attendance) error {
		if a.State == "" || a.State == Gone {
			a.State = Expected
		}
		a.Stay = e.Stay
		return nil
	})
}

// PersonArrived checks somebody in.
type PersonArrived struct {
	Person PersonID `json:"person"`
}

func (e PersonArrived) apply(f *fold, at time.Time) error {
	return f.attend(e.Person, func(n *Night, a *Attendance) error {
		if a.State == Here || a.State == Resting {
			return fmt.Errorf("%s is here already", f.club.Name(e.Person))
		}
		if err := n.barred(f.club, e.Person); err != nil {
			return err
		}
		if a.Arrived.IsZero() {
			a.Arrived = at
		}
		f.come(a, at)
		return nil
	})
}

// PersonRested takes somebody out of the rotation who stays in the hall.
type PersonRested struct {
	Person PersonID `json:"person"`
}

func (e PersonRested) apply(f *fold, at time.Time) error {
	return f.attend(e.Person, func(n *Night, a *Attendance) error {
		if a.State != Here {
			return fmt.Errorf("%s is not in the rotation", f.club.Name(e.Person))
		}
		a.leaveTo(Resting, at)
		return nil
	})
}

// PersonReturned takes somebody back into the rotation.
type PersonReturned struct {
	Person PersonID `json:"person"`
}

func (e PersonReturned) apply(f *fold, at time.Time) error {
	return f.attend(e.Person, func(n *Night, a *Attendance) error {
		if a.State != Resting {
			return fmt.Errorf("%s is not resting", f.club.Name(e.Person))
		}
		f.come(a, at)
		return nil
	})
}

// PersonLeft notes that somebody went home. Who still plays is free of the bench after the game.
type PersonLeft struct {
	Person PersonID `json:"person"`
}

func (e PersonLeft) apply(f *fold, at time.Time) error {
	return f.attend(e.Person, func(n *Night, a *Attendance) error {
		if a.State == Gone || a.State == "" {
			return fmt.Errorf("%s is not here", f.club.Name(e.Person))
		}
		a.leaveTo(Gone, at)
		return nil
	})
}

// attend changes one person's part in the night, which makes the plan stale.
func (f *fold) attend(id PersonID, change func(*Night, *Attendance) error) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if _, ok := f.club.Person(id); !ok {
		return fmt.Errorf("the club has no person with identity %q", id)
	}
	a := n.Attending(id)
	if a == nil {
		a = n.enrol(id)
	}
	n.Plan = nil
	return change(n, a)
}

// come brings somebody to the bench.
func (f *fold) come(a *Attendance, at time.Time) {
	a.State, a.Since = Here, at
	f.wait(a, at)
}

// wait begins somebody's wait on the bench.
func (f *fold) wait(a *Attendance, at time.Time) { a.Waiting, a.Turn = at, f.action }

// unwait ends somebody's wait.
func (a *Attendance) unwait() { a.Waiting, a.Turn = time.Time{}, 0 }

func (a *Attendance) leaveTo(p Presence, at time.Time) {
	a.Present = a.PresentFor(at)
	a.State, a.Since = p, time.Time{}
	a.unwait()
}
