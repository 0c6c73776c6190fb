package session

import (
	"strings"
	"testing"
	"time"
)

// twoLaptopsOfOneClub are two files that both know Ada, Adah, Ben, Cy and Di.
func twoLaptopsOfOneClub(t *testing.T) (a, b *Desk, logA, logB *MemoryLog, clockA, clockB *testClock) {
	t.Helper()
	a, logA, clockA = laptop(t, "a")
	fullNight(t, a, clockA, "Ada", "Ben", "Cy", "Di")
	fullNight(t, a, clockA, "Adah", "Ben", "Cy", "Di")
	b, logB, clockB = laptop(t, "b")
	if _, _, err := b.Join(logA.records, AskSame); err != nil {
		t.Fatal(err)
	}
	clockB.now = clockA.now.Add(time.Hour)
	return a, b, logA, logB, clockA, clockB
}

// mergeInNight opens a night of Ada on a laptop and says in it that Adah is Ada.
func mergeInNight(t *testing.T, d *Desk) {
	t.Helper()
	ada, adah := named(t, d, "Ada"), named(t, d, "Adah")
	must(t, d, OpenNight{Name: "a merge", Settings: DefaultSettings(5), Courts: 1})
	for _, name := range []string{"Ada", "Ben", "Cy", "Di"} {
		must(t, d, CheckIn{named(t, d, name)})
	}
	must(t, d, MergePeople{From: adah, Into: ada})
}

// Two people whom the other file took for one for a while, and who were in one game here, stay two, and the other
// file's night comes whole, although its calls were made while they were one.
func TestAMergeTakenBackThereIsLeftOut(t *testing.T) {
	a, b, logA, logB, clockA, clockB := twoLaptopsOfOneClub(t)
	fullNight(t, a, clockA, "Ada", "Adah", "Ben", "Cy")
	mergeInNight(t, b)
	must(t, b, CallRound{})
	for len(b.Ledger().Club().People) < 5 { // must fails where there is no more to undo
		must(t, b, Undo{})
	}
	playRound(t, b, clockB)
	must(t, b, EndNight{})
	want := len(b.Ledger().Club().Nights[2].Games)

	_, got, err := a.Join(logB.records, AskSame)
	if err != nil || got.Nights != 1 || got.Known != 2 || len(got.Differ) != 0 {
		t.Fatalf("%+v, %v", got, err)
	}
	club := a.Ledger().Club()
	if len(club.People) != 5 || len(club.Aliases) != 0 || len(club.Nights[3].Games) != want {
		t.Errorf("%d people, %d aliases, %d games, want 5, none and %d", len(club.People), len(club.Aliases), len(club.Nights[3].Games), want)
	}
	checkReplay(t, a, logA)
}

// A merge that stands in the other file and that a night of ours contradicts is told and left out, joining again too.
// The other way round the file is refused in words, and nothing of it is taken.
func TestAMergeThatCannotStandHereIsToldAndLeftOut(t *testing.T) {
	a, b, logA, logB, clockA, clockB := twoLaptopsOfOneClub(t)
	fullNight(t, a, clockA, "Ada", "Adah", "Ben", "Cy")
	mergeInNight(t, b)
	playRound(t, b, clockB)
	must(t, b, EndNight{})
	recordsA := append([]Record(nil), logA.records...)

	for _, nights := range []int{1, 0} {
		_, got, err := a.Join(logB.records, AskSame)
		if err != nil || got.Nights != nights || len(got.Differ) != 1 || !strings.Contains(got.Differ[0], "Adah and Ada are two people: both were in one game on court 1 of night 3") {
			t.Fatalf("%+v, %v", got, err)
		}
	}
	if club := a.Ledger().Club(); len(club.People) != 5 || len(club.Aliases) != 0 || len(club.Nights) != 4 {
		t.Errorf("%d people, %d aliases, %d nights, want 5, none and 4", len(club.People), len(club.Aliases), len(club.Nights))
	}
	checkReplay(t, a, logA)

	last := logB.Last()
	_, _, err := b.Join(recordsA, AskSame)
	if err == nil || !strings.Contains(err.Error(), "Adah is Ada here, and in the other file") || !strings.Contains(err.Error(), "both were in one game on court 1 of night 3") {
		t.Errorf("the other way round: %v", err)
	}
	if logB.Last() != last {
		t.Error("something of it was taken")
	}
}
