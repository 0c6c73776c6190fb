package night

import (
	"fmt"
	"slices"
	"strings"
)

// Benching says what it may cost that nobody sits out twice running.
type Benching uint8

const (
	// MixedBench gives sitting out twice running a price in repeated meetings: where about half of the people sit
	// out, a few who do so once keep the hall from falling into two groups who never meet.
	MixedBench Benching = iota
	// StrictBench lets as few people as can be sit out twice running, whatever that costs.
	StrictBench
)

var benchingNames = []string{"mixed", "strict"}

// Benchings lists the choices in the order of their constants.
func Benchings() []Benching { return []Benching{MixedBench, StrictBench} }

// String returns the name as scripts and files write it.
func (b Benching) String() string {
	if int(b) < len(benchingNames) {
		return benchingNames[b]
	}
	return fmt.Sprintf("benching %d", uint8(b))
}

// ParseBenching returns the choice of that name. Case and surrounding space do not matter.
func ParseBenching(name string) (Benching, error) {
	i := slices.Index(benchingNames, strings.ToLower(strings.TrimSpace(name)))
	if i < 0 {
		return 0, fmt.Errorf("%q is no way to share the bench: use one of %s", name, strings.Join(benchingNames, ", "))
	}
	return Benching(i), nil
}

// MarshalText writes the name.
func (b Benching) MarshalText() ([]byte, error) {
	if int(b) >= len(benchingNames) {
		return nil, fmt.Errorf("%s has no name", b)
	}
	return []byte(b.String()), nil
}

// UnmarshalText reads a name that [Benching.MarshalText] wrote.
func (b *Benching) UnmarshalText(text []byte) error {
	parsed, err := ParseBenching(string(text))
	if err == nil {
		*b = parsed
	}
	return err
}
