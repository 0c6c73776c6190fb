package design

// Base rounds of spouse-avoiding mixed doubles, found by simulated annealing (cmd/starters). Layers
// in the first half are men, in the second half their wives.
var coupleRecipes = []recipe{
	{
		kind: CoupleCycle, people: 30, ring: integers(15), layers: 2, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{14, 26, 8, 24}, {13, 27, 3, 20}, {12, 18, 5, 23}, {11, 22, 10, 19}, {9, 28, 7, 29},
			{6, 16, 2, 25}, {4, 17, 1, 21},
		}},
	},
}
