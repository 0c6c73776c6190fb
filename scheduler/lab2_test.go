package scheduler

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"strings"
	"syscall"
	"testing"
)

func cpu() float64 {
	var u syscall.Rusage
	syscall.Getrusage(syscall.RUSAGE_SELF, &u)
	return float64(u.Utime.Sec)*1000 + float64(u.Utime.Usec)/1000
}

func TestLong(t *testing.T) {
	sum := 0
	start0 := cpu()
	for _, c := range strings.Split(os.Getenv("CASES"), ",") {
		var P, C, R int
		fmt.Sscanf(c, "%d-%d-%d", &P, &C, &R)
		for _, mv := range strings.Split(os.Getenv("MOVES"), ",") {
			moves, _ := strconv.Atoi(mv)
			line := ""
			start := cpu()
			for seed := range uint64(3) {
				p := Problem{Rounds: R, Seed: seed}
				p.People = make([]Person, P)
				p.Courts = make([]CourtSpec, C)
				rounds, err := Plan(context.Background(), p, Budget{moves})
				if err != nil {
					t.Fatal(err)
				}
				q := Certify(p, rounds)
				line += fmt.Sprint(q.MeetingEvenness.Value, " ")
				sum += q.MeetingEvenness.Value
				if q.PartnerRepeats.Gap()+q.SitoutSpread.Gap()+q.BenchedTwice.Gap() != 0 {
					line += "! "
				}
			}
			fmt.Println(c, moves, "meet", line, "cpu each", int(cpu()-start)/3)
		}
	}
	fmt.Println("sum", sum, int(cpu()-start0))
}
