package scheduler

// wishes holds what is asked of each two people, looked up at a·people + b in either order.
type wishes struct {
	people int
	asked  []bool  // anything is asked
	apart  []bool  // must not share a court
	unteam []bool  // must not be partners
	times  []int16 // be partners so many times tonight; -1 = nothing asked
}

// newWishes collects what the problem asks of two people beyond always being partners. It returns
// nil if that is nothing.
func newWishes(n *night) *wishes {
	p := n.p
	counted := false
	for _, t := range p.Together {
		counted = counted || t.Times > 0
	}
	if !counted && len(p.NeverPartner) == 0 && len(p.NeverMeet) == 0 {
		return nil
	}
	size := n.people * n.people
	w := &wishes{n.people, make([]bool, size), make([]bool, size), make([]bool, size), make([]int16, size)}
	for i := range w.times {
		w.times[i] = -1
	}
	for _, t := range p.Together {
		if t.Times > 0 {
			w.times[w.at(t.A, t.B)], w.times[w.at(t.B, t.A)] = int16(t.Times), int16(t.Times)
		}
	}
	for _, t := range p.NeverPartner {
		w.unteam[w.at(t.A, t.B)], w.unteam[w.at(t.B, t.A)] = true, true
	}
	for _, t := range p.NeverMeet {
		w.apart[w.at(t.A, t.B)], w.apart[w.at(t.B, t.A)] = true, true
	}
	for at := range w.asked {
		w.asked[at] = w.apart[at] || w.unteam[at] || w.times[at] >= 0
	}
	return w
}

func (w *wishes) at(a, b Player) int { return int(a)*w.people + int(b) }

// cost is how far two people who partnered p times and opposed o times are from what is asked of
// them: games that must not be, and partnerships missing or too many.
func (w *wishes) cost(at, p, o int) score {
	var s score
	if w.apart[at] {
		s.broken += p + o
	}
	if w.unteam[at] {
		s.broken += p
	}
	if t := int(w.times[at]); t >= 0 {
		s.missing = max(t-p, p-t)
	}
	return s
}
