package measure

// ID names something that a plan is judged by.
type ID uint8

// What plans are judged by, in the order of importance: see [Order].
const (
	Broken      ID = iota // games against what must hold
	Unfair                // steps of sitting out away from the fairest that there can be
	Missing               // partnerships that were asked for and are missing, or are too many
	Thrice                // sit-outs after two running, where nobody need sit out thrice running
	TwiceMore             // sit-outs right after a sit-out that fall on somebody who had enough of them
	Partners              // Σ C(p,2) over pairs of people
	Onesided              // games whose winner is predicted above the limit
	Twice                 // sit-outs right after a sit-out
	Meetings              // Σ C(m,2)
	Opponents             // Σ C(o,2)
	TwiceAtOnce           // Σ C(e,2) over rounds in which e people sit out once more
	kinds
)

// Rank is how much something weighs in the search.
type Rank struct {
	ID     ID
	Says   string // what is counted
	Weight int    // of each
	Strict int    // of each where twice running on the bench is to be avoided at any price; 0 = as Weight
	Rest   bool   // it follows from who sits out alone
}

// Order lists what a plan is judged by, the most important first. A step of a more important line outweighs
// the few steps of the next ones that one change can bring; what must hold, the sharing of sit-outs
// and wishes are far beyond any temperature of the search. Only twice running, meetings and what follows are
// traded against each other, at these prices.
//
// The price of sitting out twice running is one and a half repeated meetings: it costs one person a rest, a
// rest and two games on end, and a repeat touches two people a little. It is a judgement: what it buys and
// costs is measured (cmd/benching), other prices are not.
//
// The rolling flow, which chooses one game at a time, reads the weights of repeats, wishes and sure winners here; what
// weighs only there, waits above all, stands beside it in the same unit (rolling/cost.go).
var Order = [kinds]Rank{
	{Broken, "games against what must hold", 1 << 28, 0, false},
	{Unfair, "steps from the fairest sit-outs", 1 << 15, 0, true},
	{Missing, "partnerships asked for and missing", 1 << 13, 0, false},
	{Thrice, "three sit-outs running", 1 << 11, 0, true},
	{TwiceMore, "twice running, more than a person's share", 1 << 10, 0, true},
	{Partners, "repeated partners", 160, 0, false},
	{Onesided, "games with a sure winner, where levels are to be even", 87, 0, false},
	{Twice, "sit-outs twice running", 24, 1 << 11, true},
	{Meetings, "repeated meetings", 16, 0, false},
	{Opponents, "repeated opponents", 2, 0, false},
	{TwiceAtOnce, "sit-outs twice running in one round", 1, 0, true},
}

// GentleOnesided is what a game with a sure winner weighs where levels are to be gently even. Both weights are below half
// of what a repeated partner and meeting weigh, so that no exchange, which touches two games, pays one for them; besides,
// no plan is taken for even games that has more partner repeats.
const GentleOnesided = 24

// Weights are what each step of a [Score] weighs.
type Weights [kinds]int

// Usual are the weights of [Order], and Strict those where sitting out twice running is avoided at any price.
var Usual, Strict = weights()

func weights() (usual, strict Weights) {
	for k, r := range Order {
		usual[k], strict[k] = r.Weight, r.Weight
		if r.Strict > 0 {
			strict[k] = r.Strict
		}
	}
	// who may not sit out twice running does so neither thrice nor more often than others
	strict[Thrice], strict[TwiceMore], strict[TwiceAtOnce] = 0, 0, 0
	return usual, strict
}

// Score is what a plan costs, in the order of importance. Smaller is better everywhere.
type Score [kinds]int

// Add adds the costs of something else.
func (s *Score) Add(d Score) {
	for k := range s {
		s[k] += d[k]
	}
}

// Weight makes one number of a score, for the search.
func (s *Score) Weight(w *Weights) int {
	sum := 0
	for k, x := range s {
		sum += w[k] * x
	}
	return sum
}

// Rest is the weight of what follows from who sits out alone.
func (s *Score) Rest(w *Weights) int {
	sum := 0
	for k, x := range s {
		if Order[k].Rest {
			sum += w[k] * x
		}
	}
	return sum
}
