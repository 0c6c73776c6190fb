package judge

import (
	"cmp"
	"reflect"
	"slices"
	"sync"

	"club/quadrille/scheduler/measure"
)

// Certificate is the fairness report of a night: for each measure the value that the rotation has
// and a bound that no rotation can go below which shares the sit-outs like this one and keeps what people
// ask. Gap 0 everywhere proves the rotation best of these. The order of the lines is the order in which people
// read them.
type Certificate struct {
	SitoutEvenness   Value          `json:"sitout_evenness"`
	SitoutSpread     Value          `json:"sitout_spread"`
	BenchedTwice     Value          `json:"benched_twice"`
	LongestBench     Value          `json:"longest_bench"`
	PartnerRepeats   Value          `json:"partner_repeats"`
	PartnerEvenness  Value          `json:"partner_evenness"`
	MeetingEvenness  Value          `json:"meeting_evenness"`
	Strangers        Value          `json:"strangers"`
	OpponentEvenness Value          `json:"opponent_evenness"`
	SureWinners      Value          `json:"sure_winners,omitzero"`
	TeamGap          Value          `json:"team_gap,omitzero"`
	CourtLevels      Value          `json:"court_levels,omitzero"`
	CourtSpread      Value          `json:"court_spread"`
	LastPartners     Value          `json:"last_partners,omitzero"`
	Levels           measure.Levels `json:"levels,omitzero"`      // how even games are, if people state their levels
	Remembered       int            `json:"remembered,omitempty"` // pairs of people here who were partners on the last night
}

// Value is one measure with its provable lower bound.
type Value = measure.Value

// Kind is what a measure is: its words, where it stands in a [Certificate], and how a night is judged by it.
type Kind struct {
	Name   string // as in "partner repeats", the same on screens, on the command line and in documents
	Says   string // what is counted, short enough for a column
	Rests  bool   // it is about sitting out, which nobody does while play is rolling
	Traded bool   // it grows with sit-outs right after a sit-out, which are weighed against meeting others again
	Levels bool   // it is about levels, which not every night has
	Before bool   // it is about the nights before, which are not always remembered
	At     func(*Certificate) *Value
	Judge  func(*Case) Value
}

var registered []Kind

// add puts a measure among those that every night is judged by. Each file of a measure calls it once.
func add(k Kind) bool {
	registered = append(registered, k)
	return true
}

// Kinds lists the measures in the order of the lines of a [Certificate].
var Kinds = sync.OnceValue(inOrder)

func inOrder() []Kind {
	var c Certificate
	base := reflect.ValueOf(&c).Pointer()
	place := func(k Kind) uintptr { return reflect.ValueOf(k.At(&c)).Pointer() - base }
	kinds := slices.Clone(registered)
	slices.SortStableFunc(kinds, func(a, b Kind) int { return cmp.Compare(place(a), place(b)) })
	return kinds
}

// Measure is one line of a certificate, in the words that screens, command line and documents share.
type Measure struct {
	Name   string // as in "partner repeats"
	Says   string // what is counted, short enough for a column
	Rests  bool   // it is about sitting out
	Traded bool   // it is weighed against meeting others again
	Value
}

// Measures lists a certificate in the order of importance. Those about levels are there if levels are known.
func (c Certificate) Measures() []Measure {
	var all []Measure
	for _, k := range Kinds() {
		if (!k.Levels || c.Levels.Games > 0) && (!k.Before || c.Remembered > 0) {
			all = append(all, Measure{k.Name, k.Says, k.Rests, k.Traded, *k.At(&c)})
		}
	}
	return all
}

// Perfect tells whether every measure has a bound and meets it.
func (c Certificate) Perfect() bool {
	return !slices.ContainsFunc(c.Measures(), func(m Measure) bool { return m.Open || m.Gap() != 0 })
}
