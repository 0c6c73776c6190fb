package design

import "club/quadrille/scheduler/design/ring"

// Base rounds of whist tournaments that come from no formula here. All were found by simulated
// annealing (cmd/starters) but the one for 77, whose tables (x, -x) v (y, -y) were found by
// backtracking. Those with a turn, under which the base round keeps its form, take no second:
//   - 57: a frame over Z_8 × Z_7 whose groups are the cosets of Z_8, kept by (x, y) → (x, 2y);
//   - 60: a tournament with a hole of twelve over GR(4,2) × Z_3, where GR(4,2) = Z_4[ω], kept by
//     (x, y) → (ωx, y+1), which moves the twelve fixed people in threes;
//   - 93: a frame over four copies of GF(23) whose groups have one person of each, kept by x → 2x.
var whistRecipes = []recipe{
	{
		kind: WhistCycle, people: 8, ring: integers(7), layers: 1, fixed: 1, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{0, 5, 2, 1}, {4, 7, 3, 6},
		}},
	},
	{
		kind: WhistCycle, people: 12, ring: integers(11), layers: 1, fixed: 1, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{2, 5, 1, 11}, {7, 3, 4, 9}, {8, 6, 0, 10},
		}},
	},
	{
		kind: WhistCycle, people: 24, ring: integers(23), layers: 1, fixed: 1, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{12, 21, 18, 13},
			{5, 11, 15, 3},
			{17, 2, 1, 22},
			{10, 7, 19, 0},
			{16, 6, 20, 4},
			{8, 9, 14, 23},
		}},
	},
	{
		kind: WhistCycle, people: 33, ring: integers(33), layers: 1, fixed: 0, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{2, 14, 13, 6},
			{19, 20, 16, 5},
			{29, 31, 24, 15},
			{8, 28, 25, 10},
			{17, 11, 23, 18},
			{1, 9, 22, 32},
			{3, 7, 27, 30},
			{12, 26, 4, 21},
		}},
	},
	{
		kind: WhistCycle, people: 44, ring: integers(43), layers: 1, fixed: 1, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{10, 37, 25, 40},
			{41, 21, 32, 0},
			{5, 35, 2, 39},
			{16, 33, 38, 9},
			{13, 23, 28, 7},
			{26, 34, 20, 24},
			{1, 19, 36, 31},
			{43, 12, 11, 30},
			{14, 17, 18, 6},
			{4, 3, 27, 29},
			{15, 22, 8, 42},
		}},
	},
	{
		kind: WhistCycle, people: 77, ring: integers(77), layers: 1, fixed: 0, multiplier: 1, cycle: 1,
		bases: [][]Table{{
			{4, 73, 36, 41},
			{13, 64, 33, 44},
			{2, 75, 32, 45},
			{1, 76, 9, 68},
			{27, 50, 34, 43},
			{22, 55, 19, 58},
			{11, 66, 16, 61},
			{21, 56, 30, 47},
			{10, 67, 14, 63},
			{28, 49, 7, 70},
			{8, 69, 25, 52},
			{12, 65, 26, 51},
			{31, 46, 18, 59},
			{23, 54, 29, 48},
			{6, 71, 17, 60},
			{35, 42, 20, 57},
			{5, 72, 24, 53},
			{3, 74, 15, 62},
			{37, 40, 38, 39},
		}},
	},
	{
		kind: WhistFrame, people: 57, ring: integers(8, 7), layers: 1, multiplier: 1*7 + 2, cycle: 1, hole: 1 * 7,
		bases: [][]Table{{
			{31, 30, 22, 47}, {16, 24, 40, 50}, {6, 52, 1, 19}, {13, 43, 11, 37},
		}},
	},
	{
		kind: WhistHole, people: 60, ring: galoisTimesThree, layers: 1, fixed: 12,
		multiplier: 4*3 + 1, shift: 1, cycle: 3, hole: 2*3 + 1,
		bases: [][]Table{{
			{29, 46, 50, 38}, {47, 30, 52, 18}, {14, 58, 39, 24}, {21, 2, 56, 19}, {43, 32, 11, 17},
		}},
	},
	{
		kind: WhistFrame, people: 93, ring: integers(23), layers: 4, multiplier: 2, cycle: 1,
		bases: [][]Table{{
			{27, 86, 44, 72}, {3, 58, 63, 10},
		}, {
			{4, 21, 89, 70}, {33, 31, 59, 63},
		}, {
			{75, 66, 84, 54}, {6, 35, 38, 21},
		}, {
			{78, 19, 47, 30}, {57, 26, 8, 74},
		}},
	},
}

// galoisTimesThree is Z_4[ω] × Z_3 with ω² + ω + 1 = 0; the pair (ω, 1) has the number 4·3 + 1.
func galoisTimesThree() *ring.Ring {
	return ring.Product(ring.Extension(4, []int{3, 3}), ring.Integers(3))
}
