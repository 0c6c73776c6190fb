//go:build !windows

package main

import (
	"fmt"
	"slices"
	"testing"
	"time"
)

// BenchmarkScoreToBoards is from the first key of a score at the desk to both boards that show it, each a program
// on a terminal of its own. The median is reported, which is what people wait for as a rule.
func BenchmarkScoreToBoards(b *testing.B) {
	bin, path := build(b), fullHall(b, 2)
	desk := bin.open(b, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
	one, two := bin.open(b, 80, 24, nil, "board", "--data", path), bin.open(b, 213, 60, nil, "board", "--data", path)
	desk.Type("11 0\r").Shows("Saved: court 1: 11-0")
	one.Shows("over 11-0")
	two.Shows("over 11-0")
	var took []time.Duration
	for i := range b.N {
		points := 1 + i%9
		desk.Press("home").quiet()
		begin := time.Now()
		desk.Type(fmt.Sprintf("11 %d\r", points))
		one.Shows(fmt.Sprintf("over 11-%d", points))
		two.Shows(fmt.Sprintf("over 11-%d", points))
		took = append(took, time.Since(begin))
	}
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "ms/median")
}
