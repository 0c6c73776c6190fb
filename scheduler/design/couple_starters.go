package design

// Base rounds of spouse-avoiding mixed doubles: the numbers up to half of the ring's layers are men, as
// many further ones their wives, and the last two, if fixed people are needed, a couple that stays.
// A second base round of one game stands for games that find no room in the rounds of the first.
// That for 15 couples was found by backtracking, the others by simulated annealing (cmd/starters).
//
// For 10 and 12 couples no single base round exists over Z_9 and Z_11 (exhausted by backtracking).
var coupleRecipes = []recipe{
	{
		kind: CoupleCycle, people: 20, ring: integers(9), layers: 2, fixed: 2, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{5, 12, 2, 16}, {3, 11, 7, 10}, {4, 14, 6, 19}, {18, 15, 0, 13},
		}, {
			{4, 10, 5, 16},
		}},
	},
	{
		kind: CoupleCycle, people: 24, ring: integers(11), layers: 2, fixed: 2, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{9, 13, 3, 12}, {6, 16, 22, 14}, {1, 15, 0, 18}, {5, 17, 8, 21}, {2, 23, 4, 20},
		}, {
			{0, 19, 7, 13},
		}},
	},
	{
		kind: CoupleCycle, people: 28, ring: integers(13), layers: 2, fixed: 2, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{12, 24, 9, 17},
			{10, 20, 8, 27},
			{4, 18, 11, 15},
			{7, 13, 3, 21},
			{26, 14, 5, 16},
			{6, 22, 1, 23},
		}, {
			{6, 13, 7, 22},
		}},
	},
	{
		kind: CoupleCycle, people: 30, ring: integers(15), layers: 2, fixed: 0, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{14, 26, 8, 24},
			{13, 27, 3, 20},
			{12, 18, 5, 23},
			{11, 22, 10, 19},
			{9, 28, 7, 29},
			{6, 16, 2, 25},
			{4, 17, 1, 21},
		}},
	},
	{
		kind: CoupleCycle, people: 36, ring: integers(17), layers: 2, fixed: 2, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{5, 21, 9, 30},
			{8, 33, 14, 28},
			{0, 19, 12, 18},
			{34, 17, 6, 24},
			{15, 22, 7, 20},
			{2, 29, 16, 25},
			{11, 26, 10, 32},
			{3, 23, 13, 35},
		}, {
			{9, 21, 7, 18},
		}},
	},
}
