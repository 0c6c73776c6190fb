package design

// whistStarters holds one round of a cyclic whist tournament for each of these numbers of people:
// adding 1 modulo v (v odd) or modulo v-1 (v even; the last person stays) makes the next round.
// Found by simulated annealing.
var whistStarters = map[int][]Table{
	8: {
		{0, 5, 2, 1}, {4, 7, 3, 6},
	},
	12: {
		{2, 5, 1, 11}, {7, 3, 4, 9}, {8, 6, 0, 10},
	},
	21: {
		{10, 6, 18, 11}, {15, 14, 8, 20}, {3, 16, 5, 7}, {2, 13, 12, 9}, {19, 4, 1, 17},
	},
	24: {
		{12, 21, 18, 13}, {5, 11, 15, 3}, {17, 2, 1, 22}, {10, 7, 19, 0}, {16, 6, 20, 4}, {8, 9, 14, 23},
	},
	33: {
		{2, 14, 13, 6}, {19, 20, 16, 5}, {29, 31, 24, 15}, {8, 28, 25, 10}, {17, 11, 23, 18},
		{1, 9, 22, 32}, {3, 7, 27, 30}, {12, 26, 4, 21},
	},
	44: {
		{10, 37, 25, 40}, {41, 21, 32, 0}, {5, 35, 2, 39}, {16, 33, 38, 9}, {13, 23, 28, 7},
		{26, 34, 20, 24}, {1, 19, 36, 31}, {43, 12, 11, 30}, {14, 17, 18, 6}, {4, 3, 27, 29},
		{15, 22, 8, 42},
	},
	77: {
		{4, 73, 36, 41}, {13, 64, 33, 44}, {2, 75, 32, 45}, {1, 76, 9, 68}, {27, 50, 34, 43},
		{22, 55, 19, 58}, {11, 66, 16, 61}, {21, 56, 30, 47}, {10, 67, 14, 63}, {28, 49, 7, 70},
		{8, 69, 25, 52}, {12, 65, 26, 51}, {31, 46, 18, 59}, {23, 54, 29, 48}, {6, 71, 17, 60},
		{35, 42, 20, 57}, {5, 72, 24, 53}, {3, 74, 15, 62}, {37, 40, 38, 39},
	},
}

// whistByStarter develops a stored starter.
func whistByStarter(v int) (rounds [][]Table, ok bool) {
	base, ok := whistStarters[v]
	if !ok {
		return nil, false
	}
	return develop(integers(v-1+v%2), base), true
}
