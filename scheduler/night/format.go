package night

import (
	"fmt"
	"slices"
	"strings"
)

// Format is the way in which teams are made.
type Format uint8

const (
	// Rotating gives everybody a new partner each round.
	Rotating Format = iota
	// Mixed is Rotating with one person from each of two groups in every team.
	Mixed
	// Pairs keeps partners together all night and rotates the opponents.
	Pairs
	// Ladder moves winners up a court and losers down, and splits partners.
	Ladder
)

var formatNames = []string{"rotating", "mixed", "pairs", "ladder"}

// Formats lists every format in the order of their constants.
func Formats() []Format { return []Format{Rotating, Mixed, Pairs, Ladder} }

// String returns the format's name as scripts and files write it.
func (f Format) String() string {
	if int(f) < len(formatNames) {
		return formatNames[f]
	}
	return fmt.Sprintf("format %d", uint8(f))
}

// Words is what people call the format: its name, but "set pairs" for [Pairs].
func (f Format) Words() string {
	if f == Pairs {
		return "set pairs"
	}
	return f.String()
}

// ParseFormat returns the format of that name, or of those [Format.Words]. Case and surrounding space do not matter.
func ParseFormat(name string) (Format, error) {
	name = strings.ToLower(strings.TrimSpace(name))
	if name == Pairs.Words() {
		return Pairs, nil
	}
	i := slices.Index(formatNames, name)
	if i < 0 {
		return 0, fmt.Errorf("%q is no format: use one of %s", name, strings.Join(formatNames, ", "))
	}
	return Format(i), nil
}

// MarshalText writes the format's name.
func (f Format) MarshalText() ([]byte, error) {
	if int(f) >= len(formatNames) {
		return nil, fmt.Errorf("%s has no name", f)
	}
	return []byte(f.String()), nil
}

// UnmarshalText reads a name that [Format.MarshalText] wrote.
func (f *Format) UnmarshalText(text []byte) error {
	parsed, err := ParseFormat(string(text))
	if err == nil {
		*f = parsed
	}
	return err
}
