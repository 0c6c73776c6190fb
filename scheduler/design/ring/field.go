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

// Field is the finite field of q elements, q a power of a prime. Fields that are no prime field are
// built on the first monic polynomial, in the order of element numbers, of which x is a root of
// full order q-1.
func Field(q int) *Ring {
	p, k, _ := PrimePower(q)
	if k == 1 {
		return Integers(q)
	}
	return Extension(p, primitiveTail(p, k))
}

// primitiveTail returns the tail, as Extension wants it, of the first primitive polynomial of
// degree k over the prime field of p elements.
func primitiveTail(p, k int) []int {
	q := 1
	for range k {
		q *= p
	}
	tail := make([]int, k)
	for code := 1; code < q; code++ {
		for i, rest := 0, code; i < k; i, rest = i+1, rest/p {
			tail[i] = rest % p
		}
		if orderOfX(p, tail) == q-1 {
			break
		}
	}
	return tail
}

// orderOfX is the least e > 0 with x^e = 1 modulo the polynomial that Extension builds on, or p^k
// if there is none below.
func orderOfX(p int, tail []int) int {
	k, limit := len(tail), 1
	for range k {
		limit *= p
	}
	power := make([]int, k)
	power[0] = 1
	for e := 1; e < limit; e++ {
		top := power[k-1]
		copy(power[1:], power[:k-1])
		power[0] = 0
		isOne := true
		for i := range power {
			power[i] = (power[i] + top*tail[i]) % p
			isOne = isOne && power[i] == b2i(i == 0)
		}
		if isOne {
			return e
		}
	}
	return limit
}

func b2i(b bool) int {
	if b {
		return 1
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
