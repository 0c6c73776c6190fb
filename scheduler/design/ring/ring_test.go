package ring

import (
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// rings are all kinds that the catalogue builds on.
func rings() map[string]*Ring {
	all := map[string]*Ring{
		"Z_12":       Integers(12),
		"Z_8 x Z_7":  Product(Integers(8), Integers(7)),
		"GR(4,2)":    Extension(4, []int{3, 3}),
		"Z_3[x]/x^2": Extension(3, []int{0, 0}),
		"fields(60)": Fields(60),
		"fields(45)": Fields(45),
	}
	for _, q := range []int{2, 3, 4, 5, 7, 8, 9, 16, 25, 27, 49, 64, 81, 101, 121, 125} {
		all[fmt.Sprintf("GF(%d)", q)] = Field(q)
	}
	return all
}

func TestRingLaws(t *testing.T) {
	for name, r := range rings() {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			element := rapid.IntRange(0, r.N()-1)
			a, b, c := element.Draw(t, "a"), element.Draw(t, "b"), element.Draw(t, "c")
			laws := []struct {
				law         string
				left, right int
			}{
				{"a+b = b+a", r.Add(a, b), r.Add(b, a)},
				{"(a+b)+c = a+(b+c)", r.Add(r.Add(a, b), c), r.Add(a, r.Add(b, c))},
				{"a+0 = a", r.Add(a, 0), a},
				{"a+(-a) = 0", r.Add(a, r.Neg(a)), 0},
				{"(a-b)+b = a", r.Add(r.Sub(a, b), b), a},
				{"ab = ba", r.Mul(a, b), r.Mul(b, a)},
				{"(ab)c = a(bc)", r.Mul(r.Mul(a, b), c), r.Mul(a, r.Mul(b, c))},
				{"a1 = a", r.Mul(a, r.One()), a},
				{"a(b+c) = ab+ac", r.Mul(a, r.Add(b, c)), r.Add(r.Mul(a, b), r.Mul(a, c))},
			}
			for _, l := range laws {
				if l.left != l.right {
					t.Fatalf("%s fails for a=%d, b=%d, c=%d: %d, %d", l.law, a, b, c, l.left, l.right)
				}
			}
		}))
	}
}

func TestFieldsDivide(t *testing.T) {
	for _, q := range []int{4, 8, 9, 16, 25, 27, 32, 49, 64, 81, 121, 125, 101} {
		f := Field(q)
		primitive := 0
		for a := 1; a < q; a++ {
			order := f.Order(a)
			if order == 0 || (q-1)%order != 0 {
				t.Errorf("GF(%d): %d has order %d", q, a, order)
			}
			if order == q-1 {
				primitive++
			}
		}
		if primitive == 0 {
			t.Errorf("GF(%d) has no primitive element", q)
		}
	}
}

func TestOrderOfNonUnits(t *testing.T) {
	if got := Integers(12).Order(4); got != 0 {
		t.Errorf("4 has order %d modulo 12, but is no unit", got)
	}
	if got := Integers(13).Order(4); got != 6 {
		t.Errorf("4 has order %d modulo 13, not 6", got)
	}
}

func TestRootOfMinusOne(t *testing.T) {
	for _, n := range []int{5, 9, 13, 25, 45, 49, 65, 81, 85, 101} {
		r := Fields(n)
		i, ok := r.RootOfMinusOne()
		if !ok || r.Mul(i, i) != r.Neg(r.One()) {
			t.Errorf("fields(%d): %d is no root of -1", n, i)
		}
	}
	for _, n := range []int{3, 7, 12, 21} {
		if i, ok := Fields(n).RootOfMinusOne(); ok {
			t.Errorf("fields(%d) claims the root %d of -1", n, i)
		}
	}
}

func TestPrimePowers(t *testing.T) {
	cases := []struct {
		n    int
		want []int
	}{{1, nil}, {2, []int{2}}, {12, []int{4, 3}}, {45, []int{9, 5}}, {97, []int{97}}, {100, []int{4, 25}}, {64, []int{64}}}
	for _, c := range cases {
		if got := PrimePowers(c.n); !reflect.DeepEqual(got, c.want) {
			t.Errorf("PrimePowers(%d) = %v, want %v", c.n, got, c.want)
		}
		p, k, ok := PrimePower(c.n)
		if ok != (len(c.want) == 1) {
			t.Errorf("PrimePower(%d): %d^%d, %v", c.n, p, k, ok)
		}
	}
}
