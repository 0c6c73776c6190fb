package main

import (
	"runtime/debug"
	"strings"
)

// version and commit are those of a release, set when the binary is linked by cmd/release:
//
//	go build -ldflags "-X main.version=1.2.0 -X main.commit=0123456789ab" ./cmd/quadrille
var version, commit string

// buildVersion names the version of this binary and the commit that it was built from: those linked in,
// else what the toolchain knows.
func buildVersion() string {
	if version != "" {
		return withCommit(version, commit)
	}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown version"
	}
	return versionOf(info)
}

// versionOf reads the version from what the toolchain wrote into the binary. One that is no release has the commit
// in its own name.
func versionOf(info *debug.BuildInfo) string {
	name, hash := info.Main.Version, ""
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 {
			hash = s.Value[:12]
		}
	}
	if name == "" || name == "(devel)" {
		name = "development version"
	}
	return withCommit(name, hash)
}

func withCommit(name, hash string) string {
	if hash == "" || strings.Contains(name, hash) {
		return name
	}
	return name + " of commit " + hash
}
