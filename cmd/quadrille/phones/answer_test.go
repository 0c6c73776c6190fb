package phones

import (
	"slices"
	"testing"

	"club/quadrille/session/public"
)

func TestEverybodyIsToldWhereToBe(t *testing.T) {
	held := func(v *public.View) { v.Hold = &public.Hold{Why: "lightning"} }
	rolling := func(v *public.View) {
		v.Next = public.Next{Games: []public.Game{{A: []string{"Iris I.", "Jonas J."}, B: []string{"Ada A.", "Ben B."}}}}
	}
	unplanned := func(v *public.View) { v.Next = public.Next{} }
	singles := func(v *public.View) { v.Courts[1].A, v.Courts[1].B = []string{"Edda E."}, []string{"Hugo H."} }
	for name, c := range map[string]struct {
		who    int
		change func(*public.View)
		want   answer
	}{
		"on court": {who: 1, want: answer{
			Name: "Ada A.", Head: "You are on court 1", With: "Ben B.", Versus: "Cora C. and somebody",
			Facts: []string{"It stands 4-7.", "It goes on for 6 minutes."},
			Then:  "Then, in round 4: court 1, with Iris I., against Jonas J. and Edda E.",
		}},
		"on court, then out": {who: 2, want: answer{
			Name: "Ben B.", Head: "You are on court 1", With: "Ada A.", Versus: "Cora C. and somebody",
			Facts: []string{"It stands 4-7.", "It goes on for 6 minutes."}, Then: "Then, in round 4: you sit out.",
		}},
		"on court, the next round unknown": {who: 3, change: unplanned, want: answer{
			Name: "Cora C.", Head: "You are on court 1", With: "somebody", Versus: "Ada A. and Ben B.",
			Facts: []string{"It stands 4-7.", "It goes on for 6 minutes."},
		}},
		"called": {who: 5, want: answer{
			Name: "Edda E.", Go: true, Head: "Go to court 2", With: "Finn F.", Versus: "Greta G. and Hugo H.",
			Then: "Then, in round 4: court 1, with Jonas J., against Iris I. and Ada A.",
			Say:  "Go to court 2, with Finn F., against Greta G. and Hugo H.",
		}},
		"called in singles": {who: 8, change: singles, want: answer{
			Name: "Hugo H.", Go: true, Head: "Go to court 2", Versus: "Edda E.",
			Then: "Then, in round 4: court 2, with Finn F., against Cora C. and somebody", Say: "Go to court 2, against Edda E.",
		}},
		"called while play is held": {who: 7, change: held, want: answer{
			Name: "Greta G.", Head: "Court 2, when play goes on", With: "Hugo H.", Versus: "Edda E. and Finn F.", Then: "Then, in round 4: you sit out.",
		}},
		"next round": {who: 9, want: answer{
			Name: "Iris I.", Head: "Next: court 1", With: "Ada A.", Versus: "Jonas J. and Edda E.",
			Facts: []string{"You have waited 1 minute.", "Most likely you play in about 6 minutes."},
		}},
		"next of the bench": {who: 10, change: rolling, want: answer{
			Name: "Jonas J.", Head: "Next: the next court that is free", With: "Iris I.", Versus: "Ada A. and Ben B.",
			Facts: []string{"You have waited 12 minutes."},
		}},
		"out": {who: 10, change: func(v *public.View) { v.Next = public.Next{Round: 4, Out: []string{"Jonas J."}} }, want: answer{
			Name: "Jonas J.", Head: "You sit out round 4", Facts: []string{"You have waited 12 minutes."},
		}},
		"waiting":   {who: 10, change: unplanned, want: answer{Name: "Jonas J.", Head: "You wait", Facts: []string{"You have waited 12 minutes."}}},
		"resting":   {who: 11, want: answer{Name: "Kaya K.", Head: "You rest", Facts: []string{"Nobody calls you until you tell the desk that you are back."}}},
		"not there": {who: 4, want: answer{}},
	} {
		t.Run(name, func(t *testing.T) {
			v := evening()
			if c.change != nil {
				c.change(v)
			}
			got := answerTo(v, keyOf(c.who))
			c.want.Key = keyOf(c.who)
			if !slices.Equal(got.Facts, c.want.Facts) {
				t.Errorf("facts %q, want %q", got.Facts, c.want.Facts)
			}
			got.Facts, c.want.Facts = nil, nil
			if !same(got, c.want) {
				t.Errorf("\n%+v, want\n%+v", got, c.want)
			}
		})
	}
}

func same(a, b answer) bool {
	return a.Key == b.Key && a.Name == b.Name && a.Go == b.Go && a.Head == b.Head && a.With == b.With && a.Versus == b.Versus && a.Then == b.Then && a.Say == b.Say
}

func TestNobodyIsChosenWithoutAKeyOrAView(t *testing.T) {
	for _, a := range []answer{answerTo(nil, keyOf(1)), answerTo(evening(), ""), answerTo(&public.View{}, keyOf(1))} {
		if a.Name != "" || a.Head != "" {
			t.Errorf("%+v", a)
		}
	}
}
