// Package ring has the small finite commutative rings with 1 on which designs are developed: the
// whole numbers modulo n, finite fields, polynomial extensions and products of these.
//
// A ring is held as tables, so every operation is one look-up; rings of some hundred elements are
// built within a millisecond.
package ring

// Ring is a finite commutative ring with 1. Its elements are the numbers from 0 to N-1; 0 is the
// zero of the ring. A Ring never changes once it is made.
type Ring struct {
	n        int
	one      int
	sum, mul []int // n×n, row by row
	negative []int
}

// N is the number of elements.
func (r *Ring) N() int { return r.n }

// One is the unit element.
func (r *Ring) One() int { return r.one }

// Add returns a + b.
func (r *Ring) Add(a, b int) int { return r.sum[a*r.n+b] }

// Sub returns a - b.
func (r *Ring) Sub(a, b int) int { return r.sum[a*r.n+r.negative[b]] }

// Neg returns -a.
func (r *Ring) Neg(a int) int { return r.negative[a] }

// Mul returns a · b.
func (r *Ring) Mul(a, b int) int { return r.mul[a*r.n+b] }

// build tabulates a ring of n elements from its operations.
func build(n, one int, add, mul func(a, b int) int) *Ring {
	r := &Ring{n: n, one: one, sum: make([]int, n*n), mul: make([]int, n*n), negative: make([]int, n)}
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

// Integers is the ring of whole numbers modulo n.
func Integers(n int) *Ring {
	return build(n, 1%n,
		func(a, b int) int { return (a + b) % n },
		func(a, b int) int { return a * b % n })
}

// Extension is the ring of polynomials over the whole numbers modulo m, taken modulo the monic
// polynomial x^k - (tail[0] + tail[1]·x + … + tail[k-1]·x^(k-1)). The element with number
// c[0] + c[1]·m + c[2]·m² + … is the polynomial with coefficients c.
func Extension(m int, tail []int) *Ring {
	shift := timesX(m, tail)
	mul := func(a, b int) int {
		product := 0
		for ; b > 0; b /= m {
			for range b % m {
				product = addDigits(m, product, a)
			}
			a = shift[a]
		}
		return product
	}
	return build(len(shift), 1, func(a, b int) int { return addDigits(m, a, b) }, mul)
}

// addDigits adds two polynomials: digit by digit to the base m, without carrying.
func addDigits(m, a, b int) int {
	sum := 0
	for place := 1; a > 0 || b > 0; place *= m {
		sum += (a + b) % m * place
		a, b = a/m, b/m
	}
	return sum
}

// timesX tabulates the product of x and each polynomial: the digits move up by one place, and what
// leaves the top comes back as so many times the tail.
func timesX(m int, tail []int) []int {
	n, tailNumber := 1, 0
	for _, digit := range tail {
		tailNumber += digit * n
		n *= m
	}
	table := make([]int, n)
	for a := range table {
		top := a / (n / m)
		product := a % (n / m) * m
		for range top {
			product = addDigits(m, product, tailNumber)
		}
		table[a] = product
	}
	return table
}

// Product is the ring of pairs; the pair (x, y) has the number x·b.n + y.
func Product(a, b *Ring) *Ring {
	on := func(f, g func(x, y int) int) func(x, y int) int {
		return func(x, y int) int { return f(x/b.n, y/b.n)*b.n + g(x%b.n, y%b.n) }
	}
	return build(a.n*b.n, a.one*b.n+b.one, on(a.Add, b.Add), on(a.Mul, b.Mul))
}

// Order is the least k > 0 with a^k = 1, or 0 if a is no unit.
func (r *Ring) Order(a int) int {
	power := a
	for k := 1; k <= r.n; k++ {
		if power == r.one {
			return k
		}
		power = r.Mul(power, a)
	}
	return 0
}

// RootOfMinusOne returns an element whose square is -1, or false if there is none.
func (r *Ring) RootOfMinusOne() (int, bool) {
	for i := range r.n {
		if r.Mul(i, i) == r.negative[r.one] {
			return i, true
		}
	}
	return 0, false
}
