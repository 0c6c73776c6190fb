package night

// Wishes holds what is asked of each two people, looked up at a·people + b in either order.
type Wishes struct {
	people int
	Asked  []bool  // anything is asked
	Apart  []bool  // must not share a court
	Unteam []bool  // must not be partners
	Times  []int16 // be partners so many times tonight; -1 = nothing asked
}

// newWishes collects what the problem asks of two people beyond always being partners. It returns
// nil if that is nothing.
func newWishes(n *Night) *Wishes {
	p := n.Problem
	counted := false
	for _, t := range p.Together {
		counted = counted || t.Times > 0
	}
	if !counted && len(p.NeverPartner) == 0 && len(p.NeverMeet) == 0 {
		return nil
	}
	size := n.People * n.People
	w := &Wishes{n.People, make([]bool, size), make([]bool, size), make([]bool, size), make([]int16, size)}
	for i := range w.Times {
		w.Times[i] = -1
	}
	for _, t := range p.Together {
		if t.Times > 0 {
			w.Times[w.At(t.A, t.B)], w.Times[w.At(t.B, t.A)] = int16(t.Times), int16(t.Times)
		}
	}
	for _, t := range p.NeverPartner {
		w.Unteam[w.At(t.A, t.B)], w.Unteam[w.At(t.B, t.A)] = true, true
	}
	for _, t := range p.NeverMeet {
		w.Apart[w.At(t.A, t.B)], w.Apart[w.At(t.B, t.A)] = true, true
	}
	for at := range w.Asked {
		w.Asked[at] = w.Apart[at] || w.Unteam[at] || w.Times[at] >= 0
	}
	return w
}

// At is where what is asked of two people stands.
func (w *Wishes) At(a, b Player) int { return int(a)*w.people + int(b) }
