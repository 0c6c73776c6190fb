// Package search looks for good rounds. A board is a plan in the making, a mover proposes exchanges of
// two seats, an annealer takes them or not, and a search sets out from several boards: those made from
// designs (start.go, halves.go, spare.go) and one drawn by lot. Afterwards rounds are ordered (order.go), courts
// and first calls balanced (courts.go, home.go), and those left over may play singles.
package search
