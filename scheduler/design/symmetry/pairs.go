package symmetry

// Pairs sorts the unordered pairs of people into orbits under translations and turns: a base round
// treats all pairs of an orbit alike, so a search counts orbits instead of pairs.
type Pairs struct {
	people int
	class  []int // people×people; -1 for a person with itself
	size   []int // number of pairs in each class
}

// PairsOf sorts the pairs of the people that g moves.
func PairsOf(g Group) *Pairs {
	n := g.People()
	p := &Pairs{people: n, class: make([]int, n*n)}
	for i := range p.class {
		p.class[i] = -1
	}
	for a := range n {
		for b := range a {
			if p.class[a*n+b] < 0 {
				p.collect(g, a, b)
			}
		}
	}
	return p
}

// collect gives the orbit of the pair a, b the next class number.
func (p *Pairs) collect(g Group, a, b int) {
	class, size := len(p.size), 0
	for range g.Order() {
		for t := range g.Ring.N() {
			x, y := g.Translate(a, t), g.Translate(b, t)
			if p.class[x*p.people+y] < 0 {
				p.class[x*p.people+y], p.class[y*p.people+x] = class, class
				size++
			}
		}
		a, b = g.Turn(a), g.Turn(b)
	}
	p.size = append(p.size, size)
}

// Classes is the number of orbits.
func (p *Pairs) Classes() int { return len(p.size) }

// Class is the orbit, from 0, of the pair of two different people.
func (p *Pairs) Class(a, b int) int { return p.class[a*p.people+b] }

// Size is the number of pairs in an orbit.
func (p *Pairs) Size(class int) int { return p.size[class] }
