package design

// Base rounds of tables of four when one to three people are too many: three copies of Z_n and a few
// fixed people, of whom 0 of the first copies sits out. Developed modulo n, the copies that sit out
// do so in turn, so each of their people sits out once. Found by simulated annealing (cmd/starters).
// They have more rounds than guests in a smaller design.
var restRecipes = []recipe{
	{
		kind: QuadCycle, people: 19, ring: integers(6), layers: 3, fixed: 1, multiplier: 1, step: 1, cycle: 1,
		bases: [][]Table{{
			{18, 2, 8, 14}, {5, 10, 3, 13},
		}},
	},
	{
		kind: QuadCycle, people: 23, ring: integers(7), layers: 3, fixed: 2, multiplier: 2, step: 1, cycle: 1,
		bases: [][]Table{{
			{21, 17, 6, 12}, {22, 16, 4, 8}, {3, 5, 2, 18},
		}},
	},
	{
		kind: QuadCycle, people: 27, ring: integers(9), layers: 3, fixed: 0, multiplier: 4, step: 1, cycle: 1,
		bases: [][]Table{{
			{15, 23, 22, 12}, {4, 5, 20, 25},
		}},
	},
	{
		kind: QuadCycle, people: 31, ring: integers(10), layers: 3, fixed: 1, multiplier: 1, step: 1, cycle: 1,
		bases: [][]Table{{
			{30, 7, 17, 27}, {21, 22, 29, 15}, {13, 8, 26, 4},
		}},
	},
	{
		kind: QuadCycle, people: 35, ring: integers(11), layers: 3, fixed: 2, multiplier: 1, step: 0, cycle: 1,
		bases: [][]Table{{
			{12, 32, 8, 5},
			{16, 34, 29, 6},
			{1, 27, 2, 30},
			{26, 18, 28, 14},
			{20, 31, 24, 25},
			{15, 7, 9, 3},
			{13, 10, 21, 19},
			{17, 4, 33, 23},
		}},
	},
	{
		kind: QuadCycle, people: 39, ring: integers(13), layers: 3, fixed: 0, multiplier: 3, step: 1, cycle: 1,
		bases: [][]Table{{
			{36, 27, 16, 18}, {14, 31, 10, 30}, {11, 5, 33, 7},
		}},
	},
	{
		kind: QuadCycle, people: 43, ring: integers(14), layers: 3, fixed: 1, multiplier: 9, step: 1, cycle: 1,
		bases: [][]Table{
			{
				{42, 5, 17, 41}, {26, 8, 24, 15}, {30, 1, 25, 21}, {19, 10, 18, 33},
			},
		},
	},
	{
		kind: QuadCycle, people: 51, ring: integers(17), layers: 3, fixed: 0, multiplier: 1, step: 1, cycle: 1,
		bases: [][]Table{
			{
				{3, 11, 18, 8}, {16, 27, 48, 49}, {19, 30, 26, 39}, {12, 24, 38, 40},
			},
		},
	},
}
