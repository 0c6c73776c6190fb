package store

import (
	"time"

	bolt "go.etcd.io/bbolt"
)

// An Option changes how a file is opened.
type Option func(*options)

type options struct {
	createdBy string
	patience  time.Duration
}

// CreatedBy is the version of the program, noted in the file if Open has to make it.
func CreatedBy(version string) Option { return func(o *options) { o.createdBy = version } }

// Patience is how long Open waits for another process to let go of the file, half a second by
// default. A program that was just closed may still be writing.
func Patience(d time.Duration) Option { return func(o *options) { o.patience = d } }

func newOptions(opts []Option) options {
	o := options{patience: 500 * time.Millisecond}
	for _, set := range opts {
		set(&o)
	}
	return o
}

// boltOptions is how every file is opened. The free list is kept on disk: without it, opening a
// damaged file walks all of it in a goroutine whose faults nobody can catch.
func boltOptions() *bolt.Options {
	return &bolt.Options{
		Timeout:      100 * time.Millisecond,
		FreelistType: bolt.FreelistMapType,
		NoStatistics: true,
	}
}
