package main

import "runtime/debug"

// version is the released version, set when the binary is linked:
//
//	go build -ldflags "-X main.version=1.2.0" ./cmd/quadrille
var version string

// buildVersion names the version of this binary: the one linked in, else what the toolchain knows
// of the module and the commit that it was built from.
func buildVersion() string {
	if version != "" {
		return version
	}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown version"
	}
	name := info.Main.Version
	if name == "" || name == "(devel)" {
		name = "development version"
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 && name == "development version" {
			name += " of commit " + s.Value[:12]
		}
	}
	return name
}
