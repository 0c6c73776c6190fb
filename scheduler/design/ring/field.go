package ring

// PrimePower returns p and k with q = p^k, or false if q is no power of a prime.
func PrimePower(q int) (p, k int, ok bool) {
	if q < 2 {
		return 0, 0, false
	}
	for p = 2; q%p != 0; p++ {
	}
	for q > 1 && q%p == 0 {
		q /= p
		k++
	}
	return p, k, q == 1
}

// PrimePowers returns the prime powers whose product is n, each prime once, smallest prime first.
func PrimePowers(n int) []int {
	var powers []int
	for p := 2; n > 1; p++ {
		q := 1
		for n%p == 0 {
			n /= p
			q *= p
		}
		if q > 1 {
			powers = append(powers, q)
		}
	}
	return powers
}

// Field is the finite field of q elements; q must be a power of a prime. Fields that are no prime
// field are built on the first monic polynomial, in the order of element numbers, of which x is a
// root of full order q-1.
func Field(q int) *Ring {
	p, k, _ := PrimePower(q)
	if k == 1 {
		return Integers(q)
	}
	tail := make([]int, k)
	for code := 1; code < q; code++ {
		for i, rest := 0, code; i < k; i, rest = i+1, rest/p {
			tail[i] = rest % p
		}
		if cycleOfOne(timesX(p, tail)) == q-1 {
			break
		}
	}
	return Extension(p, tail)
}

// cycleOfOne is how often the table must be followed from 1 to come back to 1, or 0 if it does not
// within the table's length.
func cycleOfOne(table []int) int {
	a := 1
	for e := 1; e <= len(table); e++ {
		if a = table[a]; a == 1 {
			return e
		}
	}
	return 0
}

// Fields is the product of the finite Fields of n's prime powers: a ring of n elements in which as
// many elements as the smallest of these powers differ pairwise by units.
func Fields(n int) *Ring {
	var r *Ring
	for _, q := range PrimePowers(n) {
		if r == nil {
			r = Field(q)
		} else {
			r = Product(r, Field(q))
		}
	}
	return r
}
