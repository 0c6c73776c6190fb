package main

import (
	"fmt"
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/scoring/drill"
)

// answers lets say answer so many questions of seed 1 and gives what it typed.
func answers(t *testing.T, questions int, say func(q drill.Question) drill.Answer) string {
	t.Helper()
	lesson, err := drill.New(1, scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2})
	if err != nil {
		t.Fatal(err)
	}
	var typed strings.Builder
	for range questions {
		a := say(lesson.Question())
		fmt.Fprintln(&typed, a)
		lesson, _ = lesson.Answer(a)
	}
	return typed.String()
}

func score(t *testing.T, typed string, questions int) string {
	t.Helper()
	out, errs, code := quadrille(t, typed, "drill", "--seed", "1", "--questions", fmt.Sprint(questions))
	if code != exitFine || errs != "" {
		t.Fatalf("exit %d: %s", code, errs)
	}
	lines := strings.Split(strings.TrimSpace(out), "\n")
	return lines[len(lines)-1]
}

func TestTheEngineAnswersItsOwnDrill(t *testing.T) {
	const questions = 60
	typed := answers(t, questions, func(q drill.Question) drill.Answer { return q.Expected() })
	if got := score(t, typed, questions); !strings.HasPrefix(got, "60 of 60 right") {
		t.Error(got)
	}
}

// Whoever leaves the server's number out is right only where two numbers are the call, or where
// there is no call any more.
func TestServerNumbersMatter(t *testing.T) {
	const questions = 60
	right := 0
	typed := answers(t, questions, func(q drill.Question) drill.Answer {
		a := q.Expected()
		if parts := strings.Split(a.Call, "-"); len(parts) == 3 {
			a.Call = parts[0] + "-" + parts[1]
		} else {
			right++
		}
		return a
	})
	if got, want := score(t, typed, questions), fmt.Sprintf("%d of 60 right", right); !strings.HasPrefix(got, want) {
		t.Errorf("%s, want %s", got, want)
	}
	if right == questions {
		t.Error("no question had a server's number")
	}
}
