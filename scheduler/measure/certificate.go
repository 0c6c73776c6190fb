package measure

// Certificate is the fairness report of a night: for each measure the value that the rotation has
// and a bound that no rotation can go below which shares the sit-outs like this one and keeps what people
// ask. Gap 0 everywhere proves the rotation best of these.
type Certificate struct {
	PartnerRepeats   Value  `json:"partner_repeats"`   // Σ max(0, p-1) over pairs who partnered p times
	PartnerEvenness  Value  `json:"partner_evenness"`  // Σ C(p,2)
	OpponentEvenness Value  `json:"opponent_evenness"` // Σ C(o,2) over pairs who opposed o times
	MeetingEvenness  Value  `json:"meeting_evenness"`  // Σ C(p+o,2)
	SitoutSpread     Value  `json:"sitout_spread"`     // most less fewest sit-outs of those present throughout
	BenchedTwice     Value  `json:"benched_twice"`     // sit-outs right after a sit-out
	CourtSpread      Value  `json:"court_spread"`      // Σ over people of most less fewest games on a court
	SitoutEvenness   Value  `json:"sitout_evenness"`   // Σ (sit-outs - share owed)², in hundredths
	LongestBench     Value  `json:"longest_bench"`     // most rounds that somebody sits out running
	Strangers        Value  `json:"strangers"`         // pairs who are there together and never meet
	Levels           Levels `json:"levels,omitzero"`   // how even games are, if people state their levels
}

// Value is one measure with its provable lower bound.
type Value struct {
	Value int `json:"value"`
	Bound int `json:"bound"`
}

// Gap is how far the value may be from the best possible.
func (v Value) Gap() int { return v.Value - v.Bound }

// Perfect tells whether every gap is 0.
func (c Certificate) Perfect() bool {
	for _, m := range c.Measures() {
		if m.Gap() != 0 {
			return false
		}
	}
	return true
}
