package design

// ring is a small finite commutative ring with 1, given by its tables. Elements are 0..n-1; 0 is
// the zero of the ring. Its additive group develops starters, its units multiply them.
type ring struct {
	n        int
	one      int
	sum, mul []int // n×n, row by row
	negative []int
}

func (r *ring) add(a, b int) int   { return r.sum[a*r.n+b] }
func (r *ring) sub(a, b int) int   { return r.sum[a*r.n+r.negative[b]] }
func (r *ring) times(a, b int) int { return r.mul[a*r.n+b] }

// newRing tabulates a ring of n elements from its operations.
func newRing(n, one int, add, mul func(a, b int) int) *ring {
	r := &ring{n: n, one: one, sum: make([]int, n*n), mul: make([]int, n*n), negative: make([]int, n)}
	for a := range n {
		for b := range n {
			s := add(a, b)
			r.sum[a*n+b] = s
			r.mul[a*n+b] = mul(a, b)
			if s == 0 {
				r.negative[a] = b
			}
		}
	}
	return r
}

// integers is the ring of whole numbers modulo n.
func integers(n int) *ring {
	return newRing(n, 1%n,
		func(a, b int) int { return (a + b) % n },
		func(a, b int) int { return a * b % n })
}

// extension is the ring of polynomials over the whole numbers modulo m, taken modulo the monic
// polynomial x^k - (tail[0] + tail[1]·x + … + tail[k-1]·x^(k-1)). The element with number
// c[0] + c[1]·m + c[2]·m² + … is the polynomial with coefficients c.
func extension(m int, tail []int) *ring {
	k, n := len(tail), 1
	for range k {
		n *= m
	}
	add := func(a, b int) int {
		sum := 0
		for place := 1; place < n; place *= m {
			sum += (a/place + b/place) % m * place
		}
		return sum
	}
	// times x: shift by one place and replace x^k by the tail.
	shift := make([]int, n)
	for a := range n {
		top, out := a/(n/m), a%(n/m)*m
		for i, place := 0, 1; i < k; i, place = i+1, place*m {
			out = add(out, top*tail[i]%m*place)
		}
		shift[a] = out
	}
	mul := func(a, b int) int {
		product := 0
		for ; b > 0; b /= m {
			for range b % m {
				product = add(product, a)
			}
			a = shift[a]
		}
		return product
	}
	return newRing(n, 1, add, mul)
}

// product is the ring of pairs; the pair (x, y) has the number x·b.n + y.
func product(a, b *ring) *ring {
	on := func(f, g func(x, y int) int) func(x, y int) int {
		return func(x, y int) int { return f(x/b.n, y/b.n)*b.n + g(x%b.n, y%b.n) }
	}
	return newRing(a.n*b.n, a.one*b.n+b.one, on(a.add, b.add), on(a.times, b.times))
}

// unit tells whether a divides 1.
func (r *ring) unit(a int) bool {
	for b := range r.n {
		if r.times(a, b) == r.one {
			return true
		}
	}
	return false
}

// order is the least k > 0 with a^k = 1, or 0 if a is no unit.
func (r *ring) order(a int) int {
	power := a
	for k := 1; k <= r.n; k++ {
		if power == r.one {
			return k
		}
		power = r.times(power, a)
	}
	return 0
}

// rootOfMinusOne returns an element whose square is -1, or false if there is none.
func (r *ring) rootOfMinusOne() (int, bool) {
	for i := range r.n {
		if r.times(i, i) == r.negative[r.one] {
			return i, true
		}
	}
	return 0, false
}
