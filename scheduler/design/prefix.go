package design

// Prefix returns r of the rounds, those and in that order which repeat few meetings. If r is not
// less than the number of rounds, all are returned.
func Prefix(rounds [][]Table, r int) [][]Table {
	return rounds[:max(0, min(r, len(rounds)))]
}
