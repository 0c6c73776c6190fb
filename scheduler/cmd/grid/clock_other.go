//go:build !unix

package main

import "time"

var began = time.Now()

// processor is the time since the program began.
func processor() time.Duration { return time.Since(began) }
