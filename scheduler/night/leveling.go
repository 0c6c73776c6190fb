package night

import (
	"fmt"
	"slices"
	"strings"
)

// Leveling says how much even games are worth beside meeting everybody. None of it is paid with partner repeats.
type Leveling uint8

const (
	// AnyLevels balances teams only where nobody meets anybody more often for it.
	AnyLevels Leveling = iota
	// GentleLevels avoids a game with a sure winner where that costs one or two repeated meetings.
	GentleLevels
	// EvenLevels avoids it wherever that can be found.
	EvenLevels
)

var levelingNames = []string{"off", "gentle", "even"}

// Levelings lists the steps in the order of their constants.
func Levelings() []Leveling { return []Leveling{AnyLevels, GentleLevels, EvenLevels} }

// String returns the name as scripts and files write it.
func (l Leveling) String() string {
	if int(l) < len(levelingNames) {
		return levelingNames[l]
	}
	return fmt.Sprintf("leveling %d", uint8(l))
}

// ParseLeveling returns the step of that name. Case and surrounding space do not matter.
func ParseLeveling(name string) (Leveling, error) {
	i := slices.Index(levelingNames, strings.ToLower(strings.TrimSpace(name)))
	if i < 0 {
		return 0, fmt.Errorf("%q is no step of leveling: use one of %s", name, strings.Join(levelingNames, ", "))
	}
	return Leveling(i), nil
}

// SureWin is the chance of winning from which a game has a sure winner, where nothing else is said.
const SureWin = 0.75

// Even tells how even games shall be, and the chance above which a game has a sure winner. A limit without a step
// asks for even levels.
func (p *Problem) Even() (step Leveling, limit float64) {
	switch {
	case p.LevelLimit == 0:
		return p.Leveling, SureWin
	case p.Leveling == AnyLevels:
		return EvenLevels, p.LevelLimit
	}
	return p.Leveling, p.LevelLimit
}
