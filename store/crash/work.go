package crash

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"time"

	"club/quadrille/session"
	"club/quadrille/session/simulation"
	"club/quadrille/store"
)

// The names below the folder that Work works in.
const (
	clubName   = "club.qdb"
	backupName = "backups"
)

// Work plays a night of 12 people on 3 courts, two of them scored rally by rally, into a new club file in
// dir, and tells out after each action which record is durable, a number a line. Now and then it makes a
// backup, keeps a snapshot, or writes the file anew.
func Work(dir string, out io.Writer) error {
	kept, err := store.Open(filepath.Join(dir, clubName))
	if err != nil {
		return err
	}
	log := &busyLog{Store: kept, backups: filepath.Join(dir, backupName)}
	night := simulation.Night{
		People: simulation.Invented(12, 1), Courts: 3, Rounds: 3, Flow: session.Rounds, ByRally: 2, Seed: 1,
		Scoring: session.DefaultSettings(1).Scoring,
	}
	_, err = simulation.Run(context.Background(), log, night, func(last uint64) error {
		_, err := fmt.Fprintln(out, last)
		return err
	})
	if err != nil {
		return err
	}
	return kept.Close()
}

// A busyLog does everything to its file that a desk does.
type busyLog struct {
	*store.Store

	backups string
	appends int
}

// Append implements session.Log.
func (l *busyLog) Append(recs []session.Record) error {
	if err := l.Store.Append(recs); err != nil {
		return err
	}
	l.appends++
	switch l.appends % 30 {
	case 10:
		_, err := l.Keep(l.backups, 3, time.Unix(1_790_000_000+int64(l.appends), 0))
		return err
	case 20:
		return l.KeepSnapshot(session.Snapshot{Seq: l.Last(), State: []byte("a state that no session reads")})
	case 0:
		return l.Compact()
	}
	return nil
}
