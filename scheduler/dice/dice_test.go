package dice

import (
	"slices"
	"testing"
)

// TestSameSeedSameRolls: a plan can be made again from its seed, and searches beside each other roll apart.
func TestSameSeedSameRolls(t *testing.T) {
	rolls := func(d *Dice) (list []uint64) {
		for range 20 {
			list = append(list, d.Next())
		}
		return list
	}
	first := rolls(New(7, 1))
	if !slices.Equal(first, rolls(New(7, 1))) {
		t.Error("one seed rolls twice differently")
	}
	if slices.Equal(first, rolls(New(7, 2))) || slices.Equal(first, rolls(New(8, 1))) {
		t.Error("another seed or stream rolls the same")
	}
	d := New(7, 1)
	d.Next()
	if c := d.Clone(); !slices.Equal(rolls(c), rolls(d)) {
		t.Error("a clone rolls otherwise")
	}
}

// TestRollIsEven: each number from 0 to k-1 comes about equally often, and no other.
func TestRollIsEven(t *testing.T) {
	for _, k := range []int{1, 2, 3, 7, 48} {
		d, count := New(1, 0), make([]int, k)
		for range 1000 * k {
			count[d.Roll(k)]++
		}
		if slices.Min(count) < 850 || slices.Max(count) > 1150 {
			t.Errorf("of %d: %v", k, count)
		}
	}
}

// TestShuffleIsEven: all orders of three and of two come about equally often; nobody is lost.
func TestShuffleIsEven(t *testing.T) {
	d, count := New(1, 0), map[[3]int]int{}
	for range 6000 {
		list := [3]int{1, 2, 3}
		Shuffle(d, list[:])
		count[list]++
	}
	for order, n := range count {
		if n < 850 || n > 1150 || order[0]+order[1]+order[2] != 6 {
			t.Errorf("%v came %d times", order, n)
		}
	}
	if len(count) != 6 {
		t.Errorf("%d orders of six", len(count))
	}
}

// TestNerve: in the mean a change may worsen a plan by the temperature, twice it with a chance of 1/e², and cold never.
func TestNerve(t *testing.T) {
	d, sum, above := New(1, 0), 0, 0
	const n, temperature = 20000, 100.0
	for range n {
		x := d.Nerve(temperature)
		if x < 0 {
			t.Fatalf("nerve %d", x)
		}
		sum += x
		if x >= 2*temperature {
			above++
		}
		if d.Nerve(0) != 0 {
			t.Fatal("nerve without heat")
		}
	}
	if sum < 97*n || sum > 103*n {
		t.Errorf("mean %d/%d", sum, n)
	}
	if above < n*12/100 || above > n*15/100 {
		t.Errorf("%d of %d reach twice the temperature", above, n)
	}
}
