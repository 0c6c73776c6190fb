package design

// orthomorphisms holds, for orders that fields do not reach, two rows of a difference matrix over
// the ring fields(n): with the rows 0 and 0, 1, …, n-1 they make four rows any two of which differ
// by each element once. Found by simulated annealing (cmd/starters). Matrices of more rows are
// known: six rows over groups of order 12 (Johnson, Dulmage & Mendelsohn, Canad. J. Math. 13 (1961)
// 356-372), six of 21 (Nazarok 1991).
var orthomorphisms = map[int][2][]int{
	12: {
		{0, 7, 10, 5, 2, 8, 4, 9, 1, 6, 11, 3},
		{0, 3, 9, 10, 6, 2, 7, 1, 5, 11, 8, 4},
	},
	21: {
		{0, 5, 9, 13, 15, 19, 2, 20, 7, 18, 6, 16, 4, 11, 8, 17, 3, 12, 1, 10, 14},
		{0, 10, 7, 6, 1, 14, 18, 17, 13, 8, 16, 3, 19, 2, 11, 5, 9, 4, 12, 20, 15},
	},
	24: {
		{0, 18, 23, 2, 17, 6, 16, 10, 9, 20, 12, 5, 7, 14, 19, 1, 4, 21, 8, 15, 11, 3, 13, 22},
		{0, 21, 5, 22, 12, 20, 4, 13, 2, 19, 8, 3, 1, 18, 16, 17, 9, 6, 15, 10, 7, 14, 23, 11},
	},
}
