package design

// Base rounds of blocks of four over three copies of Z_n, n people each, and one to three fixed
// people. Developed modulo n they make n rounds in which nobody meets twice: a resolvable group
// divisible design with groups of two or three (so the number of rounds is the greatest possible).
// Such designs exist for all multiples of four but 8, 12, 20 and 18 possible exceptions (Ge, Lam,
// Ling & Shen, Des. Codes Cryptogr. 35 (2005) 287-302); these were found by simulated annealing
// (cmd/starters) with the turn (x, j) → (multiplier·x, j+1).
//
// The ten rounds for 32 people, first found by Aguado (2004), are built here on four copies of Z_8:
// two base rounds that adding 4 leaves as they are make four rounds each, one that adding 2
// leaves as it is makes the last two. Nobody meets the person 4 away.
var quadRecipes = []recipe{
	{
		kind: QuadCycle, people: 24, ring: integers(7), layers: 3, fixed: 3, multiplier: 2, step: 1, cycle: 3,
		bases: [][]Table{{
			{2, 13, 1, 4}, {0, 21, 17, 10},
		}},
	},
	{
		kind: QuadCycle, people: 36, ring: integers(11), layers: 3, fixed: 3, multiplier: 1, step: 1, cycle: 3,
		bases: [][]Table{{
			{1, 13, 33, 31}, {4, 19, 14, 6}, {32, 5, 22, 29},
		}},
	},
	{
		kind: QuadCycle, people: 44, ring: integers(14), layers: 3, fixed: 2, multiplier: 9, step: 1, cycle: 1,
		bases: [][]Table{{
			{42, 1, 23, 39}, {43, 10, 20, 40}, {13, 15, 9, 28}, {12, 7, 33, 6}, {30, 5, 36, 8},
		}},
	},
	{
		kind: QuadCycle, people: 48, ring: integers(15), layers: 3, fixed: 3, multiplier: 1, step: 1, cycle: 3,
		bases: [][]Table{{
			{45, 32, 11, 28}, {29, 34, 20, 18}, {10, 23, 22, 30}, {1, 6, 27, 9},
		}},
	},
	{
		kind: QuadCycle, people: 56, ring: integers(18), layers: 3, fixed: 2, multiplier: 7, step: 1, cycle: 1,
		bases: [][]Table{{
			{54, 19, 43, 13},
			{55, 35, 47, 5},
			{36, 17, 22, 4},
			{39, 10, 26, 31},
			{27, 20, 23, 1},
			{32, 30, 15, 24},
		}},
	},
	{
		kind: QuadCycle, people: 60, ring: integers(19), layers: 3, fixed: 3, multiplier: 7, step: 1, cycle: 3,
		bases: [][]Table{{
			{32, 1, 14, 21}, {29, 7, 16, 45}, {19, 9, 44, 58}, {27, 55, 37, 47}, {34, 33, 17, 31},
		}},
	},
	{
		kind: QuadCycle, people: 72, ring: integers(23), layers: 3, fixed: 3, multiplier: 1, step: 1, cycle: 3,
		bases: [][]Table{{
			{10, 46, 8, 62},
			{3, 59, 48, 20},
			{70, 15, 47, 42},
			{35, 67, 64, 45},
			{32, 11, 7, 27},
			{52, 51, 17, 60},
		}},
	},
	{
		kind: QuadCycle, people: 84, ring: integers(27), layers: 3, fixed: 3, multiplier: 10, step: 1, cycle: 3,
		bases: [][]Table{{
			{77, 74, 56, 2},
			{78, 5, 28, 4},
			{25, 21, 35, 33},
			{1, 26, 18, 46},
			{81, 63, 13, 42},
			{61, 57, 53, 23},
			{66, 7, 22, 0},
		}},
	},
	{
		kind: QuadCycle, people: 32, ring: integers(8), layers: 4, multiplier: 1, cycle: 1,
		period: []int{4, 4, 2},
		bases: [][]Table{{
			{1, 28, 12, 7}, {18, 16, 15, 29}, {21, 4, 13, 14}, {19, 26, 6, 31},
		}, {
			{21, 16, 11, 30}, {5, 6, 28, 13}, {25, 31, 23, 7}, {14, 0, 18, 12},
		}, {
			{11, 24, 14, 31}, {2, 5, 17, 16},
		}},
	},
}
