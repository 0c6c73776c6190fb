package phones

import (
	"fmt"

	"club/quadrille/session/public"
)

// keyOf is a key as views have them.
func keyOf(i int) string { return fmt.Sprintf("%016x", 0xabc000+i) }

// evening is a night in which something stands in every part of the page: two courts, of which one is called,
// and a bench of two, with somebody who rests and somebody who is hidden.
func evening() *public.View {
	return &public.View{
		Version: public.Version, Seq: 40, Clock: "19:42", Open: true, Night: "Autumn night", Round: 3, Rounds: 8, Here: 11,
		Closing: "21:30", Left: 108,
		Messages: []public.Message{{Text: "pizza at 20:30", Until: "20:45"}},
		Courts: []public.Court{
			{Name: "1", State: public.Playing, A: []string{"Ada A.", "Ben B."}, B: []string{"Cora C.", public.Somebody}, Score: []int{4, 7}, Minutes: 6},
			{Name: "2", State: public.Called, A: []string{"Edda E.", "Finn F."}, B: []string{"Greta G.", "Hugo H."}},
			{Name: "3", State: public.Closed},
			{Name: "4", State: public.Free},
		},
		Next: public.Next{
			Round: 4, Out: []string{"Ben B.", "Greta G."},
			Games: []public.Game{
				{Court: "1", A: []string{"Iris I.", "Ada A."}, B: []string{"Jonas J.", "Edda E."}},
				{Court: "2", A: []string{"Cora C.", public.Somebody}, B: []string{"Finn F.", "Hugo H."}},
			},
		},
		Bench:     []public.Waiting{{Name: "Iris I.", Minutes: 1, Until: 6}, {Name: "Jonas J.", Minutes: 12}},
		Standings: []public.Place{{Rank: 1, Names: []string{"Ada A."}, Games: 2, Wins: 2, Difference: 9}, {Rank: 2, Names: []string{"Ben B."}, Games: 2, Wins: 1, Difference: -3}},
		People: []public.Person{
			{Key: keyOf(1), Name: "Ada A.", State: public.OnCourt, Court: "1"},
			{Key: keyOf(2), Name: "Ben B.", State: public.OnCourt, Court: "1"},
			{Key: keyOf(3), Name: "Cora C.", State: public.OnCourt, Court: "1"},
			{Key: keyOf(5), Name: "Edda E.", State: public.OnCourt, Court: "2"},
			{Key: keyOf(6), Name: "Finn F.", State: public.OnCourt, Court: "2"},
			{Key: keyOf(7), Name: "Greta G.", State: public.OnCourt, Court: "2"},
			{Key: keyOf(8), Name: "Hugo H.", State: public.OnCourt, Court: "2"},
			{Key: keyOf(9), Name: "Iris I.", State: public.OnBench},
			{Key: keyOf(10), Name: "Jonas J.", State: public.OnBench},
			{Key: keyOf(11), Name: "Kaya K.", State: public.Resting},
		},
	}
}

// big is a night of so many courts with four people on each.
func big(courts int) *public.View {
	v := evening()
	v.Courts, v.People, v.Next, v.Bench, v.Standings = nil, nil, public.Next{Round: 4}, nil, nil
	for c := range courts {
		var four []string
		for i := range 4 {
			name := fmt.Sprintf("Person %d-%d", c+1, i)
			four = append(four, name)
			v.People = append(v.People, public.Person{Key: keyOf(4*c + i), Name: name, State: public.OnCourt, Court: fmt.Sprint(c + 1)})
			v.Standings = append(v.Standings, public.Place{Rank: 4*c + i + 1, Names: []string{name}, Games: 3, Wins: 2, Difference: 5})
		}
		v.Courts = append(v.Courts, public.Court{Name: fmt.Sprint(c + 1), State: public.Playing, A: four[:2], B: four[2:], Score: []int{0, 0}})
		v.Next.Games = append(v.Next.Games, public.Game{Court: fmt.Sprint(c + 1), A: four[1:3], B: []string{four[0], four[3]}})
	}
	return v
}
