// Package bound works out what no rotation can go below that shares the sit-outs like the one judged, and
// so what a gap of a certificate means. A [Scope] is a night as the bounds see it; each argument has a file
// with its source: people and their games (bound.go, curve.go), people whom games of two rounds have in
// common (overlap.go, chain.go), crowds who must play together (crowd.go), published results (known.go),
// and sitting out (sitouts.go).
package bound
