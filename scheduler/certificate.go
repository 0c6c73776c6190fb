package scheduler

// Certificate is the fairness report of a night: for each measure the value that the rotation has
// and a bound that no rotation can go below. Gap 0 everywhere proves the rotation best.
type Certificate struct {
	PartnerRepeats   Value `json:"partner_repeats"`
	PartnerEvenness  Value `json:"partner_evenness"`
	OpponentEvenness Value `json:"opponent_evenness"`
	MeetingEvenness  Value `json:"meeting_evenness"`
	SitoutSpread     Value `json:"sitout_spread"`
	BenchedTwice     Value `json:"benched_twice"`
	CourtSpread      Value `json:"court_spread"`
}

// Value is one measure with its provable lower bound.
type Value struct {
	Value int `json:"value"`
	Bound int `json:"bound"`
}

// Gap is how far the value may be from the best possible.
func (v Value) Gap() int { return v.Value - v.Bound }

// Certify measures the whole night: the history of the problem, then these rounds.
func Certify(p Problem, rounds []Round) Certificate { return Certificate{} }
