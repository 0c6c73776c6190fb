package evening

// Spread is how many people have how much of something: Spread[2] people have 2.
type Spread []int

func (s *Spread) add(k int) {
	for len(*s) <= k {
		*s = append(*s, 0)
	}
	(*s)[k]++
}

// Range is the least and the most that somebody has; of nobody it is nothing.
func (s Spread) Range() (least, most int) {
	for k, people := range s {
		if people > 0 {
			return k, len(s) - 1
		}
	}
	return 0, 0
}

// SitOuts is how often everybody sat out, the person too.
func (e Evening) SitOuts() Spread {
	var s Spread
	for _, c := range e.Counts {
		s.add(c.SatOut)
	}
	return s
}

// Games is how many games everybody had, the person too.
func (e Evening) Games() Spread {
	var s Spread
	for _, c := range e.Counts {
		s.add(c.Games)
	}
	return s
}

// Own is the person's line among Counts.
func (e Evening) Own() Count {
	for _, c := range e.Counts {
		if c.Person == e.Person.ID {
			return c
		}
	}
	return Count{Person: e.Person.ID}
}
