package session_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
	"club/quadrille/session/attention"
	"club/quadrille/session/calling"
	"club/quadrille/session/courtside"
	"club/quadrille/session/evening"
	"club/quadrille/session/hall"
	"club/quadrille/session/paper"
	"club/quadrille/session/public"
	"club/quadrille/session/rungs"
	"club/quadrille/session/standings"
	"club/quadrille/session/summary"
	"club/quadrille/session/timeline"
)

// TestEverybodySeesWhatTheySaw holds, of eight of the same nights, all that desk, hall, phones and paper are shown: a few letters
// each for the hall, what wants attention, the calls, the timeline, the summary, the courts' pages, the public page, the
// evenings of people, the ladder, the sheets and the tables.
func TestEverybodySeesWhatTheySaw(t *testing.T) {
	session.NightsAsBefore(t, 8, views)
}

// views is a digest of each view of a moment.
func views(l *session.Ledger, now time.Time) string {
	var out []string
	say := func(what ...any) {
		var said strings.Builder
		for _, w := range what {
			text, err := json.Marshal(w)
			fmt.Fprintln(&said, string(text), err)
		}
		out = append(out, session.Letters(said.String(), 4))
	}
	club, n := l.Club(), l.Night()
	var ahead []session.PlannedRound
	if n != nil {
		ahead = n.Plan
	}
	h, ok := hall.Of(l, ahead, now)
	say(h, ok, h.FreesNext())
	var unread []calling.Call
	if n != nil {
		list := calling.Of(n, ahead, now)
		unread = list.Calls
		say(list)
	}
	say(attention.Of(l, h, attention.FileState{}, unread, now))
	line, ok := timeline.Of(l, ahead, now)
	say(line, ok, line.IdleShare(), line.InUse(now.Add(-10*time.Minute)))
	sum, ok := summary.Of(l, now)
	say(sum, ok, sum.Words(time.UTC))
	side := courtside.Of(l, now)
	say(side, side.Codes())
	if n == nil {
		return strings.Join(out, "-")
	}
	say(public.Of(l, h, now))
	for _, a := range n.Roll[:min(3, len(n.Roll))] {
		e, ok := evening.Of(club, n, ahead, now, a.Person)
		met, others := e.MetOf()
		more, same := e.Place()
		least, most := e.Games().Range()
		say(e, ok, e.Now(), e.Next(), e.NextGame(), met, others, more, same, least, most, e.SitOuts(), e.Own())
	}
	ladder, ok := rungs.Of(n, ahead)
	say(ladder, ok)
	sheets := paper.Of(club, n, ahead, time.UTC)
	for _, k := range paper.Kinds() {
		say(k.Of(sheets).Texts(), paper.Newest(club, n, ahead))
	}
	rows := n.Standings(club.Name)
	var csv strings.Builder
	err := standings.WriteCSV(&csv, rows)
	for _, r := range rows {
		low, high := r.Interval()
		csv.WriteString(fmt.Sprintln(r.PerGame(), low, high))
	}
	say(csv.String(), err)
	return strings.Join(out, "-")
}
