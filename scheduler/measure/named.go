package measure

// Measure is one line of a certificate, in the words that screens, command line and documents share.
type Measure struct {
	Name string // as in "partner repeats"
	Says string // what is counted, short enough for a column
	Value
}

// RestMeasures is how many of the [Certificate.Measures], the first, are about sitting out, which nobody
// does while play is rolling.
const RestMeasures = 4

// Measures lists a certificate in the order of importance.
func (c Certificate) Measures() []Measure {
	return []Measure{
		{"sit-out evenness", "squares off the share owed, x 100", c.SitoutEvenness},
		{"sit-out spread", "most less fewest, if here all night", c.SitoutSpread},
		{"out twice running", "sat out two rounds running", c.BenchedTwice},
		{"longest bench", "most rounds out running", c.LongestBench},
		{"partner repeats", "partners for a second time", c.PartnerRepeats},
		{"partner evenness", "two games with the same partner", c.PartnerEvenness},
		{"meeting evenness", "two games with the same person", c.MeetingEvenness},
		{"strangers", "pairs here together who never meet", c.Strangers},
		{"opponent evenness", "two games against the same person", c.OpponentEvenness},
		{"court spread", "most less fewest on a court, summed", c.CourtSpread},
	}
}
